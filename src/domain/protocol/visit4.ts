/** Visit 4: insertion. Fit, hold, bite, speech, and what the patient is taught. */
import { againFrom, done, keep, minor, noPlain, soundsOfS, yes } from './answers.ts';
import {
  heightSteps,
  lookStep,
  newMarks,
  NO_LOWER,
  NO_UPPER,
  signInAgain,
  signOutWithoutOrder,
  speakingStep,
  workReturned,
} from './common.ts';
import { holdSteps } from './hold.ts';
import { lowerRegions, upperRegions } from './regions.ts';
import type { Answer, Chapter, Step, VisitProtocol } from './types.ts';

const chapters: readonly Chapter[] = [
  { number: 1, title: 'Sign-in' },
  { number: 2, title: 'Work returned' },
  { number: 3, title: 'Fitting surface' },
  { number: 4, title: 'Borders and frena' },
  { number: 5, title: 'Hold' },
  { number: 6, title: 'Rest and closed height' },
  { number: 7, title: 'Bite' },
  { number: 8, title: 'Speech' },
  { number: 9, title: 'Teaching' },
  { number: 10, title: 'Next appointment' },
  { number: 11, title: 'Sign-out' },
];

const RELIEVED: readonly Answer[] = [
  {
    id: 'even',
    label: 'Even, nothing relieved',
    words: { en: ['even'], de: ['gleichmäßig'], es: ['uniforme'], fr: ['uniforme'] },
    tone: 'good',
  },
  {
    id: 'relieved',
    label: 'Relieved, say where next',
    words: { en: ['relieved'], de: ['entlastet'], es: ['aliviado'], fr: ['déchargé'] },
    tone: 'neutral',
  },
];

type Jaw = 'upper' | 'lower';
const onlyFor = (jaw: Jaw) => (jaw === 'upper' ? NO_UPPER : NO_LOWER);

const paste = (jaw: Jaw): Step => ({
  kind: 'check',
  id: `paste-${jaw}`,
  chapter: 3,
  title: `Show pressure spots, ${jaw} denture`,
  lines: ['Thin coat of indicator paste', 'Seat, press once, take out', 'Relieve what shows through, look again'],
  answers: RELIEVED,
  ...onlyFor(jaw),
});

/** Up to two places a denture by name; further ones as notes. */
const relieved = (jaw: Jaw, n: 1 | 2): Step => ({
  kind: 'check',
  id: `relieved-${jaw}-${n}`,
  chapter: 3,
  title: `Say the ${n === 1 ? 'first' : 'second'} place relieved, ${jaw}`,
  lines: ['Right and left are the patient’s', n === 1 ? 'A second one comes next' : 'None: go on; more: as a note'],
  drawing: jaw === 'upper' ? 'sore-upper' : 'sore-lower',
  answers: jaw === 'upper' ? upperRegions : lowerRegions,
  optional: true,
  onlyIf: { step: `paste-${jaw}`, answer: 'relieved' },
  ...onlyFor(jaw),
});

const borders = (jaw: Jaw): Step => ({
  kind: 'check',
  id: `borders-${jaw}`,
  chapter: 4,
  title: `Check the ${jaw} borders and frena`,
  lines: ['Move lips, cheeks and tongue', 'Denture stays, nothing cuts in'],
  answers: [
    { ...yes, label: 'Free' },
    { ...minor, label: 'Eased', words: { en: ['eased'], de: ['gekürzt'], es: ['rebajado'], fr: ['retouché'] } },
  ],
  ...onlyFor(jaw),
});

const fit: readonly Step[] = [
  lookStep({
    id: 'fit-smooth',
    chapter: 3,
    title: 'Feel the fitting surface',
    lines: ['Dry finger or gauze over all of it', 'Sharp spots, beads, edges: smooth them'],
    good: 'Smooth',
    bad: 'Sharp spots left',
  }),
  paste('upper'),
  relieved('upper', 1),
  relieved('upper', 2),
  paste('lower'),
  relieved('lower', 1),
  relieved('lower', 2),
  borders('upper'),
  borders('lower'),
];

const bite: readonly Step[] = [
  {
    kind: 'decision',
    id: 'remount',
    chapter: 7,
    title: 'Choose where the bite is corrected',
    lines: ['Remounted with a new record, or in the mouth'],
    answers: [
      {
        id: 'remounted',
        label: 'Remounted',
        words: { en: ['remounted', 'remount'], de: ['remontage', 'remontiert'], es: ['remontaje'], fr: ['remontage'] },
        tone: 'good',
      },
      {
        id: 'in-mouth',
        label: 'In the mouth',
        words: { en: ['in the mouth'], de: ['im mund'], es: ['en la boca'], fr: ['en bouche'] },
        tone: 'neutral',
      },
    ],
  },
  {
    kind: 'clock',
    id: 'remount-record',
    chapter: 7,
    title: 'Mix and take the remount record',
    lines: ['Guide the jaw back, no force', 'Close until just before contact', 'Hold still until set'],
    clock: 'remount-record',
    clockLabel: 'remount record',
    flow: 'impression',
    materials: ['record-silicone', 'silicone-putty', 'zinc-oxide-eugenol'],
    poured: false,
    onlyIf: { step: 'remount', answer: 'remounted' },
  },
  {
    kind: 'inform',
    id: 'grind',
    chapter: 7,
    title: 'Mark and grind the contacts',
    lines: ['Colour foil, jaw guided back', 'Grind early contacts first', 'Then side and forward movements'],
    caution: 'Grind outside the mouth. Eye protection and suction on.',
  },
  {
    kind: 'decision',
    id: 'contacts',
    chapter: 7,
    title: 'Decide: are contacts even?',
    lines: ['Both sides at once, front free', 'No slide from first contact to full bite'],
    answers: [
      { ...yes, label: 'Even on both sides' },
      {
        ...againFrom('grind'),
        label: 'Not yet, grind on',
        words: { en: ['not yet', 'grind on'], de: ['noch nicht'], es: ['todavía no'], fr: ['pas encore'] },
        needsReason: false,
      },
    ],
  },
  {
    kind: 'check',
    id: 'pin-direction',
    chapter: 7,
    title: 'Say how the pin stands now',
    lines: ['Against the pin before grinding'],
    drawing: 'hinge',
    answers: [
      {
        id: 'same',
        label: 'Unchanged',
        words: { en: ['unchanged', 'the same'], de: ['unverändert'], es: ['igual'], fr: ['inchangée'] },
        tone: 'good',
      },
      {
        id: 'lower',
        label: 'Lower',
        words: { en: ['lower'], de: ['tiefer', 'niedriger'], es: ['más baja', 'bajó'], fr: ['plus basse'] },
        tone: 'neutral',
      },
      {
        id: 'higher',
        label: 'Higher',
        words: { en: ['higher'], de: ['höher'], es: ['más alta', 'subió'], fr: ['plus haute'] },
        tone: 'neutral',
      },
    ],
    onlyIf: { step: 'remount', answer: 'remounted' },
  },
  {
    kind: 'reading',
    id: 'pin-change',
    chapter: 7,
    title: 'Measure the pin change',
    lines: ['Gap between pin and table, or the scale', 'Unchanged: say nought'],
    drawing: 'hinge',
    reading: 'pin-change',
    onlyIf: { step: 'remount', answer: 'remounted' },
    notIf: [{ step: 'pin-direction', answer: 'same' }],
  },
];

const TAUGHT: readonly Answer[] = [
  { ...done, label: 'Shown and done back' },
  {
    id: 'companion',
    label: 'Companion will help',
    words: {
      en: ['companion', 'helper'],
      de: ['begleitung hilft'],
      es: ['ayuda un familiar'],
      fr: ["un proche l'aide"],
    },
    tone: 'neutral',
  },
];

const teaching: readonly Step[] = [
  {
    kind: 'check',
    id: 'sound-s',
    chapter: 8,
    title: 'Listen to the speech',
    lines: ['Count from sixty to sixty-six, then “fifty-five”', 'Speech settles over two to four weeks'],
    answers: soundsOfS,
  },
  speakingStep(8, 'Gap between the front teeth at an “s”'),
  {
    kind: 'check',
    id: 'taught-insertion',
    chapter: 9,
    title: 'Teach putting in and taking out',
    lines: ['Wet, seat with fingers, never by biting', 'The patient does it, you watch'],
    answers: TAUGHT,
  },
  {
    kind: 'check',
    id: 'taught-cleaning',
    chapter: 9,
    title: 'Teach cleaning',
    lines: [
      'Brush and soak daily, rinse well',
      'Cleanser only outside the mouth, no hot water',
      'Over a basin with water or a towel',
    ],
    answers: TAUGHT,
  },
  {
    kind: 'check',
    id: 'taught-night',
    chapter: 9,
    title: 'Teach taking out at night',
    lines: ['Out for the night, kept in water', 'Gums and tongue brushed softly'],
    answers: TAUGHT,
  },
  {
    kind: 'check',
    id: 'taught-sore',
    chapter: 9,
    title: 'Say what to do with sore spots',
    lines: [
      'Come, do not file it yourself',
      'Wear it the day before, so that it shows',
      'Small bites, chew on both sides',
    ],
    caution: 'Trouble breathing or a swallowed part is an emergency: say where to call.',
    answers: TAUGHT,
  },
  {
    kind: 'check',
    id: 'taught-swallowing',
    chapter: 9,
    title: 'Say what to expect when swallowing',
    lines: ['More saliva at first, it settles', 'Choking, coughing at meals: call'],
    answers: TAUGHT,
  },
  {
    kind: 'check',
    id: 'review-booked',
    chapter: 10,
    title: 'Agree on the review',
    lines: ['In one to three days', 'Written advice handed over'],
    answers: [
      { ...yes, label: 'Booked in 1 to 3 days' },
      {
        id: 'later',
        label: 'Booked later',
        words: { en: ['later', 'booked later'], de: ['später'], es: ['más tarde'], fr: ['plus tard'] },
        tone: 'warn',
        needsReason: true,
      },
      { ...noPlain, label: 'Not booked', tone: 'warn', needsReason: true },
    ],
  },
];

export const visit4: VisitProtocol = {
  id: 'visit-4',
  version: 1,
  visit: 4,
  title: 'Insertion',
  chapters,
  steps: [
    ...signInAgain,
    ...workReturned(['Finished dentures', 'and the remount casts']),
    ...fit,
    ...holdSteps(5),
    ...heightSteps({
      chapter: 6,
      basesLine: 'Dentures in the mouth: normally both',
      closedLine: 'Dentures in, back teeth together',
    }),
    {
      kind: 'decision',
      id: 'heights-keep',
      chapter: 6,
      title: 'Decide: keep this set of heights?',
      lines: ['Readings of one set within 1 mm', 'Marks smudged or lost: make new ones'],
      drawing: 'height-stack',
      answers: [keep, newMarks],
    },
    ...bite,
    ...teaching,
    ...signOutWithoutOrder(11),
  ],
};
