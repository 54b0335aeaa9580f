import type { TimeHost, TimerId } from './types.ts';

export interface DueAt {
  readonly id: string;
  readonly at: number;
}

/** What the page tells the worker: everything that is still to ring, and what to add to the device's clock. */
export interface AlarmOrder {
  readonly deadlines: readonly DueAt[];
  readonly skewMs: number;
}

const LONGEST_SLEEP_MS = 1000;

/**
 * Sleeps at most a second at a time and compares with the wall clock, so that neither a throttled timer nor a sleeping
 * device can make it lose count. Runs in a worker, where timers stay exact while the page is hidden.
 */
export class AlarmLoop {
  readonly #host: Pick<TimeHost, 'now' | 'setTimeout' | 'clearTimeout'>;
  readonly #due: (deadline: DueAt) => void;
  #waiting: readonly DueAt[] = [];
  #skewMs = 0;
  #timer: TimerId | undefined;

  constructor(host: Pick<TimeHost, 'now' | 'setTimeout' | 'clearTimeout'>, due: (deadline: DueAt) => void) {
    this.#host = host;
    this.#due = due;
  }

  set(order: AlarmOrder): void {
    this.#waiting = order.deadlines;
    this.#skewMs = order.skewMs;
    this.#look();
  }

  stop(): void {
    this.#waiting = [];
    this.#sleep();
  }

  #look(): void {
    const now = this.#host.now() + this.#skewMs;
    const over = this.#waiting.filter(({ at }) => at <= now);
    this.#waiting = this.#waiting.filter(({ at }) => at > now);
    this.#sleep();
    for (const deadline of over) this.#due(deadline);
  }

  #sleep(): void {
    if (this.#timer !== undefined) this.#host.clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.#waiting.length === 0) return;
    const now = this.#host.now() + this.#skewMs;
    const next = Math.min(...this.#waiting.map(({ at }) => at));
    const wait = Math.max(0, Math.min(LONGEST_SLEEP_MS, next - now));
    this.#timer = this.#host.setTimeout(() => this.#look(), wait);
  }
}
