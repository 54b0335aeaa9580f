/** Every number word from an independent generator (n2words), and every number this program speaks, comes back unchanged. */
import { toCardinal as german } from 'n2words/de-DE';
import { toCardinal as british } from 'n2words/en-GB';
import { toCardinal as american } from 'n2words/en-US';
import { toCardinal as spanish } from 'n2words/es-ES';
import { toCardinal as belgian } from 'n2words/fr-BE';
import { toCardinal as french } from 'n2words/fr-FR';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadLanguage, speakNumber } from '../../src/interpret/index.ts';
import { plainly } from './heard.ts';

const POINTS = { en: 'point', de: 'Komma', es: 'coma', fr: 'virgule' } as const;
const GENERATORS = [
  ['en', british],
  ['en', american],
  ['de', german],
  ['es', spanish],
  ['fr', french],
  ['fr', belgian],
] as const;

beforeAll(async () => {
  await Promise.all((['de', 'es', 'fr'] as const).map((l) => loadLanguage(l)));
});

describe.each(GENERATORS)('n2words, %s', (language, say) => {
  it('whole numbers 0 to 199', () => {
    const wrong = [];
    for (let n = 0; n < 200; n++) if (plainly(say(n), language) !== n) wrong.push([say(n), plainly(say(n), language)]);
    expect(wrong).toEqual([]);
  });
  it('tenths 0.1 to 199.9', () => {
    const wrong = [];
    for (let t = 1; t < 2000; t++) {
      const text = `${say(Math.floor(t / 10))} ${POINTS[language]} ${say(t % 10)}`;
      if (plainly(text, language) !== t / 10) wrong.push([text, plainly(text, language)]);
    }
    expect(wrong).toEqual([]);
  });
  it('refuses or asks from 200 on, and never takes a thousand', () => {
    for (const n of [200, 250, 999]) expect(plainly(say(n), language)).toBe('ask');
    for (const n of [1000, 1066, 2026, 54_321]) expect(plainly(say(n), language)).toBe('none');
  });
});

describe.each(['en', 'de', 'es', 'fr'] as const)('what is read back, %s', (language) => {
  it('is understood as the same value, for every twentieth of a millimetre below 200', () => {
    const wrong = [];
    for (let v = 0; v < 20_000; v += 5) {
      const spoken = speakNumber(v, language);
      if (/\d/.test(spoken) || plainly(spoken, language) !== v / 100)
        wrong.push([v, spoken, plainly(spoken, language)]);
    }
    expect(wrong).toEqual([]);
  });
  it('is in figures where there are no words for it', () => {
    expect(speakNumber(20_000, language)).toBe('200');
    expect(speakNumber(-100, language)).toBe('−1');
  });
});

describe('figures', () => {
  it('every hundredth below 200 in figures, point or comma', () => {
    const figures = Array.from({ length: 20_000 }, (_, v) => (v / 100).toFixed(2));
    const wrong = figures.filter((f) => plainly(f) !== Number(f) || plainly(f.replace('.', ',')) !== Number(f));
    expect(wrong).toEqual([]);
  });
});
