import type { Language } from '../domain/protocol/types.ts';
import type { BlockCause } from './types.ts';

const NAMES: Readonly<Record<Language, string>> = { en: 'English', de: 'German', es: 'Spanish', fr: 'French' };

export function languageName(language: Language): string {
  return NAMES[language];
}

/** Why the ear is closed, and what can be done. */
export function blockedWhy(cause: BlockCause, language: Language): string {
  switch (cause) {
    case 'absent':
      return 'This browser cannot listen. Use the keypad, the keys or the pedal.';
    case 'denied':
      return 'The microphone is not allowed, or there is none. Allow it in the browser’s site settings; the keypad works.';
    case 'consent':
      return 'Listening here may send speech off this device, so it asks for your consent first. The keypad works.';
    case 'language':
      return `This browser cannot listen in ${NAMES[language]}. Use the keypad, the keys or the pedal.`;
    case 'unreachable':
      return 'The speech service does not answer. It is tried again every few seconds; the keypad works.';
    case 'silent':
      return 'The recogniser gives no sign of life here. Use the keypad, the keys or the pedal.';
  }
}

export const SAY_WHY = {
  silent: 'Reading aloud is switched off.',
  unavailable: 'This browser cannot read aloud.',
  needsTouch: 'The browser reads aloud only after the screen has been touched once.',
  failed: 'Reading aloud failed. The value is on the screen.',
  timedOut: 'Reading aloud did not come to an end. The value is on the screen.',
  cut: 'Reading aloud was cut short.',
} as const;

export function noVoiceWhy(language: Language): string {
  return `No voice on this device reads ${NAMES[language]}.`;
}
