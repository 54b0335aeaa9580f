/** Settings of which some tell of a case: those lie under the key while there is one. */
import type { Keys } from './keys.types.ts';
import type { Settings } from './settings.ts';

/** The same settings; what is written under one of `names` is sealed, and reads as never written while locked. */
export function sealedSettings(settings: Settings, keys: Keys, names: readonly string[]): Settings {
  return {
    async read(name) {
      const read = await settings.read(name);
      if (!read.ok || !names.includes(name) || keys.state() === 'none') return read;
      return { ok: true, value: await keys.open(name, read.value) };
    },
    async write(name, value) {
      if (!names.includes(name) || keys.state() === 'none') return settings.write(name, value);
      const sealed = await keys.seal(name, value);
      return sealed === undefined
        ? { ok: false, reason: 'refused', why: 'The record is locked.' }
        : settings.write(name, sealed);
    },
    close: () => settings.close(),
  };
}
