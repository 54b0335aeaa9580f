/**
 * Ear and voice together. There is no way to make a recogniser deaf for a moment, and it hears the app's own words; so the
 * ear is shut before the app speaks and opened again a little after it has ended.
 */
import type { Language } from '../domain/protocol/types.ts';
import { Listeners } from './listeners.ts';
import { Timers } from './timers.ts';
import type {
  Ear,
  OnDevice,
  Recogniser,
  RecogniserEvent,
  Speaker,
  SpeakerSettings,
  Spoken,
  Voice,
  VoiceHost,
} from './types.ts';

export interface VoiceParts {
  readonly recogniser: Recogniser;
  readonly speaker: Speaker;
  readonly host: VoiceHost;
  readonly language?: Language;
}

/** The room goes on sounding, and the recogniser hears late. */
const TAIL_MS = 800;
const SHOW_HEARD_MS = 2500;
const WAITING = 2;

interface Saying {
  readonly text: string;
  /** Makes the noise; tells when it is over. */
  make(): Promise<unknown>;
  done(): void;
}

class EarAndVoice implements Voice {
  readonly #recogniser: Recogniser;
  readonly #speaker: Speaker;
  readonly #host: VoiceHost;
  readonly #timers: Timers<'tail' | 'heard'>;
  readonly #onSpoken = new Listeners<Spoken>();
  readonly #onEar = new Listeners<undefined>();
  readonly #onTrouble = new Listeners<string>();
  readonly #stopListening: () => void;
  #language: Language;
  #wanted = false;
  /** Nobody wants more; what was said before is still waited for. */
  #finishing = false;
  #waiting: Saying[] = [];
  #saying: Saying | undefined;
  #afterTail: (() => void) | undefined;
  #shut = false;
  /** Nothing that began before this is taken for somebody else's words. */
  #openedAt = 0;
  #heard = '';

  constructor({ recogniser, speaker, host, language }: VoiceParts) {
    this.#recogniser = recogniser;
    this.#speaker = speaker;
    this.#host = host;
    this.#language = language ?? 'en';
    this.#timers = new Timers(host);
    this.#stopListening = recogniser.onEvent((event) => this.#hear(event));
  }

  listen(on: boolean): void {
    this.#wanted = on;
    this.#finishing = false;
    this.#heard = '';
    if (!this.#shut) this.#open();
    this.#onEar.tell(undefined);
  }

  finish(): void {
    if (!this.#wanted || this.#shut) return this.listen(false);
    this.#wanted = false;
    this.#finishing = true;
    this.#recogniser.finish();
    this.#finishing = this.#recogniser.state().state === 'listening';
    this.#onEar.tell(undefined);
  }

  setPhrases(phrases: readonly string[]): void {
    this.#recogniser.setPhrases(phrases);
  }

  onDevice(language: Language): Promise<OnDevice> {
    return this.#recogniser.onDevice(language);
  }

  fetchOnDevice(language: Language): Promise<OnDevice> {
    return this.#recogniser.fetchOnDevice(language);
  }

  setLanguage(language: Language): void {
    if (language === this.#language) return;
    this.#language = language;
    if (!this.#shut && !this.#isBlockedForGood()) this.#open();
  }

  ear(): Ear {
    const state = this.#recogniser.state();
    if (this.#finishing) return { state: 'finishing' };
    if (!this.#wanted) return { state: 'off' };
    if (state.state === 'blocked') return state;
    if (this.#shut) return { state: 'speaking', text: this.#saying?.text ?? '' };
    if (this.#heard !== '' && state.state === 'listening') return { state: 'heard', text: this.#heard };
    return { state: state.state };
  }

  say(text: string, language: Language): Promise<void> {
    if (text.trim() === '' || !this.#speaker.willSpeak(language)) return Promise.resolve();
    return this.#queue(text, async () => {
      const result = await this.#speaker.say(text, language);
      if (!result.ok && result.reason !== 'cut' && result.reason !== 'silent') this.#onTrouble.tell(result.why);
    });
  }

  hush(ms: number): void {
    void this.#queue('', () => new Promise((over) => this.#host.setTimeout(() => over(undefined), ms)));
  }

  canSpeak(): boolean {
    return this.#speaker.canSpeak();
  }

  setSpeaker(settings: Partial<SpeakerSettings>): void {
    this.#speaker.set(settings);
  }

  askAgain(): void {
    this.#recogniser.askAgain();
  }

  unlock(): void {
    this.#speaker.unlock();
  }

  onSpoken(listener: (spoken: Spoken) => void): () => void {
    return this.#onSpoken.add(listener);
  }

  onEar(listener: () => void): () => void {
    return this.#onEar.add(listener);
  }

  onTrouble(listener: (why: string) => void): () => void {
    return this.#onTrouble.add(listener);
  }

  stop(): void {
    this.#wanted = this.#finishing = false;
    for (const saying of this.#waiting.splice(0)) saying.done();
    this.#speaker.cut();
    this.#recogniser.stop();
    this.#stopListening();
    this.#timers.clearAll();
  }

  #hear(event: RecogniserEvent): void {
    if (event.kind === 'state') {
      if (event.state.state !== 'listening') this.#finishing = false;
      return this.#onEar.tell(undefined);
    }
    if (this.#shut || (!this.#wanted && !this.#finishing)) return;
    if (event.kind === 'heard' && event.spoken.since !== undefined && event.spoken.since < this.#openedAt) return;
    this.#show(event.kind === 'heard' ? event.spoken.text : event.text);
    if (event.kind === 'heard') this.#onSpoken.tell(event.spoken);
  }

  #show(text: string): void {
    this.#heard = text;
    this.#timers.set('heard', SHOW_HEARD_MS, () => {
      this.#heard = '';
      this.#onEar.tell(undefined);
    });
    this.#onEar.tell(undefined);
  }

  #queue(text: string, make: () => Promise<unknown>): Promise<void> {
    return new Promise((done) => {
      this.#waiting.push({ text, make, done });
      while (this.#waiting.length > WAITING) this.#waiting.shift()?.done();
      if (!this.#saying) void this.#next();
    });
  }

  async #next(): Promise<void> {
    for (let saying = this.#waiting.shift(); saying; saying = this.#waiting.shift()) {
      this.#saying = saying;
      this.#close();
      await saying.make();
      this.#saying = undefined;
      if (this.#waiting.length === 0) this.#openAfterTail(saying.done);
      else saying.done();
    }
  }

  #close(): void {
    this.#timers.clear('tail');
    this.#afterTail?.();
    this.#afterTail = undefined;
    this.#shut = true;
    this.#finishing = false;
    this.#heard = '';
    if (!this.#isBlockedForGood()) this.#recogniser.stop();
    this.#onEar.tell(undefined);
  }

  #openAfterTail(done: () => void): void {
    this.#afterTail = done;
    this.#timers.set('tail', TAIL_MS, () => {
      this.#afterTail = undefined;
      this.#shut = false;
      this.#openedAt = this.#host.now();
      if (!this.#isBlockedForGood()) this.#open();
      this.#onEar.tell(undefined);
      done();
    });
  }

  /** A closed ear that nothing but a person can open is not knocked at after every read-back. */
  #isBlockedForGood(): boolean {
    const state = this.#recogniser.state();
    return state.state === 'blocked' && !state.trying;
  }

  #open(): void {
    if (this.#wanted) this.#recogniser.start(this.#language);
    else this.#recogniser.stop();
  }
}

export function createVoice(parts: VoiceParts): Voice {
  return new EarAndVoice(parts);
}
