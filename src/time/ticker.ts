import { Listeners } from './listeners.ts';
import type { Clock, Ticker, TimeHost, TimerId } from './types.ts';

const PERIOD_MS = 250;

class OneTicker implements Ticker {
  readonly #host: Pick<TimeHost, 'setTimeout' | 'clearTimeout'>;
  readonly #clock: Clock;
  readonly #listeners = new Listeners<number>();
  #timer: TimerId | undefined;

  constructor(clock: Clock, host: Pick<TimeHost, 'setTimeout' | 'clearTimeout'>) {
    this.#clock = clock;
    this.#host = host;
  }

  subscribe(listener: (now: number) => void): () => void {
    const remove = this.#listeners.add(listener);
    if (this.#timer === undefined) this.#next();
    return () => {
      remove();
      if (this.#listeners.size === 0) this.stop();
    };
  }

  onSecond(listener: (now: number) => void): () => void {
    let seen = Math.floor(this.#clock.now() / 1000);
    return this.subscribe((now) => {
      const second = Math.floor(now / 1000);
      if (second === seen) return;
      seen = second;
      listener(now);
    });
  }

  stop(): void {
    if (this.#timer !== undefined) this.#host.clearTimeout(this.#timer);
    this.#timer = undefined;
  }

  /** Aims at the quarters of the wall clock's second, so that all displays change together. */
  #next(): void {
    const wait = PERIOD_MS - (this.#clock.now() % PERIOD_MS);
    this.#timer = this.#host.setTimeout(() => {
      this.#next();
      this.#listeners.tell(this.#clock.now());
    }, wait);
  }
}

/** One ticker for the whole page. It runs only while somebody listens. */
export function createTicker(options: { clock: Clock; host: Pick<TimeHost, 'setTimeout' | 'clearTimeout'> }): Ticker {
  return new OneTicker(options.clock, options.host);
}
