import {
  lateralGuidance,
  meanInclination,
  protrusiveInclination,
  sagittalFromLateral,
} from '../../src/domain/measure/condyle.ts';
import { codeFromCount, codeFromName, toothFromCode } from '../../src/domain/measure/notation.ts';
import { incisalGuidance, padHeight, planeSlope, planeTilt, rimHeight } from '../../src/domain/measure/plane.ts';
import { lowerSixFromUpper, posteriorChoice, toothSizes } from '../../src/domain/measure/teeth.ts';
import { apexScatter, tracing } from '../../src/domain/measure/tracing.ts';
import {
  computation,
  fields,
  length,
  many,
  maybe,
  number,
  oneOf,
  point,
  text,
  turned,
  type Computation,
} from './inputs.ts';

const record = {
  forwardMm: number('mm'),
  molarGapMm: number('mm'),
  incisalGapMm: number('mm'),
  incisalAheadMm: maybe(number('mm')),
  molarAheadMm: maybe(number('mm')),
};

const teeth: readonly Computation[] = [
  computation('toothSizes', {
    about: 'front teeth by every rule at hand, with their spread',
    unit: 'mm',
    takes: {
      bizygomatic: maybe(length),
      faceLength: maybe(length),
      interalar: maybe(length),
      innerCanthal: maybe(length),
      interpupillary: maybe(length),
      lowerSix: maybe(length),
      commissureCurve: maybe(length),
    },
    run: (i) => toothSizes(i),
  }),
  computation('lowerSixFromUpper', {
    about: 'lower six from the upper six',
    unit: 'mm',
    takes: { upperSix: length },
    run: (i) => lowerSixFromUpper(i.upperSix),
  }),
  computation('posteriorChoice', {
    about: 'set of lower back teeth that fits the smaller side',
    unit: 'mm',
    takes: { left: length, right: length, sets: many(length) },
    run: (i) =>
      turned(posteriorChoice(i.left, i.right, i.sets), ({ set, ...rest }) => ({
        ...rest,
        ...(set === undefined ? {} : { setMm: set / 100 }),
      })),
  }),
  computation('toothFromCode', {
    about: 'a tooth from its two digits',
    unit: 'name',
    takes: { code: text('two digits') },
    run: (i) => toothFromCode(i.code),
  }),
  computation('codeFromName', {
    about: 'the two digits of a named tooth',
    unit: 'code',
    takes: { name: text('name') },
    run: (i) => codeFromName(i.name),
  }),
  computation('codeFromCount', {
    about: 'the two digits of a tooth counted 1 to 32',
    unit: 'code',
    takes: { count: number('1–32') },
    run: (i) => codeFromCount(i.count),
  }),
];

const plane: readonly Computation[] = [
  computation('padHeight', {
    about: 'rear end of the lower plane on the retromolar pad',
    unit: 'mm',
    takes: { pad: length, plane: length },
    run: (i) => padHeight(i.pad, i.plane),
  }),
  computation('incisalGuidance', {
    about: 'incisal guidance angle from the overlaps',
    unit: '°',
    takes: { vertical: length, horizontal: length },
    run: (i) => incisalGuidance(i.vertical, i.horizontal),
  }),
  computation('planeTilt', {
    about: 'tilt of a line from the difference of its ends',
    unit: '°',
    takes: { difference: length, across: length },
    run: (i) => planeTilt(i.difference, i.across),
  }),
  computation('planeSlope', {
    about: 'slope against the ala–tragus line',
    unit: '°',
    takes: { rearMm: number('mm'), frontMm: number('mm'), runMm: number('mm') },
    run: (i) => planeSlope(i.rearMm, i.frontMm, i.runMm),
  }),
  computation('rimHeight', {
    about: 'a rim height, show or overlap against the handbook',
    unit: 'mm',
    takes: {
      place: oneOf('upperFront', 'upperRear', 'lowerFront', 'incisalShow', 'horizontalOverlap', 'verticalOverlap'),
      mm: number('mm'),
    },
    run: (i) => rimHeight(i.place, i.mm),
  }),
];

const movements: readonly Computation[] = [
  computation('tracing', {
    about: 'apex and angle of an arrow-point tracing',
    unit: 'mm, °',
    takes: { left: many(point), right: many(point) },
    run: (i) => tracing(i.left, i.right),
  }),
  computation('apexScatter', {
    about: 'scatter of repeated apices',
    unit: 'mm',
    takes: { apices: many(point) },
    run: (i) => apexScatter(i.apices),
  }),
  computation('protrusiveInclination', {
    about: 'condylar inclination from a protrusive record',
    unit: '°',
    takes: record,
    run: (i) => protrusiveInclination(i),
  }),
  computation('meanInclination', {
    about: 'mean of several protrusive records',
    unit: '°',
    takes: { records: many(fields(record)) },
    run: (i) => meanInclination(i.records),
  }),
  computation('lateralGuidance', {
    about: 'lateral guidance rule',
    unit: '°',
    takes: { sagittalDeg: number('°') },
    run: (i) => lateralGuidance(i.sagittalDeg),
  }),
  computation('sagittalFromLateral', {
    about: 'lateral guidance rule, backwards',
    unit: '°',
    takes: { lateralDeg: number('°') },
    run: (i) => sagittalFromLateral(i.lateralDeg),
  }),
];

export const toothComputations: readonly Computation[] = [...teeth, ...plane, ...movements];
