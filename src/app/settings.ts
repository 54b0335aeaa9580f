/** Preferences as stored, checked field by field. */
import { defaultSettings, type Settings } from '../stores/stores.ts';

const LANGUAGES: readonly unknown[] = ['en', 'de', 'es', 'fr'];

/** What does not fit stays at its default. */
export function soundSettings(stored: unknown): Settings {
  if (typeof stored !== 'object' || stored === null) return defaultSettings;
  const { language, speech, keepAfterMs, mayLeaveDevice } = stored as Record<string, unknown>;
  const pause = typeof keepAfterMs === 'number' && keepAfterMs >= 0 && keepAfterMs <= 60_000;
  return {
    language: LANGUAGES.includes(language) ? (language as Settings['language']) : defaultSettings.language,
    speech: typeof speech === 'boolean' ? speech : defaultSettings.speech,
    keepAfterMs: pause ? keepAfterMs : defaultSettings.keepAfterMs,
    mayLeaveDevice: mayLeaveDevice === true,
  };
}
