/**
 * A length in whole hundredths of a millimetre (62.5 mm is 6250).
 * Hundredths, not tenths: a caliper with a 0.05 mm vernier and a spoken "and three quarters" must be kept as said
 * (docs/decisions/0001-hundredths.md).
 */
export type Length = number & { readonly unit: 'mm/100' };

/** Any measured value in whole hundredths of its own unit (mm, weeks, °C …). The unit travels beside it. */
export type Hundredths = number;

export type LengthFailure = 'empty' | 'notANumber' | 'negative' | 'tooFine' | 'tooLarge';
export type LengthResult = { ok: true; value: Length } | { ok: false; reason: LengthFailure };

const LARGEST_MM = 1000;

/** Millimetres to Length. Refuses what is not a finite, non-negative number of at most two decimals below 1000 mm. */
export function lengthFromMm(mm: number): LengthResult {
  if (!Number.isFinite(mm)) return { ok: false, reason: 'notANumber' };
  if (mm < 0) return { ok: false, reason: 'negative' };
  if (mm >= LARGEST_MM) return { ok: false, reason: 'tooLarge' };
  const value = Math.round(mm * 100);
  if (Math.abs(value / 100 - mm) > 1e-9) return { ok: false, reason: 'tooFine' };
  return { ok: true, value: value as Length };
}

/** Length to millimetres, for arithmetic that leaves the integer grid (means, rotations). */
export function toMm(value: Length | Hundredths): number {
  return value / 100;
}

/** Hundredths to the shortest plain decimal: 6250 → "62.5", 6200 → "62", 6275 → "62.75". */
export function formatHundredths(value: Hundredths): string {
  const sign = value < 0 ? '−' : '';
  const whole = Math.trunc(Math.abs(value) / 100);
  const rest = Math.abs(value) % 100;
  if (rest === 0) return `${sign}${whole}`;
  return `${sign}${whole}.${String(rest).padStart(2, '0').replace(/0$/, '')}`;
}

/** Strict decimal to hundredths: digits with at most one point or comma and two decimals. No grouping, no sign, no unit. */
export function parseHundredths(text: string): LengthResult {
  const trimmed = text.trim();
  if (trimmed === '') return { ok: false, reason: 'empty' };
  const match = /^(\d{1,6})?(?:[.,](\d+))?$/.exec(trimmed);
  if (!match || (match[1] === undefined && match[2] === undefined)) {
    return { ok: false, reason: /^[-−]/.test(trimmed) ? 'negative' : 'notANumber' };
  }
  const decimals = match[2] ?? '';
  if (decimals.length > 2) return { ok: false, reason: 'tooFine' };
  const value = Number(match[1] ?? '0') * 100 + Number(decimals.padEnd(2, '0') || '0');
  if (value >= LARGEST_MM * 100) return { ok: false, reason: 'tooLarge' };
  return { ok: true, value: value as Length };
}
