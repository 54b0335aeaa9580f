import type { Alternative, Spoken } from './types.ts';
import type { WebResult, WebResultEvent } from './web-types.ts';

/** The same words again within this time are an echo of the recogniser, not a second reading. */
const ECHO_MS = 1000;

export interface Read {
  readonly finals: readonly Spoken[];
  /** What is being said, not final. */
  readonly interim: string;
}

function alternativesOf(result: WebResult): readonly Alternative[] {
  return Array.from({ length: result.length }, (_, index) => result[index]).flatMap((given) => {
    const transcript = given?.transcript.trim() ?? '';
    if (given === undefined || transcript === '') return [];
    const { confidence } = given;
    const usable = Number.isFinite(confidence) && confidence >= 0 && confidence <= 1;
    return [usable ? { transcript, confidence } : { transcript }];
  });
}

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}.,]+/gu, ' ')
    .replace(/[.,]+(?=\s|$)/g, '')
    .trim();
}

/**
 * Reads the browser's result lists. It keeps its own count of what has been taken, because some engines hand over old
 * results again; it passes over "final" results without confidence on Android, which are not final; and it passes over the
 * same words twice in a second, unless they were asked for.
 */
export class ResultReader {
  readonly #android: boolean;
  readonly #taken = new Set<number>();
  #last = { text: '', at: -Infinity };

  constructor(options: { android: boolean }) {
    this.#android = options.android;
  }

  /** A new session of the recogniser counts its results from the start. */
  newSession(): void {
    this.#taken.clear();
  }

  askAgain(): void {
    this.#last = { text: '', at: -Infinity };
  }

  read(event: WebResultEvent, at: number, since?: number): Read {
    const finals: Spoken[] = [];
    let interim = '';
    for (let index = 0; index < event.results.length; index += 1) {
      const result = event.results[index];
      if (result === undefined || this.#taken.has(index)) continue;
      const alternatives = alternativesOf(result);
      const top = alternatives[0];
      if (top === undefined) continue;
      if (!result.isFinal || (this.#android && top.confidence === 0)) interim = `${interim} ${top.transcript}`.trim();
      else {
        this.#taken.add(index);
        if (!this.#isEcho(top.transcript, at)) {
          finals.push({ text: top.transcript, alternatives, at, ...(since === undefined ? {} : { since }) });
        }
      }
    }
    return { finals, interim };
  }

  #isEcho(text: string, at: number): boolean {
    const echo = plain(text) === this.#last.text && at - this.#last.at < ECHO_MS;
    this.#last = { text: plain(text), at };
    return echo;
  }
}
