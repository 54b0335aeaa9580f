/** The languages that are loaded. English is always there; the others are fetched when a visit is held in them. */
import type { Language } from '../domain/protocol/types.ts';
import { en } from './en/index.ts';
import type { LanguageTables } from './language.ts';
import { buildLexicon } from './lexicon.ts';
import type { Lexicon } from './lexicon.ts';
import { buildPhraseBook } from './phrases.ts';
import type { PhraseBook } from './phrases.ts';

export interface LanguagePack {
  readonly tables: LanguageTables;
  readonly lexicon: Lexicon;
  readonly book: PhraseBook;
}

const packs = new Map<Language, LanguagePack>();

export function registerLanguage(tables: LanguageTables): LanguagePack {
  const pack = { tables, lexicon: buildLexicon(tables), book: buildPhraseBook(tables) };
  packs.set(tables.language, pack);
  return pack;
}

const english = registerLanguage(en);

export const isLoaded = (language: Language): boolean => packs.has(language);

/** A language not loaded yet is heard as English, whose words it does not match: numbers in figures still are numbers. */
export const languagePack = (language: Language): LanguagePack => packs.get(language) ?? english;

const LOADERS: Readonly<Record<Language, () => Promise<LanguageTables>>> = {
  en: async () => en,
  de: async () => (await import('./de/index.ts')).de,
  es: async () => (await import('./es/index.ts')).es,
  fr: async () => (await import('./fr/index.ts')).fr,
};

/** Fetches a language's tables. Resolves at once when they are there. */
export async function loadLanguage(language: Language): Promise<void> {
  if (!isLoaded(language)) registerLanguage(await LOADERS[language]());
}
