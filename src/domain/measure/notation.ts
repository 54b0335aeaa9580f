/** ISO 3950 two-digit designation of permanent teeth, both ways, and the 1–32 count for people who know that one. */
import { known, refuse, type Measured } from './result.ts';

export type Quadrant = 'upper right' | 'upper left' | 'lower left' | 'lower right';

export interface ToothName {
  /** Two digits: quadrant, then tooth from the midline. */
  readonly code: string;
  readonly quadrant: Quadrant;
  readonly tooth: string;
  /** "upper right canine"; sides are the patient's. */
  readonly name: string;
  /** Number in the count from 1 (upper right third molar) to 32 (lower right third molar). */
  readonly count: number;
}

const QUADRANTS: readonly Quadrant[] = ['upper right', 'upper left', 'lower left', 'lower right'];
const TEETH: readonly string[] = [
  'central incisor',
  'lateral incisor',
  'canine',
  'first premolar',
  'second premolar',
  'first molar',
  'second molar',
  'third molar',
];
const AREAS: readonly string[] = ['00', '01', '02', '03', '04', '05', '06', '07', '08', '10', '20', '30', '40'];

/** 1 … 32 from quadrant 1 … 4 and tooth 1 … 8: right to left above, left to right below. */
function countOf(quadrant: number, tooth: number): number {
  return [9 - tooth, 8 + tooth, 25 - tooth, 24 + tooth][quadrant - 1]!;
}

/**
 * A permanent tooth from its two-digit code. Refuses, each with its own sentence: area codes (30), primary teeth (51 to 85),
 * and what is no code (`unknown`). Source: iso-3950.
 */
export function toothFromCode(code: string): Measured<ToothName> {
  if (AREAS.includes(code)) return refuse('unknown', `${code} is an area of the mouth, not a tooth.`);
  if (/^[5-8][1-5]$/.test(code)) return refuse('unknown', `${code} is a primary tooth.`);
  if (!/^[1-4][1-8]$/.test(code))
    return refuse('unknown', `${code} is no tooth: quadrant 1 to 4, then 1 to 8 from the midline.`);
  const [q, t] = [Number(code[0]), Number(code[1])];
  const [quadrant, tooth] = [QUADRANTS[q - 1]!, TEETH[t - 1]!];
  const value = { code, quadrant, tooth, name: `${quadrant} ${tooth}`, count: countOf(q, t) };
  return known({ value, inputs: [code], source: 'iso-3950' });
}

/** The two-digit code of a tooth named "upper right canine". Refuses any other name. Source: iso-3950. */
export function codeFromName(name: string): Measured<string> {
  const plain = name.trim().toLowerCase();
  const q = QUADRANTS.findIndex((quadrant) => plain.startsWith(`${quadrant} `));
  const t = TEETH.findIndex((tooth) => plain === `${QUADRANTS[q]} ${tooth}`);
  if (q < 0 || t < 0) return refuse('unknown', `“${name}” is no tooth; a name looks like “upper right canine”.`);
  return known({ value: `${q + 1}${t + 1}`, inputs: [name], source: 'iso-3950' });
}

/** The two-digit code of a tooth counted 1 to 32. Refuses other numbers. Source: iso-3950 (order of the count from memory). */
export function codeFromCount(count: number): Measured<string> {
  const found = allTeeth().find((tooth) => tooth.count === count);
  if (found === undefined) return refuse('outOfRange', `${count} is no tooth; the count runs from 1 to 32.`);
  return known({ value: found.code, inputs: [`count ${count}`], source: 'iso-3950' });
}

/** All 32 permanent teeth, quadrant by quadrant from the midline. Source: iso-3950. */
export function allTeeth(): readonly ToothName[] {
  const codes = [1, 2, 3, 4].flatMap((q) => TEETH.map((_, i) => `${q}${i + 1}`));
  return codes.flatMap((code) => {
    const tooth = toothFromCode(code);
    return tooth.ok ? [tooth.value] : [];
  });
}

/** The 28 teeth of a complete set of dentures: all but the third molars. Source: iso-3950. */
export function completeSet(): readonly string[] {
  return allTeeth().flatMap((tooth) => (tooth.code.endsWith('8') ? [] : [tooth.code]));
}
