/** Keeps the journal level with the database. What it cannot write now it catches up with later; it never stops the work. */
import type { CaseEnd, JournalBatch } from './journal-lines.ts';
import type { Journal } from './journal.ts';
import { NO_SECOND_COPY, SECOND_COPY_FAILS } from './recovered.ts';
import type { SecondCopy } from './types.ts';

export class Mirror {
  readonly #journal: Journal | undefined;
  readonly #fromDatabase: (caseId: string) => Promise<JournalBatch | undefined>;
  readonly #lasts = new Map<string, number>();
  #failing = false;
  /** The record of keys as the journal had it when it was opened. */
  keyring: unknown;

  constructor(journal: Journal | undefined, fromDatabase: (caseId: string) => Promise<JournalBatch | undefined>) {
    this.#journal = journal;
    this.#fromDatabase = fromDatabase;
  }

  state(): SecondCopy {
    if (this.#journal === undefined) return { state: 'none', why: NO_SECOND_COPY };
    return this.#failing ? { state: 'failing', why: SECOND_COPY_FAILS } : { state: 'kept' };
  }

  /** How many entries of a case the journal was seen to have. */
  last(caseId: string): number {
    return this.#lasts.get(caseId) ?? 0;
  }

  async open(dbId: string): Promise<ReadonlyMap<string, CaseEnd>> {
    const opened = await this.#journal?.open(dbId);
    this.#failing = opened?.ok === false;
    const ends = new Map(opened?.ok === true ? opened.value.cases : []);
    for (const [caseId, end] of ends) this.#lasts.set(caseId, end.last);
    this.keyring = opened?.ok === true ? opened.value.keyring : undefined;
    return ends;
  }

  /** False when there is a journal and it did not take the record. */
  async keep(keyring: unknown): Promise<boolean> {
    const kept = await this.#journal?.keep(keyring);
    if (kept?.ok === true) this.keyring = keyring;
    return kept?.ok !== false;
  }

  /** False when there is a journal that still holds what no longer counts. */
  async rewrite(): Promise<boolean> {
    const rewritten = await this.#journal?.rewrite();
    return rewritten?.ok !== false;
  }

  async read(caseIds: readonly string[]): Promise<readonly JournalBatch[]> {
    if (caseIds.length === 0) return [];
    const read = await this.#journal?.read(caseIds);
    return read?.ok === true ? read.value : [];
  }

  /** Resolves when the batch is in the journal, or when it is clear that it will not be for now. */
  async add(batch: JournalBatch): Promise<void> {
    // After a failure nobody waits for it again until it has answered once.
    const written = this.#write(batch);
    if (!this.#failing) await written;
  }

  /** In the background, one case after the other. */
  refill(caseIds: readonly string[]): void {
    void (async () => {
      for (const caseId of caseIds) await this.#catchUp(caseId, this.last(caseId));
    })();
  }

  async #write(batch: JournalBatch): Promise<void> {
    if (this.#journal === undefined) return;
    const answer = await this.#journal.append(batch);
    this.#failing = !answer.ok;
    if (!answer.ok) return;
    if (answer.value.ok) this.#lasts.set(batch.row.id, batch.row.lastSeq);
    else await this.#catchUp(batch.row.id, answer.value.last);
  }

  async #catchUp(caseId: string, last: number): Promise<void> {
    const whole = await this.#fromDatabase(caseId);
    if (whole === undefined || this.#journal === undefined) return;
    const answer = await this.#journal.append({ facts: whole.facts.slice(last), row: whole.row });
    this.#failing = !(answer.ok && answer.value.ok);
    if (!this.#failing) this.#lasts.set(caseId, whole.row.lastSeq);
  }
}
