/** The same figures worked out a second time by another library or another method, over many random cases. */
import {
  abs,
  complex,
  gamma,
  mad,
  max,
  mean,
  median,
  min,
  multiply,
  std,
  subtract,
  variance,
  type Complex,
} from 'mathjs';
import {
  hingePoints,
  rotate,
  solveHinge,
  turnJaw,
  type HingeGeometry,
  type Point,
} from '../../src/domain/measure/hinge.ts';
import { modifiedZ, pooledSd, t95 } from '../../src/domain/measure/spread.ts';
import { tracing, type TracePoint } from '../../src/domain/measure/tracing.ts';
import { describeSet, restSpace } from '../../src/domain/measure/vertical.ts';
import { of, type Sweep } from './check.ts';
import { chance, type Chance } from './random.ts';

/** Largest of `cases` errors, each from its own random case. */
function worstOf(seed: number, one: (c: Chance) => number): (cases: number) => number {
  return (cases) => {
    const c = chance(seed);
    let worst = 0;
    for (let i = 0; i < cases; i += 1) {
      const error = one(c);
      if (!(error <= worst)) worst = error;
    }
    return worst;
  };
}

const set = (c: Chance, least: number, most: number) =>
  Array.from({ length: c.whole(least, most) }, () => c.whole(4000, 11000));

const describeError = (c: Chance) => {
  const values = set(c, 2, 12);
  const ours = of(describeSet(values));
  const millimetres = values.map((v) => v / 100);
  const sd = Number(std(millimetres));
  return Math.max(
    Math.abs(ours.meanMm - Number(mean(millimetres))),
    Math.abs(ours.medianMm - Number(median(millimetres))),
    Math.abs(ours.rangeMm - (Number(max(millimetres)) - Number(min(millimetres)))),
    Math.abs((ours.sdMm ?? NaN) - sd),
    Math.abs((ours.standardErrorMm ?? NaN) - sd / Math.sqrt(values.length)),
  );
};

const spaceError = (c: Chance) => {
  const [rest, closed] = [set(c, 3, 8), set(c, 3, 8)];
  const ours = of(restSpace(rest, closed));
  const [a, b] = [rest.map((v) => v / 100), closed.map((v) => v / 100)];
  const pooled =
    ((a.length - 1) * Number(variance(a)) + (b.length - 1) * Number(variance(b))) / (a.length + b.length - 2);
  const sd = Math.sqrt(Math.max(pooled, 0.25 / 12) * (1 / a.length + 1 / b.length));
  return Math.max(Math.abs(ours.spaceMm - (Number(mean(a)) - Number(mean(b)))), Math.abs(ours.sdMm - sd));
};

const zError = (c: Chance) => {
  const values = set(c, 3, 12);
  const spread = Math.max(Number(mad(values)), 25);
  const centre = Number(median(values));
  return Math.max(...modifiedZ(values, 25).map((z, i) => Math.abs(z - (0.6745 * (values[i]! - centre)) / spread)));
};

const pooledError = (c: Chance) => {
  const sets = Array.from({ length: c.whole(2, 4) }, () => set(c, 1, 6));
  const ours = pooledSd(sets);
  const usable = sets.filter((s) => s.length > 1);
  if (usable.length === 0) return ours === undefined ? 0 : Infinity;
  const degrees = usable.reduce((sum, s) => sum + s.length - 1, 0);
  const squares = usable.reduce((sum, s) => sum + Number(variance(s)) * (s.length - 1), 0);
  return Math.abs((ours?.sd ?? NaN) / Math.sqrt(squares / degrees) - 1);
};

const jaw = (c: Chance): HingeGeometry => ({
  radiusMm: c.between(70, 120),
  planeAngleDeg: c.between(10, 30),
  molarBehindMm: c.between(20, 45),
  chinForwardMm: c.between(-10, 5),
  chinDownMm: c.between(28, 50),
  noseForwardMm: c.between(0, 30),
  noseDownMm: c.between(-40, -20),
});

const asComplex = ({ x, y }: Point) => complex(x, y);
const turned = (point: Point, degrees: number) =>
  multiply(asComplex(point), complex({ r: 1, phi: (degrees * Math.PI) / 180 })) as Complex;
const apart = (a: Complex, b: Complex) => Number(abs(subtract(a, b)));

const rotationError = (c: Chance) => {
  const hinge = jaw(c);
  const turn = c.between(-8, 8);
  const { incisal, molar, chin, nose } = hingePoints(hinge);
  const ours = of(turnJaw(turn, hinge));
  const [i, m, k] = [incisal, molar, chin].map((point) => turned(point, turn));
  const caliper = apart(k!, asComplex(nose)) - apart(asComplex(chin), asComplex(nose));
  const there = rotate(incisal, turn);
  return Math.max(
    Math.abs(there.x - i!.re),
    Math.abs(there.y - i!.im),
    Math.abs(ours.chinMm - caliper),
    Math.abs(ours.incisalMm - (i!.im - incisal.y)),
    Math.abs(ours.incisalForwardMm - (i!.re - incisal.x)),
    Math.abs(ours.molarMm - (m!.im - molar.y)),
    Math.abs(ours.chinDownMm - (k!.im - chin.y)),
  );
};

/** The turn for a caliper change found by halving an interval, as one would by trial on an articulator. */
function bisected(hinge: HingeGeometry, change: number): number {
  let [low, high] = [-20, 20];
  for (let i = 0; i < 80; i += 1) {
    const middle = (low + high) / 2;
    const { chin, nose } = hingePoints(hinge);
    const now = apart(turned(chin, middle), asComplex(nose)) - apart(asComplex(chin), asComplex(nose));
    if (now < change) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const solveError = (c: Chance) => {
  const hinge = jaw(c);
  const change = c.between(-6, 6);
  return Math.abs(of(solveHinge('chin', change, hinge)).turnDeg - bisected(hinge, change));
};

const backError = (c: Chance) => {
  const hinge = jaw(c);
  const turn = c.between(-6, 6);
  const there = of(turnJaw(turn, hinge));
  const back = [
    solveHinge('chin', there.chinMm, hinge),
    solveHinge('incisal', there.incisalMm, hinge),
    solveHinge('molar', there.molarMm, hinge),
  ];
  return Math.max(...back.map((move) => Math.abs(of(move).turnDeg - turn)));
};

/** Two-sided tail of Student's t by Simpson's rule on its density. */
function tCovered(degrees: number, t: number): number {
  const scale = gamma((degrees + 1) / 2) / (Math.sqrt(degrees * Math.PI) * gamma(degrees / 2));
  const density = (x: number) => scale * (1 + (x * x) / degrees) ** (-(degrees + 1) / 2);
  const steps = 4000;
  const step = t / steps;
  let sum = density(0) + density(t);
  for (let i = 1; i < steps; i += 1) sum += (i % 2 === 0 ? 2 : 4) * density(i * step);
  return (2 * sum * step) / 3;
}

const tWorst = (cases: number) =>
  Math.max(...Array.from({ length: cases }, (_, i) => Math.abs(tCovered(i + 1, t95(i + 1)) - 0.95)));

/** Sum of squared distances of points from the line through their centroid at an angle. */
function offLine(points: readonly TracePoint[], angle: number): number {
  const [x, y] = [Number(mean(points.map((p) => p.x))), Number(mean(points.map((p) => p.y)))];
  return points.reduce((sum, p) => sum + ((p.x - x) * Math.sin(angle) - (p.y - y) * Math.cos(angle)) ** 2, 0);
}

function bestAngle(points: readonly TracePoint[], about: number): number {
  let [low, high] = [about - 0.5, about + 0.5];
  for (let i = 0; i < 60; i += 1) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (offLine(points, a) < offLine(points, b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

const tracingError = (c: Chance) => {
  const apex = { x: c.between(-3, 3), y: c.between(-3, 3) };
  const angles = [Math.PI + c.between(0.3, 0.9), -c.between(0.3, 0.9)] as const;
  const [left, right] = angles.map((angle) =>
    Array.from({ length: c.whole(4, 9) }, (_, i): TracePoint => {
      const along = 1 + i;
      return {
        x: apex.x + along * Math.cos(angle) + c.between(-0.1, 0.1),
        y: apex.y + along * Math.sin(angle) + c.between(-0.1, 0.1),
      };
    }),
  );
  const ours = of(tracing(left!, right!));
  const between = Math.abs(bestAngle(left!, angles[0]) - bestAngle(right!, angles[1])) * (180 / Math.PI);
  return Math.abs(ours.angleDeg - (between > 180 ? 360 - between : between));
};

const CASES = 10_000;

export const sweeps: readonly Sweep[] = [
  {
    what: 'mean, median, range, SD and standard error of a set, mm',
    against: 'mathjs',
    source: 'summary-statistics',
    status: 'common practice',
    cases: CASES,
    tolerance: 1e-9,
    worst: worstOf(1, describeError),
  },
  {
    what: 'rest space and its SD from two sets, mm',
    against: 'mathjs',
    source: 'rest-space-spread',
    status: 'derived',
    cases: CASES,
    tolerance: 1e-9,
    worst: worstOf(2, spaceError),
  },
  {
    what: 'modified z-scores',
    against: 'mathjs',
    source: 'modified-z',
    status: 'from memory',
    cases: CASES,
    tolerance: 1e-9,
    worst: worstOf(3, zError),
  },
  {
    what: 'pooled SD, relative',
    against: 'mathjs',
    source: 'rest-space-spread',
    status: 'derived',
    cases: CASES,
    tolerance: 1e-9,
    worst: worstOf(4, pooledError),
  },
  {
    what: 'turning the jaw: all moves, mm',
    against: 'mathjs, multiplication of complex numbers',
    source: 'hinge-model',
    status: 'derived',
    cases: CASES,
    tolerance: 1e-9,
    worst: worstOf(5, rotationError),
  },
  {
    what: 'turn for a nose to chin change, degrees',
    against: 'halving an interval, mathjs complex numbers',
    source: 'hinge-model',
    status: 'derived',
    cases: CASES,
    tolerance: 1e-6,
    worst: worstOf(6, solveError),
  },
  {
    what: 'turn, and back from chin, incisors and molar, degrees',
    against: 'its own inverse',
    source: 'hinge-model',
    status: 'derived',
    cases: CASES,
    tolerance: 1e-6,
    worst: worstOf(7, backError),
  },
  {
    what: 'Student’s t, 1 to 60 degrees of freedom: share covered',
    against: 'Simpson’s rule on the density, mathjs gamma function',
    source: 'student-t',
    status: 'from memory',
    cases: 60,
    tolerance: 5e-5,
    worst: tWorst,
  },
  {
    what: 'angle of a tracing, degrees',
    against: 'least squares by search',
    source: 'arrow-lines',
    status: 'derived',
    cases: 2000,
    tolerance: 1e-4,
    worst: worstOf(8, tracingError),
  },
];
