/**
 * The lock at run time. Locked, this window holds no key and nothing of any case: what was open is let go of, the list is
 * forgotten, only the clocks go on. Nothing is let go of before it is on the disk.
 */
import type { Keys } from '../storage/keys.types.ts';
import type { Ring } from '../time/types.ts';
import { LockedAlarms } from './locked-alarms.ts';
import type { LockedAlarm, LockRequest, LockView } from './locking.types.ts';
import type { AppModel } from './model.ts';
import type { Devices } from './ports.ts';
import type { Settings } from '../stores/stores.ts';
import type { LockAnswers } from './lock-answers.ts';
import { Tries } from './tries.ts';

/** What is told to the other windows: that this one was locked, or that the passphrase was set, or taken away. */
export interface LockNews {
  readonly kind: 'locked' | 'keys';
}

/** What the lock asks of the device. */
export interface LockDevices {
  readonly keys: Keys;
  tell(news: LockNews): void;
  /** Whether another window has a case open; `own` is the one open here. */
  busyElsewhere(own: string): Promise<boolean>;
}

/** Where somebody stood when it was locked. */
export interface Standing {
  readonly caseId: string;
  readonly place: AppModel['place'];
  /** A number waited for its yes. */
  readonly waits: boolean;
}

export interface LockingParts {
  readonly devices: Pick<Devices, 'log' | 'time' | 'settings' | 'windows' | 'lock'>;
  preferences(): Settings;
  standing(): Standing;
  /** What has to ring, of all cases, in words that do not tell whose it is. */
  alarms(): readonly LockedAlarm[];
  /** Lets go of everything of any case. */
  letGo(): void;
  /** Writes down that it rang. */
  rang(alarm: LockedAlarm): Promise<void>;
  /** The record can be read: the list, what runs, and the case that was open. */
  goOn(standing: Standing | undefined): Promise<void>;
  sayAloud(text: string): void;
  redraw(): void;
}

const LOST = 'A number that waited for its yes was not kept.';
/** How long the last entries are waited for. */
const FLUSH_MS = 4000;
/** A lock that was refused is tried again after so long. */
const AGAIN_MS = 10_000;
const MINUTE = 60_000;

function unsafe(count: number): string {
  const entries = count === 1 ? '1 entry is' : `${count} entries are`;
  return `Not locked: ${entries} not on the disk yet and would be lost. Save a file, or wait until everything is kept.`;
}

export class Locking {
  readonly #parts: LockingParts;
  readonly #alarms: LockedAlarms;
  readonly #tries: Tries;
  #answers: LockAnswers | undefined;
  #view: Omit<LockView, 'alarms' | 'unfinished' | 'waitUntil'>;
  #standing: Standing | undefined;
  #touchedAt: number;
  #notBefore = 0;
  #locking = false;
  #stops: readonly (() => void)[] = [];
  #started: Promise<boolean> | undefined;

  constructor(parts: LockingParts) {
    this.#parts = parts;
    const { devices } = parts;
    this.#alarms = new LockedAlarms(devices);
    this.#tries = new Tries(devices.settings);
    this.#touchedAt = devices.time.clock.now();
    const state = devices.lock === undefined ? 'none' : 'asking';
    this.#view = { state, busy: '', said: '', trouble: '', code: '' };
  }

  /** Nothing of a case may be shown or asked for. */
  get shut(): boolean {
    return this.#view.state === 'locked' || this.#view.state === 'asking';
  }

  view(): LockView {
    const locked = this.#view.state === 'locked';
    return {
      ...this.#view,
      unfinished: this.#keys?.unfinished() ?? false,
      waitUntil: locked ? this.#tries.until(this.#now()) : 0,
      alarms: locked ? this.#alarms.list : [],
    };
  }

  /** True when the record can be read at once. */
  start(): Promise<boolean> {
    this.#started ??= this.#start();
    return this.#started;
  }

  /** Does it now, or once it is known that nothing is locked; not at all while it is. */
  whenOpen(work: () => void): void {
    if (!this.shut) return work();
    if (this.#view.state === 'asking') void this.start().then((open) => open && work());
  }

  async #start(): Promise<boolean> {
    const { windows, lock } = this.#parts.devices;
    if (lock === undefined) return true;
    this.#stops = [
      windows?.onNews((news) => void this.#hear(news)) ?? (() => undefined),
      windows?.onLife((event) => event === 'hidden' && this.#hidden()) ?? (() => undefined),
    ];
    const state = await lock.keys.look();
    if (state === 'locked') await Promise.all([this.#alarms.read(), this.#tries.read()]);
    this.#set({ state });
    if (state === 'locked') this.#alarms.attend();
    return state !== 'locked';
  }

  stop(): void {
    for (const stop of this.#stops) stop();
  }

  ask(request: LockRequest): void {
    if (this.#keys === undefined || this.#view.busy !== '') return;
    if (request.ask === 'lock') void this.lock();
    else if (request.ask === 'codeSeen') this.#set({ code: '' });
    else void this.#answer(request, this.#keys);
  }

  /** Somebody is there. */
  touched(): void {
    this.#touchedAt = this.#now();
  }

  tick(now: number): void {
    // The disk did not answer at the start, and has since told that there is a passphrase.
    if (this.#view.state === 'none' && this.#keys?.state() === 'locked') void this.#found();
    const { lockAfterMin } = this.#parts.preferences();
    const idle = lockAfterMin > 0 && now - this.#touchedAt >= lockAfterMin * MINUTE;
    if (idle && now >= this.#notBefore) void this.lock();
  }

  /** What has to ring has changed while the record is open. */
  follow(): void {
    if (this.#view.state === 'open') this.#alarms.note(this.#parts.alarms());
  }

  /** A ring while locked is heard, shown, and written down later. */
  ring(id: string, ring: Ring): void {
    this.#alarms.rang(id, ring);
    this.#parts.sayAloud(ring.label);
    this.#parts.redraw();
  }

  silence(): void {
    this.#alarms.seen();
    this.#parts.redraw();
  }

  armSound(): void {
    const { sound } = this.#parts.devices.time;
    void sound.arm().then((state) => {
      const rings = this.#alarms.list.some((alarm) => alarm.rang !== undefined && alarm.seen !== true);
      if (state === 'armed' && rings) sound.ring();
      this.#parts.redraw();
    });
  }

  /** The alarms are those of the lock. */
  attend(): void {
    this.#alarms.attend();
  }

  /** Locks once everything is on the disk; otherwise says why not. `quiet`: the other windows know already. */
  async lock(quiet = false): Promise<void> {
    if (this.#view.state !== 'open' || this.#view.busy !== '' || this.#locking) return;
    this.#locking = true;
    const safe = await this.#safe();
    this.#locking = false;
    if (!safe) return;
    this.#standing = this.#parts.standing();
    this.#alarms.note(this.#parts.alarms());
    this.#keys?.lock();
    this.#parts.devices.log.forget();
    this.#set({ state: 'locked', code: '', trouble: '', said: this.#standing.waits ? LOST : '' });
    this.#parts.letGo();
    this.#alarms.attend();
    if (!quiet) this.#parts.devices.lock?.tell({ kind: 'locked' });
    this.#parts.redraw();
  }

  get #keys(): Keys | undefined {
    return this.#parts.devices.lock?.keys;
  }

  #now(): number {
    return this.#parts.devices.time.clock.now();
  }

  #set(change: Partial<LockView>): void {
    this.#view = { ...this.#view, ...change };
    this.#parts.redraw();
  }

  /** Entries on their way are waited for; what cannot be written holds the lock back. */
  async #safe(): Promise<boolean> {
    const { log, time } = this.#parts.devices;
    const until = this.#now() + FLUSH_MS;
    let stop = (): void => undefined;
    const late = new Promise<void>((resolve) => {
      stop = time.ticker.onSecond((now) => now >= until && resolve());
    });
    await Promise.race([log.flush(), late]);
    stop();
    const unsaved = log.unsaved().length;
    if (unsaved === 0) return true;
    this.#notBefore = this.#now() + AGAIN_MS;
    this.#set({ trouble: unsafe(unsaved) });
    return false;
  }

  #hidden(): void {
    if (this.#parts.preferences().lockOnHide) void this.lock();
  }

  async #hear(news: unknown): Promise<void> {
    const kind = typeof news === 'object' && news !== null ? (news as { kind?: unknown }).kind : undefined;
    if (kind === 'locked') await this.lock(true);
    if (kind !== 'keys' || this.#keys === undefined) return;
    const state = await this.#keys.look();
    if (state === this.#view.state) return;
    if (state === 'locked') await this.#found();
    else {
      this.#set({ state });
      await this.#parts.goOn(undefined);
    }
  }

  async #found(): Promise<void> {
    this.#set({ state: 'locked' });
    this.#parts.letGo();
    await Promise.all([this.#alarms.read(), this.#tries.read()]);
    this.#alarms.attend();
    this.#parts.redraw();
  }

  /** What answers is fetched when something is first asked. */
  async #answer(request: LockRequest, keys: Keys): Promise<void> {
    this.#set({ busy: 'One moment …', said: '', trouble: '' });
    const { LockAnswers: Answers } = await import('./lock-answers.ts');
    this.#set({ busy: '' });
    this.#answers ??= new Answers({
      devices: this.#parts.devices,
      tries: this.#tries,
      view: () => this.#view,
      set: (change) => this.#set(change),
      safe: () => this.#safe(),
      ownCase: () => this.#parts.standing().caseId,
      on: () => this.#on(),
      off: () => this.#alarms.note([]),
      unlocked: () => this.#unlocked(),
    });
    await this.#answers.give(request, keys);
  }

  #on(): void {
    this.touched();
    this.follow();
  }

  /** What rang meanwhile is written down first, so that it does not ring again. */
  async #unlocked(): Promise<void> {
    this.touched();
    const rung = this.#alarms.list.filter((alarm) => alarm.rang !== undefined);
    this.#set({ state: 'open' });
    for (const alarm of rung) await this.#parts.rang(alarm);
    await this.#parts.goOn(this.#standing);
    this.#standing = undefined;
  }
}
