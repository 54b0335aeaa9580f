/** An invented case as a summary, long enough to show where a screen would break. */
import type { AnswerRow, Flag, ReadingRow, SetRow, Summary } from '../../domain/summary/types.ts';
import { NOW, lowerPour, upperBathDone, upperPour } from './clocks.ts';

const MIN = 60_000;

const LABELS: Readonly<Record<string, string>> = {
  'upper-width': 'Upper ridge width',
  'lower-width': 'Lower ridge width at the pads',
  'rest-height': 'Rest height',
  'closed-height': 'Closed height',
  'record-height': 'Height with the record',
};

function reading(seq: number, id: string, value: number): ReadingRow {
  return {
    seq,
    visit: 'visit 1',
    at: NOW - (40 - seq) * MIN,
    step: id,
    reading: id,
    label: LABELS[id] ?? id,
    value,
    unit: 'mm',
    source: seq % 3 === 0 ? 'keypad' : 'voice',
    text: String(value / 100),
    keptBy: seq % 2 === 0 ? 'yes' : 'movedOn',
    outOfTurn: seq === 12,
    ...(id.endsWith('height') ? { markSet: 'visit 1, marks 1' } : {}),
  };
}

export const readings: readonly ReadingRow[] = [
  reading(11, 'upper-width', 5850),
  reading(12, 'lower-width', 5650),
  {
    ...reading(15, 'rest-height', 1650),
    text: 'sixteen point five',
    struck: { at: NOW - 24 * MIN, why: 'corrected', by: 16 },
  },
  { ...reading(16, 'rest-height', 7050), text: 'no, seventy and a half' },
  reading(17, 'rest-height', 7100),
  { ...reading(18, 'rest-height', 7450), text: 'seventy-four point five' },
  reading(20, 'closed-height', 6750),
  reading(21, 'closed-height', 6750),
  reading(25, 'record-height', 7000),
];

export const restSet: SetRow = {
  reading: 'rest-height',
  label: 'Rest height',
  markSet: 'visit 1, marks 1',
  bases: 'both',
  values: [7050, 7100, 7450],
  seqs: [16, 17, 18],
  n: 3,
  medianMm: 71,
  meanMm: 72,
  rangeMm: 4,
  sdMm: 2.18,
  suspects: [{ seq: 18, value: 7450, why: 'It lies more than 2 mm from the others.', perhaps: 7050 }],
};

export const closedSet: SetRow = {
  reading: 'closed-height',
  label: 'Closed height',
  markSet: 'visit 1, marks 1',
  bases: 'both',
  values: [6750, 6750],
  seqs: [20, 21],
  n: 2,
  medianMm: 67.5,
  meanMm: 67.5,
  rangeMm: 0,
  sdMm: 0,
  suspects: [],
};

const recordSet: SetRow = {
  ...closedSet,
  reading: 'record-height',
  label: 'Height with the record',
  values: [7000],
  seqs: [25],
  n: 1,
  medianMm: 70,
  meanMm: 70,
};

export const flags: readonly Flag[] = [
  {
    id: 'range:rest',
    level: 'disagrees',
    what: 'Rest height: 70.5, 71, 74.5 differ by 4.0 mm; up to 1.0 mm is accepted.',
    why: 'The rest space is a small difference of large heights; this scatter is as large as the answer.',
    todo: 'Let the patient rest, then repeat all readings.',
    step: 'rest-height',
  },
  {
    id: 'space:1',
    level: 'look',
    what: 'Rest space 4.5 ± 2.8 mm; 2 to 4 mm is the usual teaching range.',
    why: 'A large rest space means the closed height is small for this rest height.',
    todo: 'Read again; the clinician decides about raising.',
    step: 'closed-height',
  },
];

function answer(seq: number, [question, text]: readonly [string, string], tone: AnswerRow['tone']): AnswerRow {
  return { seq, at: NOW - (60 - seq) * MIN, step: `s${seq}`, chapter: 1, question, answer: text, tone };
}

export const answers: readonly AnswerRow[] = [
  answer(2, ['Match patient and case code', 'They match'], 'good'),
  answer(3, ['Ask for consent', 'Given'], 'good'),
  answer(4, ['Ask about allergies', 'Latex'], 'warn'),
  answer(5, ['Ask about the gag reflex', 'Mild'], 'neutral'),
  {
    ...answer(6, ['Decide: keep the upper impression?', 'Take again'], 'warn'),
    reason: 'Voids or drags',
    struck: { at: NOW - 30 * MIN, why: 'newAttempt', by: 9 },
  },
  answer(30, ['Ask about the shape of the teeth', 'As on the photographs'], 'neutral'),
  answer(31, ['Ask about the shade, in words', 'Warmer than before'], 'neutral'),
];

export const cautions = [
  'Latex: no latex gloves, dam or tubing. Local allergy protocol first.',
  'Strong gag reflex: upright, least material, fast set, stop sign agreed, suction ready.',
];

export const summary: Summary = {
  caseCode: 'DEMO-01',
  demo: true,
  visit: 1,
  visitName: 'visit 1',
  earlier: [],
  visitTitle: 'Assessment, primary impressions, preliminary jaw relation',
  openedAt: NOW - 62 * MIN,
  clinician: 'CL',
  assistant: 'AS',
  protocol: 'visit-1@1',
  readings,
  sets: [restSet, closedSet],
  vertical: {
    markSet: 'visit 1, marks 1',
    rest: restSet,
    closed: closedSet,
    record: recordSet,
    restSpaceMm: 4.5,
    uncertaintyMm: 2.77,
    verdict: 'large',
    convention: 'restLessSpace',
    targetSpaceMm: 3,
    targetHeightMm: 68,
    lab: {
      chinMm: -2,
      incisalMm: [-2, -1.6],
      pinMm: [-3, -2.4],
      molarMm: [-1.24, -0.84],
      text: 'Close the pin by 1.6 to 2.0 mm.',
    },
  },
  clocks: [
    {
      ...upperPour,
      id: 'upper-impression/0',
      struck: true,
      stopped: true,
      findings: [{ id: 'seatedLate', byMs: 14000 }],
    },
    { ...upperPour, attempt: 2 },
    upperBathDone,
    lowerPour,
  ],
  answers,
  skips: [{ at: NOW - 33 * MIN, title: 'Read the least lower bone height', reason: 'Not possible today' }],
  notes: [
    {
      step: 'wish-shape',
      at: NOW - 50 * MIN,
      text: 'patient says the old lower one floats when she drinks',
      source: 'voice',
      struck: false,
    },
    {
      step: 'wish-shape',
      at: NOW - 20 * MIN,
      text: 'shade a little warmer than the old teeth',
      source: 'keypad',
      struck: false,
    },
  ],
  cautions,
  flags: [
    ...flags,
    {
      id: 'clock:late',
      level: 'disagrees',
      what: 'upper impression, attempt 1: seated after the working time had ended, by 0:14 min.',
      why: 'The material was already setting.',
      todo: 'Take again, or keep with a reason.',
      answer: { answer: 'keep', reason: 'Measured again, the same', at: NOW - 25 * MIN },
    },
  ],
  computed: [
    {
      id: 'rest-space',
      label: 'Space between rest and closed',
      text: '4.5 mm, larger than usual',
      valueMm: 4.5,
      uncertaintyMm: 2.77,
      inputs: ['rest 70.5, 71, 74.5', 'closed 67.5, 67.5'],
      source: 'Difference of means between the same marks',
      sourceStatus: 'definition, text seen',
    },
    {
      id: 'pin',
      label: 'Change at the pin',
      text: 'close by 1.6 to 2.0 mm',
      rangeMm: [-2, -1.6],
      inputs: ['record 70', 'target 68'],
      source: 'Hinge about an average axis',
      sourceStatus: 'our model',
    },
    {
      id: 'class',
      label: 'Edentulous class',
      text: 'class II',
      inputs: ['bone height not read', 'muscle attachment'],
      source: 'McGarry et al., J Prosthodont 1999;8:27',
      sourceStatus: 'text seen',
    },
  ],
  labWork: [
    {
      id: 'pour-u',
      text: 'Pour the upper impression.',
      detail: 'Alginate, regular set, attempt 2.',
      at: NOW + 20 * MIN,
    },
    {
      id: 'pour-l',
      text: 'Pour the lower impression.',
      detail: 'Addition silicone, medium and light, attempt 1. Not before the waiting time of the leaflet.',
      at: NOW + 7 * 24 * 60 * MIN,
    },
    { id: 'trim', text: 'Trim the casts; transfer the outline and the rear limit scored in the upper impression.' },
    { id: 'border', text: 'Custom trays to the outline, borders 3 mm short of the deepest point of the sulcus.' },
    { id: 'relief', text: 'Relieve with wax where the clinic has marked it; clear the frena.' },
    {
      id: 'rims',
      text: 'Rims or tracing plates on the custom trays, parallel to the ridges, within the mounted height.',
    },
    {
      id: 'mount',
      text: 'Mount by the preliminary record, made at 70.0 mm. Close the pin by 1.6 to 2.0 mm.',
      detail: 'Between the marks: −2.0 mm to stand at 68.0 mm (rest less 3.0 mm).',
    },
    {
      id: 'wishes',
      text: 'Wishes of the patient for the try-in.',
      detail: 'Shape: as on the photographs; shade: warmer than before',
    },
  ],
  open: [
    'The lower impression is not recorded as disinfected.',
    'Rest height: 70.5, 71, 74.5 differ by 4.0 mm; up to 1.0 mm is accepted.',
    'Not answered: Say whether photographs were taken.',
  ],
  signed: [{ role: 'assistant', initials: 'AS', at: NOW - 2 * MIN }],
};
