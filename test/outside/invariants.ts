/** What must hold for every case, not only for the printed ones. Each check throws when it does not. */
import fc from 'fast-check';
import { hingePoints, rotate, solveHinge, turnJaw, type HingeGeometry } from '../../src/domain/measure/hinge.ts';
import { allTeeth, codeFromCount, codeFromName, toothFromCode } from '../../src/domain/measure/notation.ts';
import { pinChange } from '../../src/domain/measure/pin.ts';
import type { SourceId, SourceStatus } from '../../src/domain/measure/sources.ts';
import { restSpace } from '../../src/domain/measure/vertical.ts';
import { of, refusalOf } from './check.ts';

export interface Invariant {
  readonly what: string;
  /** Over which cases. */
  readonly over: string;
  readonly source: SourceId;
  readonly status: SourceStatus;
  readonly check: () => void;
}

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const jaws: fc.Arbitrary<HingeGeometry> = fc.record({
  radiusMm: real(75, 125),
  planeAngleDeg: real(12, 30),
  molarBehindMm: real(20, 45),
  chinForwardMm: real(-10, 5),
  chinDownMm: real(28, 50),
  noseForwardMm: real(0, 30),
  noseDownMm: real(-40, -20),
});
const turns = fc.oneof(real(0.05, 6), real(-6, -0.05));

function must(holds: boolean, what: string): void {
  if (!holds) throw new Error(what);
}

const RUNS = 1000;
const hinge = (what: string, property: (jaw: HingeGeometry, turn: number) => void): Invariant => ({
  what,
  over: `${RUNS} random jaws and turns`,
  source: 'hinge-model',
  status: 'derived',
  check: () => fc.assert(fc.property(jaws, turns, property), { numRuns: RUNS }),
});

const hingeInvariants: readonly Invariant[] = [
  hinge('no turn, no change anywhere', (jaw) => {
    const { chinMm, chinDownMm, incisalMm, molarMm, incisalForwardMm } = of(turnJaw(0, jaw));
    for (const move of [chinMm, chinDownMm, incisalMm, molarMm, incisalForwardMm]) must(move === 0, `moved ${move}`);
  }),
  hinge('chin, incisors and first molar open together and close together', (jaw, turn) => {
    const { chinMm, incisalMm, molarMm } = of(turnJaw(turn, jaw));
    for (const move of [chinMm, incisalMm, molarMm])
      must(Math.sign(move) === Math.sign(turn), `${turn}° moved ${move}`);
  }),
  hinge('the first molar moves less than the incisors', (jaw, turn) => {
    const { incisalMm, molarMm } = of(turnJaw(turn, jaw));
    must(Math.abs(molarMm) < Math.abs(incisalMm), `molar ${molarMm}, incisors ${incisalMm}`);
  }),
  hinge('every point keeps its distance from the axis', (jaw, turn) => {
    for (const point of Object.values(hingePoints(jaw))) {
      const there = rotate(point, turn);
      must(Math.abs(Math.hypot(there.x, there.y) - Math.hypot(point.x, point.y)) < 1e-9, 'distance changed');
    }
  }),
  hinge('opening carries the incisors back, closing carries them forward', (jaw, turn) => {
    must(Math.sign(of(turnJaw(turn, jaw)).incisalForwardMm) === -Math.sign(turn), `${turn}°`);
  }),
  {
    what: 'the larger the angle to the occlusal plane, the less the first molar moves for the same chin change',
    over: `${RUNS} random pairs of angles`,
    source: 'hinge-model',
    status: 'derived',
    check: () =>
      fc.assert(
        fc.property(real(10, 34), real(0.5, 5), real(0.5, 4), (angle, more, chin) => {
          const share = (planeAngleDeg: number) => of(solveHinge('chin', chin, { planeAngleDeg })).molarMm / chin;
          must(share(angle + more) < share(angle), `${angle}° and ${angle + more}°`);
        }),
        { numRuns: RUNS },
      ),
  },
  {
    what: 'the exact answer lies inside the range that is shown',
    over: `${RUNS} random heights`,
    source: 'hinge-factors',
    status: 'derived',
    check: () =>
      fc.assert(
        fc.property(real(55, 85), real(-6, 6), real(2, 4), (rest, off, space) => {
          const change = of(pinChange({ restMm: rest, recordedMm: rest - space - off, targetSpaceMm: space }));
          const inside = (value: number, [low, high]: readonly [number, number]) =>
            value >= low - 1e-9 && value <= high + 1e-9;
          must(inside(change.incisalMm, change.incisalRangeMm), `incisors ${change.incisalMm} for ${change.chinMm}`);
          must(inside(change.molarMm, change.molarRangeMm), `molar ${change.molarMm} for ${change.chinMm}`);
        }),
        { numRuns: RUNS },
      ),
  },
];

const heightInvariants: readonly Invariant[] = [
  {
    what: 'the same amount added to all readings leaves the rest space as it is',
    over: `${RUNS} random pairs of sets`,
    source: 'glossary-rest-space',
    status: 'derived',
    check: () => {
      const readings = fc.array(fc.integer({ min: 4000, max: 9000 }), { minLength: 1, maxLength: 6 });
      fc.assert(
        fc.property(readings, readings, fc.integer({ min: 0, max: 2000 }), (rest, closed, more) => {
          const [a, b] = [
            restSpace(rest, closed),
            restSpace(
              rest.map((v) => v + more),
              closed.map((v) => v + more),
            ),
          ];
          must(Math.abs(of(a).spaceMm - of(b).spaceMm) < 1e-9, 'space changed');
          must(Math.abs(of(a).sdMm - of(b).sdMm) < 1e-9, 'spread changed');
        }),
        { numRuns: RUNS },
      );
    },
  },
];

const CODES = Array.from({ length: 100 }, (_, i) => String(i).padStart(2, '0'));

const notationInvariants: readonly Invariant[] = [
  {
    what: 'every tooth comes back from its name and from its count',
    over: 'all 32 permanent teeth',
    source: 'iso-3950',
    status: 'from memory',
    check: () => {
      const teeth = allTeeth();
      must(teeth.length === 32, `${teeth.length} teeth`);
      must(new Set(teeth.map((t) => t.count)).size === 32, 'counts repeat');
      for (const tooth of teeth) {
        must(of(codeFromName(tooth.name)) === tooth.code, tooth.name);
        must(of(codeFromCount(tooth.count)) === tooth.code, `${tooth.count}`);
        must(of(toothFromCode(tooth.code)).name === tooth.name, tooth.code);
      }
    },
  },
  {
    what: 'every other pair of digits is refused',
    over: 'the other 68 of 100 pairs',
    source: 'iso-3950',
    status: 'from memory',
    check: () => {
      const valid = CODES.filter((code) => refusalOf(toothFromCode(code)) === 'ok');
      must(valid.length === 32, `${valid.length} accepted`);
      must(
        valid.every((code) => code >= '11' && code <= '48' && code[1]! >= '1' && code[1]! <= '8'),
        valid.join(' '),
      );
    },
  },
];

export const invariants: readonly Invariant[] = [...hingeInvariants, ...heightInvariants, ...notationInvariants];
