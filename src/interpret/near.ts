/** Is an unknown word a number word misheard by a letter? Then the number beside it must not be taken as it stands. */
import type { Lexicon } from './lexicon.ts';

/** At most `most` letters changed, left out or put in. */
function within(a: string, b: string, most: number): boolean {
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  if (i === a.length || i === b.length) return Math.abs(a.length - b.length) <= most;
  if (most === 0 || Math.abs(a.length - b.length) > most) return false;
  const [p, q, p1, q1] = [a.slice(i), b.slice(i), a.slice(i + 1), b.slice(i + 1)];
  return within(p1, q1, most - 1) || within(p1, q, most - 1) || within(p, q1, most - 1);
}

/** One letter off for short words, two for long ones. */
export function soundsLikeNumber(word: string, { numberWords }: Lexicon): boolean {
  if (word.length < 3) return false;
  return numberWords.some((number) => within(word, number, Math.min(word.length, number.length) >= 6 ? 2 : 1));
}
