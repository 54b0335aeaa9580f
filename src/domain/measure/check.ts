/** Guards that turn a useless number into a named refusal before any arithmetic is done with it. */
import { refuse, type Refused } from './result.ts';

/** Ten metres: beyond any reading, small enough that no sum overflows. Hundredths of a millimetre. */
const LARGEST_READING = 1_000_000;
/** Beyond any amount, angle or time in milliseconds met here. */
const LARGEST_NUMBER = 1e15;
/** Below this a size counts as nothing, so that no quotient overflows. */
const SMALLEST_SIZE = 1e-9;

/** Refuses a reading that is no whole, non-negative number of hundredths, or beyond anything measured here. */
export function badReading(value: number, name: string): Refused | undefined {
  if (typeof value !== 'number' || !Number.isFinite(value)) return refuse('notANumber', `${name} is not a number.`);
  if (value < 0) return refuse('negative', `${name} is below zero.`);
  if (!Number.isInteger(value)) return refuse('offGrid', `${name} is finer than a hundredth.`);
  if (value > LARGEST_READING) return refuse('outOfRange', `${name} is larger than anything measured here.`);
  return undefined;
}

/** Refuses an empty list and every list that holds a bad reading. */
export function badReadings(values: readonly number[], name: string): Refused | undefined {
  if (!Array.isArray(values) || values.length === 0) return refuse('empty', `${name}: no readings.`);
  for (const [index, value] of values.entries()) {
    const bad = badReading(value, `${name}, reading ${index + 1},`);
    if (bad !== undefined) return bad;
  }
  return undefined;
}

/** Refuses NaN, the infinities, what is no number, and what is absurdly large. Millimetres, degrees, grams, minutes alike. */
export function badNumber(value: number, name: string): Refused | undefined {
  if (typeof value !== 'number' || !Number.isFinite(value)) return refuse('notANumber', `${name} is not a number.`);
  return Math.abs(value) > LARGEST_NUMBER ? refuse('outOfRange', `${name} is too large.`) : undefined;
}

/** Refuses what is not a finite number of zero or more. */
export function badAmount(value: number, name: string): Refused | undefined {
  return badNumber(value, name) ?? (value < 0 ? refuse('negative', `${name} is below zero.`) : undefined);
}

/** Refuses what is not a finite number above zero. */
export function badSize(value: number, name: string): Refused | undefined {
  return (
    badAmount(value, name) ?? (value < SMALLEST_SIZE ? refuse('outOfRange', `${name} must be above zero.`) : undefined)
  );
}

/** Refuses what is not a finite number between `low` and `high`, both included. */
export function badWithin(value: number, name: string, [low, high]: readonly [number, number]): Refused | undefined {
  const bad = badNumber(value, name);
  if (bad !== undefined) return bad;
  return value < low || value > high
    ? refuse('outOfRange', `${name} is ${value}; it must lie between ${low} and ${high}.`)
    : undefined;
}

/** The first refusal in a row of checks, if any. */
export function firstBad(...checks: readonly (Refused | undefined)[]): Refused | undefined {
  return checks.find((check) => check !== undefined);
}
