/** Dates and times for people, in the device's own zone. */
const dateTime = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

export function localDate(at: number): string {
  return dateTime.format(at);
}
