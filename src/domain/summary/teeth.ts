/** Sizes of the front teeth from the guide marks and the face: every rule beside the others, the spread, no average. */
import { formatHundredths } from '../measure/length.ts';
import { sources } from '../measure/sources.ts';
import { lowerSixFromUpper, toothSizes, type FaceReadings, type ToothQuantity } from '../measure/teeth.ts';
import type { ToothEstimateRow, ToothRow } from './decided.types.ts';
import { latest, mmText } from './latest.ts';
import type { Arch } from './arches.ts';
import type { ReadingRow } from './types.ts';

/** Which reading goes into the rules as what. */
export const TOOTH_READINGS: Readonly<Record<string, keyof FaceReadings>> = {
  'face-width': 'bizygomatic',
  'face-height': 'faceLength',
  'interalar-width': 'interalar',
  'canine-lines': 'commissureCurve',
};

const LABELS: Readonly<Record<ToothRow['id'], string>> = {
  central: 'Width of an upper central',
  length: 'Length of an upper central',
  six: 'Six upper front teeth, along the curve',
  sixStraight: 'Six upper front teeth, straight across',
  tips: 'Between the upper canine tips',
  lowerSix: 'Six lower front teeth, along the curve',
};

const ORDER: readonly ToothQuantity[] = ['six', 'sixStraight', 'tips', 'central', 'length'];

interface Estimate extends ToothEstimateRow {
  readonly quantity: ToothQuantity;
}

/** The rules that start from one reading, each with that reading in words. */
function rulesFrom(row: ReadingRow, key: keyof FaceReadings): readonly Estimate[] {
  const found = toothSizes({ [key]: row.value });
  if (!found.ok) return [];
  const from = `${row.label} ${formatHundredths(row.value)} mm, ${row.visit}`;
  return found.value.estimates.map(({ rule, quantity, mm, note, source }) => {
    const { citation, status } = sources[source];
    const more = note === undefined ? {} : { note };
    return { rule, quantity, mm, from, source: citation, status, ...more };
  });
}

function faceOf(all: readonly ReadingRow[]): FaceReadings {
  const given = Object.entries(TOOTH_READINGS).flatMap(([reading, key]) => {
    const value = latest(all, reading)?.value;
    return value === undefined ? [] : [[key, value] as const];
  });
  return Object.fromEntries(given);
}

const grid = (mm: number) => Math.round(mm * 100);

/** The lower six that go with either end of the upper six. */
function lowerOf(six: ToothRow | undefined): readonly ToothRow[] {
  if (six === undefined) return [];
  const [low, high] = [lowerSixFromUpper(grid(six.lowMm)), lowerSixFromUpper(grid(six.highMm))];
  if (!low.ok || !high.ok) return [];
  const { citation, status } = sources[low.source];
  const rule = (size: string, mm: number, from: number): ToothEstimateRow => ({
    rule: `${size} upper six / 1.30`,
    mm,
    from: `upper six ${mmText(from)}`,
    source: citation,
    status,
  });
  const estimates = [rule('smallest', low.value, six.lowMm), rule('largest', high.value, six.highMm)];
  const spreadMm = high.value - low.value;
  const ends = { lowMm: low.value, highMm: high.value, spreadMm };
  return [{ id: 'lowerSix', label: LABELS.lowerSix, ...ends, judge: six.judge, estimates }];
}

/**
 * Tooth sizes in millimetres by every rule whose reading was ever taken in this case, newest reading first; undefined
 * while none was, or where a reading makes no sense. Only of the arches for which a denture is made. `judge`: more than 4 mm between the rules. Source: tooth-spread.
 */
export function teethOf(all: readonly ReadingRow[], arches: readonly Arch[]): readonly ToothRow[] | undefined {
  const found = toothSizes(faceOf(all));
  if (!found.ok) return undefined;
  const estimates = Object.entries(TOOTH_READINGS).flatMap(([reading, key]) => {
    const row = latest(all, reading);
    return row === undefined ? [] : rulesFrom(row, key);
  });
  const upper = ORDER.flatMap((id): readonly ToothRow[] => {
    const spread = found.value.spreads.find((one) => one.quantity === id);
    if (spread === undefined) return [];
    const rules = estimates.flatMap(({ quantity, ...rule }) => (quantity === id ? [rule] : []));
    const { lowMm, highMm, spreadMm, judge } = spread;
    return [{ id, label: LABELS[id], lowMm, highMm, spreadMm, judge, estimates: rules }];
  });
  const lower = lowerOf(upper.find((one) => one.id === 'six'));
  return [...(arches.includes('upper') ? upper : []), ...(arches.includes('lower') ? lower : [])];
}
