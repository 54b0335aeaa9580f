/**
 * The record under a passphrase: entries are sealed on their way to the copies and opened on their way back. The copies,
 * their chain and their mending see sealed entries only. Without a passphrase everything passes through as it is.
 */
import type { Fact } from '../domain/case/facts.ts';
import { checkBatch, sameFacts } from './batch.ts';
import type { Keyholder } from './keyholder.ts';
import { isSealed, openEntry, openRow, sealEntry, sealRow, type SealedEntry } from './sealing.ts';
import type {
  AppendResult,
  CaseRow,
  Failed,
  FactStore,
  ListResult,
  LoadResult,
  RewritableStore,
  SecondCopy,
} from './types.ts';

export const LOCKED = 'The record is locked. Give the passphrase to go on.';
const NO_KEY = 'This case is sealed, and the record of the key is not on this device. Look into your saved files.';

const DAMAGED: Failed<'refused'> = {
  ok: false,
  reason: 'refused',
  why: 'An entry of this case does not open: it is damaged.',
};

const locked: Failed<'refused'> = { ok: false, reason: 'refused', why: LOCKED };

export class SealingStore implements FactStore {
  readonly #inner: RewritableStore;
  readonly #holder: Keyholder;
  /** An entry offered twice is the same on the disk: the second try must find what the first one wrote. */
  #once = new WeakMap<Fact, Promise<SealedEntry>>();
  readonly #rows = new Map<string, { readonly sealed: CaseRow; readonly row: CaseRow }>();
  /** Cases that are still in the other form, as far as has been looked; undefined before that. */
  #left: { readonly seals: boolean; readonly ids: Set<string> } | undefined;
  #turns: Promise<unknown> = Promise.resolve();

  constructor(inner: RewritableStore, holder: Keyholder) {
    this.#inner = inner;
    this.#holder = holder;
  }

  append(facts: readonly Fact[], row: CaseRow): Promise<AppendResult> {
    const wrong = checkBatch(facts, row);
    return wrong === undefined ? this.#inTurn(() => this.#append(facts, row)) : Promise.resolve(wrong);
  }

  async load(caseId: string): Promise<LoadResult> {
    const unread = await this.#holder.ready();
    if (unread !== undefined) return unread;
    if (this.#holder.state() === 'locked') return locked;
    const found = await this.#inner.load(caseId);
    return found.ok || found.reason === 'gap' ? this.#opened(found) : found;
  }

  async listCases(): Promise<ListResult> {
    const unread = await this.#holder.ready();
    if (unread !== undefined) return unread;
    if (this.#holder.state() === 'locked') return locked;
    const listed = await this.#inner.listCases();
    if (!listed.ok) return listed;
    const opened = await Promise.all(listed.rows.map((row) => this.#openRow(row)));
    const rows = opened.filter((row) => row !== undefined).sort((a, b) => b.lastAt - a.lastAt);
    return { ...listed, rows, broken: listed.broken + opened.length - rows.length };
  }

  secondCopy(): SecondCopy {
    return this.#inner.secondCopy?.() ?? { state: 'kept' };
  }

  /** Nothing of what was opened stays in memory. */
  forget(): void {
    this.#rows.clear();
    this.#once = new WeakMap();
    this.#left = undefined;
  }

  close(): void {
    this.forget();
    this.#inner.close();
  }

  /** Brings every case into the form that holds now; then what they were before is written over. True when all of it is done. */
  async convertAll(): Promise<boolean> {
    this.#left = undefined;
    let done = true;
    for (const id of await this.#lookForLeft()) {
      const converted = await this.#inTurn(() => this.#convert(id));
      done = converted.ok && done;
    }
    return (await this.#inner.purge()) && done;
  }

  /** Writes over what no longer counts, such as a passphrase's old wrapping. */
  purge(): Promise<boolean> {
    return this.#inner.purge();
  }

  /** How many cases are still in the other form. */
  async left(): Promise<number> {
    return (await this.#lookForLeft()).size;
  }

  async #append(facts: readonly Fact[], row: CaseRow): Promise<AppendResult> {
    const unread = await this.#holder.ready();
    if (unread !== undefined) return unread;
    const { key } = this.#holder;
    if (this.#holder.state() === 'none') return this.#inner.append(facts, row);
    if (key === undefined) return locked;
    // A case is in one form all through, so that its row tells which.
    if ((await this.#lookForLeft()).has(row.id)) {
      const converted = await this.#convert(row.id);
      if (!converted.ok) return converted;
    }
    if (!this.#holder.seals) return this.#inner.append(facts, row);
    const sealed = await Promise.all(facts.map((fact) => this.#sealedOnce(key, fact)));
    const result = await this.#inner.append(sealed as unknown as readonly Fact[], await sealRow(key, row));
    // Gone with the database, most likely: without the record of the key nothing sealed could be opened again.
    if (!result.ok && result.reason === 'lost') await this.#holder.keepAgain();
    const ours = !result.ok && result.reason === 'anotherWriter' && (await this.#isThere(facts, row.id));
    return ours ? { ok: true } : result;
  }

  #sealedOnce(key: CryptoKey, fact: Fact): Promise<SealedEntry> {
    const sealed = this.#once.get(fact) ?? sealEntry(key, fact);
    this.#once.set(fact, sealed);
    return sealed;
  }

  async #isThere(facts: readonly Fact[], caseId: string): Promise<boolean> {
    const stored = await this.load(caseId);
    const first = (facts[0]?.seq ?? 1) - 1;
    return stored.ok && sameFacts(stored.facts.slice(first, first + facts.length), facts);
  }

  async #openRow(row: CaseRow): Promise<CaseRow | undefined> {
    const { key } = this.#holder;
    if (!isSealed(row)) return row;
    if (key === undefined) return undefined;
    const known = this.#rows.get(row.id);
    if (known !== undefined && same(known.sealed, row)) return known.row;
    const opened = await openRow(key, row);
    if (opened !== undefined && this.#holder.key === key) this.#rows.set(row.id, { sealed: row, row: opened });
    return opened;
  }

  async #opened(found: Extract<LoadResult, { facts: readonly unknown[] }>): Promise<LoadResult> {
    const { key } = this.#holder;
    if (key === undefined) return found.facts.some(isSealed) ? { ok: false, reason: 'refused', why: NO_KEY } : found;
    const facts = await Promise.all(found.facts.map((entry) => openEntry(key, entry)));
    const row = found.row === undefined ? undefined : await this.#openRow(found.row);
    const { row: _sealed, ...rest } = found;
    const withRow = row === undefined ? {} : { row };
    const shut = facts.indexOf(undefined);
    if (shut !== -1) {
      const why = `Entry ${shut + 1} of this case does not open: it is damaged. The ${shut} before it are good.`;
      const after = found.facts.slice(shut);
      return { ok: false, reason: 'gap', why, facts: facts.slice(0, shut), missing: shut + 1, after, ...withRow };
    }
    if (rest.ok) return { ...rest, facts, ...withRow };
    const after = await Promise.all(rest.after.map(async (entry) => (await openEntry(key, entry)) ?? entry));
    return { ...rest, facts, after, ...withRow };
  }

  async #lookForLeft(): Promise<Set<string>> {
    const { seals } = this.#holder;
    if (this.#left?.seals === seals) return this.#left.ids;
    const listed = await this.#inner.listCases();
    const other = listed.ok ? listed.rows.filter((row) => isSealed(row) !== seals) : [];
    const ids = new Set(other.map((row) => row.id));
    if (listed.ok) this.#left = { seals, ids };
    return ids;
  }

  async #convert(id: string): Promise<AppendResult> {
    const { key, seals } = this.#holder;
    const found = await this.#inner.load(id);
    if (key === undefined) return locked;
    if (!found.ok) return { ok: false, reason: 'refused', why: found.why };
    const turned = await Promise.all(found.facts.map((entry) => (seals ? inSeal(key, entry) : openEntry(key, entry))));
    const row = found.row === undefined ? undefined : await turnedRow(key, found.row, seals);
    if (row === undefined || turned.includes(undefined)) return DAMAGED;
    const result = await this.#inner.replace(turned as readonly Fact[], row);
    if (result.ok) this.#left?.ids.delete(id);
    return result;
  }

  /** One write after the other: a case must not grow while it is put into another form. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const done = this.#turns.then(work);
    this.#turns = done.catch(() => undefined);
    return done;
  }
}

const inSeal = (key: CryptoKey, entry: unknown): unknown => (isSealed(entry) ? entry : sealEntry(key, entry as Fact));

function turnedRow(key: CryptoKey, row: CaseRow, seals: boolean): Promise<CaseRow | undefined> {
  if (!seals) return openRow(key, row);
  return isSealed(row) ? Promise.resolve(row) : sealRow(key, row);
}

/** The sealed text is fresh each time a row is written. */
function same(a: CaseRow, b: CaseRow): boolean {
  return (a as { sealed?: unknown }).sealed === (b as { sealed?: unknown }).sealed && a.lastSeq === b.lastSeq;
}
