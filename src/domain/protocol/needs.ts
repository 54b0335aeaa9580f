/** Which steps the computations, flags and lab lines of the summary live on. Dropping one of them is said beforehand. */
import type { Step, VisitProtocol } from './types.ts';

export interface Need {
  /** What would be missing, in words. */
  readonly what: string;
  /** Readings without which it cannot be worked out. */
  readonly readings: readonly string[];
  /** Other steps without which it cannot, or is worked out from less. */
  readonly steps: readonly string[];
}

/** Ids as in the shipped protocols and as the summary asks for them; held to the summary by a test. */
export const NEEDS: readonly Need[] = [
  { what: 'rest vertical dimension', readings: ['rest-height'], steps: [] },
  { what: 'rest space', readings: ['rest-height', 'closed-height'], steps: [] },
  { what: 'which heights may be compared', readings: [], steps: ['marks', 'bases-rest', 'bases-closed'] },
  { what: 'change at the pin', readings: ['rest-height', 'record-height'], steps: [] },
  { what: 'convention of the record', readings: [], steps: ['record-at'] },
  {
    what: 'class of the edentulous jaws',
    readings: ['bone-height'],
    steps: ['ridge-form-upper', 'muscle', 'jaw-relation', 'sign-in-gag'],
  },
  { what: 'upper tray to try first', readings: ['upper-width'], steps: [] },
  { what: 'lower tray to try first', readings: ['lower-width'], steps: [] },
  {
    what: 'borders of the custom trays, site by site',
    readings: [
      'sulcus-upper-labial',
      'sulcus-upper-buccal-right',
      'sulcus-upper-buccal-left',
      'sulcus-lower-labial',
      'sulcus-lower-buccal-right',
      'sulcus-lower-buccal-left',
      'sulcus-lower-lingual-right',
      'sulcus-lower-lingual-left',
    ],
    steps: [],
  },
  {
    what: 'tooth sizes by every rule',
    readings: ['canine-lines', 'interalar-width', 'face-width', 'face-height'],
    steps: [],
  },
  {
    what: 'middle and scatter of the tracings',
    readings: ['tracing-1-x', 'tracing-1-y', 'tracing-2-x', 'tracing-2-y', 'tracing-3-x', 'tracing-3-y'],
    steps: ['tracing-1-sharp', 'tracing-2-sharp', 'tracing-3-sharp'],
  },
  { what: 'angle of the tracing', readings: ['leg-right-x', 'leg-right-y', 'leg-left-x', 'leg-left-y'], steps: [] },
  { what: 'the patient’s own distance to the hinge axis', readings: ['axis-incisal'], steps: [] },
  { what: 'closest speaking space', readings: ['speaking-space'], steps: [] },
  { what: 'change by grinding', readings: ['pin-change'], steps: ['pin-direction'] },
  {
    what: 'scores of retention and stability',
    readings: ['retention-upper', 'stability-upper', 'retention-lower', 'stability-lower'],
    steps: [],
  },
  {
    what: 'the map of sore and relieved places',
    readings: [1, 2, 3, 4].flatMap((n) => [`sore-${n}-size`, `sore-${n}-weeks`]),
    steps: [
      ...[1, 2, 3, 4].flatMap((n) =>
        ['', '-upper', '-lower', '-kind', '-cause', '-relieved'].map((of) => `sore-${n}${of}`),
      ),
      ...['upper', 'lower'].flatMap((jaw) => [`paste-${jaw}`, `relieved-${jaw}-1`, `relieved-${jaw}-2`]),
    ],
  },
  { what: 'size of a finding and whether to refer', readings: ['finding-size', 'finding-weeks'], steps: ['finding'] },
  { what: 'wishes on the lab sheet', readings: [], steps: ['wish-shape', 'wish-shade', 'wish-arrangement'] },
  { what: 'caution about allergies', readings: [], steps: ['sign-in-allergy'] },
  { what: 'caution about swallowing and breathing', readings: [], steps: ['sign-in-swallow'] },
  { what: 'caution about bleeding', readings: [], steps: ['sign-in-blood'] },
  { what: 'caution about medicines for bone', readings: [], steps: ['sign-in-bone'] },
  {
    what: 'whether the same visit comes again',
    readings: [],
    steps: [
      'sign-in-patient',
      'sign-in-consent',
      'work-returned',
      'finding',
      'finding-next',
      'bite-agrees',
      'finish-consent',
    ],
  },
  { what: 'right patient, right case', readings: [], steps: ['sign-in-patient', 'sign-in-consent'] },
];

const titled = (step: Step) => `“${step.title}”`;

function clockNeeds(step: Step, kept: VisitProtocol): readonly string[] {
  if (step.kind !== 'clock') return [];
  if (step.flow === 'timed') return [`${titled(step)} is gone: its disinfection stays unrecorded on the lab sheet.`];
  const baths = kept.steps.filter((one) => one.kind === 'clock' && one.of === step.clock);
  const alone = baths.map((bath) => ` ${titled(bath)} then belongs to no impression.`);
  return [`${titled(step)} is gone: no clock, no pouring time, no line on the lab sheet for it.${alone.join('')}`];
}

function lacks(step: Step): readonly string[] {
  const hit = NEEDS.filter(
    ({ readings, steps }) => steps.includes(step.id) || (step.kind === 'reading' && readings.includes(step.reading)),
  );
  return hit.map(({ what }) => `${titled(step)} is gone: the summary lacks “${what}” or knows less of it.`);
}

/** What the summary can no longer work out once steps of `before` are missing in `after`; one sentence each. */
export function lostBy(before: VisitProtocol, after: VisitProtocol): readonly string[] {
  const left = new Set(after.steps.map((step) => step.id));
  return before.steps
    .filter((step) => !left.has(step.id))
    .flatMap((step) => [...lacks(step), ...clockNeeds(step, after)]);
}
