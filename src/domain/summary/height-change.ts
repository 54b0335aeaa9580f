/** One change of height, read at the chin, the incisors, the pin and the first molar. Negative closes. Millimetres. */
import type { CaseView } from '../case/fold.ts';
import { bonwillAltitude, solveHinge, VARIED, type HingeGeometry } from '../measure/hinge.ts';
import { pinChange, pinRule } from '../measure/pin.ts';
import type { HeightChange } from './decided.types.ts';
import { latestMm } from './latest.ts';
import type { ReadingRow, VerticalDimension } from './types.ts';

export interface ChangeFrom {
  readonly view: CaseView;
  /** Readings of this visit. */
  readonly rows: readonly ReadingRow[];
  /** Of the whole case: the distance to the hinge axis stays what it is. */
  readonly all: readonly ReadingRow[];
  readonly vertical: VerticalDimension;
}

type Ends = readonly [number, number];
const ends = (values: readonly number[]): Ends => [Math.min(...values), Math.max(...values)];

/** Hinge axis to incisal point from the distance read with a facebow, which runs along the side of the triangle. */
export function ownHinge(all: readonly ReadingRow[]): Partial<HingeGeometry> | undefined {
  const side = latestMm(all, 'axis-incisal');
  const altitude = side === undefined ? undefined : bonwillAltitude(side);
  return altitude?.ok === true ? { radiusMm: altitude.value } : undefined;
}

const REMOUNTED = { lower: -1, higher: 1 } as const;

/** What was ground off at the articulator, read on the pin: positions of the marks varied as the hinge model does. */
function groundChange({ view, rows, all }: ChangeFrom): HeightChange | undefined {
  const direction = view.answers.get('pin-direction')?.body.answer;
  const amount = latestMm(rows, 'pin-change');
  if (amount === undefined || (direction !== 'lower' && direction !== 'higher')) return undefined;
  const opened = pinRule(REMOUNTED[direction] * amount);
  if (!opened.ok) return undefined;
  const { pinMm, incisalMm } = opened.value;
  const own = ownHinge(all);
  const moves = [{}, ...Object.values(VARIED).flat()].flatMap((varied) => {
    const move = solveHinge('incisal', incisalMm, { ...own, ...varied });
    return move.ok ? [move.value] : [];
  });
  const centre = moves[0];
  if (centre === undefined) return undefined;
  return {
    from: 'ground',
    chinMm: centre.chinMm,
    incisalMm: [incisalMm, incisalMm],
    pinMm: [pinMm, pinMm],
    molarMm: ends(moves.map((move) => move.molarMm)),
  };
}

/** From the closed height of this visit to rest height less the wanted space, by means as the space itself is. */
function closedChange({ vertical, all }: ChangeFrom): HeightChange | undefined {
  const { rest, closed, targetSpaceMm } = vertical;
  if (rest?.meanMm === undefined || closed?.meanMm === undefined) return undefined;
  const own = ownHinge(all);
  const hinge = own === undefined ? {} : { hinge: own };
  const found = pinChange({ restMm: rest.meanMm, recordedMm: closed.meanMm, targetSpaceMm, ...hinge });
  if (!found.ok) return undefined;
  const { chinMm, incisalRangeMm, pinRangeMm, molarRangeMm } = found.value;
  return {
    from: 'closed',
    chinMm,
    incisalMm: ends(incisalRangeMm),
    pinMm: ends(pinRangeMm),
    molarMm: ends(molarRangeMm),
  };
}

function recordChange({ vertical }: ChangeFrom): HeightChange | undefined {
  const { lab } = vertical;
  if (lab === undefined) return undefined;
  return { from: 'record', chinMm: lab.chinMm, incisalMm: lab.incisalMm, pinMm: lab.pinMm, molarMm: lab.molarMm };
}

/**
 * The change of height that this visit asks about: what was ground off, else from the record, else from the closed
 * height to the wanted space. Undefined until its readings are there. Before the second visit only a record counts: what
 * is closed on then goes into no articulator. Sources: hinge-model, pin-rule.
 */
export function heightChange(from: ChangeFrom, visit: number): HeightChange | undefined {
  return groundChange(from) ?? recordChange(from) ?? (visit > 1 ? closedChange(from) : undefined);
}
