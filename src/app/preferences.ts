/** Preferences at run time: read once, checked, kept, and handed on to the devices they are about. */
import type { Language } from '../domain/protocol/types.ts';
import { SETTINGS_KEY, type Settings, type Stores } from '../stores/stores.ts';
import { languageName } from '../voice/sentences.ts';
import type { Devices } from './ports.ts';
import { soundSettings } from './settings.ts';

export interface PreferenceParts {
  readonly devices: Pick<Devices, 'settings' | 'voice'>;
  readonly stores: Pick<Stores, 'settings' | 'ui'>;
  /** Something changed that is to be seen. */
  changed(): void;
}

const SAMPLE = 6250;

export class Preferences {
  readonly #parts: PreferenceParts;

  constructor(parts: PreferenceParts) {
    this.#parts = parts;
  }

  get now(): Settings {
    return this.#parts.stores.settings.getState();
  }

  async read(): Promise<void> {
    const read = await this.#parts.devices.settings.read(SETTINGS_KEY);
    if (read.ok) this.#parts.stores.settings.setState(soundSettings(read.value));
    this.#apply();
  }

  /** Everything holds at once but a language, whose words are fetched first, and an address word, which is checked. */
  change({ language, addressWord, ...now }: Partial<Settings>): void {
    if (Object.keys(now).length > 0) this.#set(now);
    if (language === undefined && addressWord === undefined) return;
    void this.#speak({
      ...(language === undefined ? {} : { language }),
      ...(addressWord === undefined ? {} : { addressWord }),
    });
  }

  /** What does not fit is left as it was. */
  #set(change: Partial<Settings>): void {
    const { devices, stores, changed } = this.#parts;
    stores.settings.setState(soundSettings({ ...this.now, ...change }, this.now));
    void devices.settings.write(SETTINGS_KEY, this.now).then((written) => {
      if (!written.ok) this.#trouble(written.why);
    });
    this.#apply();
    changed();
  }

  /** A language is used only when its words are there; an address word only when it can be told from other words. */
  async #speak(change: Pick<Partial<Settings>, 'language' | 'addressWord'>): Promise<void> {
    this.#trouble('');
    const { language = this.now.language, addressWord = this.now.addressWord } = change;
    if (!(await this.#fetched(language))) return;
    const word = await this.#addressFrom(addressWord, language);
    if (word === undefined && change.language === undefined) return;
    // What could be told from the words of one language may be a word of the next: then none is used any more.
    this.#set({ ...change, addressWord: word ?? '' });
    if (change.language !== undefined) await this.lookOnDevice();
  }

  /** Asks the browser whether the language could be recognised on this device. */
  async lookOnDevice(): Promise<void> {
    const { devices, stores, changed } = this.#parts;
    const { language } = this.now;
    stores.ui.setState({ onDevice: 'unknown' });
    const onDevice = await devices.voice.onDevice(language);
    if (language !== this.now.language) return;
    stores.ui.setState({ onDevice });
    changed();
  }

  /** Answers whether the language is on this device now. */
  async fetchOnDevice(): Promise<boolean> {
    const { devices, stores, changed } = this.#parts;
    const { language } = this.now;
    const fetched = devices.voice.fetchOnDevice(language);
    stores.ui.setState({ onDevice: 'fetching' });
    changed();
    const onDevice = await fetched;
    if (language === this.now.language) stores.ui.setState({ onDevice });
    changed();
    return onDevice === 'ready';
  }

  /** Reads a number aloud, as it would be at a visit. */
  async trySpeech(): Promise<void> {
    const { voice } = this.#parts.devices;
    voice.unlock();
    const { speakNumber } = await import('../interpret/index.ts');
    await voice.say(speakNumber(SAMPLE, this.now.language), this.now.language);
  }

  #apply(): void {
    const { speech, volume, rate } = this.now;
    this.#parts.devices.voice.setSpeaker({ silent: !speech, volume, rate });
  }

  async #fetched(language: Language): Promise<boolean> {
    try {
      const { loadLanguage } = await import('../interpret/index.ts');
      await loadLanguage(language);
      return true;
    } catch {
      this.#trouble(wordsMissing(language));
      return false;
    }
  }

  async #addressFrom(text: string, language: Language): Promise<string | undefined> {
    const { commandWords } = await import('../interpret/index.ts');
    const { addressWord } = await import('../interpret/address.ts');
    const checked = addressWord(text, Object.values(commandWords(language)).flat());
    if (checked.ok) return checked.word;
    this.#trouble(checked.why);
    return undefined;
  }

  #trouble(trouble: string): void {
    this.#parts.stores.ui.setState({ trouble });
    this.#parts.changed();
  }
}

export function wordsMissing(language: Language): string {
  return `The words of ${languageName(language)} could not be fetched. Try again with a connection; the keypad, keys and touch work.`;
}
