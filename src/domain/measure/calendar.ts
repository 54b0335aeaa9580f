/** Calendar days as text, "2026-03-02", with arithmetic that knows no clock and no time zone. */

interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const leap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/** Days of a month, 1 to 12. */
export function daysInMonth(year: number, month: number): number {
  return month === 2 ? (leap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** A day of the years 1900 to 2999 from "YYYY-MM-DD"; undefined for any other text and for days that do not exist. */
export function parseDay(text: string): Day | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return undefined;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const real = year >= 1900 && year < 3000 && month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
  return real ? { year, month, day } : undefined;
}

/** "YYYY-MM-DD". */
export function printDay({ year, month, day }: Day): string {
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

/** The day `days` later; whole days, zero or more. */
export function addDays(start: Day, days: number): Day {
  let { year, month, day } = start;
  day += days;
  while (day > daysInMonth(year, month)) {
    day -= daysInMonth(year, month);
    [year, month] = month === 12 ? [year + 1, 1] : [year, month + 1];
  }
  return { year, month, day };
}

/** The same day in a later year; the last day of February where there is none. */
export function addYears({ year, month, day }: Day, years: number): Day {
  return { year: year + years, month, day: Math.min(day, daysInMonth(year + years, month)) };
}

/** 0 Sunday … 6 Saturday, counted from a Monday on which the Gregorian year 1900 began. */
export function weekdayOf({ year, month, day }: Day): number {
  let days = 0;
  for (let past = 1900; past < year; past += 1) days += leap(past) ? 366 : 365;
  for (let past = 1; past < month; past += 1) days += daysInMonth(year, past);
  return (days + day) % 7;
}

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "Thu 3 Dec"; text that is no day stays as it is. */
export function shortDay(text: string): string {
  const day = parseDay(text);
  if (day === undefined) return text;
  return `${WEEKDAYS[weekdayOf(day)] ?? ''} ${day.day} ${MONTHS[day.month - 1] ?? ''}`;
}

const DAY_MS = 86_400_000;

/** The calendar day of a moment (ms since 1970) in universal time; near midnight the local day may be one off. */
export function dayOf(ms: number): Day {
  return addDays({ year: 1970, month: 1, day: 1 }, Math.max(0, Math.floor(ms / DAY_MS)));
}
