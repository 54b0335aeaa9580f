/** Dates and times for people, in the device's own zone. */
const dateTime = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Calendar day of a moment, "2026-03-02", in the device's own zone (taken for the practice's) or in the one named. */
export function localDay(at: number, timeZone?: string): string {
  const zone = timeZone === undefined ? {} : { timeZone };
  const parts = new Intl.DateTimeFormat('en', { ...zone, year: 'numeric', month: '2-digit', day: '2-digit' })
    .formatToParts(at)
    .map(({ type, value }) => [type, value] as const);
  const { year = '', month = '', day = '' } = Object.fromEntries(parts) as Partial<Record<string, string>>;
  return `${year}-${month}-${day}`;
}

export function localDate(at: number): string {
  return dateTime.format(at);
}
