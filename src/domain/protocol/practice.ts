/**
 * What a practice starts with until it has entered its own leaflets, trays and conventions. Material times: shortest
 * working time and longest setting time of the handbook range, so that a generic clock errs on the safe side.
 */
import type { Disinfectant, Material, Practice, Tray } from './types.ts';

/** Shown beside the name of every entry whose `generic` is true. */
export const GENERIC_NOTE = 'generic – replace with the leaflet’s figures';

const HANDBOOK = 'Handbook range from memory; the leaflet decides.';
const ALGINATE_POUR =
  'Pour within 30 min in damp, sealed storage: Walker, Angle Orthod 2010;80:1110 and a 4-hour study (text seen), best within 10 min.';

const materials: readonly Material[] = [
  {
    id: 'alginate-regular',
    name: 'Alginate, regular set',
    class: 'alginate',
    mixS: 60,
    workingS: 120,
    removeS: 270,
    pourFromMin: 0,
    pourWithinMin: 30,
    mix: { powderG: 23, waterMl: 50 },
    waterC: 21,
    generic: true,
    source: `${HANDBOOK} ${ALGINATE_POUR}`,
  },
  {
    id: 'alginate-fast',
    name: 'Alginate, fast set',
    class: 'alginate',
    mixS: 45,
    workingS: 75,
    removeS: 180,
    pourFromMin: 0,
    pourWithinMin: 30,
    mix: { powderG: 23, waterMl: 50 },
    waterC: 21,
    generic: true,
    source: `${HANDBOOK} ${ALGINATE_POUR}`,
  },
  {
    id: 'alginate-stiff',
    name: 'Alginate, reduced water',
    class: 'alginate-stiff',
    mixS: 45,
    workingS: 90,
    removeS: 270,
    pourFromMin: 0,
    pourWithinMin: 30,
    mix: { powderG: 23, waterMl: 50, lessWater: 0.1 },
    waterC: 21,
    generic: true,
    source: `Our choice: less water shortens the working time; no published figure was found. ${ALGINATE_POUR}`,
  },
  {
    id: 'silicone-putty',
    name: 'Addition silicone, putty',
    class: 'silicone-putty',
    mixS: 45,
    workingS: 120,
    removeS: 360,
    pourFromMin: 60,
    pourWithinMin: 10080,
    generic: true,
    source: `${HANDBOOK} Wait for gas 30–60 min, stable for days (second-hand; studies disagree after 2 h).`,
  },
  {
    id: 'silicone-medium-light',
    name: 'Addition silicone, medium and light',
    class: 'addition-silicone',
    mixS: 45,
    workingS: 120,
    removeS: 360,
    pourFromMin: 60,
    pourWithinMin: 10080,
    generic: true,
    source: `${HANDBOOK} Wait for gas 30–60 min, stable for days (second-hand; studies disagree after 2 h).`,
  },
  {
    id: 'zinc-oxide-eugenol',
    name: 'Zinc-oxide–eugenol paste',
    class: 'zinc-oxide-eugenol',
    mixS: 60,
    workingS: 120,
    removeS: 600,
    pourFromMin: 0,
    pourWithinMin: 480,
    generic: true,
    source: `${HANDBOOK} Final set of a hard paste within 10 min (ISO 3106, second-hand); poured the same day (from memory).`,
  },
  {
    id: 'polyether',
    name: 'Polyether',
    class: 'polyether',
    mixS: 45,
    workingS: 120,
    removeS: 390,
    pourFromMin: 0,
    pourWithinMin: 10080,
    generic: true,
    source: `${HANDBOOK} Keep dry; pour within 7 days (from memory).`,
  },
  {
    id: 'border-compound',
    name: 'Border compound, softened',
    class: 'border-compound',
    mixS: 15,
    workingS: 30,
    removeS: 90,
    pourFromMin: 0,
    pourWithinMin: 10080,
    generic: true,
    source: 'Our choice: it hardens by cooling, timed from taking it off the heat; no published figure was found.',
  },
  {
    id: 'record-silicone',
    name: 'Addition silicone for bite records',
    class: 'record-silicone',
    mixS: 15,
    workingS: 30,
    removeS: 180,
    pourFromMin: 0,
    pourWithinMin: 10080,
    generic: true,
    source: 'Our choice on the safe side of common practice (fast, mixed in the tip); the leaflet decides.',
  },
];

const disinfectants: readonly Disinfectant[] = [
  {
    id: 'hypochlorite',
    name: 'Hypochlorite 0.5 %',
    minutes: 10,
    generic: true,
    source: 'Alginate at most 10 min (from memory; studies used 5–10 min, text seen). Not for zinc-oxide pastes.',
  },
  {
    id: 'iodophor',
    name: 'Iodophor',
    minutes: 10,
    generic: true,
    source: 'Alginate at most 10 min, zinc-oxide–eugenol paste 10 min (from memory).',
  },
  {
    id: 'glutaraldehyde',
    name: 'Glutaraldehyde 2 %',
    minutes: 10,
    generic: true,
    source: 'Studies on alginate used 5–10 min (text seen); zinc-oxide–eugenol paste 10 min (from memory).',
  },
  {
    id: 'spray-and-bag',
    name: 'Spray and seal in a bag',
    minutes: 10,
    generic: true,
    source: 'Spray exposures of 8–10 min were tested on alginate and silicones (text seen). The leaflet decides.',
  },
];

const INNER_WIDTHS = [54, 60, 66, 72, 78, 84] as const;
const traysOf = (arch: 'upper' | 'lower', label: string): readonly Tray[] =>
  INNER_WIDTHS.map((mm) => ({ id: `${arch}-${mm}`, label: `${label} ${mm}`, arch, innerWidth: mm * 100 }));

const reasons: Practice['reasons'] = [
  {
    id: 'not-possible',
    label: 'Not possible today',
    words: {
      en: ['not possible', 'not today'],
      de: ['nicht möglich', 'heute nicht'],
      es: ['no es posible', 'hoy no'],
      fr: ['pas possible', "pas aujourd'hui"],
    },
  },
  {
    id: 'patient-declines',
    label: 'Patient prefers not to',
    words: {
      en: ['patient declines', 'patient prefers not'],
      de: ['patient lehnt ab', 'patient möchte nicht'],
      es: ['el paciente no quiere', 'paciente rechaza'],
      fr: ['le patient refuse', 'patient ne veut pas'],
    },
  },
  {
    id: 'not-needed',
    label: 'Not needed here',
    words: {
      en: ['not needed', 'not necessary'],
      de: ['nicht nötig', 'entfällt'],
      es: ['no hace falta', 'no es necesario'],
      fr: ['pas nécessaire', 'inutile ici'],
    },
  },
  {
    id: 'done-earlier',
    label: 'Done earlier',
    words: {
      en: ['done earlier', 'already done'],
      de: ['schon erledigt', 'bereits gemacht'],
      es: ['ya está hecho', 'hecho antes'],
      fr: ['déjà fait', 'fait avant'],
    },
  },
  {
    id: 'clinical-judgement',
    label: 'Clinical judgement',
    words: {
      en: ['clinical judgement', 'clinician decides'],
      de: ['klinische entscheidung', 'ärztlich entschieden'],
      es: ['criterio clínico', 'decide el clínico'],
      fr: ['jugement clinique', 'décision clinique'],
    },
  },
  {
    id: 'measured-again',
    label: 'Measured again, the same',
    words: {
      en: ['measured again', 'same again'],
      de: ['nachgemessen', 'wieder gleich'],
      es: ['medido otra vez', 'igual otra vez'],
      fr: ['mesuré encore', 'encore pareil'],
    },
  },
  {
    id: 'voids',
    label: 'Voids or drags',
    words: {
      en: ['voids', 'drags', 'voids or drags'],
      de: ['blasen', 'verzogen', 'blasen oder verzug'],
      es: ['burbujas', 'arrastres'],
      fr: ['bulles', 'tirages'],
    },
  },
  {
    id: 'border-short',
    label: 'Border short or thin',
    words: {
      en: ['border short', 'short border'],
      de: ['rand zu kurz', 'kurzer rand'],
      es: ['borde corto', 'falta borde'],
      fr: ['bord trop court', 'bord court'],
    },
  },
  {
    id: 'tray-through',
    label: 'Tray shows through',
    words: {
      en: ['tray shows', 'tray through'],
      de: ['löffel scheint durch', 'löffel durchgedrückt'],
      es: ['se ve la cubeta', 'cubeta expuesta'],
      fr: ['porte-empreinte visible', 'porte-empreinte à nu'],
    },
  },
  {
    id: 'moved',
    label: 'Tray or patient moved',
    words: {
      en: ['patient moved', 'tray moved'],
      de: ['bewegt', 'patient bewegt'],
      es: ['se movió', 'paciente se movió'],
      fr: ['a bougé', 'patient a bougé'],
    },
  },
  {
    id: 'timing',
    label: 'Set too early or removed early',
    words: {
      en: ['set too early', 'removed early'],
      de: ['zu früh abgebunden', 'zu früh entfernt'],
      es: ['fraguó antes', 'retirado antes'],
      fr: ['prise trop rapide', 'retiré trop tôt'],
    },
  },
  {
    id: 'gag-or-pain',
    label: 'Gagging or pain',
    words: {
      en: ['gagging', 'pain'],
      de: ['würgereiz', 'schmerzen'],
      es: ['náuseas', 'dolor'],
      fr: ['nausées', 'douleur'],
    },
  },
];

/**
 * `recordAt`: at rest height less the chosen space, because the casts then stand at the height the teeth will meet at and
 * the lab's pin change, which rests on an average hinge axis, stays near nothing. `restSpaceTarget` 3 mm: middle of the
 * textbook range 2–4 mm. `trayClearance` 5 mm: middle of 4–6 mm. `borderShort` 3 mm: textbooks say 2–3 mm.
 */
export const defaultPractice: Practice = {
  restSpaceTarget: 300,
  recordAt: 'restLessSpace',
  trayClearance: 500,
  borderShort: 300,
  materials,
  disinfectants,
  trays: [...traysOf('upper', 'Upper'), ...traysOf('lower', 'Lower')],
  reasons,
};
