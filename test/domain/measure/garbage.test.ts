import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as condyle from '../../../src/domain/measure/condyle.ts';
import * as consistency from '../../../src/domain/measure/consistency.ts';
import * as crosschecks from '../../../src/domain/measure/crosschecks.ts';
import * as disinfection from '../../../src/domain/measure/disinfection.ts';
import * as edentulous from '../../../src/domain/measure/edentulous.ts';
import * as hinge from '../../../src/domain/measure/hinge.ts';
import * as mixing from '../../../src/domain/measure/mixing.ts';
import * as notation from '../../../src/domain/measure/notation.ts';
import * as pin from '../../../src/domain/measure/pin.ts';
import * as plane from '../../../src/domain/measure/plane.ts';
import * as ranges from '../../../src/domain/measure/ranges.ts';
import * as referral from '../../../src/domain/measure/referral.ts';
import * as review from '../../../src/domain/measure/review.ts';
import * as ridge from '../../../src/domain/measure/ridge.ts';
import * as standards from '../../../src/domain/measure/standards.ts';
import * as teeth from '../../../src/domain/measure/teeth.ts';
import * as tracing from '../../../src/domain/measure/tracing.ts';
import * as trays from '../../../src/domain/measure/trays.ts';
import * as verdict from '../../../src/domain/measure/verdict.ts';
import * as vertical from '../../../src/domain/measure/vertical.ts';
import * as windows from '../../../src/domain/measure/windows.ts';
import { plannedBack } from '../../../src/domain/measure/planned-back.ts';
import { sources } from '../../../src/domain/measure/sources.ts';
import type { Measured } from '../../../src/domain/measure/result.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';

type Numbers = readonly number[] & { 0: number; 1: number; 2: number; 3: number; 4: number; 5: number };
type Call = (n: Numbers) => Measured<unknown>;
const point = (x: number, y: number) => ({ x, y });
const sitting = (n: Numbers) => ({ rest: [n[0], n[1]], closed: [n[2]] });
const material = defaultPractice.materials[0]!;
const tray = defaultPractice.trays[0]!;

/** Every exported computation, fed with numbers of any kind. */
const CALLS: Readonly<Record<string, Call>> = {
  describeSet: (n) => vertical.describeSet(n),
  restSpace: (n) => vertical.restSpace([n[0], n[1]], [n[2], n[3]]),
  pinChange: (n) => pin.pinChange({ restMm: n[0], recordedMm: n[1], targetSpaceMm: n[2] }),
  pinChangeOwn: (n) =>
    pin.pinChange({ restMm: n[0], recordedMm: n[1], targetSpaceMm: 3, hinge: { radiusMm: n[3], noseDownMm: n[4] } }),
  linearChange: (n) => pin.linearChange(n[0]),
  pinRule: (n) => pin.pinRule(n[0]),
  bonwillAltitude: (n) => hinge.bonwillAltitude(n[0]),
  balkwillAngle: (n) => hinge.balkwillAngle(n[0], n[1]),
  turnJaw: (n) => hinge.turnJaw(n[0], { chinDownMm: n[1] }),
  solveChin: (n) => hinge.solveHinge('chin', n[0], { planeAngleDeg: n[1] }),
  solveIncisal: (n) => hinge.solveHinge('incisal', n[0]),
  solveMolar: (n) => hinge.solveHinge('molar', n[0]),
  hingeSensitivity: (n) => hinge.hingeSensitivity(n[0], { radiusMm: n[1] }),
  facialMeasure: (n) => crosschecks.facialMeasure(n[0], n[1]),
  speakingSpace: (n) => crosschecks.speakingSpace(n[0], n[1]),
  oldDentureChange: (n) => crosschecks.oldDentureChange(n[0], n[1], n[2]),
  spaceChange: (n) => crosschecks.spaceChange(sitting(n), { rest: [n[3], n[4]], closed: [n[5]] }),
  nextReading: (n) => verdict.nextReading([n[0]], [n[1]]),
  combinedHeight: (n) =>
    verdict.combinedHeight({
      rest: [7000, n[0]],
      closed: [6700],
      facial: { pupilToLip: n[1], noseBaseToChin: n[2] },
      speaking: { closed: n[3], atS: n[4] },
      oldDentures: { present: 6500, planned: n[5] },
    }),
  boneClass: (n) => edentulous.boneClass(n[0]),
  edentulousClass: (n) => edentulous.edentulousClass({ boneMm: n[0], interarchMm: n[1] }),
  boneLoss: (n) => ridge.boneLoss({ foramenMm: n[0], presentMm: n[1], factor: n[2] }),
  steadyLoss: (n) => ridge.steadyLoss(n[0], n[1]),
  palatalForm: (n) => ridge.palatalForm(n[0]),
  mixRatio: (n) => mixing.mixRatio({ powderG: n[0], waterMl: n[1] }),
  ratioCheck: (n) => mixing.ratioCheck({ powderG: n[0], waterMl: n[1] }, { powderG: n[2], waterMl: n[3] }),
  mixPlan: (n) => mixing.mixPlan({ leaflet: { powderG: n[0], waterMl: n[1] }, portions: n[2], lessWater: n[3] }),
  roomSetting: (n) => mixing.roomSetting('fast', n[0]),
  temperatureCheck: (n) => mixing.temperatureCheck(n[0], n[1]),
  materialPhases: (n) =>
    windows.materialPhases({
      ...material,
      mixS: n[0],
      workingS: n[1],
      removeS: n[2],
      pourFromMin: n[3],
      pourWithinMin: n[4],
    }),
  plannedBack: (n) => plannedBack({ ...material, mixS: n[0], workingS: n[1], removeS: n[2] }),
  pourState: (n) => windows.pourState({ removedAt: n[0], now: n[1], pourFromMin: n[2], pourWithinMin: n[3] }),
  disinfectionCheck: (n) =>
    disinfection.disinfectionCheck({ materialClass: 'alginate', agent: 'iodophor', minutes: n[0], labelMinutes: n[1] }),
  labRelease: (n) =>
    disinfection.labRelease({ agent: 'iodophor', concentration: '1:213', minutes: n[0], byWhom: 'AB' }),
  dentureSoak: (n) => disinfection.dentureSoak('hypochlorite', n[0]),
  elastomerCheck: (n) =>
    standards.elastomerCheck({ type: 'light', detailUm: n[0], recoveryPercent: n[1], strainPercent: n[2] }),
  changeOverSpan: (n) => standards.changeOverSpan(n[0], n[1]),
  lastingDent: (n) => standards.lastingDent(n[0], n[1], n[2]),
  rankTrays: (n) => trays.rankTrays([{ ...tray, innerWidth: n[0] }, tray], n[1], n[2]),
  trayBorder: (n) => trays.trayBorder(n[0], n[1], [n[2], n[3]]),
  widthFromPadCentres: (n) => trays.widthFromPadCentres(n[0], n[1]),
  toothSizes: (n) => teeth.toothSizes({ bizygomatic: n[0], faceLength: n[1], interalar: n[2], innerCanthal: n[3] }),
  lowerSixFromUpper: (n) => teeth.lowerSixFromUpper(n[0]),
  posteriorChoice: (n) => teeth.posteriorChoice(n[0], n[1], [n[2], n[3]]),
  codeFromCount: (n) => notation.codeFromCount(n[0]),
  padHeight: (n) => plane.padHeight(n[0], n[1]),
  incisalGuidance: (n) => plane.incisalGuidance(n[0], n[1]),
  planeTilt: (n) => plane.planeTilt(n[0], n[1]),
  planeSlope: (n) => plane.planeSlope(n[0], n[1], n[2]),
  rimHeight: (n) => plane.rimHeight('upperFront', n[0]),
  tracing: (n) => tracing.tracing([point(n[0], n[1]), point(n[2], n[3])], [point(0, 0), point(n[4], n[5])]),
  apexScatter: (n) => tracing.apexScatter([point(n[0], n[1]), point(n[2], n[3])]),
  lateralGuidance: (n) => condyle.lateralGuidance(n[0]),
  sagittalFromLateral: (n) => condyle.sagittalFromLateral(n[0]),
  protrusiveInclination: (n) =>
    condyle.protrusiveInclination({
      forwardMm: n[0],
      molarGapMm: n[1],
      incisalGapMm: n[2],
      incisalAheadMm: n[3],
      molarAheadMm: n[4],
    }),
  meanInclination: (n) => condyle.meanInclination([{ forwardMm: n[0], molarGapMm: n[1], incisalGapMm: n[2] }]),
  checkRange: (n) => ranges.checkRange('bizygomatic', n[0], { bizygomatic: { usual: [n[1], n[2]] } }),
  clashes: (n) => consistency.clashes({ rest: n[0], closed: n[1], interalar: n[2], intercommissural: n[3] }),
  retentionScore: (n) =>
    review.retentionScore({ retention: n[0], stability: n[1] }, { retention: n[2], stability: n[3] }),
  dentureScore: (n) => review.dentureScore({ retention: n[0], stability: n[1] }),
  referral: (n) => referral.referral({ kind: 'ulcer', days: n[0], daysSinceRemoved: n[1] }),
};

const anyNumber = fc.oneof(
  { arbitrary: fc.constantFrom(NaN, Infinity, -Infinity, 0, -0, -1, 0.5, 1e-320, 1e15, 1e308, 2 ** 53), weight: 2 },
  { arbitrary: fc.double(), weight: 1 },
  { arbitrary: fc.integer({ min: 0, max: 12000 }), weight: 4 },
  { arbitrary: fc.integer({ min: 1, max: 60 }), weight: 4 },
);
const six = fc.tuple(anyNumber, anyNumber, anyNumber, anyNumber, anyNumber, anyNumber);

/** Paths of numbers that are not finite, anywhere inside a value. */
function unfit(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} ${value}`];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => unfit(inner, `${path}.${key}`));
}

describe('no number, however odd, makes a computation throw or answer NaN', () => {
  it.each(Object.entries(CALLS))('%s', (_, call) => {
    fc.assert(
      fc.property(six, (numbers) => {
        const result = call(numbers);
        if (!result.ok) {
          expect(result.text.length).toBeGreaterThan(5);
          expect(result.text).not.toContain('undefined');
          return;
        }
        expect(unfit(result.value)).toEqual([]);
        expect(unfit(result.uncertainty)).toEqual([]);
        expect(sources).toHaveProperty(result.source);
      }),
      { numRuns: 300 },
    );
  });

  it.each(Object.entries(CALLS))('%s refuses when all it gets is NaN', (name, call) => {
    const result = call([NaN, NaN, NaN, NaN, NaN, NaN]);
    expect(result.ok, name).toBe(false);
  });
});
