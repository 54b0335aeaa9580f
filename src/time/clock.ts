import type { Clock, ClockJump, TimeHost } from './types.ts';

/** Wall and monotonic clock may part by this much between two looks before it counts as a jump. */
const TOLERANCE_MS = 2000;

class GuardedClock implements Clock {
  readonly #host: TimeHost;
  readonly #onJump: (jump: ClockJump) => void;
  #wall: number;
  #steady: number;
  #skew = 0;

  constructor(host: TimeHost, onJump: (jump: ClockJump) => void) {
    this.#host = host;
    this.#onJump = onJump;
    this.#wall = host.now();
    this.#steady = host.monotonic();
  }

  now(): number {
    const wall = this.#host.now();
    const steady = this.#host.monotonic();
    const parted = wall - this.#wall - (steady - this.#steady);
    this.#wall = wall;
    this.#steady = steady;
    if (Math.abs(parted) > TOLERANCE_MS) this.#jumped(parted);
    return wall + this.#skew;
  }

  monotonic(): number {
    return this.#host.monotonic();
  }

  skewMs(): number {
    return this.#skew;
  }

  /**
   * Backwards: somebody set the clock; time did not run back, so the monotonic clock is believed. Forwards: either that was
   * set right again, or the device slept and only the wall clock knows how long.
   */
  #jumped(parted: number): void {
    this.#skew = Math.max(0, this.#skew - parted);
    const at = this.#wall + this.#skew;
    this.#onJump({ kind: parted < 0 ? 'back' : 'forward', byMs: Math.abs(parted), at });
  }
}

/** The wall clock, guarded against being set during a visit. It has to be looked at regularly; the ticker does. */
export function createClock(host: TimeHost, onJump: (jump: ClockJump) => void = () => undefined): Clock {
  return new GuardedClock(host, onJump);
}
