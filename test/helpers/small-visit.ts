/** A visit of one step of every kind, small enough to walk exhaustively. Invented; no clinical meaning. */
import type { Material, Practice, ReadingDef, VisitProtocol } from '../../src/domain/protocol/types.ts';

const words = (text: string) => ({ en: [text] });

export const smallReadings: readonly ReadingDef[] = [
  {
    id: 'width',
    label: 'Width',
    unit: 'mm',
    names: { en: ['width'] },
    plausible: [3000, 8500],
    expected: [4500, 7000],
    source: 'invented for tests',
  },
  {
    id: 'rest-height',
    label: 'Rest height',
    unit: 'mm',
    names: { en: ['rest', 'rest height'] },
    plausible: [4000, 11000],
    expected: [5500, 8500],
    source: 'invented for tests',
    repeat: { least: 3, withinSet: true },
  },
];

const common = { lines: [], chapter: 1 } as const;

export const smallVisit: VisitProtocol = {
  id: 'small',
  version: 1,
  visit: 1,
  title: 'Small visit',
  chapters: [{ number: 1, title: 'All' }],
  steps: [
    { ...common, id: 'tell', kind: 'inform', title: 'Read this' },
    {
      ...common,
      id: 'ask',
      kind: 'check',
      title: 'Is it so',
      answers: [
        { id: 'yes', label: 'Yes', words: words('yes'), tone: 'good' },
        { id: 'no', label: 'No', words: words('no'), tone: 'warn', needsReason: true, caution: 'Mind this.' },
      ],
    },
    { ...common, id: 'width', kind: 'reading', title: 'Measure the width', reading: 'width' },
    {
      ...common,
      id: 'dip',
      kind: 'clock',
      title: 'Take it',
      clock: 'dip',
      clockLabel: 'dip',
      flow: 'impression',
      materials: ['soft'],
    },
    {
      ...common,
      id: 'keep',
      kind: 'decision',
      title: 'Keep it or not',
      answers: [
        { id: 'keep', label: 'Keep', words: words('keep'), tone: 'good' },
        {
          id: 'again',
          label: 'Again',
          words: words('again'),
          tone: 'warn',
          goto: 'dip',
          retake: true,
          needsReason: true,
        },
      ],
    },
    {
      ...common,
      id: 'bath',
      kind: 'clock',
      title: 'Bathe it',
      clock: 'bath',
      flow: 'timed',
      materials: ['wash'],
      of: 'dip',
    },
    {
      ...common,
      id: 'marks',
      kind: 'check',
      title: 'Make marks',
      answers: [{ id: 'made', label: 'Made', words: words('made'), tone: 'good' }],
    },
    { ...common, id: 'rest-height', kind: 'reading', title: 'Measure rest', reading: 'rest-height' },
    { ...common, id: 'extra', kind: 'inform', title: 'Only when no', onlyIf: { step: 'ask', answer: 'no' } },
    { ...common, id: 'sign', kind: 'signoff', title: 'Sign', role: 'clinician', closesVisit: true },
  ],
};

export const softMaterial: Material = {
  id: 'soft-1',
  name: 'soft one',
  class: 'soft',
  mixS: 45,
  workingS: 120,
  removeS: 240,
  pourFromMin: 0,
  pourWithinMin: 30,
  generic: true,
  source: 'invented for tests',
};

export const smallPractice: Practice = {
  restSpaceTarget: 300,
  recordAt: 'restLessSpace',
  trayClearance: 500,
  borderShort: 300,
  materials: [softMaterial, { ...softMaterial, id: 'soft-2', name: 'soft two' }],
  disinfectants: [{ id: 'wash', name: 'wash', minutes: 10, generic: true, source: 'invented for tests' }],
  trays: [],
  reasons: [{ id: 'notNeeded', label: 'Not needed', words: words('not needed') }],
};
