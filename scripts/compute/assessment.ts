import { clashes } from '../../src/domain/measure/consistency.ts';
import { boneClass, edentulousClass } from '../../src/domain/measure/edentulous.ts';
import { checkRange } from '../../src/domain/measure/ranges.ts';
import { referral } from '../../src/domain/measure/referral.ts';
import { dentureScore, retentionScore, reviewDates } from '../../src/domain/measure/review.ts';
import { boneLoss, palatalForm, ridgeForm, ridgeRecord, steadyLoss } from '../../src/domain/measure/ridge.ts';
import { rankTrays, trayBorder, traySpacer, widthFromPadCentres } from '../../src/domain/measure/trays.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import {
  computation,
  fields,
  length,
  many,
  maybe,
  number,
  oneOf,
  text,
  turned,
  yesNo,
  type Computation,
} from './inputs.ts';

const tray = fields({ id: text('id'), label: text('label'), arch: oneOf('upper', 'lower'), innerWidth: length });
const form = oneOf('I', 'II', 'III', 'IV', 'V', 'VI');
const jaw = fields({ retention: number('0–3'), stability: number('0–2') });
const mm = (hundredths: readonly [number, number]) => hundredths.map((value) => value / 100);

const classes: readonly Computation[] = [
  computation('edentulousClass', {
    about: 'prosthodontic diagnostic index: the most complex criterion decides',
    unit: 'class',
    takes: {
      boneMm: maybe(number('mm')),
      boneCorrected: maybe(yesNo),
      relation: maybe(oneOf('I', 'II', 'III')),
      maxilla: maybe(oneOf('A', 'B', 'C', 'D')),
      muscle: maybe(oneOf('A', 'B', 'C', 'D', 'E')),
      interarchMm: maybe(number('mm')),
      tmd: maybe(yesNo),
      surgery: maybe(oneOf('none', 'minor', 'major')),
      psychosocial: maybe(oneOf('none', 'minor', 'moderate', 'major')),
      systemic: maybe(oneOf('none', 'mild', 'moderate', 'severe')),
      tongue: maybe(oneOf('usual', 'large', 'hyperactive')),
      gag: maybe(oneOf('usual', 'hyperactive', 'medicated')),
      paraesthesia: maybe(yesNo),
      defect: maybe(yesNo),
      ataxia: maybe(yesNo),
      refractory: maybe(yesNo),
    },
    run: (input) => edentulousClass(input),
  }),
  computation('boneClass', {
    about: 'class of the least bone height',
    unit: 'class',
    takes: { boneMm: number('mm') },
    run: (i) => boneClass(i.boneMm),
  }),
  computation('ridgeForm', {
    about: 'ridge form at one site',
    unit: 'form',
    takes: { shape: oneOf('rounded', 'sharp', 'flat', 'concave'), high: maybe(yesNo), wide: maybe(yesNo) },
    run: (i) => ridgeForm(i),
  }),
  computation('ridgeRecord', {
    about: 'ridge forms at four sites, kept apart',
    unit: 'form',
    takes: { upperFront: maybe(form), upperRear: maybe(form), lowerFront: maybe(form), lowerRear: maybe(form) },
    run: (i) => ridgeRecord(i),
  }),
  computation('boneLoss', {
    about: 'bone lost from the lower jaw',
    unit: 'mm',
    takes: { foramenMm: number('mm'), presentMm: number('mm'), factor: maybe(number('×')) },
    run: (i) => boneLoss(i),
  }),
  computation('steadyLoss', {
    about: 'yearly loss times years',
    unit: 'mm',
    takes: { mmPerYear: number('mm a year'), years: number('years') },
    run: (i) => steadyLoss(i.mmPerYear, i.years),
  }),
  computation('palatalForm', {
    about: 'form of the soft palate',
    unit: 'form',
    takes: { angleDeg: number('°') },
    run: (i) => palatalForm(i.angleDeg),
  }),
];

const trays: readonly Computation[] = [
  computation('rankTrays', {
    about: 'trays in the order to try them; without trays, the generic set of the named arch',
    unit: 'mm',
    takes: { ridge: length, clearance: length, arch: maybe(oneOf('upper', 'lower')), trays: maybe(many(tray)) },
    run: ({ ridge, clearance, arch = 'upper', trays: own }) =>
      turned(rankTrays(own ?? defaultPractice.trays.filter((t) => t.arch === arch), ridge, clearance), (ranked) =>
        ranked.map(({ tray: { innerWidth, ...rest }, ...place }) => ({
          ...place,
          tray: { ...rest, innerWidthMm: innerWidth / 100 },
        })),
      ),
  }),
  computation('trayBorder', {
    about: 'border of a custom tray from the sulcus depth',
    unit: 'mm',
    takes: { sulcusDepth: length, flange: maybe(length) },
    run: (i) => trayBorder(i.sulcusDepth, i.flange),
  }),
  computation('traySpacer', {
    about: 'spacer by material',
    unit: 'mm',
    takes: { material: text('material') },
    run: (i) => traySpacer(i.material),
  }),
  computation('widthFromPadCentres', {
    about: 'lower ridge width from the distance of the pad centres',
    unit: 'mm',
    takes: { centres: length, padWidthMm: maybe(number('mm')) },
    run: (i) => turned(widthFromPadCentres(i.centres, i.padWidthMm), (value) => value / 100),
  }),
];

const reviews: readonly Computation[] = [
  computation('checkRange', {
    about: 'a reading against its usual and plausible range',
    unit: 'mm',
    takes: { reading: text('reading'), value: length },
    run: (i) =>
      turned(checkRange(i.reading, i.value), ({ usual, plausible, ...rest }) => ({
        ...rest,
        usualMm: mm(usual),
        plausibleMm: mm(plausible),
      })),
  }),
  computation('clashes', {
    about: 'readings that contradict each other',
    unit: 'mm',
    takes: {
      rest: maybe(length),
      closed: maybe(length),
      padLeft: maybe(length),
      padRight: maybe(length),
      interalar: maybe(length),
      intercommissural: maybe(length),
      bizygomatic: maybe(length),
      innerCanthal: maybe(length),
      interpupillary: maybe(length),
    },
    run: (i) => clashes(i),
  }),
  computation('retentionScore', {
    about: 'retention and stability of both dentures, 0 to 10',
    unit: 'points',
    takes: { upper: jaw, lower: jaw },
    run: (i) => retentionScore(i.upper, i.lower),
  }),
  computation('dentureScore', {
    about: 'retention and stability of one denture, 0 to 5',
    unit: 'points',
    takes: { denture: jaw },
    run: (i) => dentureScore(i.denture),
  }),
  computation('reviewDates', {
    about: 'review days after delivery',
    unit: 'day',
    takes: { delivered: text('YYYY-MM-DD') },
    run: (i) => reviewDates(i.delivered),
  }),
  computation('referral', {
    about: 'what the duration rules ask for; never says what a finding is',
    unit: 'action',
    takes: {
      kind: oneOf('ulcer', 'redPatch', 'redWhitePatch', 'mouthLump', 'neckLump', 'numbness', 'other'),
      days: maybe(number('days')),
      causeRemoved: maybe(yesNo),
      daysSinceRemoved: maybe(number('days')),
    },
    run: (i) => referral(i),
  }),
];

export const assessmentComputations: readonly Computation[] = [...classes, ...trays, ...reviews];
