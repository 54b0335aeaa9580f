/** Spanish below one hundred: "sesenta y dos", "veintidós", "diez y seis", "veinti seis". */
import { AND, ARTICLE, DIGIT, POINT, TEEN, TENS, UNIT } from '../roles.ts';
import type { TensRule } from '../language.ts';
import type { Line } from '../line.ts';

/** "veinti", "treintai": a ten that only its unit makes whole. */
const isStem = (line: Line, i: number): boolean => line.has(i, TENS) && line.text(i).endsWith('i');

export const tens: TensRule = (line, i) => {
  const value = line.value(i);
  if (isStem(line, i))
    return line.near(i + 1, DIGIT) ? { value: value + line.value(i + 1), end: i + 2, open: 1 } : undefined;
  const unit = line.near(i + 1, AND) && line.near(i + 2, DIGIT | ARTICLE) ? line.value(i + 2) : 0;
  if (unit > 0 && (line.has(i, TENS) || (line.has(i, TEEN) && value === 10 && unit > 5))) {
    return { value: value + unit, end: i + 3, open: 1 };
  }
  if (line.has(i, TENS)) return { value, end: i + 1, open: 10 };
  const isOne = line.has(i, ARTICLE) && (line.length === 1 || line.near(i + 1, POINT | UNIT));
  return isOne || line.has(i, TEEN | DIGIT) ? { value, end: i + 1, open: 1 } : undefined;
};
