/** Times on a sheet, written in one named zone wherever the sheet is made. */
import type { SheetTimes } from './sheet-model.types.ts';

/** `timeZone` is an IANA name the platform knows; an unknown one throws RangeError, so callers check theirs first. */
export function sheetTimes(timeZone: string): SheetTimes {
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  const calendar = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  // Facts may come from a damaged clock; a time that is in no calendar is said, not thrown.
  const said = (format: Intl.DateTimeFormat) => (at: number) =>
    Math.abs(at) <= 8.64e15 ? format.format(at) : 'at no known time';
  return { zone: timeZone, date: said(calendar), time: said(clock) };
}

/** True for a time zone this platform can write times in. */
export function isTimeZone(timeZone: string): boolean {
  try {
    sheetTimes(timeZone);
    return true;
  } catch {
    return false;
  }
}
