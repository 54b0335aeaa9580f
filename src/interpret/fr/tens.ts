/** French below one hundred: "soixante-douze", "quatre-vingt-dix-sept", "vingt et un", and septante, huitante, nonante. */
import { AND, DIGIT, TEEN, TENS } from '../roles.ts';
import type { Below100, TensRule } from '../language.ts';
import type { Line } from '../line.ts';

/** "dix-sept" is said in two words. */
function teen(line: Line, i: number): Below100 {
  const value = line.value(i);
  const unit = value === 10 && line.near(i + 1, DIGIT) ? line.value(i + 1) : 0;
  return unit >= 7 ? { value: 10 + unit, end: i + 2, open: 1 } : { value, end: i + 1, open: 1 };
}

/** What goes on from a ten at `i`: 1…9, or 10…19 where the ten takes them ("soixante-dix-sept"). */
function rest(line: Line, i: number, teens: boolean): Below100 | undefined {
  if (teens && line.near(i, TEEN)) return teen(line, i);
  return line.near(i, DIGIT) && line.value(i) > 0 ? { value: line.value(i), end: i + 1, open: 1 } : undefined;
}

function from(line: Line, base: number, i: number): Below100 {
  const joins = line.near(i, AND) && (line.value(i + 1) === 1 || line.value(i + 1) === 11);
  const found = rest(line, joins ? i + 1 : i, base === 60 || base === 80);
  return found ? { ...found, value: base + found.value } : { value: base, end: i, open: 10 };
}

export const tens: TensRule = (line, i) => {
  const value = line.value(i);
  const isFour = value === 4 && line.has(i, DIGIT);
  if (isFour && line.near(i + 1, TENS) && line.value(i + 1) === 20) return from(line, 80, i + 2);
  if (line.has(i, TENS)) return from(line, value, i + 1);
  if (line.has(i, TEEN)) return teen(line, i);
  return line.has(i, DIGIT) ? { value, end: i + 1, open: 1 } : undefined;
};
