/** A summary written by hand, with one of everything, so that the sheet's golden text depends on nothing but the sheet. */
import type { ClockRow, ReadingRow, SetRow, Summary, VerticalDimension } from '../../src/domain/summary/types.ts';

export const DAY = Date.parse('2026-03-02T08:00:00Z');
const at = (minutes: number) => DAY + minutes * 60_000;

const reading = (seq: number, value: number, more: Partial<ReadingRow> = {}): ReadingRow => ({
  seq,
  at: at(seq),
  visit: 'visit 2',
  step: 'rest-height',
  reading: 'rest-height',
  label: 'Rest height',
  value,
  unit: 'mm',
  source: 'voice',
  text: String(value / 100),
  keptBy: 'yes',
  outOfTurn: false,
  markSet: 'visit 2, marks 1',
  bases: 'both',
  ...more,
});

const set = (label: string, values: readonly number[], more: Partial<SetRow> = {}): SetRow => ({
  reading: label.toLowerCase().replace(' ', '-'),
  label,
  markSet: 'visit 2, marks 1',
  bases: 'both',
  values,
  seqs: values.map((_, i) => i + 1),
  n: values.length,
  medianMm: 68,
  meanMm: 68.1,
  rangeMm: (Math.max(...values) - Math.min(...values)) / 100,
  suspects: [],
  ...more,
});

const rest = set('Rest height', [6800, 6850, 6750, 8650], {
  suspects: [{ seq: 4, value: 8650, why: 'Two digits may be swapped.', perhaps: 6850 }],
});
const closed = set('Closed height', [6500, 6550], { medianMm: 65.25, meanMm: 65.25 });

const vertical: VerticalDimension = {
  markSet: 'visit 2, marks 1',
  rest,
  closed,
  restSpaceMm: 2.85,
  uncertaintyMm: 0.6,
  verdict: 'usual',
  convention: 'restLessSpace',
  targetSpaceMm: 3,
  targetHeightMm: 65,
  lab: { chinMm: -0.3, incisalMm: [-0.3, -0.2], pinMm: [-0.4, -0.3], molarMm: [-0.2, -0.1], text: 'Close a little.' },
};

const clock = (more: Partial<ClockRow>): ClockRow => ({
  id: 'upper/1',
  clock: 'upper',
  label: 'upper impression',
  attempt: 1,
  flow: 'impression',
  name: 'Zinc oxide paste',
  startedAt: at(20),
  seatedAt: at(21),
  outAt: at(25),
  struck: false,
  stopped: true,
  phases: [
    { id: 'pourFrom', label: 'wait', from: at(25), dueAt: at(55), state: 'done' },
    { id: 'pourWithin', label: 'pour within', from: at(25), dueAt: at(25 + 24 * 60), state: 'running' },
  ],
  findings: [],
  ...more,
});

/** Strings that only a font with the right letters can show. */
export const LETTERS = 'Größe, Łódź, Ελληνικά, Кириллица, ½ ± 0.5, rest − closed ≤ 4, 中';

export const oneOfEverything: Summary = {
  caseCode: 'DEMO-9',
  demo: true,
  visit: 2,
  visitName: 'visit 2',
  visitTitle: 'Definitive impressions and jaw relation',
  openedAt: DAY,
  closedAt: at(75),
  clinician: 'KV',
  assistant: 'BR',
  protocol: 'visit-2@1',
  readings: [
    reading(1, 6800),
    reading(2, 6850),
    reading(3, 6750, { struck: { at: at(9), why: 'newAttempt', by: 9 } }),
    reading(4, 8650, { source: 'keypad', text: '86.5' }),
    reading(5, 1200, { label: 'Tracing angle', unit: '°', source: 'touch', text: '12' }),
  ],
  sets: [rest, closed],
  vertical,
  earlier: [{ visit: 'visit 1', vertical: { ...vertical, markSet: 'visit 1, marks 1' } }],
  clocks: [clock({}), clock({ id: 'upper/0', attempt: 0, struck: true, findings: [{ id: 'seatedLate', byMs: 5000 }] })],
  answers: [
    {
      seq: 10,
      at: at(10),
      step: 'a',
      chapter: 1,
      question: 'Look at the borders',
      answer: 'A thin edge',
      tone: 'warn',
    },
    { seq: 11, at: at(11), step: 'b', chapter: 1, question: 'Look at the palate', answer: 'Good', tone: 'good' },
  ],
  skips: [{ at: at(12), title: 'Measure the ridge', reason: 'Not needed here' }],
  notes: [
    { at: at(13), step: 'a', text: LETTERS, source: 'keypad', struck: false },
    { at: at(14), step: 'a', text: 'taken back remark', source: 'keypad', struck: true },
  ],
  cautions: ['Latex: no latex gloves, dam or tubing.'],
  flags: [
    { id: 'f1', level: 'disagrees', what: '86.5 mm stands apart.', why: 'Digits may be swapped.', todo: 'Read again.' },
    {
      id: 'f2',
      level: 'look',
      what: 'Spread over 1 mm.',
      why: 'Readings wander.',
      todo: 'Read again.',
      answer: { answer: 'keep', reason: 'Patient tired', at: at(15) },
    },
  ],
  computed: [
    {
      id: 'space',
      label: 'Rest space',
      text: '2.9 mm ± 0.6 mm',
      inputs: ['rest', 'closed'],
      source: 'Difference of means.',
      sourceStatus: 'common practice',
    },
  ],
  labWork: [
    {
      id: 'pour',
      text: 'Box and pour the upper impression.',
      detail: 'Zinc oxide paste, attempt 1.',
      at: at(25 + 24 * 60),
    },
    { id: 'teeth', text: 'Set the teeth for the try-in.' },
  ],
  open: ['Not answered: Say who pours the casts.'],
  signed: [{ role: 'clinician', initials: 'KV', at: at(75), overruled: 'Patient had to leave' }],
};
