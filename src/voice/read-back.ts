/**
 * Reading aloud. The browser is not believed when it says nothing: without a loudspeaker no event ever comes, so every
 * utterance has a time by which it counts as over.
 */
import type { Language } from '../domain/protocol/types.ts';
import { noVoiceWhy, SAY_WHY } from './sentences.ts';
import { languageOf, speechTag } from './tags.ts';
import type { SayFailure, SayResult, Speaker, SpeakerSettings, VoiceHost } from './types.ts';
import type { VoiceWindow, WebSynthesis, WebUtterance, WebVoice } from './web-types.ts';

const MS_A_CHARACTER = 90;
const GRACE_MS = 3000;
/** Longer utterances are cut off in silence by some voices. */
const LONGEST = 100;

export interface ReadBackOptions {
  readonly host: VoiceHost;
  /** Some voices read on a server; without consent they are not used. */
  mayLeaveDevice(): boolean;
}

function failed(reason: Exclude<SayFailure, 'noVoice'>): SayResult {
  return { ok: false, reason, why: SAY_WHY[reason] };
}

/** A text in pieces short enough to be read in one go, cut where a reader would pause. */
export function pieces(text: string): readonly string[] {
  const result: string[] = [];
  let rest = text.trim().replace(/\s+/g, ' ');
  while (rest.length > LONGEST) {
    const head = rest.slice(0, LONGEST);
    const stop = Math.max(head.lastIndexOf('. '), head.lastIndexOf('? '), head.lastIndexOf('; '));
    const pause = stop > 0 ? stop : head.lastIndexOf(', ');
    const cut = pause > 0 ? pause + 1 : head.lastIndexOf(' ');
    const at = cut > 0 ? cut : LONGEST;
    result.push(rest.slice(0, at).trim());
    rest = rest.slice(at).trim();
  }
  return rest === '' ? result : [...result, rest];
}

/** A voice of the language on this device; with consent any. `none`: there are voices, but none that will do. */
function choose(voices: readonly WebVoice[], tag: string, mayLeave: boolean): WebVoice | 'default' | 'none' {
  if (voices.length === 0) return 'default';
  const usable = voices.filter((voice) => voice.localService || mayLeave);
  const exact = usable.filter((voice) => voice.lang.replace('_', '-').toLowerCase() === tag.toLowerCase());
  const near = usable.filter((voice) => languageOf(voice.lang) === languageOf(tag));
  const inOrder = [...exact, ...near];
  return inOrder.find((voice) => voice.localService) ?? inOrder[0] ?? 'none';
}

class ReadBack implements Speaker {
  readonly #window: VoiceWindow;
  readonly #options: ReadBackOptions;
  readonly #synthesis: WebSynthesis | undefined;
  #settings: SpeakerSettings = { silent: false, volume: 1, rate: 1 };
  /** Ends what is being said, from outside. Holding the utterance here also keeps the browser from losing it. */
  #current: { readonly utterance: WebUtterance; readonly end: (result: SayResult) => void } | undefined;
  #turn = 0;

  constructor(window: VoiceWindow, options: ReadBackOptions) {
    this.#window = window;
    this.#options = options;
    this.#synthesis = window.SpeechSynthesisUtterance && window.speechSynthesis;
  }

  canSpeak(): boolean {
    return this.#synthesis !== undefined;
  }

  willSpeak(language: Language): boolean {
    return !this.#settings.silent && this.canSpeak() && this.#voice(language) !== 'none';
  }

  set(settings: Partial<SpeakerSettings>): void {
    const { silent, volume, rate } = { ...this.#settings, ...settings };
    this.#settings = { silent, volume: Math.min(1, Math.max(0, volume)), rate: Math.min(2, Math.max(0.5, rate)) };
    if (silent) this.cut();
  }

  cut(): void {
    this.#turn += 1;
    this.#current?.end(failed('cut'));
    this.#synthesis?.cancel();
  }

  unlock(): void {
    const made = this.#utterance('', 'en');
    if (!made) return;
    made.volume = 0;
    this.#synthesis?.speak(made);
  }

  async say(text: string, language: Language): Promise<SayResult> {
    if (this.#current) this.cut();
    if (this.#settings.silent) return failed('silent');
    if (!this.canSpeak()) return failed('unavailable');
    if (!this.willSpeak(language)) return { ok: false, reason: 'noVoice', why: noVoiceWhy(language) };
    this.#turn += 1;
    const turn = this.#turn;
    for (const piece of pieces(text)) {
      const result = await this.#sayPiece(piece, language);
      if (!result.ok) return result;
      if (turn !== this.#turn) return failed('cut');
    }
    return { ok: true };
  }

  #sayPiece(text: string, language: Language): Promise<SayResult> {
    const utterance = this.#utterance(text, language);
    if (!utterance) return Promise.resolve(failed('unavailable'));
    return new Promise((resolve) => {
      const { host } = this.#options;
      const patience = (text.length * MS_A_CHARACTER) / this.#settings.rate + GRACE_MS;
      const end = (result: SayResult): void => {
        host.clearTimeout(timer);
        utterance.onend = utterance.onerror = null;
        if (this.#current?.utterance === utterance) this.#current = undefined;
        resolve(result);
      };
      const timer = host.setTimeout(() => {
        end(failed('timedOut'));
        this.#synthesis?.cancel();
      }, patience);
      utterance.onend = () => end({ ok: true });
      utterance.onerror = ({ error }) => end(failed(error === 'not-allowed' ? 'needsTouch' : 'failed'));
      this.#current = { utterance, end };
      this.#start(utterance, end);
    });
  }

  #start(utterance: WebUtterance, end: (result: SayResult) => void): void {
    try {
      this.#synthesis?.speak(utterance);
    } catch {
      end(failed('failed'));
    }
  }

  #voice(language: Language): WebVoice | 'default' | 'none' {
    return choose(this.#synthesis?.getVoices() ?? [], this.#tag(language), this.#options.mayLeaveDevice());
  }

  #tag(language: Language): string {
    return speechTag(language, this.#window.navigator.languages);
  }

  #utterance(text: string, language: Language): WebUtterance | undefined {
    const Utterance = this.#window.SpeechSynthesisUtterance;
    if (!Utterance) return undefined;
    const utterance = new Utterance(text);
    const voice = this.#voice(language);
    utterance.lang = typeof voice === 'string' ? this.#tag(language) : voice.lang;
    if (typeof voice !== 'string') utterance.voice = voice;
    utterance.volume = this.#settings.volume;
    utterance.rate = this.#settings.rate;
    return utterance;
  }
}

export function createReadBack(window: VoiceWindow, options: ReadBackOptions): Speaker {
  return new ReadBack(window, options);
}
