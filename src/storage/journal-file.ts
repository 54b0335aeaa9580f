/**
 * The journal over a file of bytes: append only, flushed after every act. A line that begins at a number the journal
 * already has replaces everything of that case from there on; a line that would leave a hole is not taken.
 */
import { linkOf } from './chain.ts';
import {
  asBatch,
  blanks,
  endOf,
  firstSeq,
  keyringOf,
  lineFor,
  linesOf,
  scan,
  type CaseEnd,
  type JournalBatch,
} from './journal-lines.ts';

/** An open file, as a browser's SyncAccessHandle has it. */
export interface ByteFile {
  getSize(): number;
  read(into: Uint8Array, options: { at: number }): number;
  write(bytes: Uint8Array, options: { at: number }): number;
  truncate(size: number): void;
  flush(): void;
  close(): void;
}

/** Opens the file for this turn alone: nobody else has it meanwhile. */
export type WithFile = <T>(work: (file: ByteFile) => T) => Promise<T>;

export interface JournalState {
  readonly dbId: string;
  readonly cases: readonly (readonly [caseId: string, end: CaseEnd])[];
  /** Bytes of a torn line that were cut off the end. */
  readonly cut: number;
  readonly damaged: number;
  /** The latest record of keys, where one was ever kept. */
  readonly keyring?: unknown;
}

export type JournalAppended = { readonly ok: true } | { readonly ok: false; readonly last: number };

/** Enough of the file's beginning to tell one writing of it from another. */
const HEAD_BYTES = 128;

function genOf(value: unknown): number {
  const gen = typeof value === 'object' && value !== null ? (value as { gen?: unknown }).gen : undefined;
  return typeof gen === 'number' && Number.isSafeInteger(gen) ? gen : 0;
}

function dbIdOf(value: unknown): string {
  const id = typeof value === 'object' && value !== null ? (value as { dbId?: unknown }).dbId : undefined;
  return typeof id === 'string' ? id : '';
}

export class JournalFile {
  readonly #withFile: WithFile;
  #ends = new Map<string, CaseEnd>();
  #dbId = '';
  #keyring: unknown;
  #size = 0;
  /** How often it was rewritten, as its first line says. */
  #gen = 0;
  #head = '';

  constructor(withFile: WithFile) {
    this.#withFile = withFile;
  }

  /** Reads the file through, makes it if it is not there, cuts a torn end off. */
  open(dbId: string): Promise<JournalState> {
    return this.#withFile((file) => {
      this.#forget();
      const seen = this.#catchUp(file);
      if (this.#dbId === '') {
        this.#dbId = dbId;
        this.#write(file, lineFor({ journal: 1, dbId }));
      }
      return { dbId: this.#dbId, cases: [...this.#ends], keyring: this.#keyring, ...seen };
    });
  }

  /** Keeps a record of keys; the latest one counts. */
  keep(keyring: unknown): Promise<void> {
    return this.#withFile((file) => {
      this.#catchUp(file);
      this.#write(file, lineFor({ keyring }));
      this.#keyring = keyring;
    });
  }

  /**
   * Leaves only what counts: what was replaced is written over where it lies. At every instant the whole of it is in the
   * file once at least: it is first written behind the old, then the old is blanked, then it is written to the front.
   */
  rewrite(): Promise<void> {
    return this.#withFile((file) => {
      this.#catchUp(file);
      this.#gen += 1;
      const old = this.#size;
      const kept = this.#whatCounts(file);
      this.#write(file, kept);
      file.write(blanks(old), { at: 0 });
      file.flush();
      if (old < kept.length) return;
      file.write(kept, { at: 0 });
      file.flush();
      file.truncate(kept.length);
      file.flush();
      this.#size = kept.length;
    });
  }

  #whatCounts(file: ByteFile): Uint8Array {
    const lines = [lineFor({ journal: 1, dbId: this.#dbId, gen: this.#gen })];
    if (this.#keyring !== undefined) lines.push(lineFor({ keyring: this.#keyring }));
    for (const batch of this.#gather(file, new Set(this.#ends.keys()))) lines.push(...linesOf(batch));
    const all = new Uint8Array(lines.reduce((sum, line) => sum + line.length, 0));
    let at = 0;
    for (const line of lines) {
      all.set(line, at);
      at += line.length;
    }
    return all;
  }

  append(batch: JournalBatch): Promise<JournalAppended> {
    return this.#withFile((file) => {
      this.#catchUp(file);
      const end = this.#ends.get(batch.row.id);
      const own = endOf(batch);
      const last = end?.last ?? 0;
      const first = firstSeq(batch);
      if (!(first >= 1 && first <= last + 1)) return { ok: false, last };
      if (own.hash !== '' && own.last <= last && this.#has(file, batch.row.id, own)) return { ok: true };
      this.#write(file, lineFor(batch));
      this.#ends.set(batch.row.id, own);
      return { ok: true };
    });
  }

  /** The entries of each of these cases in order, with its latest row. One pass, however many they are. */
  read(caseIds: readonly string[]): Promise<readonly JournalBatch[]> {
    return this.#withFile((file) => this.#gather(file, new Set(caseIds)));
  }

  #gather(file: ByteFile, wanted: ReadonlySet<string>): readonly JournalBatch[] {
    const found = new Map<string, { facts: unknown[]; row: JournalBatch['row'] }>();
    scan(this.#bytes(file, 0), (value) => {
      const batch = asBatch(value);
      if (batch === undefined || !wanted.has(batch.row.id)) return;
      const first = firstSeq(batch);
      const facts = found.get(batch.row.id)?.facts ?? [];
      if (!(first >= 1 && first <= facts.length + 1)) return;
      facts.length = first - 1;
      facts.push(...batch.facts);
      found.set(batch.row.id, { facts, row: batch.row });
    });
    return [...found.values()];
  }

  /** A late writer may find that somebody else has already copied its entries, and more. */
  #has(file: ByteFile, caseId: string, end: CaseEnd): boolean {
    const [found] = this.#gather(file, new Set([caseId]));
    return linkOf(found?.facts[end.last - 1])?.hash === end.hash;
  }

  #forget(): void {
    this.#ends = new Map();
    this.#dbId = '';
    this.#keyring = undefined;
    this.#size = 0;
    this.#gen = 0;
  }

  /** What another window has appended since, or everything when it was rewritten or is shorter than it was. */
  #catchUp(file: ByteFile): { cut: number; damaged: number } {
    const size = file.getSize();
    const head = this.#bytes(file, 0, HEAD_BYTES).join();
    if (size < this.#size || (this.#size >= HEAD_BYTES && head !== this.#head)) this.#forget();
    this.#head = head;
    if (size === this.#size) return { cut: 0, damaged: 0 };
    const { good, damaged } = scan(this.#bytes(file, this.#size), (value) => this.#take(value));
    this.#size += good;
    const cut = size - this.#size;
    if (cut > 0) file.truncate(this.#size);
    return { cut, damaged };
  }

  #take(value: unknown): void {
    if (this.#dbId === '') this.#dbId = dbIdOf(value);
    this.#gen = Math.max(this.#gen, genOf(value));
    this.#keyring = keyringOf(value) ?? this.#keyring;
    const batch = asBatch(value);
    if (batch === undefined) return;
    const last = this.#ends.get(batch.row.id)?.last ?? 0;
    const first = firstSeq(batch);
    if (first >= 1 && first <= last + 1) this.#ends.set(batch.row.id, endOf(batch));
  }

  #bytes(file: ByteFile, from: number, most = Infinity): Uint8Array {
    const bytes = new Uint8Array(Math.min(most, file.getSize() - from));
    const read = file.read(bytes, { at: from });
    return bytes.subarray(0, read);
  }

  /** A line that was not written whole is taken back, so that the next one does not grow onto it. */
  #write(file: ByteFile, line: Uint8Array): void {
    const written = file.write(line, { at: this.#size });
    if (written !== line.length) {
      file.truncate(this.#size);
      throw new Error('the journal took only part of a line');
    }
    file.flush();
    this.#size += line.length;
  }
}
