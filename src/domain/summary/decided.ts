/** Everything that is computed where a visit decides, put together from its parts. */
import type { CaseView } from '../case/fold.ts';
import type { VisitProtocol } from '../protocol/types.ts';
import { archesOf } from './arches.ts';
import type { Decided } from './decided.types.ts';
import { heightChange } from './height-change.ts';
import { holdRows } from './hold.ts';
import { reviewDates } from './reviews.ts';
import { soreAreas } from './sore.ts';
import { teethOf } from './teeth.ts';
import { tracingOf } from './tracings.ts';
import type { ReadingRow, VerticalDimension } from './types.ts';

export interface DecideFrom {
  readonly view: CaseView;
  /** Number of the visit that is open. */
  readonly visit: number;
  /** Readings of this visit. */
  readonly rows: readonly ReadingRow[];
  /** Readings of the whole case. */
  readonly all: readonly ReadingRow[];
  readonly vertical: VerticalDimension;
  /** Those of this and of earlier visits, as far as they are known. */
  readonly protocols: readonly VisitProtocol[];
  readonly now: number;
}

const given = <K extends keyof Decided>(key: K, value: Decided[K] | undefined): Pick<Decided, K> | object =>
  value === undefined ? {} : { [key]: value };
const some = <T>(list: readonly T[]): readonly T[] | undefined => (list.length === 0 ? undefined : list);

/** After the try-in the teeth can no longer be exchanged. */
const LAST_FOR_TEETH = 3;

/** Tracings, tooth sizes, change of height, scores, sore places and review days, as far as there is anything to say. */
export function decidedOf(from: DecideFrom): Decided {
  const { view, visit, rows, all, protocols, now } = from;
  return {
    ...given('tracing', tracingOf(view, rows)),
    ...given('teeth', visit > LAST_FOR_TEETH ? undefined : some(teethOf(all, archesOf(view)) ?? [])),
    ...given('change', heightChange(from, visit)),
    ...given('hold', some(holdRows(all))),
    ...given('sore', some(soreAreas(view, all, protocols))),
    ...given('reviews', reviewDates(view, now)),
  };
}
