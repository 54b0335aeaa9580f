import { readFileSync } from 'node:fs';
import Pdf from 'pdfkit';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { protocols, readingDefs, defaultPractice } from '../../src/domain/protocol/index.ts';
import { sources } from '../../src/domain/measure/sources.ts';
import { GLYPHS, hasGlyph, legible } from '../../src/handoff/glyphs.ts';
import { sourceTree } from '../helpers/source-tree.ts';

interface Face {
  hasGlyphForCodePoint(code: number): boolean;
}

function face(name: string): Face {
  const bytes = readFileSync(new URL(`../../src/handoff/fonts/${name}`, import.meta.url));
  const doc = new Pdf({ autoFirstPage: false }).font(bytes);
  const { _font: held } = doc as unknown as { _font: { font: Face } };
  return held.font;
}

const faces = { regular: face('sheet-regular.ttf'), bold: face('sheet-bold.ttf') };

describe.each(Object.entries(faces))('the %s font', (_name, font) => {
  it('holds every letter of the table', () => {
    const missing: string[] = [];
    for (const [from, to] of GLYPHS)
      for (let code = from; code <= to; code += 1)
        if (!font.hasGlyphForCodePoint(code)) missing.push(code.toString(16));
    expect(missing).toEqual([]);
  });

  it('is cut: it does not hold what the table leaves out', () => {
    expect(font.hasGlyphForCodePoint(0x4e2d)).toBe(false);
    expect(font.hasGlyphForCodePoint(0x2654)).toBe(false);
  });
});

it('every letter that the protocols, readings, sources and summaries of the app can put on a sheet has a glyph', () => {
  const code = sourceTree('src/domain', 'src/handoff').map((file) => file.text);
  const data = JSON.stringify([protocols, readingDefs, defaultPractice, sources]);
  const unknown = new Set(
    [...`${code.join('')}${data}`].filter((letter) => letter !== '\n' && legible(letter) !== letter),
  );
  expect([...unknown]).toEqual([]);
});

describe('what has no glyph', () => {
  it.each([
    ['rest − occlusion', 'rest − occlusion'],
    ['Größe, Łódź, Ελληνικά, Кириллица', 'Größe, Łódź, Ελληνικά, Кириллица'],
    ['中', '[U+4E2D]'],
    ['😀!', '[U+1F600]!'],
    ['a\tb\nc', 'a b c'],
    ['e\u0301', 'é'],
    ['\u202Eabc', '[U+202E]abc'],
    ['\u0000', '[U+0000]'],
  ])('%j is written %j', (text, written) => {
    expect(legible(text)).toBe(written);
  });

  it('is never dropped, and what is written can be drawn', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const written = legible(text);
        expect([...written].length).toBeGreaterThanOrEqual([...text.normalize('NFC')].length);
        for (const letter of written) expect(hasGlyph(letter.codePointAt(0) ?? 0)).toBe(true);
      }),
    );
  });
});
