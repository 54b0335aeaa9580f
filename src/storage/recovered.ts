/** What is said when something had been lost on this device. */
const entries = (count: number): string => (count === 1 ? '1 entry' : `${count} entries`);

export interface Loss {
  /** The database was made anew although there had been one. */
  readonly wiped: boolean;
  /** Cases and entries written back from the second copy. */
  readonly cases: number;
  readonly entries: number;
  /** Entries that are in neither copy. */
  readonly missing: number;
}

/** One sentence or two; '' when nothing was lost. */
export function lossSentence({ wiped, cases, entries: back, missing }: Loss): string {
  if (cases === 0 && missing === 0) return '';
  const what = wiped
    ? 'The browser had deleted this app’s database.'
    : 'Part of the record was missing from the database.';
  const from = cases === 1 ? '1 case' : `${cases} cases`;
  const restored = `${from} (${entries(back)}) restored from the second copy on this device.`;
  const gone = `${entries(missing)} that this device had: in neither copy. Look into your saved files.`;
  return [what, cases > 0 ? restored : '', missing > 0 ? gone : ''].filter((part) => part !== '').join(' ');
}

export const MENDED_CASE =
  'Part of this case was missing or damaged and was restored from the second copy on this device.';

export const WRITTEN_AGAIN =
  'The browser had deleted what this case had on the disk. It was written again from this window. Reload the page when the visit is over, and look whether other cases are missing.';

export const NO_SECOND_COPY =
  'This browser gives no second place to keep entries. They are kept once; save a file at the end of the visit.';
export const SECOND_COPY_FAILS =
  'The second copy on this device cannot be written. Entries are kept once; save a file at the end of the visit.';

export function chainBroken(missing: number): string {
  return `Entry ${missing} of this case does not fit the one before it: it was changed after it was written. The ${missing - 1} before are good.`;
}
