import { Listeners } from './listeners.ts';
import type { Lifecycle, WakeLock, WakeLockState } from './types.ts';

/** The part of the browser's wake lock that is used. */
export interface WakeLockSource {
  request(type: 'screen'): Promise<Held>;
}
interface Held {
  readonly released: boolean;
  release(): Promise<void>;
  addEventListener(type: 'release', listener: () => void): void;
}

class ScreenLock implements WakeLock {
  readonly #source: WakeLockSource | undefined;
  readonly #lifecycle: Lifecycle;
  readonly #listeners = new Listeners<WakeLockState>();
  readonly #stopWatching: () => void;
  #wanted = false;
  #asking = false;
  #held: Held | undefined;
  #state: WakeLockState;

  constructor(source: WakeLockSource | undefined, lifecycle: Lifecycle) {
    this.#source = source;
    this.#lifecycle = lifecycle;
    this.#state = source ? 'off' : 'unavailable';
    this.#stopWatching = lifecycle.subscribe(() => void this.#take());
  }

  state(): WakeLockState {
    return this.#state;
  }

  subscribe(listener: (state: WakeLockState) => void): () => void {
    return this.#listeners.add(listener);
  }

  want(on: boolean): void {
    if (!this.#source || on === this.#wanted) return;
    this.#wanted = on;
    if (on) void this.#take();
    else this.#letGo();
  }

  stop(): void {
    this.#stopWatching();
    this.#listeners.clear();
    this.want(false);
  }

  /** The browser takes the lock away with the page's visibility and never gives it back unasked. */
  async #take(): Promise<void> {
    if (!this.#source || !this.#wanted || this.#held || this.#asking) return;
    if (!this.#lifecycle.visible()) return this.#become('waiting');
    this.#asking = true;
    const held = await this.#source.request('screen').catch(() => undefined);
    this.#asking = false;
    if (!held) return this.#become(this.#wanted ? 'refused' : 'off');
    if (!this.#wanted) return void held.release().catch(() => undefined);
    this.#held = held;
    held.addEventListener('release', () => this.#lost(held));
    this.#become('held');
  }

  #lost(held: Held): void {
    if (this.#held !== held) return;
    this.#held = undefined;
    this.#become(this.#wanted ? 'waiting' : 'off');
    void this.#take();
  }

  #letGo(): void {
    const held = this.#held;
    this.#held = undefined;
    held?.release().catch(() => undefined);
    this.#become('off');
  }

  #become(state: WakeLockState): void {
    if (state === this.#state) return;
    this.#state = state;
    this.#listeners.tell(state);
  }
}

/** Keeps the screen on while something is running; refused and unavailable are states to be shown. */
export function createWakeLock(source: WakeLockSource | undefined, lifecycle: Lifecycle): WakeLock {
  return new ScreenLock(source, lifecycle);
}
