/** Lots of material and the last day they may be used. */
import { dayOf, parseDay, printDay } from '../measure/calendar.ts';
import type { Material } from './types.ts';

/**
 * True once the last day of the lot's use has passed, counted in universal time. False without a date, and for one that
 * is no day: nothing is claimed of it. `now` in ms since 1970. Source: the package.
 */
export function isExpired(material: Pick<Material, 'expires'>, now: number): boolean {
  const { expires } = material;
  if (expires === undefined || parseDay(expires) === undefined) return false;
  // Days written year first compare as text.
  return printDay(dayOf(now)) > expires;
}

/** "lot A12, last day of use 2026-01-31"; empty where neither is known. */
export function lotText({ lot, expires }: Pick<Material, 'lot' | 'expires'>): string {
  const parts = [
    ...(lot === undefined ? [] : [`lot ${lot}`]),
    ...(expires === undefined ? [] : [`last day of use ${expires}`]),
  ];
  return parts.join(', ');
}
