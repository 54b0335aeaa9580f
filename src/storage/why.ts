import type { Failed } from './types.ts';

const SENTENCES: Readonly<Record<string, string>> = {
  NoIndexedDb: 'This browser offers no storage here. Work goes on in memory; save a file before closing.',
  SecurityError: 'The browser refuses to store anything here. Work goes on in memory; save a file before closing.',
  VersionError: 'A newer version of this app has used this storage. Reload the page to get that version.',
  Blocked: 'Another window of this app keeps the storage busy. Close the other window.',
  TimedOut: 'The storage does not answer. Work goes on in memory; save a file before closing.',
};

const REFUSED = 'The browser could not write to its storage. Work goes on in memory; save a file before closing.';

export const FULL = 'The storage of this device is full. Work goes on in memory; save a file and free some space.';
export const ANOTHER_WRITER =
  'Another window has written to this case. Nothing is lost: what was entered here is held apart. Reload the case.';
export const LOST =
  'The browser has deleted what this case had on the disk. Work goes on in memory; save a file before closing.';
export const SLOW = 'The storage is slow to answer. The last entries are in memory until it does.';

/** An exception's name; '' for what is no exception. */
export function nameOf(error: unknown): string {
  return typeof error === 'object' && error !== null && 'name' in error ? String(error.name) : '';
}

const GONE = 'Gone';

/** Worth a second try on a fresh connection: the one we had gave no answer. */
const UNANSWERED = 'Unanswered';

/** A failure that a fresh connection cannot cure. */
export function isFinal(error: unknown): boolean {
  const name = nameOf(error);
  return (
    name in SENTENCES || ['ConstraintError', 'QuotaExceededError', 'DataCloneError', 'DataError', GONE].includes(name)
  );
}

/** A browser's exception as one of the named failures. */
export function failure(error: unknown): Failed<'anotherWriter' | 'full' | 'refused' | 'lost'> {
  const name = nameOf(error);
  if (name === GONE) return { ok: false, reason: 'lost', why: LOST };
  if (name === 'ConstraintError') return { ok: false, reason: 'anotherWriter', why: ANOTHER_WRITER };
  if (name === 'QuotaExceededError') return { ok: false, reason: 'full', why: FULL };
  return { ok: false, reason: 'refused', why: SENTENCES[name] ?? REFUSED };
}

export function refused(error: unknown): Failed<'refused'> {
  return { ok: false, reason: 'refused', why: SENTENCES[nameOf(error)] ?? REFUSED };
}

/** A failure of our own that travels like a browser's exception. */
export function named(name: 'NoIndexedDb' | 'Blocked' | 'TimedOut' | typeof UNANSWERED | typeof GONE): Error {
  const error = new Error(SENTENCES[name] ?? REFUSED);
  error.name = name;
  return error;
}
