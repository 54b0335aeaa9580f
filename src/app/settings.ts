/** Preferences as stored, checked field by field. */
import { defaultSettings, type Settings } from '../stores/stores.ts';
import { BACKUP_EVERY } from './backup.types.ts';
import { LOCK_AFTER_MIN } from './locking.types.ts';

type Checks = { readonly [K in keyof Settings]: (value: unknown) => boolean };

const oneOf =
  (...all: readonly unknown[]) =>
  (value: unknown) =>
    all.includes(value);
const within = (low: number, high: number) => (value: unknown) =>
  typeof value === 'number' && value >= low && value <= high;
const isBoolean = (value: unknown) => typeof value === 'boolean';

/** A word of letters as it is listened for: one or two, lower case. */
const ADDRESS = /^(?:\p{L}{2,24}(?: \p{L}{1,21})?)?$/u;

const checks: Checks = {
  language: oneOf('en', 'de', 'es', 'fr'),
  earMode: oneOf('always', 'readings', 'push'),
  addressWord: (value) =>
    typeof value === 'string' && value.length <= 24 && value === value.toLowerCase() && ADDRESS.test(value),
  speech: isBoolean,
  volume: within(0, 1),
  rate: within(0.5, 2),
  keepAfterMs: within(0, 60_000),
  mayLeaveDevice: isBoolean,
  lockAfterMin: oneOf(...LOCK_AFTER_MIN),
  lockOnHide: isBoolean,
  backupEveryDays: oneOf(...BACKUP_EVERY),
  standsAt: oneOf('chair', 'lab'),
};

/** What does not fit stays as it was: at its default, or as given in `before`. */
export function soundSettings(stored: unknown, before: Settings = defaultSettings): Settings {
  if (typeof stored !== 'object' || stored === null) return before;
  const fitting = Object.entries(stored).filter(
    ([name, value]) => Object.hasOwn(checks, name) && checks[name as keyof Settings](value),
  );
  return { ...before, ...(Object.fromEntries(fitting) as Partial<Settings>) };
}
