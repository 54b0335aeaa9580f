const FIRST_PAUSE_MS = 300;
const LONGEST_PAUSE_MS = 5000;
/** A session that ended as it should is begun anew after this. */
const BREATH_MS = 100;
/** A session shorter than this, without a result, has failed. */
const SHORT_MS = 1000;
const FAILURES_TOLD = 3;
const DEAD_SESSIONS = 3;

/**
 * How soon a session that ended is begun again. A browser without a network ends sessions within milliseconds; begun anew
 * at once they would loop.
 */
export class RestartPolicy {
  #failures = 0;
  #dead = 0;
  #beganAt = 0;
  #alive = false;
  #useful = false;
  #failed = false;
  #forgiven = false;

  begin(at: number): void {
    this.#beganAt = at;
    this.#alive = this.#useful = this.#failed = this.#forgiven = false;
  }

  /** A sign of life of any kind. */
  life(): void {
    this.#alive = true;
    this.#dead = 0;
  }

  /** It brought a result, or has lasted. */
  useful(): void {
    this.#useful = true;
    this.#failures = 0;
  }

  fail(): void {
    this.#failed = true;
  }

  /** The app ended it itself, or knows better now: what follows is no failure. */
  forgive(): void {
    this.#forgiven = true;
  }

  /** The session is over: how long to wait before the next, ms. */
  over(at: number): number {
    if (this.#forgiven) return 0;
    const failed = this.#failed || (!this.#useful && at - this.#beganAt < SHORT_MS);
    if (!failed) {
      this.#failures = 0;
      return BREATH_MS;
    }
    this.#failures += 1;
    return Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** Math.min(this.#failures - 1, 10));
  }

  /** Nothing was heard from it for long: true when that has happened too often to go on. */
  noSign(): boolean {
    if (!this.#alive) this.#dead += 1;
    return this.#dead >= DEAD_SESSIONS;
  }

  /** Failing again and again: to be said, and not to be called listening until it is proven. */
  get struggling(): boolean {
    return this.#failures >= FAILURES_TOLD;
  }

  reset(): void {
    this.#failures = this.#dead = 0;
  }
}
