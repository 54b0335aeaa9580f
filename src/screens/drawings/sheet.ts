/** The millimetre sheet of a tracing: which piece of it is shown, and where on it a finger came down. */
import type { PointMm } from '../../domain/summary/decided.types.ts';

/** A square piece of the sheet; nought is its lower left corner. */
export interface SheetWindow {
  readonly left: number;
  readonly bottom: number;
  readonly size: number;
}

/** What a tracing sheet holds; points further out are typed or said. */
export const SHEET_MM = 60;
export const WHOLE: SheetWindow = { left: 0, bottom: 0, size: SHEET_MM };
/** A finger hits the half millimetre only where it is drawn large. */
const CLOSE_MM = 12;
/** A tap falls on half millimetres; the arrows move by tenths. */
const TAP_MM = 0.5;
export const NUDGE_MM = 0.1;

/** Whole hundredths of a millimetre, without the dust of binary fractions. */
const clean = (mm: number) => Math.round(mm * 100) / 100;
const within = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high);
const onSheet = (mm: number) => clean(within(mm, 0, SHEET_MM));

/** Where a tap came down, `right` and `down` being shares of the drawn square; on the nearest half millimetre. */
export function tapped(window: SheetWindow, right: number, down: number): PointMm {
  const snap = (mm: number) => onSheet(Math.round(mm / TAP_MM) * TAP_MM);
  return {
    xMm: snap(window.left + within(right, 0, 1) * window.size),
    yMm: snap(window.bottom + (1 - within(down, 0, 1)) * window.size),
  };
}

/** The mark moved by steps of a tenth, never off the sheet. */
export function nudged({ xMm, yMm }: PointMm, right: number, up: number): PointMm {
  return { xMm: onSheet(xMm + right * NUDGE_MM), yMm: onSheet(yMm + up * NUDGE_MM) };
}

/** The piece of the sheet about a mark, large enough for a second tap to hit the half millimetre. */
export function closeUp({ xMm, yMm }: PointMm): SheetWindow {
  const start = (mm: number) => within(Math.floor(mm - CLOSE_MM / 2), 0, SHEET_MM - CLOSE_MM);
  return { left: start(xMm), bottom: start(yMm), size: CLOSE_MM };
}

/** The smallest piece of whole millimetres that shows all points with room around them; the whole sheet for none. */
export function around(points: readonly PointMm[], least = 10): SheetWindow {
  if (points.length === 0) return WHOLE;
  const [xs, ys] = [points.map((p) => p.xMm), points.map((p) => p.yMm)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
  const size = Math.max(least, Math.ceil(Math.max(right - left, top - bottom)) + 3);
  const start = (low: number, high: number) => Math.max(0, Math.floor((low + high - size) / 2));
  return { left: start(left, right), bottom: start(bottom, top), size };
}
