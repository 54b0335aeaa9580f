import type { VoiceWindow, WebPhrase } from './web-types.ts';

/** The default is 1 and the scale goes to 10: a nudge, for a word that was not said must not be heard into a noise. */
const BOOST = 2;
/** A short list helps; a long one helps nothing in it. */
const MOST = 60;

/** Words likely to be said now, as the browser wants them; none where it does not know them or has refused them once. */
export class Phrases {
  readonly #make: VoiceWindow['SpeechRecognitionPhrase'];
  #list: readonly string[] = [];
  #refused = false;

  constructor(window: VoiceWindow) {
    this.#make = window.SpeechRecognitionPhrase;
  }

  /** True when this is another list than before. */
  set(list: readonly string[]): boolean {
    const next = [...new Set(list.map((phrase) => phrase.trim()).filter((phrase) => phrase !== ''))].slice(0, MOST);
    const same = next.length === this.#list.length && next.every((phrase, i) => phrase === this.#list[i]);
    this.#list = next;
    return !same;
  }

  /** The recogniser said that it takes none: it is not asked again. */
  refuse(): void {
    this.#refused = true;
  }

  made(): readonly WebPhrase[] {
    const Phrase = this.#make;
    if (!Phrase || this.#refused) return [];
    try {
      return this.#list.map((phrase) => new Phrase(phrase, BOOST));
    } catch {
      return [];
    }
  }
}
