/** Phrases written away from the interpreter (data/README.md): none is ever taken wrongly, nearly all are understood. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Language } from '../../src/domain/protocol/types.ts';
import { loadLanguage } from '../../src/interpret/index.ts';
import { byName } from './heard.ts';

interface Row {
  readonly text: string;
  readonly expect: number | 'ask' | 'none';
}

function rowsOf(set: string, language: Language): readonly Row[] {
  const lines = readFileSync(new URL(`data/${set}-${language}.jsonl`, import.meta.url), 'utf8').split('\n');
  return lines.filter((line) => line !== '').map((line) => JSON.parse(line) as Row);
}

describe.each([
  ['one', 'en', 0.99],
  ['one', 'de', 0.99],
  ['one', 'es', 0.99],
  ['one', 'fr', 0.99],
  ['two', 'en', 0.99],
  ['two', 'de', 0.99],
  ['two', 'es', 0.99],
  ['two', 'fr', 0.99],
  ['three', 'en', 0.99],
  ['three', 'de', 0.98],
  ['three', 'es', 0.98],
  ['three', 'fr', 0.98],
] as const)('phrases, set %s, %s', (set, language, least) => {
  beforeAll(() => loadLanguage(language));
  const rows = rowsOf(set, language);

  it('are a hundred and fifty', () => {
    expect(rows).toHaveLength(150);
  });
  it('never give a wrong value', () => {
    const wrong = rows.filter(({ text, expect: truth }) => {
      const made = byName(text, language);
      return typeof made === 'number' && made !== truth;
    });
    expect(wrong).toEqual([]);
  });
  it(`are understood exactly in at least ${least * 100} of a hundred`, () => {
    const missed = rows.filter(({ text, expect: truth }) => byName(text, language) !== truth);
    expect(1 - missed.length / rows.length, JSON.stringify(missed, null, 1)).toBeGreaterThanOrEqual(least);
  });
});
