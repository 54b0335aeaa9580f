/** When the patient is to be seen again after the dentures were handed over. Days only; appointments are the practice's. */
import type { CaseView, VisitSpan } from '../case/fold.ts';
import { addDays, dayOf, parseDay, printDay } from '../measure/calendar.ts';
import { reviewDates as daysAfter } from '../measure/review.ts';
import { sources } from '../measure/sources.ts';
import type { ReviewRow, Reviews } from './decided.types.ts';
import { comesAgain } from './unfinished.ts';

const INSERTION = 4;
const REVIEW = 5;
/** An ulcer is looked at again within these days after it was found. Source: referral-duration. */
const ULCER_DAYS = 14;

const day = (at: number) => printDay(dayOf(at));

/** The last insertion that was closed with the dentures handed over. */
function delivery(view: CaseView): VisitSpan | undefined {
  return view.visits.findLast(
    (span) => span.opened.body.visit === INSERTION && span.closed !== undefined && !comesAgain(span),
  );
}

interface Calendar {
  readonly today: string;
  /** Days on which a review was opened. */
  readonly seen: readonly string[];
}

interface Due {
  readonly id: ReviewRow['id'];
  readonly label: string;
  readonly from: string;
  readonly to: string;
}

/** Days are text that sorts as they do. A review counts for the date it falls on or follows, until the next one. */
function stateOf({ from, to }: Due, next: Due | undefined, { today, seen }: Calendar): ReviewRow['state'] {
  if (seen.some((one) => one >= from && (next === undefined || one < next.from))) return 'seen';
  if (today < from) return 'later';
  return today <= to ? 'due' : 'past';
}

function duesAfter(delivered: string): readonly Due[] {
  const found = daysAfter(delivered);
  if (!found.ok) return [];
  const { first, week, fourWeeks, year } = found.value;
  return [
    { id: 'first', label: 'First review, 24 to 48 hours', from: first[0], to: first[1] },
    { id: 'week', label: 'Review after a week', from: week, to: week },
    { id: 'fourWeeks', label: 'Review after four weeks', from: fourWeeks, to: fourWeeks },
    { id: 'year', label: 'Yearly recall', from: year, to: year },
  ];
}

const ulcerIn = ({ answers }: VisitSpan) =>
  [1, 2, 3, 4].some((n) => answers.get(`sore-${n}-kind`)?.body.answer === 'ulcer');

/** The newest review saw an ulcer: the next look is due within two weeks of it, whatever the other days say. */
function ulcerRow(reviews: readonly VisitSpan[], today: string): readonly ReviewRow[] {
  const newest = reviews.at(-1);
  if (newest === undefined || !ulcerIn(newest)) return [];
  const from = day(newest.opened.at);
  const start = parseDay(from);
  if (start === undefined) return [];
  const to = printDay(addDays(start, ULCER_DAYS));
  return [
    { id: 'ulcer', label: 'Look at the ulcer again, at the latest', from, to, state: today <= to ? 'due' : 'past' },
  ];
}

/**
 * Review days after delivery, each with how it stands on the day of `now` (ms since 1970): seen, due, past without a
 * review, or later; undefined before the insertion was closed with the dentures in hand. Days in universal time; weekends
 * and holidays are the practice's to move. Sources: review-days, referral-duration.
 */
export function reviewDates(view: CaseView, now: number): Reviews | undefined {
  const at = delivery(view)?.closed?.at;
  if (at === undefined) return undefined;
  const delivered = day(at);
  const reviews = view.visits.filter(({ opened }) => opened.body.visit === REVIEW && opened.at >= at);
  const calendar = { today: day(now), seen: reviews.map(({ opened }) => day(opened.at)) };
  const dues = duesAfter(delivered);
  const rows = dues.map((due, i): ReviewRow => ({ ...due, state: stateOf(due, dues[i + 1], calendar) }));
  const { citation, status } = sources['review-days'];
  return { delivered, rows: [...rows, ...ulcerRow(reviews, calendar.today)], source: citation, sourceStatus: status };
}
