/**
 * One window writes a case, the others follow. The right to write is a lock of the browser for each case: a window that
 * is closed or dies lets go of it by itself, one that is left for another page lets go before it is put to sleep. Behind
 * it stands the store, where a number can be taken once.
 */
import type { LifecycleEvent } from '../time/types.ts';
import { isWritten } from './window-news.ts';

/** The part of `navigator.locks` that is used. */
export interface LockPort {
  request(
    name: string,
    options: { ifAvailable?: boolean; steal?: boolean; signal?: AbortSignal },
    held: (lock: unknown) => Promise<void> | undefined,
  ): Promise<unknown>;
}

/** What a window knows of the others. */
export interface WindowsPort {
  /** Absent where the browser has no locks: every window then writes, and the store alone refuses the second. */
  readonly locks?: LockPort | undefined;
  /** News from the other windows. */
  onNews(listener: (news: unknown) => void): () => void;
  /** Comings and goings of this page. */
  onLife(listener: (event: LifecycleEvent) => void): () => void;
}

export type Writer = 'here' | 'elsewhere';

export interface WriterParts {
  readonly windows: WindowsPort | undefined;
  /** The case on the disk is not, or may not be, what this window shows: read it anew. */
  readonly readAnew: (caseId: string) => void;
  /** Somebody has written something: the list of cases is not what it was. */
  readonly listAnew: () => void;
  /** Who writes has changed. */
  readonly changed: () => void;
}

export const ELSEWHERE = 'This case is being written in another window. Take it over here to go on.';

const lockName = (caseId: string): string => `rimwise-case-${caseId}`;

interface Hold {
  readonly caseId: string;
  /** Ends the waiting, or lets go of what is held. */
  end(): void;
}

export class SingleWriter {
  readonly #parts: WriterParts;
  readonly #stops: readonly (() => void)[];
  #caseId = '';
  #state: Writer = 'here';
  #hold: Hold | undefined;

  constructor(parts: WriterParts) {
    this.#parts = parts;
    const { windows } = parts;
    this.#stops =
      windows === undefined
        ? []
        : [windows.onNews((news) => this.#hear(news)), windows.onLife((event) => void this.#live(event))];
  }

  state(): Writer {
    return this.#state;
  }

  /** Asks for the right to write `caseId`, without waiting for it; what was held before is let go. */
  async open(caseId: string): Promise<Writer> {
    if (caseId === this.#caseId && this.#hold !== undefined && this.#state === 'here') return 'here';
    this.#letGo();
    this.#caseId = caseId;
    const got = this.#parts.windows?.locks === undefined || (await this.#ask({ ifAvailable: true }));
    this.#become(got ? 'here' : 'elsewhere');
    if (!got) this.#queue();
    return this.#state;
  }

  /**
   * Does a short piece of work under the right to write a case that is not open here, without waiting for it. False when
   * another window, or this one, has that right.
   */
  async briefly(caseId: string, work: () => Promise<void>): Promise<boolean> {
    const locks = this.#parts.windows?.locks;
    if (caseId === this.#caseId && this.#hold !== undefined) return false;
    if (locks === undefined) return work().then(() => true);
    let got = false;
    await locks.request(lockName(caseId), { ifAvailable: true }, (lock) => {
      got = lock !== null;
      return got ? work() : undefined;
    });
    return got;
  }

  /** Takes the right away from whoever has it, alive, asleep or hung. */
  async takeOver(): Promise<void> {
    if (this.#state === 'here' || this.#caseId === '') return;
    this.#letGo();
    if (await this.#ask({ steal: true })) this.#gained();
  }

  /** No case is open here any more. */
  close(): void {
    this.#letGo();
    this.#caseId = '';
    this.#become('here');
  }

  stop(): void {
    this.#letGo();
    for (const stop of this.#stops) stop();
  }

  #become(state: Writer): void {
    if (state === this.#state) return;
    this.#state = state;
    this.#parts.changed();
  }

  #gained(): void {
    this.#become('here');
    this.#parts.readAnew(this.#caseId);
  }

  #lost(): void {
    this.#hold = undefined;
    this.#become('elsewhere');
    this.#parts.readAnew(this.#caseId);
    this.#queue();
  }

  /** Waits until whoever writes is done or dead. */
  #queue(): void {
    void this.#ask({}).then((got) => {
      if (got) this.#gained();
    });
  }

  #letGo(): void {
    this.#hold?.end();
    this.#hold = undefined;
  }

  /** True when the right was given; it is then held until it is let go or taken away. */
  #ask(how: { ifAvailable?: boolean; steal?: boolean }): Promise<boolean> {
    const locks = this.#parts.windows?.locks;
    if (locks === undefined) return Promise.resolve(true);
    const caseId = this.#caseId;
    const giveUp = new AbortController();
    let release = (): void => giveUp.abort();
    const hold: Hold = { caseId, end: () => release() };
    this.#hold = hold;
    // A request that may wait can be given up; one that does not wait may not carry a signal beside `steal`.
    const options = how.ifAvailable === true || how.steal === true ? how : { signal: giveUp.signal };
    return new Promise((resolve) => {
      const held = (lock: unknown): Promise<void> | undefined => {
        const wanted = lock !== null && this.#hold === hold;
        resolve(wanted);
        if (!wanted) return undefined;
        return new Promise((done) => {
          release = done;
        });
      };
      locks.request(lockName(caseId), options, held).catch((error: unknown) => {
        // Anything but an end to waiting or holding: this browser gives no locks here, and the store alone must refuse.
        if (!(error instanceof DOMException && error.name === 'AbortError')) return resolve(true);
        resolve(false);
        if (this.#hold === hold && this.#state === 'here') this.#lost();
      });
    });
  }

  #hear(news: unknown): void {
    if (!isWritten(news)) return;
    this.#parts.listAnew();
    if (news.caseId === this.#caseId && this.#state === 'elsewhere') this.#parts.readAnew(news.caseId);
  }

  /** A page kept for going back to would keep the lock too, and block every other window. */
  async #live(event: LifecycleEvent): Promise<void> {
    if (event === 'leaving') this.#letGo();
    if (event !== 'shown' || this.#caseId === '' || this.#hold !== undefined) return;
    if ((await this.open(this.#caseId)) === 'here') this.#parts.readAnew(this.#caseId);
  }
}
