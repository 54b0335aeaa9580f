/** The visits of a case in a line: what is done, what runs, what may be opened next. */
import type { CaseView } from '../domain/case/fold.ts';
import { visitName } from '../domain/summary/rows.ts';
import type { CaseVisit } from './model.ts';

/** Titles are short here; the protocol of a later visit need not be loaded to name it. */
const TITLES: readonly string[] = [
  'Assessment, primary impressions',
  'Definitive impressions, jaw relation',
  'Try-in',
  'Insertion',
  'Review',
];
const LAST = TITLES.length;

/** The visit that may be opened now: none while one is open; after the last, the review again. */
export function nextVisit(view: CaseView): number | undefined {
  if (view.visit !== undefined && view.closed === undefined) return undefined;
  return Math.min(LAST, (view.visit?.body.visit ?? 0) + 1);
}

/** Every visit that was opened, then those still to come. */
export function caseLine(view: CaseView): readonly CaseVisit[] {
  const opened = view.visits.map((span, place): CaseVisit => {
    const { visit, clinician, assistant } = span.opened.body;
    const before = view.visits[place - 1]?.opened.body.clinician;
    const closed = span.closed === undefined ? {} : { closedAt: span.closed.at };
    return {
      visit,
      name: visitName(view.visits, place),
      title: TITLES[visit - 1] ?? '',
      state: span.closed === undefined ? 'now' : 'done',
      openedAt: span.opened.at,
      ...closed,
      people: `${clinician}, ${assistant}`,
      ...(before === undefined || before === clinician ? {} : { otherClinician: true }),
    };
  });
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
      return { visit, name, title, state: visit === next ? 'next' : 'later' };
    }),
  ];
}
