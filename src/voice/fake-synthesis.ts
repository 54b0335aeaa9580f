import type { VoiceHost } from './types.ts';
import type { WebSynthesis, WebUtterance, WebVoice } from './web-types.ts';

export interface SpokenAloud {
  readonly text: string;
  readonly lang: string;
  readonly at: number;
  readonly volume: number;
  readonly rate: number;
  readonly local: boolean | undefined;
}

export interface SynthesisConditions {
  voices: readonly WebVoice[];
  /** `noEnd`: starts and never ends. `dead`: no event at all. `fails`: an error. `untouched`: refused before a touch. */
  speech: 'works' | 'noEnd' | 'dead' | 'fails' | 'untouched';
  msPerCharacter: number;
}

export class FakeUtterance implements WebUtterance {
  readonly text: string;
  lang = '';
  volume = 1;
  rate = 1;
  voice: WebVoice | null = null;
  onstart: (() => void) | null = null;
  onend: (() => void) | null = null;
  onerror: ((event: { readonly error: string }) => void) | null = null;

  constructor(text: string) {
    this.text = text;
  }
}

/** A made-up speech synthesis. `aloud` is called with whatever could be heard in the room when it begins. */
export class FakeSynthesis implements WebSynthesis {
  readonly spoken: SpokenAloud[] = [];
  readonly conditions: SynthesisConditions;
  readonly #host: VoiceHost;
  readonly #aloud: (text: string) => void;
  #queue: FakeUtterance[] = [];
  #current: FakeUtterance | undefined;

  constructor(host: VoiceHost, conditions: SynthesisConditions, aloud: (text: string) => void) {
    this.#host = host;
    this.conditions = conditions;
    this.#aloud = aloud;
  }

  get speaking(): boolean {
    return this.#current !== undefined;
  }

  getVoices(): readonly WebVoice[] {
    return this.conditions.voices;
  }

  speak(utterance: WebUtterance): void {
    this.#queue.push(utterance as FakeUtterance);
    if (!this.#current) this.#next();
  }

  cancel(): void {
    const all = [...(this.#current ? [this.#current] : []), ...this.#queue];
    this.#queue = [];
    this.#current = undefined;
    for (const utterance of all) utterance.onerror?.({ error: 'interrupted' });
  }

  #next(): void {
    const utterance = this.#queue.shift();
    this.#current = utterance;
    if (!utterance) return;
    const { speech, msPerCharacter } = this.conditions;
    if (speech === 'dead') return;
    if (speech === 'fails' || speech === 'untouched') {
      this.#later(utterance, 0, () =>
        utterance.onerror?.({ error: speech === 'fails' ? 'synthesis-failed' : 'not-allowed' }),
      );
      return;
    }
    this.#give(utterance);
    utterance.onstart?.();
    const ms = (utterance.text.length * msPerCharacter) / utterance.rate;
    if (speech === 'works') this.#later(utterance, ms, () => utterance.onend?.());
  }

  #give({ text, lang, volume, rate, voice }: FakeUtterance): void {
    this.spoken.push({ text, lang, at: this.#host.now(), volume, rate, local: voice?.localService });
    if (volume > 0) this.#aloud(text);
  }

  #later(utterance: FakeUtterance, ms: number, tell: () => void): void {
    this.#host.setTimeout(() => {
      if (this.#current !== utterance) return;
      this.#current = undefined;
      tell();
      if (!this.#current) this.#next();
    }, ms);
  }
}
