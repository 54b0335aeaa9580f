/** What does not agree: with the numbers, why it matters, and what to do now. Each rule is one small function. */
import { setAdvice } from '../measure/vertical.ts';
import { formatHundredths, toMm } from '../measure/length.ts';
import type { ReadingDef } from '../protocol/types.ts';
import { halfScores, tracingFlags } from './decided-flags.ts';
import { clockFindings, expiredLots, waterTemperature } from './clock-flags.ts';
import { CLOSED, RECORD, REST } from './sets.ts';
import { defOf } from './rows.ts';
import type { Decided } from './decided.types.ts';
import type { ClockRow, Flag, ReadingRow, SetRow, VerticalDimension } from './types.ts';

export interface Findings {
  readonly rows: readonly ReadingRow[];
  readonly sets: readonly SetRow[];
  readonly vertical: VerticalDimension;
  readonly clocks: readonly ClockRow[];
  readonly readings: readonly ReadingDef[];
  readonly decided: Decided;
  /** Steps the visit has passed or stands at: a set still being read is not yet "too few". */
  readonly passed: (step: string) => boolean;
  readonly now: number;
}

export type Rule = (found: Findings) => readonly Flag[];

const mm = (value: number) => `${value.toFixed(1)} mm`;
const list = (set: SetRow) => set.values.map(formatHundredths).join(', ');

const tooFew: Rule = ({ sets, readings, passed }) =>
  sets.flatMap((set): Flag[] => {
    const least = defOf(readings, set.reading)?.repeat?.least ?? 1;
    if (set.n >= least || !passed(set.reading)) return [];
    return [
      {
        id: `tooFew:${set.reading}:${set.markSet}:n${set.n}`,
        level: 'disagrees',
        what: `${set.label}: ${set.n} reading${set.n === 1 ? '' : 's'} (${list(set)}), ${least} wanted.`,
        why: 'With so few, a single slip cannot be told from the truth.',
        todo: `Read ${least - set.n} more between the same marks.`,
        step: set.reading,
      },
    ];
  });

const rangeRemedy = (enough: boolean, twoMore: boolean) => {
  if (enough) return 'Five readings are in: the median is used. Keep with a reason, or repeat all.';
  return twoMore ? 'Take two more readings; the median is used.' : 'Let the patient rest, then repeat all readings.';
};

const wideRange: Rule = ({ sets }) =>
  sets.flatMap((set): Flag[] => {
    if (set.rangeMm === undefined || set.n < 2) return [];
    const advice = setAdvice(set.rangeMm, Math.max(set.n, 3));
    if (advice !== 'twoMore' && advice !== 'repeatAll') return [];
    const enough = advice === 'twoMore' && set.n >= 5;
    return [
      {
        id: `range:${set.reading}:${set.markSet}:${set.rangeMm.toFixed(2)}mm`,
        level: enough ? 'look' : 'disagrees',
        what: `${set.label}: ${list(set)} differ by ${mm(set.rangeMm)}; up to 1.0 mm is accepted.`,
        why: 'The rest space is a small difference of large heights; this scatter is as large as the answer.',
        todo: rangeRemedy(enough, advice === 'twoMore'),
        step: set.reading,
      },
    ];
  });

const suspectReadings: Rule = ({ sets }) =>
  sets.flatMap((set) =>
    set.suspects.map((s): Flag => ({
      id: `suspect:${s.seq}`,
      level: 'disagrees',
      what: `${set.label}: ${formatHundredths(s.value)} stands apart from ${set.values
        .filter((_, i) => set.seqs[i] !== s.seq)
        .map(formatHundredths)
        .join(', ')}.`,
      why: s.perhaps === undefined ? s.why : `${s.why} It may have been ${formatHundredths(s.perhaps)}.`,
      todo: 'Measure again, or correct it if it was misheard.',
      step: set.reading,
    })),
  );

const closedAboveRest: Rule = ({ vertical }) => {
  const { rest, closed, restSpaceMm } = vertical;
  if (restSpaceMm === undefined || restSpaceMm > 0 || rest?.meanMm === undefined || closed?.meanMm === undefined)
    return [];
  return [
    {
      id: `impossible:${vertical.markSet}:${restSpaceMm.toFixed(2)}mm`,
      level: 'disagrees',
      what: `Closed height ${mm(closed.meanMm)} is not below rest height ${mm(rest.meanMm)} (difference ${mm(restSpaceMm)}).`,
      why: 'By definition the closed height is the smaller one. At least one of the two sets is wrong.',
      todo: 'Check the marks and the head posture, then read rest and closed again.',
      step: REST,
    },
  ];
};

const spaceOutside: Rule = ({ vertical }) => {
  const { restSpaceMm, verdict, uncertaintyMm } = vertical;
  if (restSpaceMm === undefined || restSpaceMm <= 0 || (verdict !== 'small' && verdict !== 'large')) return [];
  const give = uncertaintyMm === undefined ? '' : ` ± ${uncertaintyMm.toFixed(1)}`;
  const small = verdict === 'small';
  return [
    {
      id: `space:${vertical.markSet}:${restSpaceMm.toFixed(2)}mm`,
      level: 'look',
      what: `Rest space ${restSpaceMm.toFixed(1)}${give} mm; 2 to 4 mm is the usual teaching range.`,
      why: small
        ? 'A small rest space means the closed height is large for this rest height.'
        : 'A large rest space means the closed height is small for this rest height.',
      todo: small
        ? 'Read rest again with the patient relaxed; the clinician decides about lowering.'
        : 'Read again; the clinician decides about raising.',
      step: CLOSED,
    },
  ];
};

const differentMarks: Rule = ({ sets }) => {
  const rest = sets.findLast((set) => set.reading === REST);
  const flags: Flag[] = [];
  for (const reading of [CLOSED, RECORD]) {
    const other = sets.findLast((set) => set.reading === reading);
    if (rest === undefined || other === undefined) continue;
    if (sets.some((set) => set.reading === reading && set.markSet === rest.markSet)) continue;
    flags.push({
      id: `marks:${reading}:${rest.markSet}:${other.markSet}`,
      level: 'disagrees',
      what: `${rest.label} was read between ${rest.markSet} (${list(rest)}), ${other.label.toLowerCase()} between ${other.markSet} (${list(other)}).`,
      why: 'Distances between different skin marks cannot be compared; only differences within one set of marks count.',
      todo: 'Read both between the marks that are on the skin now.',
      step: REST,
    });
  }
  return flags;
};

const mixedBases: Rule = ({ sets }) => {
  const groups = new Map<string, SetRow[]>();
  for (const set of sets) {
    const key = `${set.reading}|${set.markSet}`;
    groups.set(key, [...(groups.get(key) ?? []), set]);
  }
  return [...groups.values()].flatMap((group): Flag[] => {
    if (group.length < 2) return [];
    const first = group[0]!;
    return [
      {
        id: `mixedBases:${first.reading}:${first.markSet}`,
        level: 'disagrees',
        what: `${first.label} was read with different bases in the mouth: ${group.map((s) => `${s.bases ?? 'not said'} (${list(s)})`).join('; ')}.`,
        why: 'A base in the mouth changes the rest posture; readings with and without are two different quantities.',
        todo: 'Read again with the same bases in for every repeat.',
        step: first.reading,
      },
    ];
  });
};

const basesDiffer: Rule = ({ vertical }) => {
  const { rest, closed } = vertical;
  if (rest?.bases === undefined || closed?.bases === undefined || rest.bases === closed.bases) return [];
  const shorter = rest.bases === 'none' || (closed.bases === 'both' && rest.bases !== 'both');
  return [
    {
      id: `bases:${vertical.markSet}:${rest.bases}-${closed.bases}`,
      level: 'disagrees',
      what: `Rest was read with ${rest.bases} in the mouth, closed with ${closed.bases}.`,
      why: shorter
        ? 'Rest height is shorter without dentures (means 67.9 and 70.3 mm in one study of 52): the true rest space may be about 2 to 2.5 mm larger.'
        : 'The two heights belong to different conditions.',
      todo: 'Read rest again with the same bases in, or keep with a reason.',
      step: REST,
    },
  ];
};

const beyondExpected: Rule = ({ rows, readings }) =>
  rows.flatMap((row): Flag[] => {
    const def = defOf(readings, row.reading);
    if (row.struck !== undefined || def === undefined) return [];
    const [low, high] = def.expected;
    if (row.value >= low && row.value <= high) return [];
    const unit = def.unit;
    return [
      {
        id: `expected:${row.seq}`,
        level: 'look',
        what: `${row.label} ${formatHundredths(row.value)} ${unit}; ${formatHundredths(low)} to ${formatHundredths(high)} ${unit} is expected.`,
        why: 'Unusual values are more often slips than mouths.',
        todo: 'Measure again, or keep with a reason.',
        step: row.step,
      },
    ];
  });

/** A record made at another height than the convention says is mounted wrongly unless the lab is told. */
const recordHeight: Rule = ({ vertical }) => {
  const { rest, record, convention, targetHeightMm } = vertical;
  if (rest?.medianMm === undefined || record?.medianMm === undefined || targetHeightMm === undefined) return [];
  const wanted = convention === 'rest' ? rest.medianMm : targetHeightMm;
  const off = record.medianMm - wanted;
  if (Math.abs(off) <= 1) return [];
  return [
    {
      id: `record:${vertical.markSet}:${off.toFixed(2)}mm`,
      level: 'disagrees',
      what: `The record was made at ${mm(record.medianMm)}; ${convention === 'rest' ? 'rest height' : 'rest height less the chosen space'} is ${mm(wanted)} (${off > 0 ? '+' : '−'}${Math.abs(off).toFixed(1)} mm).`,
      why: 'The lab mounts by this record; the pin change on the sheet is worked out from the height it was really made at.',
      todo: 'Take the record again at the wanted height, or keep and let the lab change the pin.',
      step: RECORD,
    },
  ];
};

/** Left and right, upper and lower: cheap checks that catch a number filed under the wrong name. */
const widthsApart: Rule = ({ rows }) => {
  const value = (reading: string) => rows.findLast((row) => row.reading === reading && row.struck === undefined);
  const upper = value('upper-width');
  const lower = value('lower-width');
  if (upper === undefined || lower === undefined || Math.abs(upper.value - lower.value) <= 2500) return [];
  return [
    {
      id: `widths:${upper.seq}:${lower.seq}`,
      level: 'look',
      what: `Upper ridge ${formatHundredths(upper.value)} mm and lower ridge ${formatHundredths(lower.value)} mm differ by ${mm(Math.abs(toMm(upper.value - lower.value)))}.`,
      why: 'A difference over 25 mm between the arches is more often a misheard ten than a mouth.',
      todo: 'Measure the narrower one again.',
      step: upper.value < lower.value ? 'upper-width' : 'lower-width',
    },
  ];
};

const RULES: readonly Rule[] = [
  closedAboveRest,
  differentMarks,
  suspectReadings,
  wideRange,
  tooFew,
  mixedBases,
  basesDiffer,
  recordHeight,
  clockFindings,
  expiredLots,
  waterTemperature,
  tracingFlags,
  halfScores,
  spaceOutside,
  beyondExpected,
  widthsApart,
];

/** All disagreements that stand now, most serious first. */
export function flagsOf(found: Findings): readonly Flag[] {
  return RULES.flatMap((rule) => rule(found));
}
