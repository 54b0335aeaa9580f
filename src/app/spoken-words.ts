/** The few words around a number that is read aloud, in the language of the visit. */
import type { Language } from '../domain/protocol/types.ts';

export interface SpokenWords {
  readonly keepIt: string;
  readonly or: string;
  readonly newValue: string;
  readonly corrected: string;
  readonly undone: string;
  readonly notSafe: string;
}

export const spokenWords: Readonly<Record<Language, SpokenWords>> = {
  en: {
    keepIt: 'Keep it?',
    or: 'or',
    newValue: 'new value?',
    corrected: 'corrected',
    undone: 'Undone',
    notSafe: 'Not safe yet.',
  },
  de: {
    keepIt: 'Behalten?',
    or: 'oder',
    newValue: 'neuer Wert?',
    corrected: 'berichtigt',
    undone: 'Zurückgenommen',
    notSafe: 'Noch nicht gesichert.',
  },
  es: {
    keepIt: '¿Guardar?',
    or: 'o',
    newValue: '¿nuevo valor?',
    corrected: 'corregido',
    undone: 'Deshecho',
    notSafe: 'Todavía sin guardar.',
  },
  fr: {
    keepIt: 'Garder ?',
    or: 'ou',
    newValue: 'nouvelle valeur ?',
    corrected: 'corrigé',
    undone: 'Annulé',
    notSafe: 'Pas encore enregistré.',
  },
};
