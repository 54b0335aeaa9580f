/** Sore and relieved places on the fitting surfaces, of this visit and the ones before. */
import type { CaseView, VisitSpan } from '../case/fold.ts';
import { lowerRegions, upperRegions } from '../protocol/regions.ts';
import { answerOf, stepOf } from '../protocol/path.ts';
import type { VisitProtocol } from '../protocol/types.ts';
import type { Jaw, SoreArea } from './decided.types.ts';
import { latestMm } from './latest.ts';
import { visitName } from './rows.ts';
import type { ReadingRow } from './types.ts';

const JAWS: readonly Jaw[] = ['upper', 'lower'];
const MOST_SORE = [1, 2, 3, 4] as const;
const MOST_RELIEVED = [1, 2] as const;

/** Name of a region in words; its id where a practice has one of its own. */
export function regionLabel(jaw: Jaw, region: string): string {
  const known = jaw === 'upper' ? upperRegions : lowerRegions;
  return known.find((one) => one.id === region)?.label ?? region;
}

interface Place {
  readonly span: VisitSpan;
  readonly visit: string;
  readonly current: boolean;
  readonly rows: readonly ReadingRow[];
  readonly protocol: VisitProtocol | undefined;
}

const answered = ({ span }: Place, step: string) => span.answers.get(step)?.body.answer;

/** An answer in the words of its own protocol. */
function inWords(place: Place, step: string): string | undefined {
  const given = answered(place, step);
  if (given === undefined) return undefined;
  const known = place.protocol === undefined ? undefined : stepOf(place.protocol, step);
  return answerOf(known, given)?.label ?? given;
}

const optional = <K extends keyof SoreArea>(key: K, value: SoreArea[K] | undefined) =>
  value === undefined ? {} : { [key]: value };

interface Spot {
  readonly id: string;
  readonly jaw: Jaw;
  readonly region: string;
  readonly what: SoreArea['what'];
}

function areaOf({ visit, current }: Place, { id, jaw, region, what }: Spot): SoreArea {
  return { id, visit, current, jaw, region, label: regionLabel(jaw, region), what };
}

function soreOf(place: Place, n: number): SoreArea | undefined {
  const jaw = JAWS.find((one) => one === answered(place, `sore-${n}`));
  const region = jaw === undefined ? undefined : answered(place, `sore-${n}-${jaw}`);
  if (jaw === undefined || region === undefined) return undefined;
  return {
    ...areaOf(place, { id: `sore-${n}`, jaw, region, what: 'sore' }),
    ...optional('kind', inWords(place, `sore-${n}-kind`)),
    ...optional('sizeMm', latestMm(place.rows, `sore-${n}-size`)),
    ...optional('weeks', latestMm(place.rows, `sore-${n}-weeks`)),
    ...optional('cause', inWords(place, `sore-${n}-cause`)),
    ...optional('done', inWords(place, `sore-${n}-relieved`)),
  };
}

/** After a "none" nothing more was looked for: what had been answered beyond it no longer holds. */
function soreIn(place: Place): readonly SoreArea[] {
  const end = MOST_SORE.findIndex((n) => answered(place, `sore-${n}`) === 'none');
  const asked = end < 0 ? MOST_SORE : MOST_SORE.slice(0, end);
  return asked.flatMap((n) => soreOf(place, n) ?? []);
}

function relievedIn(place: Place): readonly SoreArea[] {
  return JAWS.filter((jaw) => answered(place, `paste-${jaw}`) === 'relieved').flatMap((jaw) =>
    MOST_RELIEVED.flatMap((n) => {
      const region = answered(place, `relieved-${jaw}-${n}`);
      return region === undefined || region === 'none'
        ? []
        : [areaOf(place, { id: `relieved-${jaw}-${n}`, jaw, region, what: 'relieved' })];
    }),
  );
}

/**
 * Every named place of the case, oldest visit first: sore at a review, or relieved at insertion. Size in millimetres, age
 * in weeks, all as said; nothing is concluded. Empty where none was named.
 */
export function soreAreas(
  view: CaseView,
  all: readonly ReadingRow[],
  protocols: readonly VisitProtocol[],
): readonly SoreArea[] {
  return view.visits.flatMap((span, i) => {
    const visit = visitName(view.visits, i);
    const { protocol, version } = span.opened.body;
    const place: Place = {
      span,
      visit,
      current: i === view.visits.length - 1,
      rows: all.filter((row) => row.visit === visit),
      protocol: protocols.find((one) => one.id === protocol && one.version === version),
    };
    return [...relievedIn(place), ...soreIn(place)];
  });
}
