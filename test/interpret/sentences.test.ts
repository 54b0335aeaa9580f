/**
 * Sentences of our own, of the kind people say over a caliper and around it. One rule has no exception: a value is never
 * taken where another one, or none, was meant.
 */
import { readFileSync } from 'node:fs';
import { toCardinal as german } from 'n2words/de-DE';
import { toCardinal as american } from 'n2words/en-US';
import { toCardinal as spanish } from 'n2words/es-ES';
import { toCardinal as french } from 'n2words/fr-FR';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Language } from '../../src/domain/protocol/types.ts';
import { loadLanguage } from '../../src/interpret/index.ts';
import { plainly } from './heard.ts';

type Truth = number | 'ask' | 'none' | 'no value';
interface Row {
  readonly text: string;
  readonly truth: Truth;
}

const WORDS = {
  en: { say: american, point: 'point', half: (w: string) => `${w} and a half` },
  de: { say: german, point: 'Komma', half: (w: string) => `${w}einhalb` },
  es: { say: spanish, point: 'coma', half: (w: string) => `${w} y medio` },
  fr: { say: french, point: 'virgule', half: (w: string) => `${w} et demi` },
} as const;

/** The k-th number to fill a sentence with, in the k-th way of saying it. */
function filling(language: Language, k: number): Row {
  const { say, point, half } = WORDS[language];
  const whole = 36 + ((k * 37) % 60);
  const tenth = 1 + ((k * 7) % 9);
  if (k % 4 === 0) return { text: `${say(whole)} ${point} ${say(tenth)}`, truth: whole + tenth / 10 };
  if (k % 4 === 1) return { text: say(whole), truth: whole };
  if (k % 4 === 2) return { text: `${whole},${tenth}`, truth: whole + tenth / 10 };
  return { text: half(say(whole)), truth: whole + 0.5 };
}

function rowsOf(language: Language): readonly Row[] {
  const lines = readFileSync(new URL(`sentences/${language}.txt`, import.meta.url), 'utf8').split('\n');
  return lines
    .filter((line) => line !== '' && !line.startsWith('# '))
    .flatMap((line, k) => {
      if (line.includes('{n}')) {
        const filled = [filling(language, k), filling(language, k + 1)];
        return filled.map(({ text, truth }) => ({ text: line.replace('{n}', text), truth }));
      }
      const [text = '', truth = ''] = line.split(' | ');
      return [{ text, truth: truth === 'ask' || truth === 'none' || truth === 'no value' ? truth : Number(truth) }];
    });
}

const understood = (row: Row, language: Language): boolean => {
  const made = plainly(row.text, language);
  return row.truth === 'no value' ? typeof made === 'string' : made === row.truth;
};

describe.each([
  ['en', 0.98],
  ['de', 0.98],
  ['es', 0.98],
  ['fr', 0.98],
] as const)('own sentences, %s', (language, least) => {
  beforeAll(() => loadLanguage(language));
  const rows = rowsOf(language);

  it('are at least three hundred', () => {
    expect(rows.length).toBeGreaterThanOrEqual(300);
    expect(rows.every((r) => typeof r.truth === 'string' || Number.isFinite(r.truth))).toBe(true);
  });
  it('never give a wrong value', () => {
    const wrong = rows.filter((r) => typeof plainly(r.text, language) === 'number' && !understood(r, language));
    expect(wrong).toEqual([]);
  });
  it(`are understood exactly in at least ${least * 100} of a hundred`, () => {
    const missed = rows.filter((r) => !understood(r, language));
    expect(1 - missed.length / rows.length, JSON.stringify(missed, null, 1)).toBeGreaterThanOrEqual(least);
  });
});
