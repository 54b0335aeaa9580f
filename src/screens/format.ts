/** Numbers and times as people at the chair read them. Presentation only: nothing is computed from the case here. */
import { formatHundredths, parseHundredths, type Hundredths } from '../domain/measure/length.ts';
import type { Unit } from '../domain/protocol/types.ts';
import type { ClockPhase, ClockRow } from '../domain/summary/types.ts';

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const two = (n: number): string => String(n).padStart(2, '0');

/** A stretch of time, never negative: "1:05", "2 h 10 min", "3 d 4 h". */
export function stretch(ms: number): string {
  const whole = Math.max(0, ms);
  if (whole >= DAY) return `${Math.floor(whole / DAY)} d ${Math.floor((whole % DAY) / HOUR)} h`;
  if (whole >= HOUR) return `${Math.floor(whole / HOUR)} h ${Math.floor((whole % HOUR) / MINUTE)} min`;
  return `${Math.floor(whole / MINUTE)}:${two(Math.floor((whole % MINUTE) / SECOND))}`;
}

/** What is left until `dueAt`; rounded up, so that 0:00 means over. Past it: how long ago. */
export function timeLeft(dueAt: number, now: number): { readonly over: boolean; readonly text: string } {
  const left = dueAt - now;
  if (left > 0) return { over: false, text: stretch(Math.ceil(left / SECOND) * SECOND) };
  return { over: true, text: stretch(-left) };
}

/** "14:05", in the device's own time zone. */
export function timeOfDay(at: number): string {
  const date = new Date(at);
  return `${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** "14:05:20": where seconds count. */
export function timeToSecond(at: number): string {
  return `${timeOfDay(at)}:${two(new Date(at).getSeconds())}`;
}

/** "25 Nov 2026" */
export function day(at: number): string {
  const date = new Date(at);
  return `${date.getDate()} ${MONTHS[date.getMonth()] ?? ''} ${date.getFullYear()}`;
}

/** "2026-11-25", in the device's own time zone. */
export function dayKey(at: number): string {
  const date = new Date(at);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** A day so many days later, or earlier; days alone, so no clock changes come between. */
export function daysLater(start: string, days: number): string {
  const date = new Date(`${start}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() + days);
  return date.toISOString().slice(0, 10);
}

/** "25 Nov 14:05": for moments that may lie on another day. */
export function moment(at: number): string {
  const date = new Date(at);
  return `${date.getDate()} ${MONTHS[date.getMonth()] ?? ''} ${timeOfDay(at)}`;
}

/** Millimetres that left the grid of hundredths (medians, spreads), at most two decimals. */
export function mm(value: number): string {
  return formatHundredths(Math.round(value * 100));
}

/** What is computed is not known to the hundredth: one decimal, always written. */
export function tenths(value: number): string {
  return `${value < -0.049 ? '−' : ''}${Math.abs(value).toFixed(1)}`;
}

/** "62.5 mm", "12°" */
export function withUnit(digits: string, unit: Unit): string {
  return unit === '°' ? `${digits}°` : `${digits} ${unit}`;
}

export function valueWithUnit(value: Hundredths, unit: Unit): string {
  return withUnit(formatHundredths(value), unit);
}

const signed = (value: number): string => `${value > 0.049 ? '+' : ''}${tenths(value)}`;

/** "+0.5 mm", "−2.0 mm": a change carries its sign. */
export function change(value: number): string {
  return `${signed(value)} mm`;
}

/** A change as a range, smaller amount first: "−2.4 to −3.0 mm". */
export function changeRange(range: readonly [number, number]): string {
  const [a, b] = Math.abs(range[0]) <= Math.abs(range[1]) ? range : [range[1], range[0]];
  return signed(a) === signed(b) ? change(a) : `${signed(a)} to ${signed(b)} mm`;
}

/** Digits as shown back to millimetres, or undefined. */
export function digitsToMm(digits: string): number | undefined {
  const parsed = parseHundredths(digits);
  return parsed.ok ? parsed.value / 100 : undefined;
}

/** The phase of a clock that counts now. */
export function phaseNow(clock: ClockRow): ClockPhase | undefined {
  return clock.phases.find((phase) => phase.id === clock.now);
}

const FINDINGS: Readonly<Record<ClockRow['findings'][number]['id'], string>> = {
  notSeated: 'Seating was not recorded',
  seatedLate: 'Seated after the working time had ended, late by',
  removedEarly: 'Taken out before the set time, early by',
  pourLate: 'Pour time passed, late by',
  disinfectShort: 'Disinfected too short, short by',
};

export function findingText(finding: ClockRow['findings'][number]): string {
  if (finding.id === 'notSeated') return FINDINGS.notSeated;
  return `${FINDINGS[finding.id]} ${stretch(Math.round(finding.byMs / SECOND) * SECOND)}`;
}
