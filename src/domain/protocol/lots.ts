/** Lots of material and the last day they may be used. */
import { parseDay } from '../measure/calendar.ts';
import type { Material } from './types.ts';

/**
 * True once the last day of the lot's use has passed. `today` is the calendar day where the practice is, "2026-03-02":
 * which day it is there is for the caller to know. False without a date, and where either is no day: nothing is claimed
 * then. Source: the package.
 */
export function isExpired(material: Pick<Material, 'expires'>, today: string): boolean {
  const { expires } = material;
  if (expires === undefined || parseDay(expires) === undefined || parseDay(today) === undefined) return false;
  // Days written year first compare as text.
  return today > expires;
}

/** "lot A12, last day of use 2026-01-31"; empty where neither is known. */
export function lotText({ lot, expires }: Pick<Material, 'lot' | 'expires'>): string {
  const parts = [
    ...(lot === undefined ? [] : [`lot ${lot}`]),
    ...(expires === undefined ? [] : [`last day of use ${expires}`]),
  ];
  return parts.join(', ');
}
