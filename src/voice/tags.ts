import type { Language } from '../domain/protocol/types.ts';

const USUAL: Readonly<Record<Language, string>> = { en: 'en-US', de: 'de-DE', es: 'es-ES', fr: 'fr-FR' };

/** The speaker's own kind of the language where the browser names one ("de-AT"), else the usual one. */
export function speechTag(language: Language, preferred: readonly string[] = []): string {
  const own = preferred.find((tag) => tag.toLowerCase().startsWith(`${language}-`));
  return own ?? USUAL[language];
}

/** The language of a tag, whichever way it is written ("de_AT", "de-AT", "de"). */
export function languageOf(tag: string): string {
  return tag.toLowerCase().split(/[-_]/)[0] ?? '';
}
