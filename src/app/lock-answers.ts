/** What is asked of the lock: each answered in words, wrong passphrases slowly. */
import type { Keys, KeysFailure, KeysResult } from '../storage/keys.types.ts';
import type { Failed } from '../storage/types.ts';
import type { LockRequest, LockView } from './locking.types.ts';
import type { Devices } from './ports.ts';
import type { Tries } from './tries.ts';
import { WAITING_KEY } from './sealed-names.ts';

export interface LockAnswerParts {
  readonly devices: Pick<Devices, 'time' | 'settings' | 'lock'>;
  readonly tries: Tries;
  view(): Pick<LockView, 'state' | 'trouble'>;
  set(change: Partial<LockView>): void;
  /** Everything is on the disk; otherwise it is said that it is not. */
  safe(): Promise<boolean>;
  ownCase(): string;
  /** A passphrase was set. */
  on(): void;
  /** It is being taken away. */
  off(): void;
  unlocked(): Promise<void>;
}

const ELSEWHERE = 'A case is open in another window. Close that window first.';
const LEFT =
  'Some entries could not be put into their new form yet. They are safe; it is tried again at the next unlocking.';

function waiting(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  return seconds === 1 ? 'Wait one second.' : `Wait ${seconds} seconds.`;
}

export class LockAnswers {
  readonly #parts: LockAnswerParts;

  constructor(parts: LockAnswerParts) {
    this.#parts = parts;
  }

  async give(request: LockRequest, keys: Keys): Promise<void> {
    switch (request.ask) {
      case 'turnOn':
        return this.#turnOn(keys, request.passphrase);
      case 'turnOff':
        return this.#turnOff(keys, request.passphrase);
      case 'unlock':
        return this.#unlock(keys, () => keys.unlock({ lock: 'passphrase', secret: request.passphrase }));
      case 'recover':
        return this.#unlock(keys, () => keys.change({ lock: 'recovery', secret: request.code }, request.passphrase));
      case 'change': {
        const wish = { lock: 'passphrase', secret: request.from } as const;
        return this.#guarded('Wrapping the key anew …', 'The passphrase was changed.', () =>
          keys.change(wish, request.to),
        );
      }
      case 'newCode':
        return this.#newCode(keys, request.passphrase);
      default:
        return undefined;
    }
  }

  #now(): number {
    return this.#parts.devices.time.clock.now();
  }

  /** Something slow, with what is done, what came of it, or why not, in words. Wrong ones make the next try wait. */
  async #guarded<T extends KeysResult>(busy: string, said: string, work: () => Promise<T>): Promise<void> {
    const wait = this.#parts.tries.until(this.#now()) - this.#now();
    if (wait > 0) return this.#parts.set({ trouble: waiting(wait) });
    this.#parts.set({ busy, said: '', trouble: '' });
    const done = await work();
    if (done.ok) await this.#parts.tries.right();
    else if (done.reason === 'wrong') await this.#parts.tries.wrong(this.#now());
    const trouble = done.ok ? '' : this.#why(done);
    this.#parts.set({ busy: '', said: done.ok ? said : '', trouble });
  }

  #why({ reason, why }: Failed<KeysFailure>): string {
    const wait = this.#parts.tries.until(this.#now()) - this.#now();
    return reason === 'wrong' && wait > 0 ? `${why} ${waiting(wait)}` : why;
  }

  async #unlock(keys: Keys, open: () => Promise<KeysResult>): Promise<void> {
    await this.#guarded('Opening …', '', open);
    if (keys.state() !== 'open' || this.#parts.view().state === 'open') return;
    await this.#parts.unlocked();
    if (keys.unfinished()) await this.#finish(keys, 'Going on with what was begun …');
  }

  async #turnOn(keys: Keys, passphrase: string): Promise<void> {
    if (!(await this.#mayConvert())) return;
    const { settings, lock } = this.#parts.devices;
    const waits = await settings.read(WAITING_KEY);
    await this.#guarded('Making the key …', '', async () => {
      const on = await keys.turnOn(passphrase);
      if (on.ok) this.#parts.set({ state: 'open', code: on.code });
      return on;
    });
    if (keys.state() !== 'open') return;
    lock?.tell({ kind: 'keys' });
    if (waits.ok) await settings.write(WAITING_KEY, waits.value ?? null);
    this.#parts.on();
    await this.#finish(keys, 'Sealing what is on this device …');
  }

  async #turnOff(keys: Keys, passphrase: string): Promise<void> {
    if (!(await this.#mayConvert())) return;
    const { settings, lock } = this.#parts.devices;
    const waits = await settings.read(WAITING_KEY);
    await this.#guarded('Opening …', '', () => keys.turnOff(passphrase));
    if (this.#parts.view().trouble !== '') return;
    this.#parts.off();
    await this.#finish(keys, 'Putting entries in clear again …');
    this.#parts.set({ state: keys.state(), code: '' });
    if (keys.state() !== 'none') return;
    if (waits.ok) await settings.write(WAITING_KEY, waits.value ?? null);
    lock?.tell({ kind: 'keys' });
  }

  async #newCode(keys: Keys, passphrase: string): Promise<void> {
    await this.#guarded(
      'Making another code …',
      'The recovery code before this one opens nothing any more.',
      async () => {
        const made = await keys.newCode(passphrase);
        if (made.ok) this.#parts.set({ code: made.code });
        return made;
      },
    );
  }

  async #finish(keys: Keys, busy: string): Promise<void> {
    this.#parts.set({ busy, trouble: '' });
    const done = await keys.finish();
    this.#parts.set({ busy: '', ...(done ? {} : { trouble: LEFT }) });
  }

  /** Entries are written again: everything must be on the disk, and nobody else may write meanwhile. */
  async #mayConvert(): Promise<boolean> {
    const elsewhere = await this.#parts.devices.lock?.busyElsewhere(this.#parts.ownCase());
    if (elsewhere === true) this.#parts.set({ trouble: ELSEWHERE });
    return elsewhere !== true && (await this.#parts.safe());
  }
}
