import { badAmount } from '../../src/domain/measure/check.ts';
import {
  basesNote,
  facialMeasure,
  oldDentureChange,
  spaceChange,
  speakingSpace,
} from '../../src/domain/measure/crosschecks.ts';
import {
  balkwillAngle,
  bonwillAltitude,
  hingeSensitivity,
  solveHinge,
  turnJaw,
} from '../../src/domain/measure/hinge.ts';
import { linearChange, pinChange, pinRule } from '../../src/domain/measure/pin.ts';
import { known, refuse } from '../../src/domain/measure/result.ts';
import { combinedHeight, nextReading } from '../../src/domain/measure/verdict.ts';
import { describeSet, restSpace, setAdvice, suspects } from '../../src/domain/measure/vertical.ts';
import { computation, fields, length, many, maybe, number, oneOf, type Computation } from './inputs.ts';

const sitting = { rest: many(length), closed: many(length) };
const bases = oneOf('none', 'upper', 'lower', 'both');

const geometry = {
  radiusMm: maybe(number('mm')),
  planeAngleDeg: maybe(number('°')),
  molarBehindMm: maybe(number('mm')),
  chinForwardMm: maybe(number('mm')),
  chinDownMm: maybe(number('mm')),
  noseForwardMm: maybe(number('mm')),
  noseDownMm: maybe(number('mm')),
};

const vertical: readonly Computation[] = [
  computation('describeSet', {
    about: 'median, mean, range and spread of one set of readings',
    unit: 'mm',
    takes: { values: many(length) },
    run: ({ values }) => describeSet(values),
  }),
  computation('suspects', {
    about: 'readings of a set to look at again, and what they may have been',
    unit: 'mm',
    takes: { values: many(length), low: length, high: length },
    run: ({ values, low, high }) => {
      if (low > high) return refuse('inconsistent', 'The low end of the plausible range lies above the high end.');
      const found = suspects(values, [low, high]).map(({ perhaps, ...rest }) => ({
        ...rest,
        ...(perhaps === undefined ? {} : { perhapsMm: perhaps / 100 }),
      }));
      return known({ value: found, inputs: [`${values.length} readings`], source: 'modified-z' });
    },
  }),
  computation('setAdvice', {
    about: 'accept a set, read two more, or repeat all',
    unit: 'word',
    takes: { rangeMm: number('mm'), n: number('readings') },
    run: ({ rangeMm, n }) =>
      badAmount(rangeMm, 'Range') ??
      badAmount(n, 'Number of readings') ??
      known({ value: setAdvice(rangeMm, n), inputs: [`range ${rangeMm} mm`, `${n} readings`], source: 'repeat-rule' }),
  }),
  computation('restSpace', {
    about: 'rest height less closed height',
    unit: 'mm',
    takes: sitting,
    run: ({ rest, closed }) => restSpace(rest, closed),
  }),
  computation('nextReading', {
    about: 'which one more reading narrows the rest space most',
    unit: 'mm',
    takes: sitting,
    run: ({ rest, closed }) => nextReading(rest, closed),
  }),
  computation('combinedHeight', {
    about: 'rest space and cross-checks side by side, one verdict with reasons',
    unit: 'mm',
    takes: {
      ...sitting,
      facial: maybe(fields({ pupilToLip: length, noseBaseToChin: length })),
      speaking: maybe(fields({ closed: length, atS: length })),
      oldDentures: maybe(fields({ present: length, planned: length, wear: maybe(length) })),
    },
    run: (input) => combinedHeight(input),
  }),
  computation('facialMeasure', {
    about: 'pupil line to lips against nose base to chin',
    unit: 'mm',
    takes: { pupilToLip: length, noseBaseToChin: length },
    run: (i) => facialMeasure(i.pupilToLip, i.noseBaseToChin),
  }),
  computation('speakingSpace', {
    about: 'closest speaking space at “s”',
    unit: 'mm',
    takes: { closed: length, atS: length },
    run: (i) => speakingSpace(i.closed, i.atS),
  }),
  computation('oldDentureChange', {
    about: 'planned height against the present dentures',
    unit: 'mm',
    takes: { present: length, planned: length, wear: maybe(length) },
    run: (i) => oldDentureChange(i.present, i.planned, i.wear),
  }),
  computation('spaceChange', {
    about: 'change of the rest space between two visits, by difference only',
    unit: 'mm',
    takes: { first: fields(sitting), second: fields(sitting) },
    run: (i) => spaceChange(i.first, i.second),
  }),
  computation('basesNote', {
    about: 'rest and closed height read with different bases in the mouth',
    unit: 'mm',
    takes: { rest: bases, closed: bases },
    run: (i) => basesNote(i.rest, i.closed),
  }),
];

const hinge: readonly Computation[] = [
  computation('pinChange', {
    about: 'what the laboratory changes so that the casts stand at rest height less the space',
    unit: 'mm',
    takes: {
      restMm: number('mm'),
      recordedMm: number('mm'),
      targetSpaceMm: number('mm'),
      hinge: maybe(fields(geometry)),
    },
    run: (input) => pinChange(input),
  }),
  computation('solveHinge', {
    about: 'a change at chin, incisors or first molar turned into all the others',
    unit: 'mm, °',
    takes: { place: oneOf('chin', 'incisal', 'molar'), changeMm: number('mm'), hinge: maybe(fields(geometry)) },
    run: (i) => solveHinge(i.place, i.changeMm, i.hinge),
  }),
  computation('turnJaw', {
    about: 'what a turn of the jaw does',
    unit: 'mm, °',
    takes: { turnDeg: number('°'), hinge: maybe(fields(geometry)) },
    run: (i) => turnJaw(i.turnDeg, i.hinge),
  }),
  computation('hingeSensitivity', {
    about: 'how far the answer could lie, assumptions varied',
    unit: 'mm',
    takes: { chinMm: number('mm'), hinge: maybe(fields(geometry)) },
    run: (i) => hingeSensitivity(i.chinMm, i.hinge),
  }),
  computation('linearChange', {
    about: 'incisors and first molar by fixed factors',
    unit: 'mm',
    takes: { chinMm: number('mm') },
    run: (i) => linearChange(i.chinMm),
  }),
  computation('pinRule', {
    about: 'pin, incisors, second molar as 3 : 2 : 1',
    unit: 'mm',
    takes: { pinMm: number('mm') },
    run: (i) => pinRule(i.pinMm),
  }),
  computation('bonwillAltitude', {
    about: 'hinge axis to incisal point from the side of the triangle',
    unit: 'mm',
    takes: { sideMm: number('mm') },
    run: (i) => bonwillAltitude(i.sideMm),
  }),
  computation('balkwillAngle', {
    about: 'angle of the triangle to the occlusal plane',
    unit: '°',
    takes: { axisHeightMm: number('mm'), radiusMm: number('mm') },
    run: (i) => balkwillAngle(i.axisHeightMm, i.radiusMm),
  }),
];

export const heightComputations: readonly Computation[] = [...vertical, ...hinge];
