/** Wrong passphrases make the next try wait, longer each time; nothing is ever deleted for it. */
import type { Devices } from './ports.ts';

export const TRIES_KEY = 'tries';

const FREE = 2;
const FIRST_MS = 5000;
const LONGEST_MS = 300_000;

/** How long to wait after so many wrong ones in a row: 0, 0, 5 s, 10 s, 20 s … five minutes. */
export function waitAfter(failed: number): number {
  return failed <= FREE ? 0 : Math.min(LONGEST_MS, FIRST_MS * 2 ** (failed - FREE - 1));
}

export class Tries {
  readonly #settings: Devices['settings'];
  #failed = 0;
  #at = 0;

  constructor(settings: Devices['settings']) {
    this.#settings = settings;
  }

  async read(): Promise<void> {
    const read = await this.#settings.read(TRIES_KEY);
    const stored: unknown = read.ok ? read.value : undefined;
    if (typeof stored !== 'object' || stored === null) return;
    const { failed, at } = stored as Record<string, unknown>;
    if (!Number.isSafeInteger(failed) || Number(failed) < 0 || !Number.isFinite(at)) return;
    this.#failed = Number(failed);
    this.#at = Number(at);
  }

  /** The moment from which the next one is tried; a clock that was set back makes nobody wait longer. */
  until(now: number): number {
    return Math.min(this.#at, now) + waitAfter(this.#failed);
  }

  async wrong(now: number): Promise<void> {
    await this.#note(this.#failed + 1, now);
  }

  async right(): Promise<void> {
    if (this.#failed > 0) await this.#note(0, 0);
  }

  async #note(failed: number, at: number): Promise<void> {
    this.#failed = failed;
    this.#at = at;
    await this.#settings.write(TRIES_KEY, { failed, at });
  }
}
