/** Visit 5: review. Opened again as often as needed; up to four sore areas a visit, further ones as notes. */
import { done, keep, minor, no, noneSaid, noPlain, noted, yes, yesPlain } from './answers.ts';
import {
  askChanges,
  askConsent,
  chooseArches,
  heightSteps,
  lookStep,
  matchPatient,
  newMarks,
  signOutWithoutOrder,
  speakingStep,
} from './common.ts';
import { holdSteps } from './hold.ts';
import { lowerRegions, upperRegions } from './regions.ts';
import type { Answer, Chapter, Step, VisitProtocol } from './types.ts';

const chapters: readonly Chapter[] = [
  { number: 1, title: 'Sign-in' },
  { number: 2, title: 'Complaints' },
  { number: 3, title: 'Sore areas' },
  { number: 4, title: 'Hold' },
  { number: 5, title: 'Bite' },
  { number: 6, title: 'Rest and closed height' },
  { number: 7, title: 'Cleaning' },
  { number: 8, title: 'What next' },
  { number: 9, title: 'Sign-out' },
];

const complaints: readonly Step[] = [
  {
    kind: 'check',
    id: 'complaint',
    chapter: 2,
    title: 'Ask how the dentures are',
    lines: ['Eating, speaking, pain, looks', 'Say the patient’s own words as a note'],
    answers: [noted, { ...noneSaid, label: 'No complaint' }],
  },
  {
    kind: 'check',
    id: 'worn-today',
    chapter: 2,
    title: 'Ask whether they are worn',
    lines: ['Yesterday and today, for how long'],
    answers: [
      { ...yes, label: 'Worn' },
      {
        ...minor,
        id: 'partly',
        label: 'For some hours',
        words: { en: ['some hours', 'partly'], de: ['stundenweise'], es: ['algunas horas'], fr: ['quelques heures'] },
      },
      { ...no, label: 'Not worn' },
    ],
  },
];

const WHERE: readonly Answer[] = [
  {
    id: 'none',
    label: 'No sore area',
    words: {
      en: ['none', 'no more'],
      de: ['keine', 'keine mehr'],
      es: ['ninguna', 'no hay más'],
      fr: ['aucune', 'plus rien'],
    },
    tone: 'good',
  },
  {
    id: 'upper',
    label: 'Upper jaw',
    words: { en: ['upper'], de: ['oberkiefer', 'oben'], es: ['superior'], fr: ['haut'] },
    tone: 'neutral',
  },
  {
    id: 'lower',
    label: 'Lower jaw',
    words: { en: ['lower'], de: ['unterkiefer', 'unten'], es: ['inferior'], fr: ['bas'] },
    tone: 'neutral',
  },
];

const KINDS: readonly Answer[] = [
  {
    id: 'red',
    label: 'Red and sore',
    words: { en: ['red'], de: ['gerötet'], es: ['enrojecida'], fr: ['rouge'] },
    tone: 'neutral',
  },
  {
    id: 'ulcer',
    label: 'Ulcer',
    words: { en: ['ulcer'], de: ['geschwür', 'druckgeschwür'], es: ['úlcera'], fr: ['ulcère'] },
    tone: 'warn',
    caution: 'Ulcer noted: look again within two weeks. One that stays two to three weeks is for referral.',
  },
  {
    id: 'other',
    label: 'Lump, white or red patch',
    words: { en: ['lump', 'patch'], de: ['knoten', 'fleck'], es: ['bulto', 'mancha'], fr: ['masse', 'tache'] },
    tone: 'warn',
    caution: 'Lump or patch noted: not put down to the denture; refer by the local rules.',
  },
];

const CAUSES: readonly Answer[] = [
  {
    id: 'border',
    label: 'Border too long',
    words: {
      en: ['border', 'too long'],
      de: ['rand', 'rand zu lang'],
      es: ['borde', 'borde largo'],
      fr: ['bord', 'bord trop long'],
    },
    tone: 'neutral',
  },
  {
    id: 'bite',
    label: 'Bite, early contact',
    words: {
      en: ['bite', 'early contact'],
      de: ['biss', 'frühkontakt'],
      es: ['mordida', 'contacto prematuro'],
      fr: ['occlusion', 'contact prématuré'],
    },
    tone: 'neutral',
  },
  {
    id: 'undercut',
    label: 'Undercut',
    words: { en: ['undercut'], de: ['unterschnitt'], es: ['retención'], fr: ['contre-dépouille'] },
    tone: 'neutral',
  },
  {
    id: 'spot',
    label: 'Sharp or pressing spot',
    words: {
      en: ['pressure spot', 'sharp spot'],
      de: ['druckpunkt', 'scharfe stelle'],
      es: ['punto de presión'],
      fr: ['point de pression'],
    },
    tone: 'neutral',
  },
  {
    id: 'not-found',
    label: 'No cause found',
    words: {
      en: ['not found', 'no cause'],
      de: ['nicht gefunden', 'keine ursache'],
      es: ['sin causa', 'no se encuentra'],
      fr: ['non trouvée', 'sans cause'],
    },
    tone: 'warn',
    caution: 'Sore area without a cause found: review within two weeks, refer by the local rules.',
  },
];

type Number4 = 1 | 2 | 3 | 4;

/** Asked only while no earlier area was answered with "none". */
const earlierNone = (n: Number4) =>
  [1, 2, 3, 4].filter((m) => m < n).map((m) => ({ step: `sore-${m}`, answer: 'none' }));

const spotPlace = (n: Number4, name: string): readonly Step[] => {
  const earlier = earlierNone(n);
  const before = earlier.length === 0 ? {} : { notIf: earlier };
  return [
    {
      kind: 'decision',
      id: `sore-${n}`,
      chapter: 3,
      title: `Look for the ${name} sore area`,
      lines: ['Take the dentures out, dry, look and feel', 'Ask the patient to point'],
      drawing: 'sore-map',
      answers: WHERE,
      ...before,
    },
    {
      kind: 'check',
      id: `sore-${n}-upper`,
      chapter: 3,
      title: 'Touch or say the upper region',
      lines: ['Right and left are the patient’s'],
      drawing: 'sore-upper',
      answers: upperRegions,
      onlyIf: { step: `sore-${n}`, answer: 'upper' },
      ...before,
    },
    {
      kind: 'check',
      id: `sore-${n}-lower`,
      chapter: 3,
      title: 'Touch or say the lower region',
      lines: ['Right and left are the patient’s'],
      drawing: 'sore-lower',
      answers: lowerRegions,
      onlyIf: { step: `sore-${n}`, answer: 'lower' },
      ...before,
    },
  ];
};

const spotFacts = (n: Number4): readonly Step[] => {
  const here = { chapter: 3, notIf: [...earlierNone(n), { step: `sore-${n}`, answer: 'none' }] };
  return [
    {
      kind: 'check',
      id: `sore-${n}-kind`,
      title: 'Say what it looks like',
      lines: ['If in doubt, say the more serious one'],
      answers: KINDS,
      ...here,
    },
    {
      kind: 'reading',
      id: `sore-${n}-size`,
      title: 'Measure the sore area',
      lines: ['Greatest width in millimetres'],
      reading: `sore-${n}-size`,
      ...here,
    },
    {
      kind: 'reading',
      id: `sore-${n}-weeks`,
      title: 'Ask how many weeks it has been sore',
      lines: ['Less than one: say nought'],
      reading: `sore-${n}-weeks`,
      ...here,
    },
    {
      kind: 'check',
      id: `sore-${n}-cause`,
      title: 'Look for the cause',
      lines: CAUSE_LINES,
      answers: CAUSES,
      ...here,
    },
    {
      kind: 'check',
      id: `sore-${n}-relieved`,
      title: 'Say what was done',
      lines: ['Mark, relieve a little, polish, try again'],
      answers: RELIEF,
      ...here,
    },
  ];
};

const CAUSE_LINES = [
  'Border: too long? Crest: bite or sharp bone?',
  'Tuberosity, mylohyoid: undercut?',
  'Redness all over: height, allergy, infection?',
] as const;
const RELIEF: readonly Answer[] = [
  { ...yes, label: 'Relieved' },
  { ...noPlain, label: 'Not relieved', needsReason: true },
];

const spot = (n: Number4, name: string): readonly Step[] => [...spotPlace(n, name), ...spotFacts(n)];

const soreAreas: readonly Step[] = [
  ...spot(1, 'first'),
  ...spot(2, 'second'),
  ...spot(3, 'third'),
  ...spot(4, 'fourth'),
  {
    kind: 'decision',
    id: 'ulcer-stays',
    chapter: 3,
    title: 'Decide: any sore that stays?',
    lines: ['There two weeks or more after relief', 'Or a lump or patch of any age'],
    caution: 'Only the clinician decides. If in doubt, answer yes.',
    answers: [
      noPlain,
      {
        ...yesPlain,
        tone: 'warn',
        caution: 'A sore that outlasts two to three weeks of relief is for referral. Local rules come first.',
      },
    ],
  },
  {
    kind: 'decision',
    id: 'ulcer-next',
    chapter: 3,
    title: 'Decide: refer, or go on',
    lines: ['The clinician decides and says why'],
    caution: 'Refer by the local rules. Going on needs a recorded clinical decision.',
    answers: [
      {
        id: 'refer',
        label: 'Refer',
        words: { en: ['refer'], de: ['überweisen'], es: ['derivar'], fr: ['adresser'] },
        tone: 'warn',
        caution: 'Referred at review: follow the referral up.',
      },
      {
        id: 'go-on',
        label: 'Go on, as decided',
        words: {
          en: ['clinician goes on', 'as decided'],
          de: ['weiter beobachten', 'weiter behandeln'],
          es: ['seguir controlando', 'seguir tratamiento'],
          fr: ['continuer à surveiller', 'poursuivre le soin'],
        },
        tone: 'warn',
        needsReason: true,
        caution: 'A staying sore was kept under review by recorded decision: it still needs its referral or review.',
      },
    ],
    onlyIf: { step: 'ulcer-stays', answer: 'yes' },
  },
];

const BITE: readonly Answer[] = [
  { ...yes, label: 'Even on both sides' },
  {
    id: 'corrected',
    label: 'Corrected today',
    words: { en: ['corrected'], de: ['korrigiert'], es: ['corregido'], fr: ['corrigé'] },
    tone: 'neutral',
  },
  {
    id: 'remount',
    label: 'Remount needed',
    words: { en: ['remount'], de: ['remontage'], es: ['remontaje'], fr: ['remontage'] },
    tone: 'warn',
  },
];

const CLEANING: readonly Answer[] = [
  {
    id: 'clean',
    label: 'Clean',
    words: { en: ['clean'], de: ['sauber'], es: ['limpias', 'limpia'], fr: ['propres', 'propre'] },
    tone: 'good',
  },
  {
    id: 'shown-again',
    label: 'Shown again',
    words: { en: ['shown again'], de: ['nochmals gezeigt'], es: ['explicado otra vez'], fr: ['remontré'] },
    tone: 'neutral',
  },
  {
    id: 'neglected',
    label: 'Neglected, help needed',
    words: { en: ['neglected', 'help needed'], de: ['vernachlässigt'], es: ['descuidadas'], fr: ['négligées'] },
    tone: 'warn',
  },
];

const rest: readonly Step[] = [
  ...holdSteps(4),
  {
    kind: 'check',
    id: 'contacts',
    chapter: 5,
    title: 'Check the contacts',
    lines: ['Colour foil, jaw guided back', 'Both sides at once, no slide'],
    answers: BITE,
  },
  ...heightSteps({
    chapter: 6,
    basesLine: 'Dentures in the mouth: normally both',
    closedLine: 'Dentures in, back teeth together',
  }),
  speakingStep(6, 'Gap between the front teeth at an “s”'),
  {
    kind: 'decision',
    id: 'heights-keep',
    chapter: 6,
    title: 'Decide: keep this set of heights?',
    lines: ['Readings of one set within 1 mm', 'Marks smudged or lost: make new ones'],
    drawing: 'height-stack',
    answers: [keep, newMarks],
  },
  {
    kind: 'check',
    id: 'denture-hygiene',
    chapter: 7,
    title: 'Look at the dentures',
    lines: ['Plaque, stains, calculus', 'Brushed and soaked daily, out at night?'],
    caution: 'Bleach soaks at most ten minutes; never boiling water.',
    answers: CLEANING,
  },
  lookStep({
    id: 'mucosa-redness',
    chapter: 7,
    title: 'Look at the mucosa as a whole',
    lines: ['Redness under the denture', 'Corners of the mouth'],
    good: 'No redness noted',
    bad: 'Redness, see note',
  }),
  {
    kind: 'decision',
    id: 'what-next',
    chapter: 8,
    title: 'Decide: further review or finished?',
    lines: ['Usual: one to three days, a week, four weeks', 'Then once a year'],
    answers: [
      {
        id: 'review',
        label: 'Further review',
        words: {
          en: ['review', 'further review'],
          de: ['kontrolle', 'weitere kontrolle'],
          es: ['revisión', 'otra revisión'],
          fr: ['contrôle', 'autre contrôle'],
        },
        tone: 'neutral',
      },
      {
        id: 'finished',
        label: 'Finished',
        words: { en: ['finished'], de: ['abgeschlossen'], es: ['terminado'], fr: ['terminé'] },
        tone: 'good',
      },
    ],
  },
  {
    kind: 'check',
    id: 'recall',
    chapter: 8,
    title: 'Agree on the yearly recall',
    lines: ['Mouth and dentures, once a year', 'Sooner if anything stays sore two weeks'],
    answers: [
      { ...done, label: 'Agreed' },
      { ...noPlain, label: 'Not wanted', needsReason: true },
    ],
    onlyIf: { step: 'what-next', answer: 'finished' },
  },
];

export const visit5: VisitProtocol = {
  id: 'visit-5',
  version: 1,
  visit: 5,
  title: 'Review',
  chapters,
  steps: [
    matchPatient,
    askConsent,
    askChanges,
    chooseArches,
    ...complaints,
    ...soreAreas,
    ...rest,
    ...signOutWithoutOrder(9),
  ],
};
