/**
 * A recogniser without our grammar writes what it heard, not what was said. One word of a reading is spelled wrongly, or
 * another word stands in its place: then the number must hardly ever be another one, and almost never one that is sure.
 */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Language } from '../../src/domain/protocol/types.ts';
import { freeExpectation } from '../../src/interpret/free.ts';
import { loadLanguage } from '../../src/interpret/index.ts';
import { hear } from './heard.ts';

interface Row {
  readonly text: string;
  readonly expect: number | 'ask' | 'none';
}

const TIMES = 12;
const LETTERS = 'abcdefghijklmnoprstuvwyz';
const OTHERS = ['lemon', 'house', 'Wasser', 'perro', 'maison', 'blue', 'walk', 'ventana', 'chien', 'Fenster'];

/** The same random numbers every time. */
function randomFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
    return Math.floor((state / 0x80000000) * below);
  };
}

/** Readings of the data sets that are said in words alone. */
function rowsOf(language: Language): readonly Row[] {
  const files = ['one', 'two', 'three'].map((set) => new URL(`data/${set}-${language}.jsonl`, import.meta.url));
  const rows = files.flatMap((file) => readFileSync(file, 'utf8').split('\n'));
  const read = rows.filter((line) => line !== '').map((line) => JSON.parse(line) as Row);
  return read.filter((row) => typeof row.expect === 'number' && !/\d/.test(row.text));
}

/** A letter changed, left out or put in. */
function misspelled(word: string, random: (below: number) => number): string {
  const at = random(word.length);
  const letter = LETTERS[random(LETTERS.length)]!;
  const kept = word.slice(at + 1);
  return word.slice(0, at) + [letter + kept, kept, letter + word.slice(at)][random(3)]!;
}

type Slip = (word: string, random: (below: number) => number) => string;
/** Slips, and how many in a hundred may come to another number and how many of those be sure (as measured, rounded up). */
const SLIPS: readonly (readonly [name: string, slip: Slip, wrong: number, sure: number])[] = [
  ['a letter wrong', misspelled, 1, 0.6],
  ['another word', (_, random) => OTHERS[random(OTHERS.length)]!, 3, 0],
];

/** How many in a hundred come to another number, and how many of those are called sure. */
function harm(language: Language, slip: Slip): { readonly wrong: number; readonly sure: number } {
  const random = randomFrom(7);
  let all = 0;
  let wrong = 0;
  let sure = 0;
  for (const row of rowsOf(language)) {
    for (let k = 0; k < TIMES; k += 1) {
      const words = row.text.split(' ');
      const at = random(words.length);
      words[at] = slip(words[at]!, random);
      const heard = hear(words.join(' '), freeExpectation(language));
      all += 1;
      if (heard.kind !== 'reading' || heard.value === Math.round(Number(row.expect) * 100)) continue;
      wrong += 1;
      if (heard.certainty === 'sure') sure += 1;
    }
  }
  return { wrong: (100 * wrong) / all, sure: (100 * sure) / all };
}

describe.each(['en', 'de', 'es', 'fr'] as const)('a word misheard, %s', (language) => {
  beforeAll(() => loadLanguage(language));
  it.each(SLIPS)('%s', (_, slip, mostWrong, mostSure) => {
    const { wrong, sure } = harm(language, slip);
    expect(wrong).toBeLessThanOrEqual(mostWrong);
    expect(sure).toBeLessThanOrEqual(mostSure);
  });
});
