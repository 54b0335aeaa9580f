/** Where each named region lies on the drawn fitting surfaces. Front of the upper on top, of the lower at the bottom. */
import type { Jaw } from '../../domain/summary/decided.types.ts';

export interface At {
  readonly x: number;
  readonly y: number;
}

/** Units of the drawing; a target of 76 with 12 between fits at its own size. */
export const SURFACE = { width: 520, height: 440 } as const;

const UPPER: Readonly<Record<string, At>> = {
  'upper-lip-sulcus': { x: 260, y: 42 },
  'upper-frenum': { x: 146, y: 84 },
  'upper-ridge': { x: 260, y: 132 },
  'upper-cheek-right': { x: 54, y: 190 },
  'upper-cheek-left': { x: 466, y: 190 },
  'upper-palate': { x: 260, y: 236 },
  'upper-tuberosity-right': { x: 104, y: 300 },
  'upper-tuberosity-left': { x: 416, y: 300 },
  'upper-notch-right': { x: 140, y: 396 },
  'upper-notch-left': { x: 380, y: 396 },
  'upper-rear': { x: 260, y: 366 },
};

const LOWER: Readonly<Record<string, At>> = {
  'lower-pad-right': { x: 56, y: 46 },
  'lower-pad-left': { x: 464, y: 46 },
  'lower-mylohyoid-right': { x: 166, y: 76 },
  'lower-mylohyoid-left': { x: 354, y: 76 },
  'lower-cheek-right': { x: 48, y: 200 },
  'lower-cheek-left': { x: 472, y: 200 },
  'lower-tongue-right': { x: 160, y: 176 },
  'lower-tongue-left': { x: 360, y: 176 },
  'lower-tongue-front': { x: 260, y: 220 },
  'lower-ridge': { x: 260, y: 310 },
  'lower-frenum': { x: 376, y: 352 },
  'lower-lip-sulcus': { x: 260, y: 400 },
};

/** Place of a region; undefined for one that a practice has added itself. */
export function placeOf(jaw: Jaw, region: string): At | undefined {
  return (jaw === 'upper' ? UPPER : LOWER)[region];
}

/** Edge of the surface and the crest of its ridge. */
export const OUTLINES: Readonly<Record<Jaw, { readonly edge: string; readonly crest: string }>> = {
  upper: {
    edge: 'M112 428C40 380 6 290 14 200C24 84 130 8 260 8C390 8 496 84 506 200C514 290 480 380 408 428C366 424 320 412 260 412C200 412 154 424 112 428Z',
    crest: 'M118 392C80 330 74 250 92 196C116 128 182 100 260 100C338 100 404 128 428 196C446 250 440 330 402 392',
  },
  lower: {
    edge: 'M16 14C4 120 0 220 40 300C84 388 170 436 260 436C350 436 436 388 480 300C520 220 516 120 504 14C476 2 440 2 420 16C410 60 408 110 398 160C384 226 330 262 260 262C190 262 136 226 122 160C112 110 110 60 100 16C80 2 44 2 16 14Z',
    crest: 'M58 40C52 130 60 210 100 262C140 314 200 338 260 338C320 338 380 314 420 262C460 210 468 130 462 40',
  },
};
