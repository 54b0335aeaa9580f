import type { TimerId, VoiceHost } from './types.ts';

/** Timers by name: setting one again replaces it. */
export class Timers<Name extends string> {
  readonly #host: Pick<VoiceHost, 'setTimeout' | 'clearTimeout'>;
  readonly #set = new Map<Name, TimerId>();

  constructor(host: Pick<VoiceHost, 'setTimeout' | 'clearTimeout'>) {
    this.#host = host;
  }

  set(name: Name, ms: number, run: () => void): void {
    this.clear(name);
    const id = this.#host.setTimeout(() => {
      this.#set.delete(name);
      run();
    }, ms);
    this.#set.set(name, id);
  }

  clear(name: Name): void {
    const id = this.#set.get(name);
    if (id !== undefined) this.#host.clearTimeout(id);
    this.#set.delete(name);
  }

  clearAll(): void {
    for (const name of Array.from(this.#set.keys())) this.clear(name);
  }
}
