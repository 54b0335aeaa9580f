/** A practice's settings as a file: written, read back, and refused with the place and the reason. */
import * as v from 'valibot';
import { readingDefs } from '../protocol/readings.ts';
import type { Material, Practice } from '../protocol/types.ts';
import type { Problem } from '../protocol/validate.ts';
import { fileText, openFile, shapeProblem, type FileKind, type FileRead } from './fileFormat.ts';
import { practice as shape } from './practiceSchema.ts';

const KIND: FileKind = { kind: 'rimwise practice', format: 1, migrations: {} };

const DAYS_14_MIN = 20_160;

function within(value: number, path: string, [low, high, unit]: readonly [number, number, string]): readonly Problem[] {
  return value >= low && value <= high ? [] : [{ path, text: `${value} is not between ${low} and ${high} ${unit}.` }];
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

function rangeProblems(ranges: NonNullable<Practice['ranges']>): readonly Problem[] {
  return Object.entries(ranges).flatMap(([id, { plausible, expected }]) => {
    const path = `ranges.${id}`;
    const known = readingDefs.some((def) => def.id === id);
    const ordered = plausible[0] < plausible[1] && expected[0] < expected[1];
    const inside = plausible[0] <= expected[0] && expected[1] <= plausible[1];
    return [
      ...(known ? [] : [{ path, text: `There is no reading “${id}”.` }]),
      ...(ordered ? [] : [{ path, text: 'The lower end of a range must be below its upper end.' }]),
      ...(inside ? [] : [{ path: `${path}.expected`, text: 'The expected range reaches beyond the plausible one.' }]),
    ];
  });
}

/**
 * Everything in a practice's settings that could not be worked with; empty when it may be used. Lengths in hundredths of a
 * millimetre, times in seconds or minutes as named. Bounds are wide on purpose (our choice): they catch slips, not habits.
 */
export function practiceProblems(practice: Practice): readonly Problem[] {
  const { materials, disinfectants, trays, reasons, people = [], cautions = {}, ranges = {} } = practice;
  return [
    ...within(practice.restSpaceTarget, 'restSpaceTarget', [100, 800, 'hundredths of a millimetre']),
    ...within(practice.trayClearance, 'trayClearance', [100, 1200, 'hundredths of a millimetre']),
    ...within(practice.borderShort, 'borderShort', [0, 1000, 'hundredths of a millimetre']),
    ...(reasons.length > 0 ? [] : [{ path: 'reasons', text: 'At least one reason must be on offer.' }]),
    ...twice(
      materials.map((m) => m.id),
      'materials',
    ),
    ...twice(
      disinfectants.map((d) => d.id),
      'disinfectants',
    ),
    ...twice(
      trays.map((t) => t.id),
      'trays',
    ),
    ...twice(
      reasons.map((r) => r.id),
      'reasons',
    ),
    ...twice(
      people.map((p) => `${p.initials}, ${p.role}`),
      'people',
    ),
    ...blank(
      materials.map((m) => m.name),
      'materials',
    ),
    ...blank(
      disinfectants.map((d) => d.name),
      'disinfectants',
    ),
    ...blank(
      trays.map((t) => t.label),
      'trays',
    ),
    ...blank(
      people.map((p) => p.initials),
      'people',
    ),
    ...materials.flatMap((m, at) => materialProblems(m, `materials.${at}`)),
    ...disinfectants.flatMap((d, at) => within(d.minutes, `disinfectants.${at}.minutes`, [1, 120, 'minutes'])),
    ...trays.flatMap((t, at) =>
      within(t.innerWidth, `trays.${at}.innerWidth`, [2000, 12_000, 'hundredths of a millimetre']),
    ),
    ...Object.entries(cautions).flatMap(([key, words]) =>
      words.trim() === '' ? [{ path: `cautions.${key}`, text: 'A caution may be worded anew, not emptied.' }] : [],
    ),
    ...rangeProblems(ranges),
  ];
}

/** Settings from anywhere (a file, the device's store), checked field by field and then for sense. */
export function readPractice(content: unknown): FileRead<Practice> {
  const parsed = v.safeParse(shape, content);
  const problem = parsed.success ? practiceProblems(parsed.output)[0] : shapeProblem(parsed.issues[0]);
  if (problem !== undefined || !parsed.success)
    return { ok: false, path: problem?.path ?? '', text: problem?.text ?? '' };
  return { ok: true, value: parsed.output };
}

/** The text of a practice file → its settings, or where and why it cannot be used. */
export function readPracticeFile(text: string): FileRead<Practice> {
  const opened = openFile(text, KIND);
  return opened.ok ? readPractice(opened.value) : opened;
}

/** The text of a practice file. */
export function practiceFileText(practice: Practice): string {
  return fileText(KIND, practice);
}
