/** Steps that several visits share, so that the same question is asked in the same words everywhere. */
import { basesInMouth, noPlain, no, noted, yes } from './answers.ts';
import type { Answer, DrawingId, Step } from './types.ts';

/** Upper steps are passed by when only a lower denture is made, and the other way round. */
export const NO_UPPER = { notIf: [{ step: 'arches', answer: 'lower-only' }] } as const;
export const NO_LOWER = { notIf: [{ step: 'arches', answer: 'upper-only' }] } as const;

export const matchPatient: Step = {
  kind: 'check',
  id: 'sign-in-patient',
  chapter: 1,
  title: 'Match patient and case code',
  lines: ['Ask the patient who they are', 'Compare with the case code on screen'],
  answers: [
    { ...yes, label: 'They match' },
    {
      ...no,
      label: 'No match',
      needsReason: true,
      goto: 'read-back',
      caution: 'Patient and case code did not match: use nothing from this visit until that is settled.',
    },
  ],
};

export const askConsent: Step = {
  kind: 'check',
  id: 'sign-in-consent',
  chapter: 1,
  title: 'Ask for consent',
  lines: ['Say what happens today', 'Ask whether the patient agrees'],
  answers: [
    { ...yes, label: 'Given' },
    {
      ...no,
      label: 'Not given',
      needsReason: true,
      goto: 'read-back',
      caution: 'Consent was not given: the visit ends here.',
    },
  ],
};

export const chooseArches: Step = {
  kind: 'decision',
  id: 'arches',
  chapter: 1,
  title: 'Choose the dentures to be made',
  lines: ['Steps for the other jaw are left out'],
  answers: [
    {
      id: 'both',
      label: 'Upper and lower',
      words: {
        en: ['both', 'upper and lower'],
        de: ['beide', 'oben und unten'],
        es: ['ambas', 'superior e inferior'],
        fr: ['les deux', 'haut et bas'],
      },
      tone: 'neutral',
    },
    {
      id: 'upper-only',
      label: 'Upper only',
      words: { en: ['upper'], de: ['nur oben'], es: ['solo superior'], fr: ['haut seulement'] },
      tone: 'neutral',
    },
    {
      id: 'lower-only',
      label: 'Lower only',
      words: { en: ['lower'], de: ['nur unten'], es: ['solo inferior'], fr: ['bas seulement'] },
      tone: 'neutral',
    },
  ],
};

/** At every visit but the first: what has changed since the last one. */
export const askChanges: Step = {
  kind: 'check',
  id: 'sign-in-changes',
  chapter: 1,
  title: 'Ask what has changed',
  lines: ['Health, medicines, allergies', 'Swallowing, gagging, bleeding', 'Say changes as a note'],
  caution: 'Cautions of earlier visits still hold.',
  answers: [
    { ...noPlain, label: 'No change', tone: 'good' },
    {
      ...noted,
      id: 'changed',
      label: 'Changed, see note',
      words: {
        en: ['changed', 'something changed'],
        de: ['geändert', 'etwas geändert'],
        es: ['cambió', 'algo cambió'],
        fr: ['changé', 'quelque chose a changé'],
      },
      tone: 'warn',
      caution: 'Health, medicines or allergies have changed: read the note before going on.',
    },
  ],
};

export const signInAgain: readonly Step[] = [matchPatient, askConsent, askChanges, chooseArches];

/** The lab's work is back, belongs to this case and has been disinfected; without it the visit does not begin. */
export function workReturned(what: readonly string[]): readonly Step[] {
  return [
    {
      kind: 'decision',
      id: 'work-returned',
      chapter: 2,
      title: 'Check that the lab work is here',
      lines: what,
      answers: [
        { ...yes, label: 'It is here' },
        {
          ...no,
          label: 'Not here',
          needsReason: true,
          goto: 'read-back',
          caution: 'The lab work was not here: book again and tell the lab.',
        },
      ],
    },
    {
      kind: 'check',
      id: 'work-right',
      chapter: 2,
      title: 'Check the lab work',
      lines: ['Case code agrees with the label', 'Disinfected, rinsed, whole', 'Read what the lab asks back'],
      answers: [
        { ...yes, label: 'All right' },
        { ...no, label: 'Something is wrong', needsReason: true },
      ],
    },
  ];
}

interface HeightWords {
  readonly chapter: number;
  /** What is in the mouth when the patient closes. */
  readonly basesLine: string;
  readonly closedLine: string;
}

/** New marks, then rest and closed height between them, with what was in the mouth. */
export function heightSteps({ chapter, basesLine, closedLine }: HeightWords): readonly Step[] {
  return [
    marksStep(chapter),
    basesStep({ chapter, id: 'bases-rest', when: 'at rest', lines: [basesLine, SAME_BASES] }),
    restStep(chapter),
    basesStep({ chapter, id: 'bases-closed', when: 'when closed', lines: [basesLine] }),
    {
      kind: 'reading',
      id: 'closed-height',
      chapter,
      title: 'Measure the closed height, twice',
      lines: [closedLine, 'Same posture as at rest', 'Between the same two marks'],
      drawing: 'height-stack',
      reading: 'closed-height',
    },
  ];
}

const SAME_BASES = 'The same for every reading of the set';

/** The step that makes a new set of skin marks. */
export function marksStep(chapter: number): Step {
  return {
    kind: 'check',
    id: 'marks',
    chapter,
    title: 'Make two marks',
    lines: ['Dry skin, small ink dots', 'One on the tip of the nose', 'One on the most prominent chin point'],
    caution: 'These are this visit’s marks. Distances between other marks are never compared with them.',
    drawing: 'caliper-face',
    answers: [
      {
        id: 'made',
        label: 'Both marks made',
        words: {
          en: ['made', 'marks made'],
          de: ['gesetzt', 'punkte gesetzt'],
          es: ['hechas', 'marcas hechas'],
          fr: ['faits', 'repères faits'],
        },
        tone: 'good',
      },
    ],
  };
}

interface BasesWords {
  readonly chapter: number;
  readonly id: 'bases-rest' | 'bases-closed';
  readonly when: string;
  readonly lines: readonly string[];
}
/** The question which bases are in the mouth. */
export function basesStep({ chapter, id, when, lines }: BasesWords): Step {
  return { kind: 'check', id, chapter, title: `Say which bases are in ${when}`, lines, answers: basesInMouth };
}

/** The repeated rest readings, with how they are taken. */
export function restStep(chapter: number): Step {
  return {
    kind: 'reading',
    id: 'rest-height',
    chapter,
    title: 'Measure the rest height, three times',
    lines: [
      'Sitting upright, head unsupported',
      'Lips wetted, lightly together',
      'Relaxed, breathing out',
      'Mark to mark, tips just touching',
    ],
    drawing: 'readings-rest',
    reading: 'rest-height',
  };
}

/** The closest speaking space of this visit, where it can be seen; nothing is compared with another visit's marks. */
export function speakingStep(chapter: number, gap: string): Step {
  return {
    kind: 'reading',
    id: 'speaking-space',
    chapter,
    title: 'Measure the closest speaking space',
    lines: [gap, 'Only where it can be seen'],
    reading: 'speaking-space',
    optional: true,
  };
}

/** Marks smudged or lost: everything read between them is given up, the next marks are another set. */
export const newMarks: Answer = {
  id: 'again',
  label: 'New marks, measure again',
  words: {
    en: ['new marks'],
    de: ['neue punkte', 'neue markierungen'],
    es: ['marcas nuevas'],
    fr: ['nouveaux repères'],
  },
  tone: 'warn',
  goto: 'marks',
  retake: true,
  needsReason: true,
};

interface BathWords {
  readonly chapter: number;
  readonly id: 'disinfect-upper' | 'disinfect-lower' | 'disinfect-record';
  /** "upper impression" */
  readonly what: string;
  /** The impression's clock. */
  readonly of?: string;
}
/** Rinse, disinfect for the label's time, rinse, seal. */
export function disinfectStep({ chapter, id, what, of }: BathWords): Step {
  return {
    kind: 'clock',
    id,
    chapter,
    title: `Disinfect the ${what}`,
    lines: ['Rinse under cold running water', 'Disinfect as both leaflets allow', 'Rinse again, seal, label'],
    caution: 'Rinsing alone does not disinfect. Chlorine does not suit zinc-oxide pastes.',
    clock: id,
    clockLabel: `${what.replace(' impression', '')} disinfection`,
    flow: 'timed',
    materials: [],
    ...(of === undefined ? {} : { of }),
  };
}

/** The question who pours, and where. */
export function pourStep(chapter: number): Step {
  return {
    kind: 'check',
    id: 'pour-by',
    chapter,
    title: 'Say who pours the casts',
    lines: ['Within the time the clock shows', 'The clock runs until the lab takes over'],
    answers: [
      {
        id: 'lab',
        label: 'The lab',
        words: { en: ['lab'], de: ['labor', 'das labor'], es: ['laboratorio'], fr: ['laboratoire', 'labo'] },
        tone: 'neutral',
      },
      {
        id: 'here',
        label: 'Poured here',
        words: { en: ['here', 'in house'], de: ['hier', 'in der praxis'], es: ['aquí'], fr: ['ici', 'au cabinet'] },
        tone: 'neutral',
      },
    ],
  };
}

/** A yes/no on something looked at: yes is as it should be. */
interface Look {
  readonly id: string;
  readonly chapter: number;
  readonly title: string;
  readonly lines: readonly string[];
  readonly good: string;
  readonly bad: string;
  readonly drawing?: DrawingId;
}
/** One region of the mouth to look at and feel. */
export function lookStep({ good, bad, ...rest }: Look): Step {
  return {
    kind: 'check',
    ...rest,
    answers: [
      { ...yes, label: good },
      { ...no, label: bad },
    ],
  };
}

const noOrder: Answer = {
  id: 'no-order',
  label: 'Nothing to the lab',
  words: {
    en: ['nothing to the lab', 'no order'],
    de: ['kein auftrag', 'nichts ans labor'],
    es: ['sin pedido', 'nada al laboratorio'],
    fr: ['pas de commande', 'rien au laboratoire'],
  },
  tone: 'neutral',
  needsReason: true,
};

/** The end of every visit: read back, answer flags, check the order, sign. The clinician's signature closes the visit. */
export function signOut(chapter: number, order: readonly string[]): readonly Step[] {
  return [
    {
      kind: 'check',
      id: 'read-back',
      chapter,
      title: 'Read all readings back',
      lines: ['One reads aloud, the other agrees', 'Correct what is wrong now'],
      answers: [
        { ...yes, label: 'All agree' },
        { ...no, label: 'Not all settled', needsReason: true },
      ],
    },
    {
      kind: 'check',
      id: 'flags-answered',
      chapter,
      title: 'Answer every open flag',
      lines: ['Measure again, or keep with a reason'],
      answers: [
        { ...yes, label: 'All answered' },
        { ...no, label: 'Some left open', needsReason: true },
      ],
    },
    {
      kind: 'check',
      id: 'lab-order',
      chapter,
      title: 'Check the work order',
      lines: order,
      answers: [{ ...yes, label: 'Order is right' }, noOrder],
    },
    ...signatures(chapter),
  ];
}

/** As above, for a visit after which nothing goes to the lab. */
export function signOutWithoutOrder(chapter: number): readonly Step[] {
  return signOut(chapter, []).filter((step) => step.id !== 'lab-order');
}

function signatures(chapter: number): readonly Step[] {
  return [
    {
      kind: 'signoff',
      id: 'signoff-assistant',
      chapter,
      title: 'Sign for the assistant',
      lines: ['Work for the lab labelled and sealed', 'Handed over, or waiting at a named place'],
      role: 'assistant',
    },
    {
      kind: 'signoff',
      id: 'signoff-clinician',
      chapter,
      title: 'Sign for the clinician',
      lines: ['Next visit agreed with the patient', 'Signing closes this visit'],
      role: 'clinician',
      closesVisit: true,
    },
  ];
}
