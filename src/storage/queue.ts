import type { Fact } from '../domain/case/facts.ts';
import type { CaseRow, LogResult } from './types.ts';

/** One act on its way to the disk. `tell` answers whoever appended it, once, at the first certain news. */
export interface Batch {
  readonly facts: readonly Fact[];
  readonly row: CaseRow;
  tell(result: LogResult): void;
}

/** Batches not yet on disk, in order. A case whose numbers were taken by another writer is held back; others go on. */
export class Queue {
  #batches: Batch[] = [];
  readonly #heldBack = new Set<string>();

  add(batch: Batch): void {
    this.#batches.push(batch);
  }

  next(): Batch | undefined {
    return this.#batches.find((batch) => !this.#heldBack.has(batch.row.id));
  }

  remove(batch: Batch): void {
    this.#batches = this.#batches.filter((other) => other !== batch);
  }

  holdBack(caseId: string): void {
    this.#heldBack.add(caseId);
  }

  isHeldBack(caseId: string): boolean {
    return this.#heldBack.has(caseId);
  }

  get anyHeldBack(): boolean {
    return this.#heldBack.size > 0;
  }

  release(caseId: string): readonly Fact[] {
    const facts = this.facts(caseId);
    this.#batches = this.#batches.filter((batch) => batch.row.id !== caseId);
    this.#heldBack.delete(caseId);
    return facts;
  }

  all(caseId?: string): readonly Batch[] {
    return this.#batches.filter((batch) => caseId === undefined || batch.row.id === caseId);
  }

  facts(caseId?: string): readonly Fact[] {
    return this.all(caseId).flatMap((batch) => batch.facts);
  }
}
