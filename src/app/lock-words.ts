/** Words that lock at once. They stand alone and are two or more, so that talk seldom comes to them. */
import type { Language } from '../domain/protocol/types.ts';

export const lockWords: Readonly<Record<Language, readonly string[]>> = {
  en: ['lock the screen', 'lock screen', 'lock now'],
  de: ['bildschirm sperren', 'jetzt sperren'],
  es: ['bloquear pantalla', 'bloquear la pantalla'],
  fr: ["verrouiller l'écran", 'verrouiller maintenant'],
};

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll('’', "'")
    .replace(/[.,!?]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** `address`: the word that commands must begin with, if any. */
export function asksToLock(text: string, language: Language, address: string): boolean {
  const said = plain(text);
  const words = address === '' ? said : said.startsWith(`${address} `) ? said.slice(address.length + 1) : '';
  return [...lockWords[language], ...lockWords.en].includes(words);
}
