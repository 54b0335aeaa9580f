/** Facts in memory, under the same contract, with failures on demand. Also the whole store where there is no disk. */
import type { Fact } from '../domain/case/facts.ts';
import { checkBatch, isCaseRow, sameFacts } from './batch.ts';
import { sift } from './sift.ts';
import type { AppendResult, CaseRow, FactStore, ListResult, LoadResult } from './types.ts';
import { failure, refused } from './why.ts';

export type Trouble = 'none' | 'full' | 'refused' | 'anotherWriter' | 'slow';

/** The disk: several stores may share one, as several windows do. */
export interface MemoryDisk {
  readonly facts: Map<string, unknown[]>;
  readonly rows: Map<string, unknown>;
}

export interface MemoryStore extends FactStore {
  readonly disk: MemoryDisk;
  /** What the next calls run into, until set to `none`. `slow`: writes wait until `letGo()`. */
  trouble: Trouble;
  /** Lets waiting writes through and ends `slow`. */
  letGo(): void;
  /** Batches written so far, in order. */
  readonly written: readonly (readonly Fact[])[];
}

export function createMemoryDisk(): MemoryDisk {
  return { facts: new Map(), rows: new Map() };
}

const ERRORS: Readonly<Record<'full' | 'refused' | 'anotherWriter', { name: string }>> = {
  full: { name: 'QuotaExceededError' },
  refused: { name: 'UnknownError' },
  anotherWriter: { name: 'ConstraintError' },
};

class InMemory implements MemoryStore {
  readonly disk: MemoryDisk;
  readonly written: (readonly Fact[])[] = [];
  trouble: Trouble = 'none';
  #waiting: (() => void)[] = [];

  constructor(disk: MemoryDisk) {
    this.disk = disk;
  }

  async append(facts: readonly Fact[], row: CaseRow): Promise<AppendResult> {
    const wrong = checkBatch(facts, row);
    if (wrong) return wrong;
    if (this.trouble === 'slow') await new Promise<void>((resolve) => this.#waiting.push(resolve));
    if (this.trouble !== 'none' && this.trouble !== 'slow') return failure(ERRORS[this.trouble]);
    const stored = this.disk.facts.get(row.id) ?? [];
    const from = (facts[0]?.seq ?? 1) - 1;
    const taken = facts.filter((fact) => stored[fact.seq - 1] !== undefined);
    if (taken.length > 0) {
      return sameFacts(stored.slice(from, from + facts.length), facts) ? { ok: true } : failure(ERRORS.anotherWriter);
    }
    if (from > 0 && !this.disk.rows.has(row.id)) return failure({ name: 'Gone' });
    const next = [...stored];
    for (const fact of facts) next[fact.seq - 1] = structuredClone(fact);
    this.disk.facts.set(row.id, next);
    this.disk.rows.set(row.id, structuredClone(row));
    this.written.push(facts);
    return { ok: true };
  }

  async load(caseId: string): Promise<LoadResult> {
    if (this.trouble === 'refused') return refused(ERRORS.refused);
    const row = this.disk.rows.get(caseId);
    const stored = (this.disk.facts.get(caseId) ?? []).filter((fact) => fact !== undefined);
    return sift(caseId, structuredClone(stored), isCaseRow(row) ? row : undefined);
  }

  async listCases(): Promise<ListResult> {
    if (this.trouble === 'refused') return refused(ERRORS.refused);
    const all = [...this.disk.rows.values()];
    const rows = all.filter(isCaseRow).sort((a, b) => b.lastAt - a.lastAt);
    return { ok: true, rows, broken: all.length - rows.length };
  }

  letGo(): void {
    if (this.trouble === 'slow') this.trouble = 'none';
    for (const go of this.#waiting.splice(0)) go();
  }

  close(): void {
    this.letGo();
  }
}

export function createMemoryStore(disk: MemoryDisk = createMemoryDisk()): MemoryStore {
  return new InMemory(disk);
}
