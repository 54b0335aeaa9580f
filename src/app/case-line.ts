/** The visits of a case in a line: what is done, what runs, what may be opened next, what is waited for in between. */
import type { CaseView } from '../domain/case/fold.ts';
import { shortDay } from '../domain/measure/calendar.ts';
import type { ReviewRow } from '../domain/summary/decided.types.ts';
import { labStandings, standingText, type LabAround } from '../domain/summary/lab-standing.ts';
import { reviewDates } from '../domain/summary/reviews.ts';
import { visitName } from '../domain/summary/rows.ts';
import { comesAgain } from '../domain/summary/unfinished.ts';
import type { CaseListRow, CaseVisit } from './model.ts';

/** Titles are short here; the protocol of a later visit need not be loaded to name it. */
const TITLES: readonly string[] = [
  'Assessment, primary impressions',
  'Definitive impressions, jaw relation',
  'Try-in',
  'Insertion',
  'Review',
];
const LAST = TITLES.length;

/**
 * The visit that may be opened now: none while one is open; the same again where its work was not done; after the last, the
 * review again.
 */
export function nextVisit(view: CaseView): number | undefined {
  const last = view.visits.at(-1);
  if (last === undefined) return 1;
  if (last.closed === undefined) return undefined;
  const { visit } = last.opened.body;
  return comesAgain(last) ? visit : Math.min(LAST, visit + 1);
}

export interface LineAround extends LabAround {
  /** Wall clock, ms since 1970. */
  readonly now: number;
  /** Reason ids in words. */
  reason(id: string): string;
}

/** The review that is due or overdue since the last one seen; otherwise the next one to come. */
function nextReview(view: CaseView, now: number): ReviewRow | undefined {
  const rows = reviewDates(view, now)?.rows ?? [];
  const ahead = rows.slice(rows.findLastIndex((row) => row.state === 'seen') + 1);
  return ahead.find((row) => row.state === 'due' || row.state === 'past') ?? ahead.find((row) => row.state === 'later');
}

const lower = (label: string) => label.charAt(0).toLowerCase() + label.slice(1);

function reviewLine(view: CaseView, now: number): Pick<CaseVisit, 'lab'> {
  const row = nextReview(view, now);
  if (row === undefined) return {};
  const days = row.from === row.to ? shortDay(row.from) : `${shortDay(row.from)} to ${shortDay(row.to)}`;
  return { lab: { text: `${lower(row.label)}: ${days}`, late: row.state === 'past' } };
}

/** For the list of cases: what is waited for, and its day; undefined when nothing is. Once work is used it is no news. */
export function standsNow(view: CaseView, around: LineAround): CaseListRow['stands'] {
  const last = labStandings(view, around).at(-1);
  if (last !== undefined && (last.state !== 'here' || view.closed === undefined)) {
    const { due, ...bare } = last;
    const { text } = standingText(bare, { today: around.dayAt(around.now), reason: around.reason });
    return last.state === 'atLab' && due !== undefined ? { text, due: due.day } : { text };
  }
  const review = nextReview(view, around.now);
  return review === undefined ? undefined : { text: lower(review.label), due: review.to };
}

function openedVisits(view: CaseView, around: LineAround): readonly CaseVisit[] {
  const standings = new Map(labStandings(view, around).map((standing) => [standing.order, standing]));
  const words = { today: around.dayAt(around.now), reason: around.reason };
  return view.visits.map((span, place): CaseVisit => {
    const { visit, clinician, assistant } = span.opened.body;
    const before = view.visits[place - 1]?.opened.body.clinician;
    const standing = standings.get(span.opened.seq);
    return {
      visit,
      name: visitName(view.visits, place),
      title: TITLES[visit - 1] ?? '',
      state: span.closed === undefined ? 'now' : 'done',
      openedAt: span.opened.at,
      ...(span.closed === undefined ? {} : { closedAt: span.closed.at }),
      people: `${clinician}, ${assistant}`,
      ...(before === undefined || before === clinician ? {} : { otherClinician: true }),
      ...(standing === undefined ? {} : { lab: standingText(standing, words) }),
    };
  });
}

/** Every visit that was opened, then those still to come. */
export function caseLine(view: CaseView, around: LineAround): readonly CaseVisit[] {
  const opened = openedVisits(view, around);
  const next = nextVisit(view);
  const first = (view.visit?.body.visit ?? 0) + 1;
  const coming = TITLES.map((title, i) => ({ visit: i + 1, title })).filter(
    ({ visit }) => visit >= first || visit === next,
  );
  return [
    ...opened,
    ...coming.map(({ visit, title }): CaseVisit => {
      const again = opened.filter((one) => one.visit === visit).length;
      const name = again > 0 ? `visit ${visit}, time ${again + 1}` : `visit ${visit}`;
      const due = visit === LAST ? reviewLine(view, around.now) : {};
      return { visit, name, title, state: visit === next ? 'next' : 'later', ...due };
    }),
  ];
}
