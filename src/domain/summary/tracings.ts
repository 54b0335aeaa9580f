/** Needle-point tracings: the points read off the millimetre sheet, how far they scatter, the angle of the legs. */
import type { CaseView } from '../case/fold.ts';
import { apexScatter, tracing } from '../measure/tracing.ts';
import type { Apex, PointMm, TracingView } from './decided.types.ts';
import { latestMm } from './latest.ts';
import type { ReadingRow } from './types.ts';

const NUMBERS = [1, 2, 3] as const;

function pointOf(rows: readonly ReadingRow[], name: string): PointMm | undefined {
  const [xMm, yMm] = [latestMm(rows, `${name}-x`), latestMm(rows, `${name}-y`)];
  return xMm === undefined || yMm === undefined ? undefined : { xMm, yMm };
}

function apexesOf(view: CaseView, rows: readonly ReadingRow[]): readonly Apex[] {
  return NUMBERS.flatMap((n) => {
    const point = pointOf(rows, `tracing-${n}`);
    if (point === undefined) return [];
    const said = view.answers.get(`tracing-${n}-sharp`)?.body.answer;
    return [{ n, ...point, ...(said === undefined ? {} : { sharp: said === 'sharp' }) }];
  });
}

const asTrace = ({ xMm, yMm }: PointMm) => ({ x: xMm, y: yMm });

function scatterOf(apexes: readonly Apex[]): TracingView['scatter'] {
  const found = apexScatter(apexes.map(asTrace));
  if (!found.ok) return undefined;
  const { centroid, rmsMm, largestPairMm, verdict } = found.value;
  const radiusMm = Math.max(...apexes.map(({ xMm, yMm }) => Math.hypot(xMm - centroid.x, yMm - centroid.y)));
  return { xMm: centroid.x, yMm: centroid.y, rmsMm, largestPairMm, radiusMm, verdict };
}

interface Legs {
  readonly rightLeg?: PointMm;
  readonly leftLeg?: PointMm;
}

/** Each leg runs from the point to the end that was read. */
function archOf(point: PointMm, { rightLeg, leftLeg }: Legs): TracingView['arch'] {
  if (rightLeg === undefined || leftLeg === undefined) return undefined;
  const from = asTrace(point);
  const found = tracing([from, asTrace(leftLeg)], [from, asTrace(rightLeg)]);
  if (!found.ok) return undefined;
  const { angleDeg, rightDeg, leftDeg, asymmetryDeg, verdict, asymmetric } = found.value;
  return { angleDeg, rightDeg, leftDeg, asymmetryDeg, verdict, asymmetric };
}

function legsOf(rows: readonly ReadingRow[]): Legs {
  const [rightLeg, leftLeg] = [pointOf(rows, 'leg-right'), pointOf(rows, 'leg-left')];
  return { ...(rightLeg === undefined ? {} : { rightLeg }), ...(leftLeg === undefined ? {} : { leftLeg }) };
}

/**
 * The tracings of this visit in millimetres on their sheet, as far as both numbers of a point were read; undefined
 * before the first point. Scatter from two points on, the angle once both ends of the legs are read. Source: arrow-point.
 */
export function tracingOf(view: CaseView, rows: readonly ReadingRow[]): TracingView | undefined {
  const apexes = apexesOf(view, rows);
  const first = apexes[0];
  if (first === undefined) return undefined;
  const scatter = scatterOf(apexes);
  const legs = legsOf(rows);
  const arch = archOf(scatter ?? first, legs);
  return {
    apexes,
    ...(scatter === undefined ? {} : { scatter }),
    ...legs,
    ...(arch === undefined ? {} : { arch }),
  };
}
