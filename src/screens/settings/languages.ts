/** Languages as their speakers call them, and as this screen does. */
import type { Language } from '../../domain/protocol/types.ts';

export const LANGUAGES: readonly { readonly id: Language; readonly own: string; readonly name: string }[] = [
  { id: 'en', own: 'English', name: 'English' },
  { id: 'de', own: 'Deutsch', name: 'German' },
  { id: 'es', own: 'Español', name: 'Spanish' },
  { id: 'fr', own: 'Français', name: 'French' },
];

export function languageName(language: Language): string {
  return LANGUAGES.find(({ id }) => id === language)?.name ?? language;
}
