/** English below one hundred: "sixty-two", "fifteen", "six". */
import { OH, TEEN, TENS } from '../roles.ts';
import { digitAt, touches } from '../digits.ts';
import type { TensRule } from '../language.ts';

export const tens: TensRule = (tokens, i) => {
  const token = tokens[i];
  if (!token) return undefined;
  const { roles, value } = token.lex;
  if (roles & TEEN) return { value, end: i + 1, open: 1 };
  if (roles & TENS) {
    const unit = touches(tokens, i + 1) ? digitAt(tokens, i + 1, true) : -1;
    return unit > 0 ? { value: value + unit, end: i + 2, open: 1 } : { value, end: i + 1, open: 10 };
  }
  const digit = digitAt(tokens, i, false);
  return digit < 0 || (roles & OH) !== 0 ? undefined : { value: digit, end: i + 1, open: 1 };
};
