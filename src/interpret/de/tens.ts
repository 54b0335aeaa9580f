/** German below one hundred, the unit first: "zweiundsechzig", also with blanks. */
import { AND, ARTICLE, DIGIT, HALF, POINT, TEEN, TENS, UNIT } from '../roles.ts';
import type { TensRule } from '../language.ts';
import type { Line } from '../line.ts';

/** "ein" is a digit only where a number goes on: "ein Komma fünf", "ein Millimeter", "ein einhalb". */
const einIsDigit = (line: Line, i: number): boolean =>
  line.near(i + 1, POINT | UNIT) || (line.near(i + 1, ARTICLE) && line.has(i + 2, HALF));

export const tens: TensRule = (line, i) => {
  const value = line.value(i);
  if (line.has(i, TEEN | TENS)) return { value, end: i + 1, open: line.has(i, TENS) ? 10 : 1 };
  if (!line.has(i, DIGIT | ARTICLE)) return undefined;
  if (value > 0 && line.near(i + 1, AND) && line.near(i + 2, TENS))
    return { value: value + line.value(i + 2), end: i + 3, open: 1 };
  return line.has(i, DIGIT) || einIsDigit(line, i) ? { value, end: i + 1, open: 1 } : undefined;
};
