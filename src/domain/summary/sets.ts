/** Repeated readings, grouped by the marks they were read between, and what the vertical dimension follows from them. */
import { describeSet, pinChange, restSpace, suspects } from '../measure/vertical.ts';
import { toMm, type Hundredths } from '../measure/length.ts';
import type { Practice, ReadingDef } from '../protocol/types.ts';
import { defOf } from './rows.ts';
import type { ReadingRow, SetRow, VerticalDimension } from './types.ts';

export const REST = 'rest-height';
export const CLOSED = 'closed-height';
export const RECORD = 'record-height';

function toSet(rows: readonly ReadingRow[], def: ReadingDef | undefined): SetRow {
  const first = rows[0]!;
  const values = rows.map((row) => row.value);
  const stats = describeSet(values);
  const found = def === undefined ? [] : suspects(values, def.plausible);
  const bases = first.bases === undefined ? {} : { bases: first.bases };
  const sd = stats.ok && stats.value.sdMm !== undefined ? { sdMm: stats.value.sdMm } : {};
  const figures = stats.ok
    ? { medianMm: stats.value.medianMm, meanMm: stats.value.meanMm, rangeMm: stats.value.rangeMm, ...sd }
    : {};
  return {
    reading: first.reading,
    label: first.label,
    markSet: first.markSet ?? '',
    ...bases,
    values,
    seqs: rows.map((row) => row.seq),
    n: rows.length,
    ...figures,
    suspects: found.map((s) => ({
      seq: rows[s.index]?.seq ?? 0,
      value: rows[s.index]?.value ?? 0,
      why: s.text,
      ...(s.perhaps === undefined ? {} : { perhaps: s.perhaps }),
    })),
  };
}

/** Live repeated readings, one set for each quantity, mark set and choice of bases, in the order they began. */
export function setRows(rows: readonly ReadingRow[], readings: readonly ReadingDef[]): readonly SetRow[] {
  const groups = new Map<string, ReadingRow[]>();
  for (const row of rows) {
    if (row.struck !== undefined || row.markSet === undefined) continue;
    const key = `${row.reading}|${row.markSet}|${row.bases ?? ''}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return [...groups.values()].map((group) => toSet(group, defOf(readings, group[0]!.reading)));
}

const newest = (sets: readonly SetRow[], reading: string, markSet?: string): SetRow | undefined =>
  sets.findLast((set) => set.reading === reading && (markSet === undefined || set.markSet === markSet));

/** What the laboratory changes at the pin so that the mounted casts stand at the target height. */
function labChange(
  rest: readonly Hundredths[],
  record: SetRow | undefined,
  targetMm: number,
): VerticalDimension['lab'] | undefined {
  const stats = describeSet(rest);
  if (!stats.ok || record?.medianMm === undefined) return undefined;
  const change = pinChange({ restMm: stats.value.medianMm, recordedMm: record.medianMm, targetSpaceMm: targetMm });
  if (!change.ok) return undefined;
  const { chinMm, incisalRangeMm, pinRangeMm, molarRangeMm, warnOver6 } = change.value;
  const [incisal, pin] = [sorted(incisalRangeMm), sorted(pinRangeMm)];
  const caution = warnOver6
    ? ' Over 6 mm at the pin: hinge arithmetic is not trusted that far; take a new record.'
    : '';
  return {
    chinMm,
    incisalMm: incisal,
    pinMm: pin,
    molarMm: sorted(molarRangeMm),
    text: `${changeText(incisal, pin)}${caution}`,
  };
}

const sorted = ([a, b]: readonly [number, number]): readonly [number, number] => (a <= b ? [a, b] : [b, a]);

const amount = ([a, b]: readonly [number, number]): string => {
  const [low, high] = [Math.abs(a), Math.abs(b)].toSorted((x, y) => x - y) as [number, number];
  return low.toFixed(1) === high.toFixed(1) ? `${low.toFixed(1)} mm` : `${low.toFixed(1)} to ${high.toFixed(1)} mm`;
};

/**
 * "Close by 2.4 to 3.0 mm between the rims at the incisors; a pin half as far again from the axis moves 3.6 to 4.5 mm."
 * Directions in words: a sign is lost on a sheet.
 */
export function changeText(incisal: readonly [number, number], pin: readonly [number, number]): string {
  const [low, high] = incisal;
  if (Math.max(Math.abs(low), Math.abs(high)) < 0.05) return 'Leave the pin as it is.';
  const verb = high <= 0 ? 'Close' : low >= 0 ? 'Open' : 'Change';
  return `${verb} by ${amount(incisal)} between the rims at the incisors; a pin half as far again from the axis moves ${amount(pin)}.`;
}

/**
 * Rest height less closed height within the newest set of marks that has rest readings, and what follows for the record.
 * Means, as the definition goes (interocclusal rest distance = rest vertical dimension − occlusal vertical dimension).
 */
export function verticalDimension(
  sets: readonly SetRow[],
  practice: Practice,
  convention: VerticalDimension['convention'],
): VerticalDimension {
  const rest = newest(sets, REST);
  const markSet = rest?.markSet ?? newest(sets, CLOSED)?.markSet ?? '';
  const closed = newest(sets, CLOSED, markSet);
  const record = newest(sets, RECORD, markSet);
  const targetSpaceMm = toMm(practice.restSpaceTarget);
  const space = rest !== undefined && closed !== undefined ? restSpace(rest.values, closed.values) : undefined;
  const lab = rest === undefined ? undefined : labChange(rest.values, record, targetSpaceMm);
  const parts = {
    ...(rest === undefined ? {} : { rest }),
    ...(closed === undefined ? {} : { closed }),
    ...(record === undefined ? {} : { record }),
    ...(rest?.medianMm === undefined ? {} : { targetHeightMm: rest.medianMm - targetSpaceMm }),
    ...(lab === undefined ? {} : { lab }),
  };
  const common = { markSet, convention, targetSpaceMm, ...parts };
  if (space === undefined || !space.ok) return { ...common, verdict: 'notYet' };
  const doubtful = [rest, closed].filter((set) => (set?.suspects.length ?? 0) > 0 || (set?.rangeMm ?? 0) > 2);
  const doubt =
    doubtful.length === 0
      ? {}
      : { doubt: 'The readings behind it disagree: not to be relied on before they are measured again.' };
  const uncertainty = space.uncertainty === undefined ? {} : { uncertaintyMm: space.uncertainty };
  return { ...common, restSpaceMm: space.value.spaceMm, ...uncertainty, ...doubt, verdict: space.value.verdict };
}
