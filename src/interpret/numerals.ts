/** Numbers written in figures, as recognisers write them: 62.5, 62,5, .5, 1/2, ½, 12:40, 2026-11-01, 62.5.3. */

export type NumeralKind =
  /** Whole or decimal number. */
  | 'number'
  /** 1/2, ¾: a part of one. */
  | 'part'
  | 'clock'
  | 'date'
  /** Figures glued to letters: "A2", a code, never a reading. */
  | 'code'
  /** Figures with signs that make no number: 62.5.3, 62-63, 1,250. */
  | 'malformed';

export interface Numeral {
  readonly kind: NumeralKind;
  readonly end: number;
  /** Figures before the point, '' when there are none (".5"). */
  readonly whole: string;
  /** Figures after the point. */
  readonly decimals?: string;
  /** Of a `part`: hundredths, or -1 when finer than a hundredth. */
  readonly hundredths: number;
  readonly negative: boolean;
}

const VULGAR: Record<string, number> = { '½': 50, '¼': 25, '¾': 75, '⅕': 20, '⅖': 40, '⅗': 60, '⅘': 80, '⅒': 10 };
const CLUSTER = /(?:\d+(?:[.,:/·'-]\d+)*|[.,]\d+(?:[.,]\d+)*)/y;
const ONLY_DIGITS = /^\d+$/;
const DECIMAL = /^(\d*)[.,·](\d+)$/;
const FRACTION = /^(\d)\/(\d{1,2})$/;
const MIXED = /^(\d{1,3})-(\d)\/(\d{1,2})$/;
const CLOCK_TIME = /^\d{1,2}:\d{2}(?::\d{2})?$/;
const DATE = /^(?:\d{4}([.\-/])\d{1,2}\1\d{1,2}|\d{1,2}([.\-/])\d{1,2}\2\d{4}|0\d\.\d\d\.\d\d|\d\d\.0\d\.\d\d)$/;

const plain = (kind: NumeralKind, end: number, whole = ''): Numeral => ({
  kind,
  end,
  whole,
  hundredths: 0,
  negative: false,
});

function part(top: number, bottom: number, end: number): Numeral {
  const exact = bottom > 0 && top < bottom && (top * 100) % bottom === 0;
  return {
    kind: bottom === 0 || top >= bottom ? 'malformed' : 'part',
    end,
    whole: '',
    hundredths: exact ? (top * 100) / bottom : -1,
    negative: false,
  };
}

/** "62-1/2" */
function mixedNumber(whole: string, fraction: Numeral): Numeral {
  if (fraction.kind !== 'part' || fraction.hundredths < 0) return plain('malformed', fraction.end);
  return { ...fraction, kind: 'number', whole, decimals: String(fraction.hundredths).padStart(2, '0') };
}

function classify(text: string, end: number): Numeral {
  if (ONLY_DIGITS.test(text)) return plain('number', end, text);
  const decimal = DECIMAL.exec(text);
  if (decimal) {
    const decimals = decimal[2] ?? '';
    // Three figures after the sign may be thousands, and are finer than any caliper: not ours to guess.
    if (decimals.length > 2) return plain('malformed', end);
    return { kind: 'number', end, whole: decimal[1] ?? '', decimals, hundredths: 0, negative: false };
  }
  const fraction = FRACTION.exec(text);
  if (fraction) return part(Number(fraction[1]), Number(fraction[2]), end);
  const mixed = MIXED.exec(text);
  if (mixed) return mixedNumber(mixed[1] ?? '', part(Number(mixed[2]), Number(mixed[3]), end));
  if (CLOCK_TIME.test(text)) return plain('clock', end);
  return plain(DATE.test(text) ? 'date' : 'malformed', end);
}

const isFigure = (c: number): boolean => c >= 48 && c <= 57;
const isBlank = (c: number): boolean => c === 32 || c === 160 || (c >= 9 && c <= 13);
/** ".5" and " ,5", but not the comma in "width,53". */
const startsDecimals = (s: string, i: number): boolean =>
  isFigure(s.charCodeAt(i + 1)) && (i === 0 || isBlank(s.charCodeAt(i - 1)) || s[i - 1] === '-' || s[i - 1] === '"');

/** The numeral that starts at `i`, or undefined. */
export function numeralAt(s: string, i: number): Numeral | undefined {
  const c = s.charCodeAt(i);
  if (c > 127) {
    const hundredths = VULGAR[s[i] ?? ''];
    return hundredths === undefined ? undefined : { kind: 'part', end: i + 1, whole: '', hundredths, negative: false };
  }
  if (!isFigure(c) && !((c === 46 || c === 44) && startsDecimals(s, i))) return undefined;
  CLUSTER.lastIndex = i;
  const match = CLUSTER.exec(s);
  return match ? classify(match[0], i + match[0].length) : undefined;
}
