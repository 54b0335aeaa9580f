/** People of the practice as the first screen may offer them, before anything that runs a visit has been fetched. */
import type { Person } from '../domain/protocol/types.ts';

/** Name under which the practice's settings are kept beside the preferences. */
export const PRACTICE_KEY = 'practice';

function isPerson(one: unknown): one is Person {
  if (typeof one !== 'object' || one === null) return false;
  const { initials, role } = one as Partial<Record<keyof Person, unknown>>;
  return typeof initials === 'string' && initials !== '' && (role === 'clinician' || role === 'assistant');
}

/** The people in stored settings; whatever is no person is left out, and said where the settings are read in full. */
export function peopleIn(stored: unknown): readonly Person[] {
  const people: unknown = typeof stored === 'object' && stored !== null ? (stored as { people?: unknown }).people : [];
  return Array.isArray(people) ? people.filter(isPerson) : [];
}
