/** Visit 2: definitive impressions, jaw relation, choice of teeth. Plain data; sources in docs/protocol.md. */
import {
  againFrom,
  keep,
  lipLevels,
  lipSupport,
  minor,
  no,
  noneSaid,
  noPlain,
  noted,
  passes,
  sides,
  soundsOfS,
  yes,
  yesPlain,
} from './answers.ts';
import {
  disinfectStep,
  heightSteps,
  lookStep,
  newMarks,
  NO_LOWER,
  NO_UPPER,
  pourStep,
  signInAgain,
  signOut,
  workReturned,
} from './common.ts';
import type { Answer, Chapter, Step, VisitProtocol } from './types.ts';

const chapters: readonly Chapter[] = [
  { number: 1, title: 'Sign-in' },
  { number: 2, title: 'Work returned' },
  { number: 3, title: 'Upper tray and border' },
  { number: 4, title: 'Upper impression' },
  { number: 5, title: 'Lower tray and border' },
  { number: 6, title: 'Lower impression' },
  { number: 7, title: 'Rims' },
  { number: 8, title: 'Rest and closed height' },
  { number: 9, title: 'Speech' },
  { number: 10, title: 'Centric relation' },
  { number: 11, title: 'Guide marks' },
  { number: 12, title: 'Tooth choice' },
  { number: 13, title: 'Disinfect and pour' },
  { number: 14, title: 'Sign-out' },
];

type Jaw = 'upper' | 'lower';
const onlyFor = (jaw: Jaw) => (jaw === 'upper' ? NO_UPPER : NO_LOWER);
const BORDER_MATERIALS = ['border-compound', 'polyether', 'silicone-putty', 'addition-silicone'] as const;

const MOULDING: readonly Answer[] = [
  {
    id: 'sections',
    label: 'Section by section',
    words: {
      en: ['sections', 'section by section'],
      de: ['abschnittsweise', 'in abschnitten'],
      es: ['por secciones', 'por partes'],
      fr: ['par secteurs', 'par étapes'],
    },
    tone: 'neutral',
  },
  {
    id: 'at-once',
    label: 'All at once',
    words: { en: ['all at once'], de: ['in einem zug'], es: ['todo a la vez'], fr: ["d'un seul coup"] },
    tone: 'neutral',
  },
  {
    id: 'not-needed',
    label: 'Border fits as it is',
    words: {
      en: ['as it is', 'border fits'],
      de: ['rand passt', 'so lassen'],
      es: ['así está bien', 'borde correcto'],
      fr: ['tel quel', 'bord correct'],
    },
    tone: 'neutral',
  },
];

interface Section {
  readonly id: string;
  readonly name: string;
  readonly movement: string;
}
const UPPER_SECTIONS: readonly Section[] = [
  { id: 'front', name: 'front', movement: 'Pull the lip down and out, then in' },
  { id: 'right', name: 'right cheek', movement: 'Cheek down and forward, jaw to the left' },
  { id: 'left', name: 'left cheek', movement: 'Cheek down and forward, jaw to the right' },
  { id: 'rear', name: 'rear end', movement: 'Say “ah”, swallow, nose blown gently' },
];
const LOWER_SECTIONS: readonly Section[] = [
  { id: 'front', name: 'front', movement: 'Pull the lip up and out, then in' },
  { id: 'right', name: 'right cheek', movement: 'Cheek up and in, close against a finger' },
  { id: 'left', name: 'left cheek', movement: 'Cheek up and in, close against a finger' },
  { id: 'tongue-right', name: 'right tongue side', movement: 'Tongue to the left cheek, then swallow' },
  { id: 'tongue-left', name: 'left tongue side', movement: 'Tongue to the right cheek, then swallow' },
  { id: 'tongue-front', name: 'front tongue side', movement: 'Tongue tip to the upper lip, then out' },
];

interface Moulding {
  readonly jaw: Jaw;
  readonly chapter: number;
  readonly sections: readonly Section[];
}
const sectionStep = (jaw: Jaw, chapter: number, section: Section): Step => ({
  kind: 'clock',
  id: `${jaw}-mould-${section.id}`,
  chapter,
  title: `Mould the ${jaw} ${section.name}`,
  lines: ['Add to the dry border', 'Seat, hold the tray still', section.movement, 'Out: even, dull and rounded'],
  caution: 'Compound from the flame or bath can burn: temper it before it touches the mouth.',
  clock: `${jaw}-mould-${section.id}`,
  clockLabel: `${jaw} border, ${section.name}`,
  flow: 'impression',
  materials: BORDER_MATERIALS,
  poured: false,
  onlyIf: { step: `${jaw}-mould-how`, answer: 'sections' },
  ...onlyFor(jaw),
});
const mouldSteps = ({ jaw, chapter, sections }: Moulding): readonly Step[] => [
  {
    kind: 'decision',
    id: `${jaw}-mould-how`,
    chapter,
    title: `Choose how the ${jaw} border is moulded`,
    lines: ['Section by section, or all at once'],
    answers: MOULDING,
    ...onlyFor(jaw),
  },
  ...sections.map((section) => sectionStep(jaw, chapter, section)),
  {
    kind: 'clock',
    id: `${jaw}-mould-all`,
    chapter,
    title: `Mould the whole ${jaw} border`,
    lines: [
      'Add all round the dry border',
      'Seat, hold the tray still',
      'Lips, cheeks, tongue, swallow',
      'Out: even and rounded',
    ],
    clock: `${jaw}-mould-all`,
    clockLabel: `${jaw} border`,
    flow: 'impression',
    materials: BORDER_MATERIALS,
    poured: false,
    onlyIf: { step: `${jaw}-mould-how`, answer: 'at-once' },
    ...onlyFor(jaw),
  },
  {
    kind: 'check',
    id: `${jaw}-mould-check`,
    chapter,
    title: `Check the ${jaw} border`,
    lines: ['Fills the sulcus, rounded, no tray showing', 'Stays when lips, cheeks, tongue move'],
    answers: passes,
    ...onlyFor(jaw),
  },
];

const trayChecks = (jaw: Jaw, chapter: number): readonly Step[] => [
  {
    kind: 'check',
    id: `${jaw}-custom-borders`,
    chapter,
    title: `Check the ${jaw} custom tray borders`,
    lines: ['2 to 3 mm short, lips and cheeks moved', 'All frena free'],
    drawing: 'sulcus',
    answers: [
      { ...yes, label: 'Short and free' },
      { ...minor, label: 'Right after trimming' },
      { ...no, label: 'Not right' },
    ],
    ...onlyFor(jaw),
  },
  {
    ...lookStep({
      id: `${jaw}-custom-stable`,
      chapter,
      title: `Check that the ${jaw} tray sits still`,
      lines: ['Press left and right in turn', 'No rocking, no lifting'],
      good: 'Stable',
      bad: 'Rocks',
    }),
    ...onlyFor(jaw),
  },
];

const FINAL_MATERIALS = ['zinc-oxide-eugenol', 'addition-silicone', 'polyether', 'alginate'] as const;
interface FinalWords {
  readonly jaw: Jaw;
  readonly chapter: number;
  readonly seat: readonly string[];
  readonly landmarks: readonly string[];
}
const finalTaken = ({ jaw, chapter, seat }: FinalWords): readonly Step[] => [
  {
    kind: 'inform',
    id: `${jaw}-final-ready`,
    chapter,
    title: `Get ready for the ${jaw} impression`,
    lines: ['Sit upright, suction ready', 'Adhesive as the leaflet asks, then let it dry', 'Dry the mucosa'],
    caution: 'Gagging: head forward, breathe through the nose. Take out at once if breathing is hindered.',
    ...onlyFor(jaw),
  },
  {
    kind: 'clock',
    id: `${jaw}-final`,
    chapter,
    title: `Mix, seat and hold the ${jaw}`,
    lines: seat,
    clock: `${jaw}-final`,
    clockLabel: `${jaw} impression`,
    flow: 'impression',
    materials: FINAL_MATERIALS,
    ...onlyFor(jaw),
  },
];
const finalJudged = ({ jaw, chapter, landmarks }: FinalWords): readonly Step[] => [
  {
    kind: 'check',
    id: `${jaw}-final-surface`,
    chapter,
    title: `Check the ${jaw} surface`,
    lines: ['Even thin layer, no voids, no drags', 'No tray or border material showing through'],
    answers: passes,
    ...onlyFor(jaw),
  },
  {
    kind: 'check',
    id: `${jaw}-final-borders`,
    chapter,
    title: `Check the ${jaw} landmarks`,
    lines: landmarks,
    answers: passes,
    ...onlyFor(jaw),
  },
  {
    kind: 'decision',
    id: `${jaw}-final-keep`,
    chapter,
    title: `Decide: keep the ${jaw} impression?`,
    lines: ['Taken again: the first stays on record', 'Kept: rinse, seal until the records are done'],
    answers: [keep, againFrom(`${jaw}-final-ready`)],
    ...onlyFor(jaw),
  },
];
const finalSteps = (words: FinalWords): readonly Step[] => [...finalTaken(words), ...finalJudged(words)];

const impressions: readonly Step[] = [
  ...trayChecks('upper', 3),
  ...mouldSteps({ jaw: 'upper', chapter: 3, sections: UPPER_SECTIONS }),
  ...finalSteps({
    jaw: 'upper',
    chapter: 4,
    seat: [
      'Thin layer, over the border too',
      'Seat the front, swing the back up',
      'Lip and cheek movements while it flows',
      'Hold still until set',
    ],
    landmarks: ['Tuberosities and hamular notches', 'Sulcus rolled, frena shown', 'Palate to the vibrating line'],
  }),
  {
    ...lookStep({
      id: 'rear-seal',
      chapter: 4,
      title: 'Mark the rear seal line',
      lines: ['Patient says “ah”', 'Mark line and notches in the mouth', 'Seat, transfer, tell the lab how deep'],
      good: 'Marked',
      bad: 'Not marked',
    }),
    ...NO_UPPER,
  },
  ...trayChecks('lower', 5),
  ...mouldSteps({ jaw: 'lower', chapter: 5, sections: LOWER_SECTIONS }),
  ...finalSteps({
    jaw: 'lower',
    chapter: 6,
    seat: [
      'Thin layer, over the border too',
      'Seat at the pads, then the front',
      'Tongue out and to each side while it flows',
      'Hold still, mouth nearly closed',
    ],
    landmarks: ['Both pads and the spaces behind', 'Tongue side rounded, frena shown', 'Buccal shelf covered'],
  }),
];

const rims: readonly Step[] = [
  {
    kind: 'check',
    id: 'rim-lip',
    chapter: 7,
    title: 'Judge lip support',
    lines: ['Look from the side and from the front', 'Add or take wax, look again'],
    answers: lipSupport,
    ...NO_UPPER,
  },
  {
    kind: 'check',
    id: 'rim-level',
    chapter: 7,
    title: 'Look at the upper rim edge at rest',
    lines: ['Lips lightly apart, face relaxed'],
    answers: lipLevels,
    ...NO_UPPER,
  },
  {
    kind: 'reading',
    id: 'rim-show',
    chapter: 7,
    title: 'Measure how much rim shows',
    lines: ['From the resting lip down to the rim edge'],
    reading: 'rim-show',
    onlyIf: { step: 'rim-level', answer: 'below' },
    ...NO_UPPER,
  },
  {
    ...lookStep({
      id: 'rim-front-plane',
      chapter: 7,
      title: 'Check the rim from the front',
      lines: ['Flat guide on the rim', 'Parallel to the line of the pupils'],
      good: 'Parallel',
      bad: 'Tilted',
    }),
    ...NO_UPPER,
  },
  {
    ...lookStep({
      id: 'rim-side-plane',
      chapter: 7,
      title: 'Check the rim from the side',
      lines: ['Flat guide on the rim, both sides', 'Parallel to the line from nose wing to ear'],
      good: 'Parallel',
      bad: 'Tilted',
    }),
    ...NO_UPPER,
  },
  {
    ...lookStep({
      id: 'rim-lower-level',
      chapter: 7,
      title: 'Check the lower rim level',
      lines: ['Back end at two thirds of the pad', 'Front level with the resting lower lip'],
      good: 'Level',
      bad: 'Too high or low',
    }),
    ...NO_LOWER,
  },
];

const REMEASURE: readonly Answer[] = [
  keep,
  {
    id: 'adjust',
    label: 'Adjust rims, measure again',
    words: {
      en: ['adjust', 'adjust the rims'],
      de: ['wälle ändern', 'wälle anpassen'],
      es: ['ajustar los rodetes', 'ajustar'],
      fr: ['ajuster les bourrelets', 'ajuster'],
    },
    tone: 'warn',
    goto: 'bases-closed',
    retake: true,
    needsReason: true,
  },
  newMarks,
];

const heights: readonly Step[] = [
  ...heightSteps({ chapter: 8, basesLine: 'Rims in the mouth: normally both', closedLine: 'Rims in, closed lightly' }),
  {
    kind: 'check',
    id: 'sound-s',
    chapter: 9,
    title: 'Listen to the “s”',
    lines: ['Count from sixty to sixty-six', 'Rims must not touch'],
    answers: soundsOfS,
  },
  {
    kind: 'reading',
    id: 'speaking-space',
    chapter: 9,
    title: 'Measure the closest speaking space',
    lines: ['Gap between the rims in front', 'at the narrowest moment of an “s”'],
    reading: 'speaking-space',
  },
  {
    kind: 'decision',
    id: 'heights-keep',
    chapter: 9,
    title: 'Decide: keep this height?',
    lines: ['Rest space 2 to 4 mm, “s” clean', 'Adjusted: closed height and speech again'],
    drawing: 'height-stack',
    answers: REMEASURE,
  },
];

const TRACING = { onlyIf: { step: 'centric-method', answer: 'tracing' } } as const;
const CHECK_RECORDS = { onlyIf: { step: 'centric-method', answer: 'check-records' } } as const;
const LEGS = {
  onlyIf: { step: 'legs-wanted', answer: 'yes' },
  notIf: [{ step: 'centric-method', answer: 'check-records' }],
} as const;
const RECORD_MATERIALS = ['record-silicone', 'silicone-putty', 'zinc-oxide-eugenol', 'alginate-stiff'] as const;

const tracing = (n: 1 | 2 | 3, name: string): readonly Step[] => [
  {
    kind: 'check',
    id: `tracing-${n}-sharp`,
    chapter: 10,
    title: `Make the ${name} tracing`,
    lines: ['Forward and back, then to each side', 'Look: one sharp point, lines retraced'],
    answers: [
      {
        id: 'sharp',
        label: 'Sharp',
        words: { en: ['sharp', 'one point'], de: ['spitz'], es: ['nítido'], fr: ['nette', 'pointue'] },
        tone: 'good',
      },
      {
        id: 'blunt',
        label: 'Blunt or double',
        words: {
          en: ['blunt', 'double'],
          de: ['stumpf', 'doppelt'],
          es: ['romo', 'doble'],
          fr: ['émoussée', 'double'],
        },
        tone: 'warn',
      },
    ],
    ...TRACING,
  },
  {
    kind: 'reading',
    id: `tracing-${n}-x`,
    chapter: 10,
    title: `Read the ${name} point, across`,
    lines: ['Millimetre sheet, lower left corner is nought', 'Distance to the right'],
    drawing: 'tracing',
    reading: `tracing-${n}-x`,
    ...TRACING,
  },
  {
    kind: 'reading',
    id: `tracing-${n}-y`,
    chapter: 10,
    title: `Read the ${name} point, up`,
    lines: ['Same sheet, same corner', 'Distance upward'],
    drawing: 'tracing',
    reading: `tracing-${n}-y`,
    ...TRACING,
  },
];

const leg = (id: string, title: string): Step => ({
  kind: 'reading',
  id,
  chapter: 10,
  title,
  lines: ['Same sheet, same corner', 'At the end of the leg'],
  drawing: 'tracing',
  reading: id,
  optional: true,
  ...LEGS,
});

const centric: readonly Step[] = [
  {
    kind: 'decision',
    id: 'centric-method',
    chapter: 10,
    title: 'Choose how centric relation is found',
    lines: ['Needle-point tracing, or check records'],
    answers: [
      {
        id: 'tracing',
        label: 'Needle-point tracing',
        words: {
          en: ['tracing', 'needle point'],
          de: ['stützstiftregistrat', 'pfeilwinkel'],
          es: ['trazado', 'punta trazadora'],
          fr: ['tracé', 'pointe traçante'],
        },
        tone: 'neutral',
      },
      {
        id: 'check-records',
        label: 'Check records',
        words: {
          en: ['check records', 'records'],
          de: ['checkbisse', 'registrate'],
          es: ['registros', 'registros de control'],
          fr: ['enregistrements', 'mordus de contrôle'],
        },
        tone: 'neutral',
      },
    ],
  },
  {
    kind: 'inform',
    id: 'tracing-ready',
    chapter: 10,
    title: 'Get the tracing plates ready',
    lines: [
      'Bearing point at the kept height',
      'Plates clear of each other all round',
      'Practise: forward, back, right, left',
    ],
    ...TRACING,
  },
  ...tracing(1, 'first'),
  ...tracing(2, 'second'),
  ...tracing(3, 'third'),
  {
    ...lookStep({
      id: 'tracing-paths',
      chapter: 10,
      title: 'Check the paths',
      lines: ['Forward path drawn', 'Both side paths drawn, about equal'],
      good: 'All drawn',
      bad: 'One missing or unequal',
    }),
    ...TRACING,
  },
  {
    kind: 'decision',
    id: 'legs-wanted',
    chapter: 10,
    title: 'Decide: read the ends of the legs?',
    lines: ['Gives the angle of the tracing'],
    answers: [yesPlain, noPlain],
    ...TRACING,
  },
  leg('leg-right-x', 'Read the right leg’s end, across'),
  leg('leg-right-y', 'Read the right leg’s end, up'),
  leg('leg-left-x', 'Read the left leg’s end, across'),
  leg('leg-left-y', 'Read the left leg’s end, up'),
  {
    kind: 'decision',
    id: 'tracing-keep',
    chapter: 10,
    title: 'Decide: keep these tracings?',
    lines: ['Points close together, sharp', 'Taken again: the first stay on record'],
    drawing: 'tracing',
    answers: [keep, againFrom('tracing-ready')],
    ...TRACING,
  },
  {
    kind: 'clock',
    id: 'tracing-fix',
    chapter: 10,
    title: 'Fix the jaws at the point',
    lines: ['Needle in the hole over the point', 'Fill between the plates', 'Hold still until set'],
    clock: 'centric-record',
    clockLabel: 'centric record',
    flow: 'impression',
    materials: RECORD_MATERIALS,
    poured: false,
    ...TRACING,
  },
  {
    kind: 'clock',
    id: 'check-record-1',
    chapter: 10,
    title: 'Mix and take the first record',
    lines: ['Guide the jaw back, no force', 'Close until just before contact', 'Hold still until set'],
    clock: 'check-record-1',
    clockLabel: 'first check record',
    flow: 'impression',
    materials: RECORD_MATERIALS,
    poured: false,
    ...CHECK_RECORDS,
  },
  {
    kind: 'clock',
    id: 'check-record-2',
    chapter: 10,
    title: 'Mix and take the second record',
    lines: ['On its own, the first put aside', 'Guide the jaw back, no force', 'Hold still until set'],
    clock: 'check-record-2',
    clockLabel: 'second check record',
    flow: 'impression',
    materials: RECORD_MATERIALS,
    poured: false,
    ...CHECK_RECORDS,
  },
  {
    kind: 'decision',
    id: 'records-agree',
    chapter: 10,
    title: 'Decide: do the two records agree?',
    lines: ['Both seat the rims in the same place'],
    answers: [
      { ...yes, label: 'They agree' },
      { ...againFrom('check-record-1'), label: 'No, take both again' },
    ],
    ...CHECK_RECORDS,
  },
  {
    kind: 'reading',
    id: 'axis-incisal',
    chapter: 10,
    title: 'Measure axis to rim edge',
    lines: ['Only with a facebow', 'From the axis point to the front rim edge'],
    drawing: 'hinge',
    reading: 'axis-incisal',
    optional: true,
  },
];

const guideMarks: readonly Step[] = [
  {
    kind: 'check',
    id: 'midline-side',
    chapter: 11,
    title: 'Mark the midline on the rim',
    lines: ['Middle of the face, not only of the nose', 'Where is the rim’s own middle?'],
    answers: sides,
    ...NO_UPPER,
  },
  {
    kind: 'reading',
    id: 'midline-offset',
    chapter: 11,
    title: 'Measure the midline offset',
    lines: ['From the face’s middle to the rim’s middle'],
    reading: 'midline-offset',
    notIf: [...NO_UPPER.notIf, { step: 'midline-side', answer: 'centred' }],
  },
  {
    kind: 'reading',
    id: 'canine-lines',
    chapter: 11,
    title: 'Measure between the canine lines',
    lines: ['Mark the corners of the mouth on the rim', 'Measure over the curve'],
    reading: 'canine-lines',
    ...NO_UPPER,
  },
  {
    kind: 'reading',
    id: 'high-lip-line',
    chapter: 11,
    title: 'Measure up to the high lip line',
    lines: ['Patient smiles fully', 'From the rim edge up to the lip'],
    reading: 'high-lip-line',
    ...NO_UPPER,
  },
  {
    kind: 'reading',
    id: 'interalar-width',
    chapter: 12,
    title: 'Measure the width of the nose',
    lines: ['Outer side of one wing to the other', 'Touch, do not press'],
    drawing: 'caliper-face',
    reading: 'interalar-width',
    ...NO_UPPER,
  },
  {
    kind: 'reading',
    id: 'face-width',
    chapter: 12,
    title: 'Measure the face width',
    lines: ['Widest place at the cheekbones'],
    drawing: 'caliper-face',
    reading: 'face-width',
    ...NO_UPPER,
  },
  {
    kind: 'reading',
    id: 'face-height',
    chapter: 12,
    title: 'Measure the face height',
    lines: ['Hairline, or where it was', 'to the underside of the chin'],
    drawing: 'caliper-face',
    reading: 'face-height',
    ...NO_UPPER,
  },
  {
    kind: 'check',
    id: 'teeth-chosen',
    chapter: 12,
    title: 'Choose the size of the front teeth',
    lines: ['Rules disagree: look at the face', 'Say the chosen teeth as a note'],
    drawing: 'tooth-sizes',
    answers: [
      noted,
      {
        ...noneSaid,
        label: 'Not chosen yet',
        words: { en: ['not chosen'], de: ['noch nicht'], es: ['todavía no'], fr: ['pas encore'] },
      },
    ],
    ...NO_UPPER,
  },
  {
    kind: 'check',
    id: 'shade-chosen',
    chapter: 12,
    title: 'Choose the shade, in words',
    lines: ['Daylight, teeth wet, short looks', 'Say the words as a note'],
    answers: [noted, { ...noneSaid, label: 'Not chosen yet' }],
  },
  {
    kind: 'check',
    id: 'wish-arrangement',
    chapter: 12,
    title: 'Ask how the teeth should stand',
    lines: ['Straight, gaps, overlaps, as before', 'Say the patient’s own words as a note'],
    answers: [noted, noneSaid],
  },
];

const after: readonly Step[] = [
  {
    ...disinfectStep({ chapter: 13, id: 'disinfect-upper', what: 'upper impression', of: 'upper-final' }),
    ...NO_UPPER,
  },
  {
    ...disinfectStep({ chapter: 13, id: 'disinfect-lower', what: 'lower impression', of: 'lower-final' }),
    ...NO_LOWER,
  },
  disinfectStep({ chapter: 13, id: 'disinfect-record', what: 'rims and records' }),
  pourStep(13),
  ...signOut(14, [
    'Pour, mount by the record',
    'Set up for try-in: sizes, shade, wishes',
    'Rear seal, notes, due date',
  ]),
];

export const visit2: VisitProtocol = {
  id: 'visit-2',
  version: 1,
  visit: 2,
  title: 'Definitive impressions, jaw relation, tooth choice',
  chapters,
  steps: [
    ...signInAgain,
    ...workReturned(['Custom trays', 'with rims or tracing plates']),
    ...impressions,
    ...rims,
    ...heights,
    ...centric,
    ...guideMarks,
    ...after,
  ],
};
