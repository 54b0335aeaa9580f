/** Is an unknown word a number word misheard by a letter? Then the number beside it must not be taken as it stands. */
import type { Lexicon } from './lexicon.ts';

/** Edit distance at most `most`, by rows; stops early. */
function within(a: string, b: string, most: number): boolean {
  if (Math.abs(a.length - b.length) > most) return false;
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = (row[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] as number) + 1, (next[j - 1] as number) + 1));
    }
    if (Math.min(...next) > most) return false;
    row = next;
  }
  return (row[b.length] as number) <= most;
}

/** One letter off for short words, two for long ones. */
export function soundsLikeNumber(word: string, lexicon: Lexicon): boolean {
  if (word.length < 3 || word.length > 24) return false;
  return lexicon
    .numberWords()
    .some((number) => within(word, number, Math.min(word.length, number.length) >= 6 ? 2 : 1));
}
