/**
 * Time that passes only when told to. It drives the real clock, ticker and alarms deterministically; only the device's ends
 * (timers, worker, loudspeaker, screen, visibility) are made up. For tests and for running a recorded visit without a browser.
 */
import { createAlarms } from './alarms.ts';
import { createLocalPort } from './alarm-port.ts';
import { createClock } from './clock.ts';
import { FakeHost } from './fake-host.ts';
import { Listeners } from './listeners.ts';
import { createTicker } from './ticker.ts';
import { ALARM } from './tones.ts';
import type {
  Beep,
  Lifecycle,
  LifecycleEvent,
  Sound,
  SoundState,
  Time,
  TimeHost,
  TimeOptions,
  WakeLock,
  WakeLockState,
} from './types.ts';

/** What the made-up loudspeaker gave out. */
export interface Heard {
  readonly at: number;
  /** `tone`: scheduled ahead. `ring`: begun when the alarm rang. */
  readonly what: 'tone' | 'ring' | 'silence' | Beep;
  readonly id: string;
}

export interface FakeTime {
  readonly host: TimeHost;
  now(): number;
  /** Loads the page: nothing is armed, nothing is set, everything overdue rings as soon as deadlines are handed in. */
  open(options: TimeOptions): Time;
  /** A reload, a crash, a closed lid: all timers of the page are gone. */
  close(): void;
  /** Lets time pass, with the page open or not. */
  advance(ms: number): void;
  /** The same, giving promises a turn after every timer. */
  run(ms: number): Promise<void>;
  hide(): void;
  show(): void;
  /** Somebody sets the device's clock. */
  setWallClock(byMs: number): void;
  /** The audio context stops, as after a telephone call. */
  interruptSound(): void;
  readonly heard: readonly Heard[];
}

class FakeLifecycle implements Lifecycle {
  readonly #listeners = new Listeners<LifecycleEvent>();
  #visible = true;

  visible(): boolean {
    return this.#visible;
  }

  subscribe(listener: (event: LifecycleEvent) => void): () => void {
    return this.#listeners.add(listener);
  }

  set(visible: boolean): void {
    this.#visible = visible;
    this.#listeners.tell(visible ? 'visible' : 'hidden');
  }

  stop(): void {
    this.#listeners.clear();
  }
}

/** As the real one: a tone about to sound is left alone, and counts as sounding. */
const HANDS_OFF_MS = 100;
const TONE_MS = ALARM.roundMs * ALARM.rounds;

class FakeSound implements Sound {
  readonly #host: FakeHost;
  readonly #heard: Heard[];
  readonly #listeners = new Listeners<SoundState>();
  readonly #tones = new Map<string, { readonly at: number; readonly timer: number }>();
  #state: SoundState = 'needsTouch';

  constructor(host: FakeHost, heard: Heard[]) {
    this.#host = host;
    this.#heard = heard;
  }

  state(): SoundState {
    return this.#state;
  }

  subscribe(listener: (state: SoundState) => void): () => void {
    return this.#listeners.add(listener);
  }

  arm(): Promise<SoundState> {
    this.become('armed');
    return Promise.resolve('armed');
  }

  become(state: SoundState): void {
    if (state === this.#state) return;
    this.#state = state;
    if (state !== 'armed') this.#takeBack(Infinity);
    this.#listeners.tell(state);
  }

  schedule(tones: readonly { readonly id: string; readonly at: number }[]): void {
    const now = this.#host.now();
    this.#takeBack(HANDS_OFF_MS);
    if (this.#state !== 'armed') return;
    for (const { id, at } of tones) {
      if (at <= now || this.#tones.has(id)) continue;
      const timer = this.#host.setTimeout(() => this.#give('tone', id), at - now);
      this.#tones.set(id, { at, timer });
    }
  }

  ring(_pattern?: unknown, id = ''): boolean {
    if (this.#state !== 'armed') return false;
    const tone = this.#tones.get(id);
    const now = this.#host.now();
    const sounding = tone && tone.at <= now + HANDS_OFF_MS && tone.at + TONE_MS > now;
    if (!sounding) this.#give('ring', id);
    return true;
  }

  beep(which: Beep): boolean {
    if (this.#state === 'armed') this.#give(which, '');
    return this.#state === 'armed';
  }

  silence(): void {
    this.#give('silence', '');
  }

  setVolume(): void {}

  stop(): void {
    this.#takeBack(Infinity);
    this.#listeners.clear();
  }

  #give(what: Heard['what'], id: string): void {
    this.#heard.push({ at: this.#host.now(), what, id });
  }

  #takeBack(handsOffMs: number): void {
    const now = this.#host.now();
    for (const [id, { at, timer }] of this.#tones) {
      if (handsOffMs !== Infinity && at <= now + handsOffMs && at + TONE_MS > now) continue;
      this.#host.clearTimeout(timer);
      this.#tones.delete(id);
    }
  }
}

function fakeWakeLock(): WakeLock {
  const listeners = new Listeners<WakeLockState>();
  let state: WakeLockState = 'off';
  return {
    state: () => state,
    subscribe: (listener) => listeners.add(listener),
    want: (on) => {
      state = on ? 'held' : 'off';
      listeners.tell(state);
    },
    stop: () => listeners.clear(),
  };
}

interface Page {
  readonly time: Time;
  readonly lifecycle: FakeLifecycle;
  readonly sound: FakeSound;
}

function openPage(host: FakeHost, heard: Heard[], options: TimeOptions): Page {
  const clock = createClock(host, options.onJump);
  const ticker = createTicker({ clock, host });
  const lifecycle = new FakeLifecycle();
  const sound = new FakeSound(host, heard);
  const wakeLock = fakeWakeLock();
  const port = createLocalPort(host);
  const alarms = createAlarms({ clock, ticker, lifecycle, sound, port, onRing: options.onRing });
  const stop = (): void => {
    for (const part of [alarms, sound, wakeLock, ticker, lifecycle]) part.stop();
  };
  return { time: { clock, ticker, lifecycle, alarms, sound, wakeLock, stop }, lifecycle, sound };
}

/** Time standing at `startAt` (epoch ms), with no page open. */
export function createFakeTime(startAt: number): FakeTime {
  const host = new FakeHost(startAt);
  const heard: Heard[] = [];
  let page: Page | undefined;
  const close = (): void => {
    page?.time.stop();
    page = undefined;
    host.dropTimers();
  };
  return {
    host,
    heard,
    now: () => host.now(),
    open: (options) => {
      close();
      page = openPage(host, heard, options);
      return page.time;
    },
    close,
    advance: (ms) => host.advance(ms),
    run: (ms) => host.run(ms),
    hide: () => page?.lifecycle.set(false),
    show: () => page?.lifecycle.set(true),
    setWallClock: (byMs) => host.setWallClock(byMs),
    interruptSound: () => page?.sound.become('needsTouch'),
  };
}
