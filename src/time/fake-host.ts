import type { TimeHost, TimerId } from './types.ts';

interface Timer {
  readonly id: number;
  readonly due: number;
  readonly run: () => void;
}

const TURNS = 25;

/** Clocks and timers that move only by `advance` or `run`; timers go off in order of their moment, then of their making. */
export class FakeHost implements TimeHost {
  #wall: number;
  #steady = 0;
  #made = 0;
  #timers: Timer[] = [];

  constructor(startAt: number) {
    this.#wall = startAt;
  }

  now(): number {
    return this.#wall;
  }

  monotonic(): number {
    return this.#steady;
  }

  setTimeout(run: () => void, ms: number): number {
    this.#made += 1;
    this.#timers.push({ id: this.#made, due: this.#steady + Math.max(0, ms), run });
    return this.#made;
  }

  clearTimeout(id: TimerId): void {
    this.#timers = this.#timers.filter((timer) => timer.id !== id);
  }

  /** How many timers are set. */
  get timers(): number {
    return this.#timers.length;
  }

  dropTimers(): void {
    this.#timers = [];
  }

  setWallClock(byMs: number): void {
    this.#wall += byMs;
  }

  advance(ms: number): void {
    const until = this.#steady + Math.max(0, ms);
    for (let next = this.#next(until); next; next = this.#next(until)) next.run();
    this.#goTo(until);
  }

  async run(ms: number): Promise<void> {
    const until = this.#steady + Math.max(0, ms);
    await this.#settle();
    for (let next = this.#next(until); next; next = this.#next(until)) {
      next.run();
      await this.#settle();
    }
    this.#goTo(until);
  }

  #next(until: number): Timer | undefined {
    let first: Timer | undefined;
    for (const timer of this.#timers) {
      if (timer.due <= until && (!first || timer.due < first.due)) first = timer;
    }
    if (!first) return undefined;
    this.clearTimeout(first.id);
    this.#goTo(first.due);
    return first;
  }

  #goTo(steady: number): void {
    this.#wall += steady - this.#steady;
    this.#steady = steady;
  }

  async #settle(): Promise<void> {
    for (let turn = 0; turn < TURNS; turn += 1) await Promise.resolve();
  }
}
