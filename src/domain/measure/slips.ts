/**
 * Slips between mouth, ear and keypad: fifteen for fifty, two digits exchanged, a decimal point moved.
 * Only proposals: whoever measured decides. Values in whole hundredths.
 */
import { formatHundredths, type Hundredths } from './length.ts';

export type SlipKind = 'transposed' | 'teenTy' | 'decimalShift';

export interface Slip {
  readonly kind: SlipKind;
  readonly value: Hundredths;
}

/** Neighbouring digits of the number as written exchanged, the point staying where it is: 62.5 → 26.5 and 65.2. */
function exchanged(value: Hundredths): readonly Hundredths[] {
  const written = formatHundredths(value);
  const decimals = written.split('.')[1]?.length ?? 0;
  const digits = [...written.replace('.', '')];
  return digits.slice(1).map((_, i) => {
    const swapped = [...digits];
    [swapped[i], swapped[i + 1]] = [digits[i + 1]!, digits[i]!];
    return Number(swapped.join('')) * 10 ** (2 - decimals);
  });
}

/** Fifteen heard for fifty and the reverse, the rest kept; also "seventeen five" (17.5) for "seventy-five" (75). */
function teenTy(value: Hundredths): readonly Hundredths[] {
  const whole = Math.trunc(value / 100);
  const rest = value % 100;
  const [tens, ones] = [Math.trunc(whole / 10), whole % 10];
  if (tens === 1 && ones >= 3) {
    const tenths = rest / 10;
    const joined = Number.isInteger(tenths) && tenths > 0 ? [ones * 1000 + tenths * 100] : [];
    return [ones * 1000 + rest, ...joined];
  }
  if (tens < 3 || tens > 9) return [];
  return ones === 0 ? [(10 + tens) * 100 + rest] : rest === 0 ? [(10 + tens) * 100 + ones * 10] : [];
}

/** "Seventy-five" for "seventy point five" and the reverse. Halves only: they are what is read and said most. */
function pointLost(value: Hundredths): readonly Hundredths[] {
  if (value >= 10000 || value < 1000) return [];
  const tens = Math.trunc(value / 1000) * 1000;
  if (value - tens === 500) return [tens + 50];
  return value - tens === 50 ? [tens + 500] : [];
}

/** The decimal point one or two places off: 62.5 → 6.25, 625, 6250; or lost: 75 for 70.5. */
function shifted(value: Hundredths): readonly Hundredths[] {
  return [...[value * 10, value / 10, value * 100, value / 100].filter(Number.isInteger), ...pointLost(value)];
}

/**
 * Every value that a single slip could have turned into `value`, likeliest kind first, without duplicates and without
 * the value itself. Empty for what is no whole non-negative number. Source: kinds of slip are our choice.
 */
export function slipsOf(value: Hundredths): readonly Slip[] {
  if (!Number.isInteger(value) || value < 0) return [];
  const all: Slip[] = [
    ...shifted(value).map((v) => ({ kind: 'decimalShift' as const, value: v })),
    ...teenTy(value).map((v) => ({ kind: 'teenTy' as const, value: v })),
    ...exchanged(value).map((v) => ({ kind: 'transposed' as const, value: v })),
  ];
  return all.filter((slip, i) => slip.value !== value && all.findIndex((other) => other.value === slip.value) === i);
}
