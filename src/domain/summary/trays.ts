/** The practice's trays against the ridge just measured. */
import { rankTrays, widthFromPadCentres, type RankedTray } from '../measure/trays.ts';
import type { Hundredths } from '../measure/length.ts';
import type { Practice } from '../protocol/types.ts';
import type { ReadingRow } from './types.ts';

export interface TrayRanking {
  readonly arch: 'upper' | 'lower';
  readonly ridge: Hundredths;
  readonly ranked: readonly RankedTray[];
  readonly inputs: readonly string[];
}

const live = (rows: readonly ReadingRow[], reading: string) =>
  rows.findLast((row) => row.reading === reading && row.struck === undefined)?.value;

/** Lower width is read between the pad centres; the tray has to hold the pads whole (half a mean pad on each side). */
function ridgeWidth(rows: readonly ReadingRow[], arch: 'upper' | 'lower'): Hundredths | undefined {
  const width = live(rows, arch === 'upper' ? 'upper-width' : 'lower-width');
  if (width === undefined || arch === 'upper') return width;
  const whole = widthFromPadCentres(width);
  return whole.ok ? whole.value : undefined;
}

/** Trays of one arch, the one to try first on top; undefined until the ridge is measured or where none is listed. */
export function trayRanking(
  rows: readonly ReadingRow[],
  practice: Practice,
  arch: 'upper' | 'lower',
): TrayRanking | undefined {
  const ridge = ridgeWidth(rows, arch);
  if (ridge === undefined) return undefined;
  const ranked = rankTrays(
    practice.trays.filter((tray) => tray.arch === arch),
    ridge,
    practice.trayClearance,
  );
  return ranked.ok ? { arch, ridge, ranked: ranked.value, inputs: ranked.inputs } : undefined;
}
