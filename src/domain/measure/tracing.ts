/** Arrow-point tracings: two legs fitted by total least squares, the apex where they cross, and how far repeats scatter. */
import { badNumber } from './check.ts';
import { known, refuse, type Measured, type Refused } from './result.ts';

/** Millimetres on the tracing plate; y forward or back as drawn, the same for all points of one tracing. */
export interface TracePoint {
  readonly x: number;
  readonly y: number;
}

interface Line {
  readonly at: TracePoint;
  readonly direction: TracePoint;
}

const degrees = (radians: number) => (radians * 180) / Math.PI;
const distance = (a: TracePoint, b: TracePoint) => Math.hypot(a.x - b.x, a.y - b.y);

function centroid(points: readonly TracePoint[]): TracePoint {
  const sum = points.reduce((s, p) => ({ x: s.x + p.x, y: s.y + p.y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

function badPoints(points: readonly TracePoint[], name: string, least: number): Refused | undefined {
  if (points.length < least) return refuse('tooFew', `${name}: at least ${least} points are needed.`);
  for (const { x, y } of points) {
    const bad = badNumber(x, `${name}: a point`) ?? badNumber(y, `${name}: a point`);
    if (bad !== undefined) return bad;
  }
  return undefined;
}

/** Line of least squared distances at right angles, through the centroid; undefined when the points have no direction. */
function fitLine(points: readonly TracePoint[]): Line | undefined {
  const at = centroid(points);
  let [xx, yy, xy] = [0, 0, 0];
  for (const p of points) {
    xx += (p.x - at.x) ** 2;
    yy += (p.y - at.y) ** 2;
    xy += (p.x - at.x) * (p.y - at.y);
  }
  if (Math.hypot(xx - yy, 2 * xy) <= 1e-9 * (xx + yy)) return undefined;
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return { at, direction: { x: Math.cos(angle), y: Math.sin(angle) } };
}

function crossing(a: Line, b: Line): TracePoint | undefined {
  const cross = a.direction.x * b.direction.y - a.direction.y * b.direction.x;
  if (Math.abs(cross) < 1e-6) return undefined;
  const t = ((b.at.x - a.at.x) * b.direction.y - (b.at.y - a.at.y) * b.direction.x) / cross;
  return { x: a.at.x + t * a.direction.x, y: a.at.y + t * a.direction.y };
}

/** Points of the leg as seen from the apex; both ends of the fitted line lie on it, this picks the drawn one. */
function legAngle(line: Line, apex: TracePoint): number {
  const { direction, at } = line;
  const away = (at.x - apex.x) * direction.x + (at.y - apex.y) * direction.y >= 0 ? 1 : -1;
  return Math.atan2(away * direction.y, away * direction.x);
}

/** Angle between two directions, 0 to 180 degrees. */
function between(a: number, b: number): number {
  const turn = Math.abs(degrees(a - b)) % 360;
  return turn > 180 ? 360 - turn : turn;
}

export interface Tracing {
  readonly apex: TracePoint;
  readonly angleDeg: number;
  /** Each leg to the y axis of the plate (the midline), degrees. */
  readonly leftDeg: number;
  readonly rightDeg: number;
  readonly asymmetryDeg: number;
  readonly verdict: 'usual' | 'sharp' | 'wide' | 'blunt';
  readonly asymmetric: boolean;
}

/** Usual apex angle 90 to 140°, blunt over 150° (from memory); legs more than 10° apart warned (our choice). */
const LIMITS = { sharpDeg: 90, wideDeg: 140, bluntDeg: 150, asymmetryDeg: 10 } as const;

/**
 * Apex and angle of one tracing from points along its two legs, millimetres and degrees. "sharp" under 90°, "wide" 140 to
 * 150°, "blunt" beyond: look again or retake. The angle says nothing about the condylar inclination. Refuses fewer than
 * two points a leg, legs without direction and parallel legs (`noSolution`). Sources: arrow-lines, arrow-point.
 */
export function tracing(left: readonly TracePoint[], right: readonly TracePoint[]): Measured<Tracing> {
  const bad = badPoints(left, 'Left leg', 2) ?? badPoints(right, 'Right leg', 2);
  if (bad !== undefined) return bad;
  const [a, b] = [fitLine(left), fitLine(right)];
  if (a === undefined || b === undefined) return refuse('noSolution', 'A leg’s points do not lie along a line.');
  const apex = crossing(a, b);
  if (apex === undefined) return refuse('noSolution', 'The legs run parallel: no apex.');
  const [l, r] = [legAngle(a, apex), legAngle(b, apex)];
  const angleDeg = between(l, r);
  const midline = Math.sin(l) + Math.sin(r) >= 0 ? Math.PI / 2 : -Math.PI / 2;
  const [leftDeg, rightDeg] = [between(l, midline), between(r, midline)];
  const asymmetryDeg = Math.abs(leftDeg - rightDeg);
  const { sharpDeg, wideDeg, bluntDeg } = LIMITS;
  const verdict = angleDeg > bluntDeg ? 'blunt' : angleDeg > wideDeg ? 'wide' : angleDeg < sharpDeg ? 'sharp' : 'usual';
  const asymmetric = asymmetryDeg > LIMITS.asymmetryDeg;
  const value: Tracing = { apex, angleDeg, leftDeg, rightDeg, asymmetryDeg, verdict, asymmetric };
  const inputs = [`${left.length} points left`, `${right.length} points right`];
  return known({ value, inputs, source: 'arrow-lines' });
}

export interface ApexScatter {
  readonly centroid: TracePoint;
  readonly rmsMm: number;
  readonly largestPairMm: number;
  readonly verdict: 'accept' | 'repeat' | 'reject';
}

/**
 * Scatter of repeated apices about their centroid, millimetres: furthest pair up to 0.5 accept, up to 1.0 repeat, beyond
 * reject. No scatter at all is never asked for. Refuses fewer than two apices. Sources: arrow-lines, arrow-point.
 */
export function apexScatter(apices: readonly TracePoint[]): Measured<ApexScatter> {
  const bad = badPoints(apices, 'Apices', 2);
  if (bad !== undefined) return bad;
  const middle = centroid(apices);
  const rmsMm = Math.sqrt(apices.reduce((sum, p) => sum + distance(p, middle) ** 2, 0) / apices.length);
  const largestPairMm = apices.reduce(
    (most, p, i) => Math.max(most, ...apices.slice(i + 1).map((q) => distance(p, q))),
    0,
  );
  const verdict = largestPairMm <= 0.5 + 1e-9 ? 'accept' : largestPairMm <= 1 + 1e-9 ? 'repeat' : 'reject';
  const value: ApexScatter = { centroid: middle, rmsMm, largestPairMm, verdict };
  return known({ value, inputs: [`${apices.length} apices`], source: 'arrow-point', uncertainty: rmsMm });
}
