/** Answers that many steps share. 'yes' and 'no' get their spoken words from the interpreter. */
import type { Answer } from './types.ts';

/** The good answer where "yes" means the thing is as it should be. */
export const yes: Answer = { id: 'yes', label: 'Yes', words: {}, tone: 'good' };
/** The answer that is kept, but shown as something to see to. */
export const no: Answer = { id: 'no', label: 'No', words: {}, tone: 'warn' };
export const yesPlain: Answer = { id: 'yes', label: 'Yes', words: {}, tone: 'neutral' };
export const noPlain: Answer = { id: 'no', label: 'No', words: {}, tone: 'neutral' };

/** Usable, but not perfect: between yes and no. */
export const minor: Answer = {
  id: 'minor',
  label: 'Small fault',
  words: {
    en: ['small fault', 'slight', 'minor'],
    de: ['kleiner fehler', 'geringfügig', 'fast'],
    es: ['defecto pequeño', 'leve', 'casi'],
    fr: ['petit défaut', 'léger', 'presque'],
  },
  tone: 'neutral',
};

export const usual: Answer = {
  id: 'usual',
  label: 'Nothing noted',
  words: {
    en: ['nothing noted', 'nothing', 'clear'],
    de: ['nichts notiert', 'nichts', 'unauffällig'],
    es: ['nada que anotar', 'nada', 'sin cambios'],
    fr: ['rien à noter', 'rien', 'sans particularité'],
  },
  tone: 'good',
};
export const noted: Answer = {
  id: 'noted',
  label: 'Noted',
  words: {
    en: ['noted', 'something noted', 'see note'],
    de: ['notiert', 'etwas notiert', 'auffällig'],
    es: ['anotado', 'algo anotado', 'ver nota'],
    fr: ['noté', 'quelque chose à noter', 'voir note'],
  },
  tone: 'neutral',
};
/** For wishes and remarks: nothing was said. */
export const noneSaid: Answer = {
  id: 'none',
  label: 'None',
  words: {
    en: ['none', 'no wishes'],
    de: ['keine', 'keine wünsche'],
    es: ['ninguno', 'sin deseos'],
    fr: ['aucun', 'aucun souhait'],
  },
  tone: 'neutral',
};

export const done: Answer = {
  id: 'done',
  label: 'Done',
  words: {
    en: ['done', 'finished'],
    de: ['fertig', 'erledigt'],
    es: ['hecho', 'listo'],
    fr: ['fait', 'terminé'],
  },
  tone: 'good',
};

export const keep: Answer = {
  id: 'keep',
  label: 'Keep it',
  words: {
    en: ['keep', 'keep it'],
    de: ['behalten', 'übernehmen'],
    es: ['conservar', 'guardar'],
    fr: ['garder', 'conserver'],
  },
  tone: 'good',
};

/** Taken again from the named step; the attempt before stays on record. */
export function againFrom(goto: string): Answer {
  return {
    id: 'again',
    label: 'Take again',
    words: {
      en: ['take again', 'take it again', 'retake'],
      de: ['nochmals abformen', 'wiederholen', 'neu machen'],
      es: ['repetir', 'tomar otra vez'],
      fr: ['refaire', 'reprendre'],
    },
    tone: 'warn',
    goto,
    retake: true,
    needsReason: true,
  };
}

export const basesNone: Answer = {
  id: 'none',
  label: 'None',
  words: { en: ['none', 'no bases'], de: ['keine', 'ohne'], es: ['ninguna', 'sin bases'], fr: ['aucune', 'sans base'] },
  tone: 'neutral',
};
export const basesUpper: Answer = {
  id: 'upper',
  label: 'Upper only',
  words: {
    en: ['upper only', 'upper'],
    de: ['nur oben', 'oben'],
    es: ['solo superior', 'superior'],
    fr: ['haut seulement', 'haut'],
  },
  tone: 'neutral',
};
export const basesLower: Answer = {
  id: 'lower',
  label: 'Lower only',
  words: {
    en: ['lower only', 'lower'],
    de: ['nur unten', 'unten'],
    es: ['solo inferior', 'inferior'],
    fr: ['bas seulement', 'bas'],
  },
  tone: 'neutral',
};
export const basesBoth: Answer = {
  id: 'both',
  label: 'Both',
  words: { en: ['both'], de: ['beide'], es: ['ambas', 'las dos'], fr: ['les deux'] },
  tone: 'neutral',
};
/** Which bases (dentures, rims) are in the mouth while heights are read. */
export const basesInMouth: readonly Answer[] = [basesNone, basesUpper, basesLower, basesBoth];

/** Graded: clean, usable with a small fault, or faulty. */
export const passes: readonly Answer[] = [yes, minor, no];

/** Which way something lies off the middle, always the patient's own sides. */
export const sides: readonly Answer[] = [
  {
    id: 'centred',
    label: 'Centred',
    words: {
      en: ['centred', 'in the middle'],
      de: ['mittig', 'in der mitte'],
      es: ['centrada', 'en el centro'],
      fr: ['centrée', 'au milieu'],
    },
    tone: 'good',
  },
  {
    id: 'right',
    label: 'To the patient’s right',
    words: {
      en: ['right', 'to the right'],
      de: ['rechts', 'nach rechts'],
      es: ['derecha', 'a la derecha'],
      fr: ['droite', 'à droite'],
    },
    tone: 'neutral',
  },
  {
    id: 'left',
    label: 'To the patient’s left',
    words: {
      en: ['left', 'to the left'],
      de: ['links', 'nach links'],
      es: ['izquierda', 'a la izquierda'],
      fr: ['gauche', 'à gauche'],
    },
    tone: 'neutral',
  },
];

/** Where an edge stands against the resting lip. */
export const lipLevels: readonly Answer[] = [
  {
    id: 'below',
    label: 'Shows below the lip',
    words: {
      en: ['below', 'it shows'],
      de: ['darunter', 'sichtbar'],
      es: ['por debajo', 'se ve'],
      fr: ['en dessous', 'visible'],
    },
    tone: 'neutral',
  },
  {
    id: 'level',
    label: 'Level with the lip',
    words: { en: ['level'], de: ['auf höhe', 'gleich hoch'], es: ['al nivel', 'a ras'], fr: ['au niveau', 'à fleur'] },
    tone: 'neutral',
  },
  {
    id: 'above',
    label: 'Hidden above the lip',
    words: {
      en: ['above', 'hidden'],
      de: ['darüber', 'verdeckt'],
      es: ['por encima', 'oculto'],
      fr: ['au-dessus', 'caché'],
    },
    tone: 'neutral',
  },
];

/** How "s" sounds with the rims or teeth in. */
export const soundsOfS: readonly Answer[] = [
  {
    id: 'clean',
    label: 'Clean',
    words: { en: ['clean'], de: ['sauber'], es: ['limpio'], fr: ['net'] },
    tone: 'good',
  },
  {
    id: 'clicks',
    label: 'It clicks or touches',
    words: {
      en: ['clicks', 'touches'],
      de: ['klappert', 'berührt'],
      es: ['choca', 'toca'],
      fr: ['claque', 'touche'],
    },
    tone: 'warn',
  },
  {
    id: 'whistles',
    label: 'It whistles',
    words: { en: ['whistles'], de: ['pfeift'], es: ['silba'], fr: ['siffle'] },
    tone: 'warn',
  },
  {
    id: 'lisps',
    label: 'It lisps',
    words: { en: ['lisps'], de: ['lispelt'], es: ['cecea'], fr: ['zozote'] },
    tone: 'warn',
  },
];

/** How the lip is carried by rim or teeth. */
export const lipSupport: readonly Answer[] = [
  {
    id: 'right-amount',
    label: 'Right',
    words: {
      en: ['right', 'good support'],
      de: ['richtig', 'gut gestützt'],
      es: ['bien', 'correcto'],
      fr: ['bien', 'correct'],
    },
    tone: 'good',
  },
  {
    id: 'too-full',
    label: 'Too full',
    words: { en: ['too full'], de: ['zu voll'], es: ['demasiado lleno'], fr: ['trop plein'] },
    tone: 'warn',
  },
  {
    id: 'too-flat',
    label: 'Too flat',
    words: { en: ['too flat'], de: ['zu flach'], es: ['demasiado plano'], fr: ['trop plat'] },
    tone: 'warn',
  },
];
