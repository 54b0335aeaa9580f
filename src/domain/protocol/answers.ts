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
