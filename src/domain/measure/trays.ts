/** Which tray goes over which ridge, how long its border may be and how much room the material needs. */
import { badNumber, badReading } from './check.ts';
import { formatHundredths, toMm, type Hundredths } from './length.ts';
import { known, refuse, type Measured } from './result.ts';
import type { Tray } from '../protocol/types.ts';

export type TrayFit = 'fits' | 'buildUp' | 'tight';

export interface RankedTray {
  readonly tray: Tray;
  /** 1 is the one to try first. */
  readonly rank: number;
  readonly fit: TrayFit;
  /** Room between ridge and tray on each side, ridge centred: (inner width − ridge width) / 2. */
  readonly leftMm: number;
  readonly rightMm: number;
  /** Inner width beyond what the ridge with its clearance needs; negative: too narrow by that much. */
  readonly spareMm: number;
  readonly advice: string;
}

/** More spare width than this is built up with wax or compound (our choice). */
const BUILD_UP: Hundredths = 400;

function fitOf(spare: Hundredths): TrayFit {
  if (spare < 0) return 'tight';
  return spare > BUILD_UP ? 'buildUp' : 'fits';
}

function adviceOf(fit: TrayFit, spare: Hundredths, wider: boolean): string {
  const by = formatHundredths(Math.abs(spare));
  if (fit === 'fits') return spare === 0 ? 'Fits.' : `Fits, ${by} mm to spare.`;
  if (fit === 'buildUp') return `${by} mm wider than needed: build up with wax or compound.`;
  return wider
    ? `${by} mm too narrow for the clearance: take the next size.`
    : `${by} mm too narrow for the clearance and no wider tray at hand: another set, or a tray made for this ridge.`;
}

/** Wide enough first, narrowest of them leading; then the too narrow ones, widest leading. */
function order(a: Hundredths, b: Hundredths): number {
  if (a >= 0 !== b >= 0) return a >= 0 ? -1 : 1;
  return a >= 0 ? a - b : b - a;
}

/**
 * Trays of one arch in the order to try them for a ridge (largest caliper width) with `clearance` on each side, all in
 * hundredths of a millimetre. Needed inner width = ridge + 2·clearance. Refuses an empty list, trays of both arches and
 * what is no width. The uncertainty is left out: nobody published how far a stock tray's width is off.
 * Sources: tray-size, tray-clearance.
 */
export function rankTrays(
  trays: readonly Tray[],
  ridgeWidth: Hundredths,
  clearance: Hundredths,
): Measured<readonly RankedTray[]> {
  if (trays.length === 0) return refuse('empty', 'No trays are listed for this arch.');
  const bad =
    badReading(ridgeWidth, 'Ridge width') ??
    badReading(clearance, 'Clearance') ??
    trays.map((tray) => badReading(tray.innerWidth, `Inner width of ${tray.label}`)).find((b) => b !== undefined);
  if (bad !== undefined) return bad;
  if (ridgeWidth === 0) return refuse('outOfRange', 'Ridge width must be above zero.');
  if (new Set(trays.map((tray) => tray.arch)).size > 1)
    return refuse('inconsistent', 'Upper and lower trays are mixed; rank one arch at a time.');
  const needed = ridgeWidth + 2 * clearance;
  const widest = Math.max(...trays.map((tray) => tray.innerWidth));
  const value = trays
    .map((tray) => ({ tray, spare: tray.innerWidth - needed }))
    .toSorted((a, b) => order(a.spare, b.spare))
    .map(({ tray, spare }, index): RankedTray => {
      const fit = fitOf(spare);
      const side = toMm(tray.innerWidth - ridgeWidth) / 2;
      const advice = adviceOf(fit, spare, widest >= needed);
      return { tray, rank: index + 1, fit, leftMm: side, rightMm: side, spareMm: toMm(spare), advice };
    });
  const inputs = [`ridge ${formatHundredths(ridgeWidth)} mm`, `clearance ${formatHundredths(clearance)} mm a side`];
  return known({ value, inputs, source: 'tray-size' });
}

export interface BorderAdvice {
  /** Where the border of the custom tray should end, measured from the ridge, at most and at least. */
  readonly lengthMm: readonly [number, number];
  /** Present flange short of the sulcus; only with a flange given. */
  readonly shortMm?: number;
  readonly verdict?: 'right' | 'trim' | 'add';
  readonly advice: string;
}

/** Shortest and longest distance from border to sulcus at rest. Source: tray-border. */
const BORDER_SHORT: readonly [Hundredths, Hundredths] = [200, 300];

/**
 * Border of a custom tray, 2 to 3 mm short of the sulcus at rest. `flange`: length the tray has now. Hundredths in,
 * millimetres out. Refuses what is no reading; a sulcus shallower than the gap gives a length of zero. Source: tray-border.
 */
export function trayBorder(
  sulcusDepth: Hundredths,
  flange?: Hundredths,
  [least, most]: readonly [Hundredths, Hundredths] = BORDER_SHORT,
): Measured<BorderAdvice> {
  const bad =
    badReading(sulcusDepth, 'Sulcus depth') ??
    badReading(least, 'Least gap') ??
    badReading(most, 'Largest gap') ??
    (flange === undefined ? undefined : badReading(flange, 'Flange'));
  if (bad !== undefined) return bad;
  if (least > most) return refuse('inconsistent', 'The least gap is larger than the largest gap.');
  const lengthMm = [toMm(Math.max(0, sulcusDepth - most)), toMm(Math.max(0, sulcusDepth - least))] as const;
  const inputs = [`sulcus ${formatHundredths(sulcusDepth)} mm`];
  const gap = `${formatHundredths(least)} to ${formatHundredths(most)} mm short`;
  if (flange === undefined)
    return known({
      value: { lengthMm, advice: `Border ${gap} of the sulcus at rest.` },
      inputs,
      source: 'tray-border',
    });
  const short = sulcusDepth - flange;
  const verdict = short < least ? 'trim' : short > most ? 'add' : 'right';
  const advice = {
    trim: `Trim: it should end ${gap}.`,
    add: `Add: it should end ${gap}.`,
    right: 'Border ends where it should.',
  };
  const value = { lengthMm, shortMm: toMm(short), verdict, advice: advice[verdict] } as const;
  return known({ value, inputs: [...inputs, `flange ${formatHundredths(flange)} mm`], source: 'tray-border' });
}

export type SpacerMaterial =
  | 'alginate'
  | 'zinc-oxide-eugenol'
  | 'addition-silicone'
  | 'light-silicone'
  | 'condensation-silicone'
  | 'polyether'
  | 'plaster';

/** Spacer thickness by material, millimetres, low to high. Source: tray-spacer. */
export const SPACERS: Readonly<Record<SpacerMaterial, readonly [number, number]>> = {
  alginate: [3, 3],
  'zinc-oxide-eugenol': [0, 0.5],
  'addition-silicone': [1.5, 2],
  'light-silicone': [1, 1],
  'condensation-silicone': [1.5, 2],
  polyether: [2, 3],
  plaster: [2, 3],
};

/** Thickness of the custom-tray spacer for a material, millimetres, low to high. Refuses an unknown one. Source: tray-spacer. */
export function traySpacer(material: string): Measured<readonly [number, number]> {
  const value = Object.hasOwn(SPACERS, material) ? SPACERS[material as SpacerMaterial] : undefined;
  if (value === undefined)
    return refuse('unknown', `No spacer is known for “${material}”; known: ${Object.keys(SPACERS).join(', ')}.`);
  return known({ value, inputs: [material], source: 'tray-spacer' });
}

/**
 * Ridge width for the lower tray when only the pad centres were measured: centre to centre plus half a pad width on each
 * side (mean 7.94 mm). Hundredths in and out. Source: tray-size (pad width: López, Int J Odontostomatol 2008;2:39, text seen).
 */
export function widthFromPadCentres(centres: Hundredths, padWidthMm = 7.94): Measured<Hundredths> {
  const bad = badReading(centres, 'Distance of the pad centres') ?? badNumber(padWidthMm, 'Pad width');
  if (bad !== undefined) return bad;
  if (padWidthMm < 0) return refuse('negative', 'Pad width is below zero.');
  const inputs = [`pad centres ${formatHundredths(centres)} mm`, `pad width ${padWidthMm} mm`];
  return known({ value: centres + Math.round(padWidthMm * 100), inputs, source: 'tray-size' });
}
