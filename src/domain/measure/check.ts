/** Guards that turn a useless number into a named refusal before any arithmetic is done with it. */
import { refuse, type Refused } from './result.ts';

/** Refuses a reading that is no whole, non-negative number of hundredths. */
export function badReading(value: number, name: string): Refused | undefined {
  if (typeof value !== 'number' || !Number.isFinite(value)) return refuse('notANumber', `${name} is not a number.`);
  if (value < 0) return refuse('negative', `${name} is below zero.`);
  if (!Number.isInteger(value)) return refuse('offGrid', `${name} is finer than a hundredth.`);
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

/** Refuses NaN, the infinities and what is no number. Millimetres, degrees, grams, minutes alike. */
export function badNumber(value: number, name: string): Refused | undefined {
  return typeof value === 'number' && Number.isFinite(value)
    ? undefined
    : refuse('notANumber', `${name} is not a number.`);
}

/** Refuses what is not a finite number of zero or more. */
export function badAmount(value: number, name: string): Refused | undefined {
  return badNumber(value, name) ?? (value < 0 ? refuse('negative', `${name} is below zero.`) : undefined);
}

/** Refuses what is not a finite number above zero. */
export function badSize(value: number, name: string): Refused | undefined {
  return badAmount(value, name) ?? (value === 0 ? refuse('outOfRange', `${name} must be above zero.`) : undefined);
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
