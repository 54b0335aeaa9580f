/**
 * The record as the app uses it: appended facts go to the store in order, one batch at a time. What the store does not
 * take stays in memory, is offered again, and is part of every export. Nothing handed in here is ever dropped.
 */
import type { Fact } from '../domain/case/facts.ts';
import { checkBatch } from './batch.ts';
import { exportText } from './export.ts';
import { browserHost } from './host.ts';
import { isWhole, merge } from './merge.ts';
import { Queue, type Batch } from './queue.ts';
import type {
  AppendResult,
  CaseRow,
  ExportedFile,
  FactLog,
  FactStore,
  Kept,
  ListResult,
  LoadResult,
  LogResult,
  MemoryCause,
  SaveStatus,
  StorageHost,
  TimerId,
} from './types.ts';
import { WRITTEN_AGAIN } from './recovered.ts';
import { ANOTHER_WRITER, LOST, SLOW } from './why.ts';

type Trouble = { readonly cause: MemoryCause; readonly why: string };

/** Waits between tries, the last one for good. */
const RETRY_MS: readonly number[] = [2000, 5000, 10_000, 30_000];
/** No answer for this long: say so, and let the work go on. */
const SLOW_MS = 4000;

function inMemory({ cause, why }: Trouble): LogResult {
  return { ok: false, reason: 'memory', cause, why };
}

class Log implements FactLog {
  readonly #storage: FactStore;
  readonly #host: Pick<StorageHost, 'setTimeout' | 'clearTimeout'>;
  readonly #queue = new Queue();
  readonly #known = new Map<string, unknown[]>();
  readonly #listeners = new Set<(status: SaveStatus) => void>();
  #writing = false;
  #stopped = false;
  #pumping: Promise<void> = Promise.resolve();
  #trouble: Trouble | undefined;
  #tries = 0;
  #retry: TimerId | undefined;

  constructor(storage: FactStore, host: Pick<StorageHost, 'setTimeout' | 'clearTimeout'>) {
    this.#storage = storage;
    this.#host = host;
  }

  async open(caseId: string): Promise<LoadResult> {
    const queued = this.#queue.facts(caseId);
    const row = this.#queue.all(caseId).at(-1)?.row;
    const stored = await this.#storage.load(caseId);
    const before = this.#known.get(caseId) ?? [];
    if (stored.ok) {
      this.#known.set(caseId, [...merge(stored.facts, before).facts]);
      const { facts } = merge(stored.facts, queued);
      return { ...stored, facts, unsaved: facts.length - stored.facts.length };
    }
    if (stored.reason === 'gap') return stored;
    const { facts } = merge(before, queued);
    if (!isWhole(facts)) return stored;
    return { ok: true, facts, unsaved: facts.length - before.length, ...(row ? { row } : {}) };
  }

  append(facts: readonly Fact[], row: CaseRow): Promise<LogResult> {
    const wrong = checkBatch(facts, row);
    if (wrong) return Promise.resolve(wrong);
    if (this.#queue.isHeldBack(row.id)) {
      this.#queue.add({ facts, row, tell: () => undefined });
      this.#announce();
      return Promise.resolve(inMemory({ cause: 'anotherWriter', why: ANOTHER_WRITER }));
    }
    return new Promise((tell) => {
      this.#queue.add({ facts, row, tell });
      this.#announce();
      void this.#pump();
    });
  }

  async flush(): Promise<SaveStatus> {
    await this.#pump();
    return this.status();
  }

  status(): SaveStatus {
    const unsaved = this.#queue.facts().length;
    if (this.#queue.anyHeldBack) return { state: 'memory', cause: 'anotherWriter', why: ANOTHER_WRITER, unsaved };
    if (unsaved === 0) {
      const second = this.#storage.secondCopy?.() ?? { state: 'kept' };
      return second.state === 'kept' ? { state: 'kept' } : { state: 'kept', oneCopy: second.why };
    }
    return this.#trouble ? { state: 'memory', ...this.#trouble, unsaved } : { state: 'keeping', unsaved };
  }

  subscribe(listener: (status: SaveStatus) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  unsaved(caseId?: string): readonly Fact[] {
    return this.#queue.facts(caseId);
  }

  async cases(): Promise<ListResult> {
    const stored = await this.#storage.listCases();
    const rows = new Map(stored.ok ? stored.rows.map((row) => [row.id, row]) : []);
    for (const { row } of this.#queue.all()) if (!this.#queue.isHeldBack(row.id)) rows.set(row.id, row);
    if (!stored.ok && rows.size === 0) return stored;
    const sorted = [...rows.values()].sort((a, b) => b.lastAt - a.lastAt);
    return stored.ok ? { ...stored, rows: sorted } : { ok: true, rows: sorted, broken: 0 };
  }

  async exportFile(caseId: string, writer?: string): Promise<ExportedFile> {
    const unsaved = this.#queue.facts(caseId);
    const stored = await this.#storage.load(caseId);
    return exportText({ caseId, stored, known: this.#known.get(caseId) ?? [], unsaved, writer });
  }

  takeBack(caseId: string): readonly Fact[] {
    if (!this.#queue.isHeldBack(caseId)) return [];
    const facts = this.#queue.release(caseId);
    this.#announce();
    return facts;
  }

  forget(): void {
    this.#known.clear();
  }

  stop(): void {
    this.#stopped = true;
    this.#cancelRetry();
    this.#listeners.clear();
  }

  #pump(): Promise<void> {
    if (!this.#writing) {
      this.#writing = true;
      this.#pumping = this.#writeAll();
    }
    return this.#pumping;
  }

  /** `#writing` ends in the very step that finds the queue empty, so that a batch added next starts it again. */
  async #writeAll(): Promise<void> {
    for (let batch = this.#queue.next(); batch; batch = this.#queue.next()) {
      if (!this.#settle(batch, await this.#write(batch))) break;
    }
    this.#writing = false;
  }

  async #write(batch: Batch): Promise<AppendResult> {
    const slow = this.#host.setTimeout(() => this.#inTrouble({ cause: 'slow', why: SLOW }), SLOW_MS);
    const written = await this.#storage.append(batch.facts, batch.row);
    const result = !written.ok && written.reason === 'lost' ? await this.#writeAgain(batch) : written;
    this.#host.clearTimeout(slow);
    return result;
  }

  /** The case is gone from the disk, but this window still has all of it. */
  async #writeAgain({ facts, row }: Batch): Promise<AppendResult> {
    const known = this.#known.get(row.id) ?? [];
    const lost: AppendResult = { ok: false, reason: 'refused', why: LOST };
    if (!isWhole(known) || known.length !== row.lastSeq - facts.length) return lost;
    const before = await this.#storage.append(known as readonly Fact[], { ...row, lastSeq: known.length });
    const after = before.ok ? await this.#storage.append(facts, row) : lost;
    return after.ok ? { ok: true, recovered: WRITTEN_AGAIN } : lost;
  }

  /** True when the next batch may be tried. */
  #settle(batch: Batch, result: AppendResult): boolean {
    if (result.ok) {
      this.#keep(batch, result);
      return true;
    }
    if (result.reason === 'anotherWriter' || result.reason === 'malformed') {
      this.#queue.holdBack(batch.row.id);
      const held: Trouble = { cause: 'anotherWriter', why: result.why };
      for (const other of this.#queue.all(batch.row.id)) other.tell(inMemory(held));
      this.#announce();
      return true;
    }
    this.#inTrouble({ cause: result.reason === 'lost' ? 'refused' : result.reason, why: result.why });
    this.#retryLater();
    return false;
  }

  #keep(batch: Batch, kept: Kept): void {
    this.#queue.remove(batch);
    this.#trouble = undefined;
    this.#tries = 0;
    this.#cancelRetry();
    const known = this.#known.get(batch.row.id) ?? [];
    known.push(...batch.facts);
    this.#known.set(batch.row.id, known);
    batch.tell(kept);
    this.#announce();
  }

  #inTrouble(trouble: Trouble): void {
    this.#trouble = trouble;
    for (const batch of this.#queue.all()) batch.tell(inMemory(trouble));
    this.#announce();
  }

  #retryLater(): void {
    if (this.#stopped || this.#retry !== undefined) return;
    const wait = RETRY_MS[Math.min(this.#tries, RETRY_MS.length - 1)] ?? 0;
    this.#retry = this.#host.setTimeout(() => {
      this.#retry = undefined;
      this.#tries += 1;
      void this.#pump();
    }, wait);
  }

  #cancelRetry(): void {
    if (this.#retry !== undefined) this.#host.clearTimeout(this.#retry);
    this.#retry = undefined;
  }

  #announce(): void {
    const status = this.status();
    for (const listener of this.#listeners) listener(status);
  }
}

/** A log over `storage`. Timers come from `host`; tests pass their own. */
export function createFactLog(options: {
  storage: FactStore;
  host?: Pick<StorageHost, 'setTimeout' | 'clearTimeout'>;
}): FactLog {
  return new Log(options.storage, options.host ?? browserHost());
}
