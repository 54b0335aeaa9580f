/** What the thing in the hand can show at all: no range of a practice may reach beyond it. */
import type { Hundredths } from '../measure/length.ts';
import type { ReadingDef, Unit } from './types.ts';

/**
 * Hundredths of the unit, both ends included. A sliding caliper or rule of 300 mm, a kitchen thermometer, a protractor,
 * ten years of weeks; powder and water of a mix. All our choice, on the wide side: they catch slips, not habits.
 */
const INSTRUMENTS: Readonly<Record<Exclude<Unit, 'points'>, readonly [Hundredths, Hundredths]>> = {
  mm: [0, 30_000],
  weeks: [0, 52_000],
  '°C': [0, 10_000],
  '°': [0, 18_000],
  g: [0, 100_000],
  ml: [0, 100_000],
};

/** Lowest and highest value that can be read at all, hundredths of the reading's unit. A score ends where its scale does. */
export function instrumentOf(def: Pick<ReadingDef, 'unit' | 'plausible'>): readonly [Hundredths, Hundredths] {
  return def.unit === 'points' ? def.plausible : INSTRUMENTS[def.unit];
}
