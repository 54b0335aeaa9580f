/** Named states of the model, one for each thing a screen must be able to show. */
import type { AppModel, EarState, StepView } from '../../app/model.ts';
import { defaultPractice } from '../../domain/protocol/practice.ts';
import { visit1 } from '../../domain/protocol/visit1.ts';
import * as clocks from './clocks.ts';
import { NOW } from './clocks.ts';
import { caseRow, ringingMany } from './rows.ts';
import { caseLine, labDue, own, ownEdited, people, preferences } from './practice.ts';
import { decidedStates } from './decided.ts';
import { cautions, flags, summary } from './summary.ts';

const reasons = defaultPractice.reasons.map(({ id, label }) => ({ id, label }));

function stepView(id: string, more: Partial<StepView> = {}): StepView {
  const index = visit1.steps.findIndex((s) => s.id === id);
  const step = visit1.steps[index];
  if (step === undefined) throw new Error(`no step ${id}`);
  const chapter = visit1.chapters.find((c) => c.number === step.chapter);
  if (chapter === undefined) throw new Error(`no chapter of ${id}`);
  const mates = visit1.steps.filter((s) => s.chapter === step.chapter);
  const next = visit1.steps[index + 1]?.title;
  return {
    step,
    title: step.title,
    lines: step.lines,
    ...(step.caution === undefined ? {} : { caution: step.caution }),
    ...(step.drawing === undefined ? {} : { drawing: step.drawing }),
    chapter,
    chapterCount: visit1.chapters.length,
    place: mates.indexOf(step) + 1,
    placeCount: mates.length,
    mode: step.kind,
    answers: step.kind === 'check' || step.kind === 'decision' ? step.answers : [],
    canNext: step.kind === 'inform',
    ...(next === undefined ? {} : { next }),
    words: ['next', 'back', 'undo', 'hold', 'skip', 'note …', 'how long', 'say again', 'help'],
    ...more,
  };
}

const base: AppModel = {
  place: 'visit',
  now: NOW,
  cases: [],
  people,
  summary,
  clocks: [],
  ringing: [],
  flags: [],
  cautions: [],
  ear: { state: 'listening' },
  save: { state: 'kept', what: 'Consent: given' },
  sound: 'armed',
  speechMayLeave: false,
  speech: true,
  reasons,
  keypadOpen: false,
  said: 'Kept: Ask for consent, given',
  trouble: '',
};

const at = (step: StepView, more: Partial<AppModel> = {}): AppModel => ({ ...base, step, ...more });

const rest = (kept: readonly { seq: number; digits: string; suspect: boolean }[]) =>
  ({ id: 'rest-height', label: 'Rest height', unit: 'mm', kept, least: 3, plausible: [4000, 11000] }) as const;
const width = (kept: readonly { seq: number; digits: string; suspect: boolean }[]) =>
  ({ id: 'upper-width', label: 'Upper ridge width', unit: 'mm', kept, least: 1, plausible: [3000, 8500] }) as const;
const three = [
  { seq: 16, digits: '70.5', suspect: false },
  { seq: 17, digits: '71', suspect: false },
  { seq: 18, digits: '74.5', suspect: true },
];
const ear = (state: EarState): AppModel => at(stepView('mouth-tongue'), { ear: state });
const many = [clocks.upperPour, clocks.lowerSetting, clocks.upperBath, clocks.lowerBath];
const five = [clocks.upperWorking, ...many.filter((one) => one !== clocks.upperPour), clocks.otherPour];
const upperMaterials = defaultPractice.materials.filter(
  (m) => m.class === 'alginate' || m.class === 'addition-silicone' || m.class === 'polyether',
);

const numbers: Record<string, AppModel> = {
  'reading-first': at(stepView('upper-width', { reading: width([]) })),
  'reading-one-kept': at(
    stepView('upper-width', { reading: width([{ seq: 11, digits: '58.5', suspect: false }]), canNext: true }),
  ),
  'reading-lower': at(
    stepView('lower-width', { reading: { ...width([]), id: 'lower-width', label: 'Lower ridge width at the pads' } }),
  ),
  'reading-length': at(
    stepView('lower-length', { reading: { ...width([]), id: 'lower-length', label: 'Lower ridge length' } }),
  ),
  'reading-rest-empty': at(stepView('rest-height', { reading: rest([]) }), { cautions }),
  'reading-rest-set': at(stepView('rest-height', { reading: rest(three), canNext: true }), {
    cautions,
    flags,
    clocks: many,
  }),
  'reading-closed': at(
    stepView('closed-height', { reading: { ...rest([]), id: 'closed-height', label: 'Closed height', least: 2 } }),
  ),
  'reading-sulcus': at(
    stepView('sulcus-upper-labial', {
      reading: { ...width([]), id: 'sulcus-upper-labial', label: 'Upper sulcus depth, lip' },
    }),
  ),
  'reading-record': at(
    stepView('record-height', {
      reading: {
        ...rest([{ seq: 25, digits: '70', suspect: false }]),
        id: 'record-height',
        label: 'Height with the record',
        least: 1,
      },
    }),
  ),
  correcting: at(
    stepView('rest-height', { reading: rest(three), correcting: { label: 'Rest height', digits: '74.5', unit: 'mm' } }),
  ),
  'confirm-sure': at(
    stepView('upper-width', {
      mode: 'confirm',
      canNext: true,
      pending: {
        readingLabel: 'Upper ridge width',
        unit: 'mm',
        digits: '58.5',
        text: 'fifty-eight and a half',
        mustSayYes: false,
        why: [],
      },
    }),
  ),
  'confirm-must': at(
    stepView('rest-height', {
      mode: 'confirm',
      pending: {
        readingLabel: 'Rest height',
        unit: 'mm',
        digits: '16.75',
        text: 'sixteen point seven five',
        mustSayYes: true,
        why: ['Outside 40 to 110 mm.', 'It lies 54 mm from the other readings of this set.'],
        correctsDigits: '74.5',
      },
    }),
    { clocks: many, cautions, flags },
  ),
  choose: at(
    stepView('upper-width', {
      mode: 'choose',
      reading: width([]),
      candidates: [
        { value: 5000, digits: '50' },
        { value: 1500, digits: '15' },
      ],
    }),
  ),
  'choose-three': at(
    stepView('rest-height', {
      mode: 'choose',
      reading: rest([]),
      candidates: [
        { value: 6250, digits: '62.5' },
        { value: 6025, digits: '60.25' },
        { value: 2500, digits: '25' },
      ],
    }),
    { clocks: many },
  ),
  'keypad-empty': at(stepView('upper-width', { reading: width([]) }), { keypadOpen: true }),
  'keypad-clocks': at(stepView('rest-height', { reading: rest(three) }), {
    keypadOpen: true,
    clocks: many,
    flags,
    cautions,
  }),
};

const clockStates: Record<string, AppModel> = {
  'clock-choose': at(stepView('upper-impression', { materials: upperMaterials })),
  'clock-chosen': at(stepView('upper-impression', { materials: upperMaterials, chosenMaterial: 'alginate-regular' }), {
    sound: 'needsTouch',
  }),
  'clock-mixing': at(stepView('upper-impression', { clock: clocks.upperMixing }), { clocks: [clocks.upperMixing] }),
  'clock-working': at(stepView('upper-impression', { clock: clocks.upperWorking }), {
    clocks: [clocks.upperWorking, clocks.lowerPour],
  }),
  'clock-setting-late': at(stepView('upper-impression', { clock: clocks.upperLate }), {
    clocks: [clocks.upperLate, clocks.lowerPour, clocks.upperBath],
    flags,
    cautions,
  }),
  'clock-over-ringing': at(stepView('upper-impression', { clock: clocks.upperOver }), {
    clocks: [clocks.upperOver, clocks.lowerPour],
    ringing: [{ clock: 'upper-impression/1', label: 'upper impression', phase: 'inMouth', lateMs: 0 }],
  }),
  'clock-out': at(stepView('upper-impression', { clock: clocks.upperPour, canNext: true }), {
    clocks: [clocks.upperPour],
  }),
  'clock-bath': at(stepView('disinfect-upper', { clock: clocks.upperBath, canNext: true }), {
    clocks: [clocks.upperPour, clocks.upperBath],
  }),
  'clock-five': at(stepView('upper-impression', { clock: clocks.upperWorking }), { clocks: five, cautions }),
  'clock-five-late': at(stepView('upper-impression', { clock: clocks.upperLate }), {
    clocks: [clocks.upperLate, ...five.slice(1)],
    flags,
    cautions,
  }),
  'reason-five': at(stepView('upper-width', { mode: 'reason', reasonFor: 'Why is this step skipped?', reasons }), {
    clocks: five,
    cautions,
  }),
  'check-five': at(stepView('sign-in-allergy'), { cautions, clocks: five }),
  'clock-bath-choose': at(
    stepView('disinfect-upper', { materials: defaultPractice.disinfectants, chosenMaterial: 'hypochlorite' }),
    { clocks: [clocks.upperPour] },
  ),
  'ringing-two': at(stepView('mouth-floor'), {
    clocks: many,
    ringing: [
      { clock: 'disinfect-lower/1', label: 'lower, disinfecting', phase: 'disinfect', lateMs: 0 },
      { clock: 'upper-impression/1', label: 'upper impression', phase: 'pourWithin', lateMs: 42000 },
    ],
    cautions,
    flags,
  }),
};

const steps: Record<string, AppModel> = {
  inform: at(stepView('upper-ready'), { cautions }),
  'inform-trays': at(
    stepView('upper-tray-try', {
      trays: {
        arch: 'upper',
        ridgeMm: 58.5,
        wantedMm: 5,
        trays: [
          { label: 'Upper 72', innerMm: 72, sideMm: 6.75 },
          { label: 'Upper 66', innerMm: 66, sideMm: 3.75 },
          { label: 'Upper 78', innerMm: 78, sideMm: 9.75 },
        ],
      },
    }),
  ),
  check: at(stepView('mouth-tongue')),
  'check-four': at(stepView('sign-in-allergy', { answered: 'latex', canNext: true }), { cautions, clocks: many }),
  decision: at(stepView('upper-keep'), { clocks: [clocks.upperPour] }),
  'decision-stop': at(stepView('finding-next'), { cautions }),
  reason: at(
    stepView('upper-keep', { mode: 'reason', reasons, reasonFor: 'Why is the upper impression taken again?' }),
    { clocks: [clocks.upperPour] },
  ),
  'signoff-open': at(stepView('signoff-clinician'), { flags, cautions }),
  'signoff-clear': at(stepView('signoff-assistant'), { labDue, summary: { ...summary, open: [] } }),
  held: at(stepView('upper-ready', { mode: 'held', words: ['carry on', 'how long', 'help'] }), { clocks: many }),
  closed: at(stepView('signoff-clinician', { mode: 'closed', words: [] }), {
    save: { state: 'keeping' },
    caseLine,
    clocks: many,
  }),
  'flags-bar': at(stepView('mouth-floor'), { flags, cautions, clocks: many }),
  trouble: at(stepView('mouth-floor'), { trouble: 'Heard “next”. Answer first, or skip with a reason.', cautions }),
  unsafe: at(stepView('mouth-floor'), {
    save: { state: 'memory', why: 'The browser refuses to store more.', unsaved: 4 },
    sound: 'needsTouch',
    cautions,
    clocks: many,
  }),
};

const ears: Record<string, AppModel> = {
  'ear-off': ear({ state: 'off' }),
  'ear-consent': ear({
    state: 'blocked',
    why: 'Listening here may send speech off this device, so it asks for your consent first. The keypad works.',
    consent: true,
  }),
  'ear-asking': ear({ state: 'asking' }),
  'ear-starting': ear({ state: 'starting' }),
  'ear-waits': ear({ state: 'listening', waits: true }),
  'ear-shut': ear({ state: 'shut', why: 'Opens when a number is asked for.' }),
  'ear-heard': ear({ state: 'heard', text: 'upper width fifty-three' }),
  'ear-not-understood': ear({
    state: 'notUnderstood',
    text: 'pass me the other one',
    hint: 'Say one of the words below.',
  }),
  'ear-speaking': ear({ state: 'speaking', text: 'Rest height, seventy point five' }),
  'ear-blocked': ear({
    state: 'blocked',
    why: 'The microphone is refused. Allow it in the browser, or use keypad and keys.',
  }),
};

const places: Record<string, AppModel> = {
  'cases-first': { ...base, place: 'cases', sound: 'needsTouch', said: '' },
  cases: {
    ...base,
    place: 'cases',
    said: '',
    cases: [
      { ...caseRow('1', 'DEMO-01', 'Measure the rest height, three times'), demo: true },
      caseRow('2', 'K-2207', 'Decide: keep the lower impression?'),
      { ...caseRow('3', 'K-2198', ''), closed: true, stands: { text: 'lab has: custom trays', due: '2026-05-11' } },
    ],
    caseId: '1',
    clocks: [clocks.upperPour, clocks.lowerBath, { ...clocks.otherPour, case: { id: '3', code: 'K-2198' } }],
  },
  'cases-ringing': {
    ...base,
    place: 'cases',
    clocks: many,
    ringing: [{ clock: 'disinfect-lower/1', label: 'lower, disinfecting', phase: 'disinfect', lateMs: 5000 }],
  },
  'cases-ringing-many': {
    ...base,
    place: 'cases',
    cases: ringingMany.map(({ case: { id, code } }) => caseRow(id, code, 'Upper impression')),
    ringing: ringingMany,
  },
  record: { ...base, place: 'record', clocks: [clocks.upperPour] },
  summary: { ...base, place: 'summary', flags, clocks: many },
  'summary-clear': {
    ...base,
    place: 'summary',
    summary: { ...summary, open: [], flags: [], cautions: [] },
    caseLine,
    labDue,
  },
  'lab-sheet': { ...base, place: 'labSheet', clocks: [clocks.upperPour] },
  'no-visit': base,
  practice: { ...base, place: 'practice', own },
  protocol: { ...base, place: 'protocol', own: ownEdited },
  settings: {
    ...base,
    place: 'settings',
    preferences,
  },
};

export const states: Readonly<Record<string, AppModel>> = {
  ...places,
  ...steps,
  ...numbers,
  ...clockStates,
  ...ears,
  ...decidedStates(base),
};
