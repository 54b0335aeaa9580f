/** English below one hundred: "sixty-two", "fifteen", "six". */
import { OH, TEEN, TENS } from '../roles.ts';
import type { TensRule } from '../language.ts';

export const tens: TensRule = (line, i) => {
  const value = line.value(i);
  if (line.has(i, TEEN)) return { value, end: i + 1, open: 1 };
  if (line.has(i, TENS)) {
    const unit = line.touches(i + 1) ? line.digit(i + 1, true) : -1;
    return unit > 0 ? { value: value + unit, end: i + 2, open: 1 } : { value, end: i + 1, open: 10 };
  }
  const digit = line.has(i, OH) ? -1 : line.digit(i, false);
  return digit < 0 ? undefined : { value: digit, end: i + 1, open: 1 };
};
