/** The languages that are loaded. English is always there; the others are fetched when a visit is held in them. */
import type { Language } from '../domain/protocol/types.ts';
import { en } from './en/index.ts';
import type { LanguageTables } from './language.ts';
import { Lexicon } from './lexicon.ts';

const english = new Lexicon(en);
const lexicons = new Map<Language, Lexicon>([['en', english]]);

export const isLoaded = (language: Language): boolean => lexicons.has(language);

/** A language not loaded yet is heard as English, whose words it does not match: numbers in figures still are numbers. */
export const lexiconOf = (language: Language): Lexicon => lexicons.get(language) ?? english;

const LOADERS: Readonly<Record<Exclude<Language, 'en'>, () => Promise<LanguageTables>>> = {
  de: async () => (await import('./de/index.ts')).de,
  es: async () => (await import('./es/index.ts')).es,
  fr: async () => (await import('./fr/index.ts')).fr,
};

/** Fetches a language's tables. Resolves at once when they are there. */
export async function loadTables(language: Language): Promise<void> {
  if (language !== 'en' && !isLoaded(language)) lexicons.set(language, new Lexicon(await LOADERS[language]()));
}
