/**
 * Between visits: what the laboratory has, what came back, what is due. Worked out from what was written: the order that
 * was called right, the closing of its visit, the day agreed, the bench's word, and the checks at the next opening.
 */
import type { FactBody } from '../case/facts.ts';
import { isKind, type CaseView, type VisitSpan } from '../case/fold.ts';
import { addDays, parseDay, printDay, shortDay } from '../measure/calendar.ts';
import type { LabDays, Practice } from '../protocol/types.ts';
import { visitName } from './rows.ts';
import type { LabLine } from './types.ts';
import { endedEarly } from './unfinished.ts';

/** Days from the order to the work, where the practice has set none. Common practice, no source. */
export const LAB_DAYS: LabDays = { customTrays: 7, setUp: 7, finish: 10 };

export type LabState = 'atLab' | 'sentBack' | 'here' | 'wrong' | 'notHere';

export interface DueDay {
  /** "YYYY-MM-DD" */
  readonly day: string;
  /** Agreed with the laboratory; otherwise counted from the practice's days. */
  readonly agreed: boolean;
}

export interface LabStanding {
  /** seq of the opening of the visit that gave the order. */
  readonly order: number;
  /** "visit 1" */
  readonly visit: string;
  /** "custom trays" */
  readonly what: string;
  readonly state: LabState;
  /** Calendar day on which it came to stand so, "YYYY-MM-DD". */
  readonly since: string;
  /** Id of the reason, or free words, where the state has one. */
  readonly reason?: string;
  readonly due?: DueDay;
}

export interface LabAround {
  readonly practice: Pick<Practice, 'labDays'>;
  /** Calendar day of a moment where the practice is. */
  dayAt(at: number): string;
}

interface Work {
  readonly what: string;
  readonly days: keyof LabDays;
}

const answer = ({ answers }: VisitSpan, step: string) => answers.get(step)?.body.answer;

/** What a visit orders; nothing after the insertion. A bite or the finishing refused at the try-in: another set-up first. */
function workOf(span: VisitSpan): Work | undefined {
  const { visit } = span.opened.body;
  if (visit === 1) return { what: 'custom trays', days: 'customTrays' };
  if (visit === 2) return { what: 'set-up for the try-in', days: 'setUp' };
  if (visit !== 3) return undefined;
  if (answer(span, 'bite-agrees') === 'no') return { what: 'set-up by the new record', days: 'setUp' };
  if (answer(span, 'finish-consent') === 'no') return { what: 'changed set-up', days: 'setUp' };
  return { what: 'finished dentures', days: 'finish' };
}

/** A visit that ended before its work orders nothing, whatever was ticked at its end. */
const orders = (span: VisitSpan): Work | undefined =>
  answer(span, 'lab-order') === 'yes' && !endedEarly(span) ? workOf(span) : undefined;

function later(day: string, days: number): string {
  const start = parseDay(day);
  return start === undefined ? day : printDay(addDays(start, days));
}

/** The day last agreed for an order and not taken back. */
function agreedFor(view: CaseView, order: number): string | undefined {
  const { facts } = view.log;
  for (let i = facts.length - 1; i >= 0; i -= 1) {
    const fact = facts[i]!;
    if (isKind(fact, 'labDue') && fact.body.order === order && !view.strikes.has(fact.seq)) return fact.body.day;
  }
  return undefined;
}

/** The day agreed for an order; otherwise the practice's days from `from`. */
function dueOf(view: CaseView, span: VisitSpan, { practice, from, work }: Counted): DueDay {
  const agreed = agreedFor(view, span.opened.seq);
  if (agreed !== undefined) return { day: agreed, agreed: true };
  return { day: later(from, (practice.labDays ?? LAB_DAYS)[work.days]), agreed: false };
}

interface Counted {
  readonly practice: LabAround['practice'];
  readonly from: string;
  readonly work: Work;
}

type Change = Pick<LabStanding, 'state' | 'since' | 'reason'>;

/** What the opening of a later visit found. */
function foundAt(span: VisitSpan, dayAt: LabAround['dayAt']): Change | undefined {
  const here = span.answers.get('work-returned');
  const right = span.answers.get('work-right');
  const said = (state: LabState, fact: typeof here): Change => ({
    state,
    since: dayAt(fact?.at ?? span.opened.at),
    ...(fact?.body.reason === undefined ? {} : { reason: fact.body.reason }),
  });
  if (here?.body.answer === 'no') return said('notHere', here);
  if (here?.body.answer !== 'yes') return undefined;
  return right?.body.answer === 'no' ? said('wrong', right) : said('here', here);
}

function sentBack(view: CaseView, order: number, dayAt: LabAround['dayAt']): Change | undefined {
  const fact = view.log.facts.findLast(
    (one) => isKind(one, 'workReturned') && one.body.order === order && !view.strikes.has(one.seq),
  );
  return fact === undefined ? undefined : { state: 'sentBack', since: dayAt(fact.at) };
}

/** How one order stands: as ordered, then by the bench's word, then by what the clinic found until it was there. */
function standingOf(view: CaseView, place: number, { practice, dayAt }: LabAround): LabStanding | undefined {
  const span = view.visits[place];
  const work = span === undefined ? undefined : orders(span);
  if (span?.closed === undefined || work === undefined) return undefined;
  const given = dayAt(span.closed.at);
  let now: Change = sentBack(view, span.opened.seq, dayAt) ?? { state: 'atLab', since: given };
  for (const next of view.visits.slice(place + 1)) {
    now = foundAt(next, dayAt) ?? now;
    // What the next visits find belongs to a later order once there is one.
    if (now.state === 'here' || now.state === 'wrong' || orders(next) !== undefined) break;
  }
  const due = dueOf(view, span, { practice, from: given, work });
  return { order: span.opened.seq, visit: visitName(view.visits, place), what: work.what, due, ...now };
}

/** Every order that went to the laboratory with a closed visit, oldest first. Days are those of `dayAt`. */
export function labStandings(view: CaseView, around: LabAround): readonly LabStanding[] {
  return view.visits.flatMap((_span, place) => standingOf(view, place, around) ?? []);
}

export interface OrderInHand {
  readonly order: number;
  readonly what: string;
  readonly day: string;
  readonly agreed: boolean;
}

/** The current visit's order once it was called right: a day may be agreed for it until the next visit is opened. */
export function orderInHand(view: CaseView, { practice, dayAt }: LabAround, now: number): OrderInHand | undefined {
  const span = view.visits.at(-1);
  const work = span === undefined ? undefined : orders(span);
  if (span === undefined || work === undefined) return undefined;
  const due = dueOf(view, span, { practice, from: dayAt(span.closed?.at ?? now), work });
  return { order: span.opened.seq, what: work.what, ...due };
}

export type Agreed =
  | { readonly ok: true; readonly body: Extract<FactBody, { kind: 'labDue' }> }
  /** A sentence for the screen. */
  | { readonly ok: false; readonly text: string };

/** A day for the order in hand, as a fact; or why it cannot be one. "YYYY-MM-DD" both. */
export function agreedDay(view: CaseView, { day, today }: { readonly day: string; readonly today: string }): Agreed {
  const span = view.visits.at(-1);
  if (parseDay(day) === undefined) return { ok: false, text: `“${day}” is no day of the calendar.` };
  if (span === undefined || orders(span) === undefined)
    return { ok: false, text: 'Nothing is ordered from the laboratory.' };
  if (day < today) return { ok: false, text: `${shortDay(day)} has passed.` };
  return { ok: true, body: { kind: 'labDue', order: span.opened.seq, day } };
}

/** The day agreed for the current visit's order, as the last line of that order; none while it is only counted. */
export function dueLines(view: CaseView): readonly LabLine[] {
  const span = view.visits.at(-1);
  const day = span === undefined || orders(span) === undefined ? undefined : agreedFor(view, span.opened.seq);
  if (day === undefined) return [];
  return [{ id: 'due', text: `Work wanted back by ${shortDay(day)}.`, detail: `${day}, as agreed.` }];
}

export interface InWords {
  readonly text: string;
  /** Something is to be done about it: overdue, not there, or wrong. */
  readonly late: boolean;
}

interface Words {
  /** "YYYY-MM-DD" where the practice is. */
  readonly today: string;
  /** Reason ids in words. */
  reason(id: string): string;
}

/** One line for a list: "lab has: custom trays, due Thu 3 Dec". */
export function standingText({ what, state, since, due, reason }: LabStanding, words: Words): InWords {
  const why = reason === undefined ? '' : ` (${words.reason(reason)})`;
  if (state === 'here') return { text: `work returned: ${what}`, late: false };
  if (state === 'wrong') return { text: `work returned, something is wrong: ${what}${why}`, late: true };
  if (state === 'notHere') return { text: `not here ${shortDay(since)}: ${what}${why}`, late: true };
  if (state === 'sentBack') return { text: `lab sent back: ${what}`, late: false };
  if (due === undefined) return { text: `lab has: ${what}`, late: false };
  const late = due.day < words.today;
  return { text: `lab has: ${what}, ${late ? 'was due' : 'due'} ${shortDay(due.day)}`, late };
}
