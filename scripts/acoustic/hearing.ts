/** What one sound was heard as, in both ways of listening. */
import type { Loops, Path } from './ear.ts';

/** One sentence of the grammar, and how it lies over the sound in each way. */
export interface Sentence {
  readonly text: string;
  /** What it comes to; sentences that come to the same are one. */
  readonly meaning: string;
  readonly cleaned: Path;
  readonly asItIs: Path;
}

export interface Hearing extends Loops {
  /** One for each meaning, the one that fits best in both ways together first; none when nothing was heard. */
  readonly sentences: readonly Sentence[];
  /** In how many ways the first sentence's meaning was found first. */
  readonly agree: number;
}

const isWord = ([word]: Path[number]): boolean => !/^[<[+]/.test(word);

/** The words of a path, without silence and breath. */
export const wordsOf = (path: Path): Path => path.filter(isWord);

/** "read(2)" is a second way of saying "read". */
export const textOf = (path: Path): string =>
  wordsOf(path)
    .map(([word]) => word.replace(/\(\d+\)$/, ''))
    .join(' ');

/** Scores are told in thousands. */
const UNIT = 1000;
export const scoreOf = (path: Path): number => path.reduce((sum, [, , , score]) => sum + score, 0) / UNIT;

/** Both ways count alike. */
export const fitOf = ({ cleaned, asItIs }: Sentence): number => (scoreOf(cleaned) + scoreOf(asItIs)) / 2;
