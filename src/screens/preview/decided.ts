/** Invented states of what is computed where a visit decides: tracings, tooth sizes, sore places, scores, review days. */
import type { AppModel, StepView } from '../../app/model.ts';
import type { Decided, SoreArea } from '../../domain/summary/decided.types.ts';
import type { Step, VisitProtocol } from '../../domain/protocol/types.ts';
import { visit2 } from '../../domain/protocol/visit2.ts';
import { visit5 } from '../../domain/protocol/visit5.ts';
import { lowerSetting, upperBath, upperPour } from './clocks.ts';
import { cautions, flags, summary } from './summary.ts';

const tracing: NonNullable<Decided['tracing']> = {
  apexes: [
    { n: 1, xMm: 30, yMm: 30, sharp: true },
    { n: 2, xMm: 30.4, yMm: 30.1, sharp: true },
    { n: 3, xMm: 30.1, yMm: 29.8, sharp: false },
  ],
  scatter: { xMm: 30.167, yMm: 29.967, rmsMm: 0.2, largestPairMm: 0.424, radiusMm: 0.269, verdict: 'accept' },
};

const withLegs: typeof tracing = {
  ...tracing,
  rightLeg: { xMm: 36, yMm: 26 },
  leftLeg: { xMm: 24.5, yMm: 26 },
  arch: { angleDeg: 111.3, rightDeg: 55.8, leftDeg: 55.5, asymmetryDeg: 0.3, verdict: 'usual', asymmetric: false },
};

const rule = (name: string, mm: number, status = 'from memory') => ({
  rule: name,
  mm,
  from: 'Face width at the cheekbones 132 mm, visit 2',
  source: 'Handbook.',
  status,
});

const teeth: NonNullable<Decided['teeth']> = [
  {
    id: 'six',
    label: 'Six upper front teeth, along the curve',
    lowMm: 38,
    highMm: 44.54,
    spreadMm: 6.54,
    judge: true,
    estimates: [
      rule('face width / 3.3', 40),
      rule('face width / 3.36', 39.29),
      rule('nose width × 1.31', 44.54),
      rule('corner marks along the rim', 38, 'second-hand'),
    ],
  },
  {
    id: 'sixStraight',
    label: 'Six upper front teeth, straight across',
    lowMm: 41,
    highMm: 41,
    spreadMm: 0,
    judge: false,
    estimates: [rule('nose width + 7', 41)],
  },
  {
    id: 'central',
    label: 'Width of an upper central',
    lowMm: 8.25,
    highMm: 8.25,
    spreadMm: 0,
    judge: false,
    estimates: [rule('face width / 16', 8.25, 'text seen')],
  },
  {
    id: 'length',
    label: 'Length of an upper central',
    lowMm: 9.1,
    highMm: 11.375,
    spreadMm: 2.275,
    judge: false,
    estimates: [rule('face length / 16', 11.375), rule('face length / 20', 9.1)],
  },
];

const area = (id: string, more: Pick<SoreArea, 'jaw' | 'region' | 'label'> & Partial<SoreArea>): SoreArea => ({
  id,
  visit: 'visit 5',
  current: true,
  what: 'sore',
  ...more,
});

const sore: readonly SoreArea[] = [
  area('relieved-upper-1', {
    jaw: 'upper',
    region: 'upper-rear',
    label: 'Rear seal',
    visit: 'visit 4',
    current: false,
    what: 'relieved',
  }),
  area('sore-1', { jaw: 'lower', region: 'lower-frenum', label: 'A frenum', visit: 'visit 4', current: false }),
  area('sore-2', {
    jaw: 'lower',
    region: 'lower-mylohyoid-right',
    label: 'Behind the mylohyoid, right',
    kind: 'Red and sore',
    sizeMm: 4,
    weeks: 1,
    cause: 'Border too long',
    done: 'Relieved',
  }),
  area('sore-3', { jaw: 'upper', region: 'upper-ridge', label: 'Ridge crest', kind: 'Ulcer', sizeMm: 3, weeks: 2 }),
];

const review: Decided = {
  change: { from: 'closed', chinMm: -0.5, incisalMm: [-0.5, -0.4], pinMm: [-0.75, -0.6], molarMm: [-0.31, -0.21] },
  hold: [
    {
      visit: 'visit 4',
      upper: { retention: 3, stability: 2 },
      lower: { retention: 2, stability: 2 },
      version: 'both jaws summed, 0 to 10',
      sum: 9,
      most: 10,
      band: 'good',
    },
    {
      visit: 'visit 5',
      upper: { retention: 3, stability: 2 },
      lower: { retention: 1, stability: 2 },
      version: 'both jaws summed, 0 to 10',
      sum: 8,
      most: 10,
      band: 'fair',
    },
  ],
  sore,
  reviews: {
    delivered: '2026-11-23',
    rows: [
      { id: 'first', label: 'First review, 24 to 48 hours', from: '2026-11-24', to: '2026-11-25', state: 'seen' },
      { id: 'week', label: 'Review after a week', from: '2026-11-30', to: '2026-11-30', state: 'due' },
      { id: 'fourWeeks', label: 'Review after four weeks', from: '2026-12-21', to: '2026-12-21', state: 'later' },
      { id: 'year', label: 'Yearly recall', from: '2027-11-23', to: '2027-11-23', state: 'later' },
    ],
    source: 'Reviews after 24–48 h, 1 week, 4 weeks, then yearly.',
    sourceStatus: 'from memory',
  },
};

type More = Partial<StepView>;

function viewOf(protocol: VisitProtocol, id: string, more: More): StepView {
  const step = protocol.steps.find((one) => one.id === id) as Step;
  const chapter = protocol.chapters.find((one) => one.number === step.chapter);
  return {
    step,
    title: step.title,
    lines: step.lines,
    ...(step.drawing === undefined ? {} : { drawing: step.drawing }),
    chapter: chapter ?? { number: step.chapter, title: '' },
    chapterCount: protocol.chapters.length,
    place: 1,
    placeCount: 12,
    mode: step.kind,
    answers: step.kind === 'check' || step.kind === 'decision' ? step.answers : [],
    canNext: false,
    words: ['next', 'back', 'undo', 'hold', 'skip'],
    ...more,
  };
}

const read = (id: string, label: string) =>
  ({ id, label, unit: 'mm', kept: [], least: 1, plausible: [0, 10000] }) as const;

/** Clocks above and a flag below: the middle is at its lowest. */
const crowded = { clocks: [upperPour, lowerSetting, upperBath], flags, cautions };

/** The states, made from what all states share. */
export function decidedStates(base: AppModel): Record<string, AppModel> {
  const with2 = { ...summary, visit: 2, visitName: 'visit 2', tracing: withLegs, teeth, ...review };
  const with5 = { ...summary, visit: 5, visitName: 'visit 5', visitTitle: 'Review', ...review };
  const at2 = (id: string, more: More = {}): AppModel => ({
    ...base,
    summary: { ...with2, tracing },
    step: viewOf(visit2, id, more),
  });
  const at5 = (id: string, more: More = {}): AppModel => ({ ...base, summary: with5, step: viewOf(visit5, id, more) });
  const point = read('tracing-1-x', 'First tracing, apex across');
  const none = { ...summary, visit: 2 };
  return {
    'tracing-first': { ...at2('tracing-1-x', { reading: point }), summary: none },
    'tracing-third': at2('tracing-3-x', { reading: read('tracing-3-x', 'Third tracing, apex across') }),
    'tracing-keep': { ...at2('tracing-keep'), summary: with2 },
    'tooth-sizes': at2('teeth-chosen'),
    'sore-where': at5('sore-3'),
    'sore-place': at5('sore-3-lower'),
    'sore-place-upper': at5('sore-3-upper'),
    'sore-place-two-clocks': { ...at5('sore-3-upper'), clocks: [upperPour, lowerSetting] },
    'sore-cause': at5('sore-3-cause'),
    'score-asked': at5('retention-upper', {
      reading: { ...read('retention-upper', 'Upper retention, 0 to 3'), unit: 'points' },
    }),
    'tooth-sizes-crowded': { ...at2('teeth-chosen'), clocks: [upperPour, lowerSetting], flags },
    'sore-place-crowded': { ...at5('sore-3-lower'), ...crowded },
    'tracing-crowded': {
      ...at2('tracing-3-x', { reading: read('tracing-3-x', 'Third tracing, apex across') }),
      ...crowded,
    },
    'summary-decided': { ...base, place: 'summary', summary: with2 },
    'lab-sheet-decided': { ...base, place: 'labSheet', summary: with2 },
  };
}
