/**
 * Letters the sheet's fonts hold. A letter without a glyph would vanish from a PDF without a word, so every text passes
 * through `legible` first; test/handoff/glyphs.test.ts holds this table against the font files.
 */

/** First and last code point of each stretch that both fonts hold. */
export const GLYPHS: readonly (readonly [number, number])[] = [
  [0x20, 0x7e], // Basic Latin
  [0xa0, 0xac], // Latin-1, without the soft hyphen
  [0xae, 0x17f], // Latin-1, Latin Extended-A
  [0x218, 0x21b],
  [0x2c6, 0x2c7],
  [0x2d8, 0x2dd],
  [0x384, 0x38a], // Greek
  [0x38c, 0x38c],
  [0x38e, 0x3a1],
  [0x3a3, 0x3ce],
  [0x400, 0x45f], // Cyrillic
  [0x490, 0x491],
  [0x1e80, 0x1e85],
  [0x1e9e, 0x1e9e],
  [0x2010, 0x2015], // dashes
  [0x2018, 0x201f], // quotation marks
  [0x2020, 0x2022],
  [0x2026, 0x2026],
  [0x2030, 0x2030],
  [0x2032, 0x2033],
  [0x2039, 0x203a],
  [0x2044, 0x2044],
  [0x2070, 0x2071], // raised and lowered figures
  [0x2074, 0x208e],
  [0x20ac, 0x20ac],
  [0x2103, 0x2103],
  [0x2122, 0x2122],
  [0x2153, 0x215e], // fractions
  [0x2190, 0x2195],
  [0x2212, 0x2212], // minus
  [0x2205, 0x2206], // signs of arithmetic
  [0x2211, 0x2211],
  [0x221a, 0x221a],
  [0x221e, 0x221e],
  [0x223c, 0x223c],
  [0x2248, 0x2248],
  [0x2260, 0x2260],
  [0x2264, 0x2265],
  [0x2300, 0x2300],
  [0x25a0, 0x25a1], // shapes, ticks and crosses
  [0x25b2, 0x25b3],
  [0x25bc, 0x25bd],
  [0x25cb, 0x25cb],
  [0x25cf, 0x25cf],
  [0x2610, 0x2612],
  [0x2713, 0x2718],
];

/** True when both fonts can draw this code point. */
export function hasGlyph(code: number): boolean {
  return GLYPHS.some(([from, to]) => code >= from && code <= to);
}

function spelled(letter: string): string {
  const code = letter.codePointAt(0) ?? 0;
  if (hasGlyph(code)) return letter;
  if (/\s/u.test(letter)) return ' ';
  return `[U+${code.toString(16).toUpperCase().padStart(4, '0')}]`;
}

/** The text as the fonts can draw it: what they cannot is spelled out, "[U+4E2D]", never dropped. */
export function legible(text: string): string {
  return [...text.normalize('NFC')].map(spelled).join('');
}
