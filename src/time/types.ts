/**
 * Contract of everything that knows what time it is. A deadline is a moment on the wall clock, stored by whoever owns it;
 * nothing in here counts down, so a reload, a crash or a closed lid changes nothing about a clock.
 */
export type TimerId = ReturnType<typeof setTimeout> | number;

/** What this folder needs of its surroundings; tests and headless runs pass their own. */
export interface TimeHost {
  /** Wall clock, milliseconds since 1970 UTC. */
  now(): number;
  /** Milliseconds that never jump, from any starting point. */
  monotonic(): number;
  setTimeout(run: () => void, ms: number): TimerId;
  clearTimeout(id: TimerId): void;
}

export interface Clock {
  /** Wall clock, with a jump backwards during this session taken out. */
  now(): number;
  monotonic(): number;
  /** What `now` adds to the device's own clock. */
  skewMs(): number;
}

/** The device's clock was set, or the device slept while its monotonic clock stood still. */
export interface ClockJump {
  readonly kind: 'back' | 'forward';
  readonly byMs: number;
  readonly at: number;
}

export interface Ticker {
  /** About four times a second. Ticks may be late or missing; never count them. */
  subscribe(listener: (now: number) => void): () => void;
  /** Once for each new whole second that is seen. */
  onSecond(listener: (now: number) => void): () => void;
  stop(): void;
}

export interface Deadline {
  readonly id: string;
  readonly at: number;
  readonly label: string;
}

export interface Ring {
  readonly label: string;
  readonly dueAt: number;
  readonly rangAt: number;
  /** Rang so long after it was due that it has to be said ("rang 40 s late"). */
  readonly late: boolean;
  readonly lateMs: number;
  /** Which of the independent triggers was first. */
  readonly by: 'worker' | 'check';
}

export type OnRing = (id: string, ring: Ring) => void;

export interface Alarms {
  /**
   * The whole list of what is still to ring, each time anything changes. Overdue ones ring at once. The same id at the
   * same moment rings once; at another moment it rings again.
   */
  setDeadlines(list: readonly Deadline[]): void;
  /** Those that have not rung, the next one first. */
  waiting(): readonly Deadline[];
  stop(): void;
}

/** A repeated figure of beeps. */
export interface Pattern {
  readonly hz: number;
  readonly beeps: readonly { readonly atMs: number; readonly ms: number }[];
  /** Length of one round. */
  readonly roundMs: number;
  readonly rounds: number;
}

export type Beep = 'heard' | 'kept' | 'ask' | 'warn';
export type SoundState = 'armed' | 'needsTouch' | 'unavailable';

export interface Sound {
  state(): SoundState;
  subscribe(listener: (state: SoundState) => void): () => void;
  /** Call inside a touch or key press, and again when the state is no longer `armed`. */
  arm(): Promise<SoundState>;
  /** Alarm tones put on the audio clock ahead of time, the whole list each time: they sound even while the page is busy. */
  schedule(tones: readonly { readonly id: string; readonly at: number }[]): void;
  /** Sounds now, unless the tone scheduled for `id` is sounding already. False when nothing can be heard. */
  ring(pattern?: Pattern, id?: string): boolean;
  beep(which: Beep): boolean;
  /** Ends whatever sounds now; what is scheduled for later stays. */
  silence(): void;
  /** 0…1 */
  setVolume(volume: number): void;
  stop(): void;
}

/** `waiting`: wanted, but the page is hidden; asked for again when it is visible. */
export type WakeLockState = 'off' | 'held' | 'waiting' | 'refused' | 'unavailable';

export interface WakeLock {
  state(): WakeLockState;
  subscribe(listener: (state: WakeLockState) => void): () => void;
  /** Keep the screen on, or no longer. */
  want(on: boolean): void;
  stop(): void;
}

export type LifecycleEvent = 'visible' | 'hidden' | 'shown' | 'leaving' | 'focus' | 'frozen' | 'resumed';

export interface Lifecycle {
  visible(): boolean;
  subscribe(listener: (event: LifecycleEvent) => void): () => void;
  stop(): void;
}

/** All of it, as one page has it. */
export interface Time {
  readonly clock: Clock;
  readonly ticker: Ticker;
  readonly lifecycle: Lifecycle;
  readonly alarms: Alarms;
  readonly sound: Sound;
  readonly wakeLock: WakeLock;
  stop(): void;
}

export interface TimeOptions {
  readonly onRing: OnRing;
  readonly onJump?: (jump: ClockJump) => void;
}
