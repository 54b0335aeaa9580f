/** What in a practice's settings could not be worked with: each with its place and a plain sentence. */
import { formatHundredths } from '../measure/length.ts';
import { instrumentOf } from './instruments.ts';
import { readingDefs } from './readings.ts';
import type { Language, Material, Practice, ReadingDef } from './types.ts';
import { LIMITS, type Problem } from './validate.ts';

const DAYS_14_MIN = 20_160;
const INITIALS = 6;
const LANGUAGES: readonly Language[] = ['en', 'de', 'es', 'fr'];

function within(value: number, path: string, [low, high, unit]: readonly [number, number, string]): readonly Problem[] {
  return value >= low && value <= high ? [] : [{ path, text: `${value} is not between ${low} and ${high} ${unit}.` }];
}

/** Hundredths in, millimetres in the sentence. */
function withinMm(value: number, path: string, [low, high]: readonly [number, number]): readonly Problem[] {
  if (value >= low * 100 && value <= high * 100) return [];
  return [{ path, text: `${formatHundredths(value)} is not between ${low} and ${high} mm.` }];
}

function mixProblems({ mix, waterC }: Material, path: string): readonly Problem[] {
  const warm = waterC === undefined ? [] : within(waterC, `${path}.waterC`, [0, 60, '°C']);
  if (mix === undefined) return warm;
  const { powderG, waterMl, lessWater = 0 } = mix;
  return [
    ...warm,
    ...(powderG > 0 && waterMl > 0
      ? []
      : [{ path: `${path}.mix`, text: 'Powder and water of a portion must both be more than nothing.' }]),
    ...(lessWater >= 0 && lessWater <= 0.5
      ? []
      : [{ path: `${path}.mix`, text: 'At most half of the water can be left out.' }]),
  ];
}

function materialProblems(m: Material, path: string): readonly Problem[] {
  return [
    ...within(m.mixS, `${path}.mixS`, [1, 600, 'seconds']),
    ...within(m.workingS, `${path}.workingS`, [1, 1800, 'seconds']),
    ...within(m.removeS, `${path}.removeS`, [1, 3600, 'seconds']),
    ...within(m.pourFromMin, `${path}.pourFromMin`, [0, DAYS_14_MIN, 'minutes']),
    ...within(m.pourWithinMin, `${path}.pourWithinMin`, [1, DAYS_14_MIN, 'minutes']),
    ...(m.workingS >= m.mixS ? [] : [{ path: `${path}.workingS`, text: 'Working time ends before mixing does.' }]),
    ...(m.removeS >= m.workingS
      ? []
      : [{ path: `${path}.removeS`, text: 'Removal stands before the end of working.' }]),
    ...(m.pourWithinMin >= m.pourFromMin
      ? []
      : [{ path: `${path}.pourWithinMin`, text: 'The latest pour stands before the earliest.' }]),
    ...mixProblems(m, path),
  ];
}

function twice(ids: readonly string[], path: string): readonly Problem[] {
  return ids
    .filter((id, at) => ids.indexOf(id) !== at)
    .map((id) => ({ path, text: `Two entries are called “${id}”.` }));
}

function blank(texts: readonly string[], path: string): readonly Problem[] {
  return texts.flatMap((text, at) =>
    text.trim() === '' ? [{ path: `${path}.${at}`, text: 'This entry has no name.' }] : [],
  );
}

function tooLong(text: string, path: string, limit: number): readonly Problem[] {
  if (text.length <= limit) return [];
  return [{ path, text: `${text.length} characters; at most ${limit} can be read from afar.` }];
}

function outsideInstrument(def: ReadingDef, [low, high]: readonly [number, number]): string {
  const [least, most] = instrumentOf(def);
  if (low >= least && high <= most) return '';
  return `The instrument reads ${formatHundredths(least)} to ${formatHundredths(most)} ${def.unit}.`;
}

function rangeProblems(ranges: NonNullable<Practice['ranges']>): readonly Problem[] {
  return Object.entries(ranges).flatMap(([id, { plausible, expected }]) => {
    const path = `ranges.${id}`;
    const def = readingDefs.find((one) => one.id === id);
    const ordered = plausible[0] < plausible[1] && expected[0] < expected[1];
    const inside = plausible[0] <= expected[0] && expected[1] <= plausible[1];
    const beyond = def === undefined ? '' : outsideInstrument(def, plausible);
    return [
      ...(def === undefined ? [{ path, text: `There is no reading “${id}”.` }] : []),
      ...(ordered ? [] : [{ path, text: 'The lower end of a range must be below its upper end.' }]),
      ...(inside ? [] : [{ path: `${path}.expected`, text: 'The expected range reaches beyond the plausible one.' }]),
      ...(beyond === '' ? [] : [{ path: `${path}.plausible`, text: beyond }]),
    ];
  });
}

function reasonProblems(reasons: Practice['reasons']): readonly Problem[] {
  const wordsIn = (language: Language) => reasons.flatMap((reason) => reason.words[language] ?? []);
  return [
    ...(reasons.length > 0 ? [] : [{ path: 'reasons', text: 'At least one reason must be on offer.' }]),
    ...reasons.flatMap((reason, at) => [
      ...tooLong(reason.label, `reasons.${at}.label`, LIMITS.label),
      ...LANGUAGES.flatMap((language) =>
        (reason.words[language] ?? [])
          .filter((word) => word === '' || word !== word.trim().toLowerCase())
          .map((word) => ({
            path: `reasons.${at}.words.${language}`,
            text: `“${word}” must be lower case, without blanks at the ends.`,
          })),
      ),
    ]),
    ...LANGUAGES.flatMap((language) =>
      wordsIn(language)
        .filter((word, at, all) => all.indexOf(word) !== at)
        .map((word) => ({ path: 'reasons', text: `Two reasons listen to “${word}” (${language}).` })),
    ),
  ];
}

function cautionProblems(cautions: NonNullable<Practice['cautions']>): readonly Problem[] {
  return Object.entries(cautions).flatMap(([key, words]) => [
    ...(words.trim() === ''
      ? [{ path: `cautions.${key}`, text: 'A caution may be worded anew, not emptied.' }]
      : tooLong(words, `cautions.${key}`, LIMITS.caution)),
  ]);
}

function peopleProblems(people: NonNullable<Practice['people']>): readonly Problem[] {
  return people.flatMap(({ initials }, at) =>
    initials.length > INITIALS ? [{ path: `people.${at}`, text: 'Six letters at most, never a name.' }] : [],
  );
}

function labDayProblems(days: NonNullable<Practice['labDays']>): readonly Problem[] {
  return Object.entries(days).flatMap(([name, value]) => within(value as number, `labDays.${name}`, [0, 120, 'days']));
}

/** Each list has entries with a name, and none twice. */
function listProblems({ materials, disinfectants, trays, reasons, people = [] }: Practice): readonly Problem[] {
  const lists: readonly (readonly [path: string, ids: readonly string[], names: readonly string[]])[] = [
    ['materials', materials.map((m) => m.id), materials.map((m) => m.name)],
    ['disinfectants', disinfectants.map((d) => d.id), disinfectants.map((d) => d.name)],
    ['trays', trays.map((t) => t.id), trays.map((t) => t.label)],
    ['reasons', reasons.map((r) => r.id), reasons.map((r) => r.label)],
    ['people', people.map((p) => `${p.initials}, ${p.role}`), people.map((p) => p.initials)],
  ];
  return [
    ...lists.flatMap(([path, ids]) => twice(ids, path)),
    ...lists.flatMap(([path, , names]) => blank(names, path)),
  ];
}

/**
 * Everything in a practice's settings that could not be worked with; empty when it may be used. Lengths in hundredths of a
 * millimetre, times in seconds or minutes as named. Bounds are wide on purpose (our choice): they catch slips, not habits.
 */
export function practiceProblems(practice: Practice): readonly Problem[] {
  const { materials, disinfectants, trays, reasons, people = [], cautions = {}, ranges = {} } = practice;
  return [
    ...withinMm(practice.restSpaceTarget, 'restSpaceTarget', [1, 8]),
    ...withinMm(practice.trayClearance, 'trayClearance', [1, 12]),
    ...withinMm(practice.borderShort, 'borderShort', [0, 10]),
    ...listProblems(practice),
    ...reasonProblems(reasons),
    ...peopleProblems(people),
    ...materials.flatMap((m, at) => materialProblems(m, `materials.${at}`)),
    ...disinfectants.flatMap((d, at) => within(d.minutes, `disinfectants.${at}.minutes`, [1, 120, 'minutes'])),
    ...trays.flatMap((t, at) => withinMm(t.innerWidth, `trays.${at}.innerWidth`, [20, 120])),
    ...(practice.labDays === undefined ? [] : labDayProblems(practice.labDays)),
    ...cautionProblems(cautions),
    ...rangeProblems(ranges),
  ];
}
