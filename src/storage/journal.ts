/** The second copy as the store sees it. A journal that fails or does not answer is a value, never an exception. */
import type { JournalAppended, JournalState } from './journal-file.ts';
import type { JournalBatch } from './journal-lines.ts';
import type { StorageHost } from './types.ts';

export type JournalQuestion =
  | { readonly id: number; readonly op: 'open'; readonly dbId: string }
  | { readonly id: number; readonly op: 'append'; readonly batch: JournalBatch }
  | { readonly id: number; readonly op: 'read'; readonly caseIds: readonly string[] }
  | { readonly id: number; readonly op: 'keep'; readonly keyring: unknown }
  | { readonly id: number; readonly op: 'rewrite' };

export type JournalAnswer =
  | { readonly id: number; readonly ok: true; readonly value: unknown }
  | { readonly id: number; readonly ok: false; readonly why: string };

export type Answered<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

export interface Journal {
  open(dbId: string): Promise<Answered<JournalState>>;
  append(batch: JournalBatch): Promise<Answered<JournalAppended>>;
  read(caseIds: readonly string[]): Promise<Answered<readonly JournalBatch[]>>;
  /** Keeps a record of keys. */
  keep(keyring: unknown): Promise<Answered<void>>;
  /** Writes over what no longer counts. */
  rewrite(): Promise<Answered<void>>;
  close(): void;
}

/** The part of a Worker that is used. */
export interface JournalPort {
  postMessage(question: JournalQuestion): void;
  onmessage: ((event: MessageEvent<JournalAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

const ANSWER_MS = 3000;
/** The first look reads the whole file. */
const OPEN_MS = 20_000;

type Ask = JournalQuestion extends infer Q ? (Q extends { id: number } ? Omit<Q, 'id'> : never) : never;

class WorkerJournal implements Journal {
  readonly #port: JournalPort;
  readonly #host: Pick<StorageHost, 'setTimeout' | 'clearTimeout'>;
  readonly #waiting = new Map<number, (answer: Answered<unknown>) => void>();
  #asked = 0;
  #dead = '';

  constructor(port: JournalPort, host: Pick<StorageHost, 'setTimeout' | 'clearTimeout'>) {
    this.#port = port;
    this.#host = host;
    port.onmessage = ({ data }) => this.#waiting.get(data.id)?.(data);
    port.onerror = () => this.#die('The worker of the second copy did not start.');
  }

  open(dbId: string): Promise<Answered<JournalState>> {
    return this.#ask<JournalState>({ op: 'open', dbId }, OPEN_MS);
  }

  append(batch: JournalBatch): Promise<Answered<JournalAppended>> {
    return this.#ask<JournalAppended>({ op: 'append', batch }, ANSWER_MS);
  }

  read(caseIds: readonly string[]): Promise<Answered<readonly JournalBatch[]>> {
    return this.#ask<readonly JournalBatch[]>({ op: 'read', caseIds }, OPEN_MS);
  }

  keep(keyring: unknown): Promise<Answered<void>> {
    return this.#ask<void>({ op: 'keep', keyring }, ANSWER_MS);
  }

  rewrite(): Promise<Answered<void>> {
    return this.#ask<void>({ op: 'rewrite' }, OPEN_MS);
  }

  close(): void {
    this.#die('closed');
    this.#port.terminate();
  }

  #die(why: string): void {
    this.#dead = why;
    for (const tell of this.#waiting.values()) tell({ ok: false, why });
  }

  #ask<T>(question: Ask, waitMs: number): Promise<Answered<T>> {
    if (this.#dead !== '') return Promise.resolve({ ok: false, why: this.#dead });
    this.#asked += 1;
    const id = this.#asked;
    return new Promise((resolve) => {
      const timer = this.#host.setTimeout(() => tell({ ok: false, why: 'no answer' }), waitMs);
      const tell = (answer: Answered<unknown>): void => {
        this.#host.clearTimeout(timer);
        this.#waiting.delete(id);
        resolve(answer as Answered<T>);
      };
      this.#waiting.set(id, tell);
      this.#port.postMessage({ ...question, id });
    });
  }
}

/** A journal in the worker at the other end of `port`. */
export function createJournal(port: JournalPort, host: Pick<StorageHost, 'setTimeout' | 'clearTimeout'>): Journal {
  return new WorkerJournal(port, host);
}

/** The browser's own, or undefined where it has no private files, no locks or no workers. */
export function browserJournal(host: Pick<StorageHost, 'setTimeout' | 'clearTimeout'>): Journal | undefined {
  const { storage, locks } = globalThis.navigator ?? {};
  if (typeof storage?.getDirectory !== 'function' || locks === undefined) return undefined;
  try {
    const worker = new Worker(new URL('./journal-worker.ts', import.meta.url), { type: 'module' });
    return createJournal(worker, host);
  } catch {
    return undefined;
  }
}
