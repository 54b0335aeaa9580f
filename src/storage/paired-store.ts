/**
 * The record in two places: the database and the journal. An entry counts as kept when it is in the database and, where
 * there is a journal, in that too. When the two differ, the longer sound one mends the other, and it is said.
 */
import type { Fact } from '../domain/case/facts.ts';
import { checkBatch } from './batch.ts';
import { linkOf, seal, soundLength, unsealed, type Digest } from './chain.ts';
import type { JournalBatch } from './journal-lines.ts';
import type { Journal } from './journal.ts';
import { Mirror } from './mirror.ts';
import { chainBroken, lossSentence, MENDED_CASE } from './recovered.ts';
import type { Sentinel } from './sentinel.ts';
import type {
  AppendResult,
  CaseRow,
  Failed,
  Gap,
  ListResult,
  Loaded,
  LoadResult,
  RepairableStore,
  RewritableStore,
  SecondCopy,
} from './types.ts';

export interface Copies {
  readonly database: RepairableStore;
  /** Absent where the browser has no place for one. */
  readonly journal?: Journal | undefined;
  /** Absent on pages that are not served securely: entries are then written without a chain. */
  readonly digest?: Digest | undefined;
  readonly sentinel?: Sentinel | undefined;
  /** Makes the database forget on disk what was written over. */
  readonly scrub?: (() => Promise<boolean>) | undefined;
  newId(): string;
}

/** The last entry of a case, as far as this window knows. */
interface Tip {
  readonly seq: number;
  readonly hash: string;
}

interface Mended {
  readonly cases: number;
  readonly entries: number;
}

class PairedStore implements RewritableStore {
  readonly #copies: Copies;
  readonly #mirror: Mirror;
  readonly #tips = new Map<string, Tip>();
  #dbId = '';
  #started: Promise<void> | undefined;
  #said = '';

  constructor(copies: Copies) {
    this.#copies = copies;
    this.#mirror = new Mirror(copies.journal, (caseId) => this.#fromDatabase(caseId));
  }

  async append(facts: readonly Fact[], row: CaseRow): Promise<AppendResult> {
    const wrong = checkBatch(facts, row);
    if (wrong) return wrong;
    await this.#ready();
    const sealed = await this.#seal(facts, row);
    if ('ok' in sealed) return sealed;
    const result = await this.#write(sealed, row);
    if (result.ok) {
      this.#tips.set(row.id, { seq: row.lastSeq, hash: linkOf(sealed.at(-1))?.hash ?? '' });
      this.#count(facts.length);
      await this.#mirror.add({ facts: sealed, row });
    } else if (result.reason === 'full' || result.reason === 'refused') {
      // Not kept, and not called so; but a journal that still works may save it from a closed window.
      void this.#mirror.add({ facts: sealed, row });
    }
    return result;
  }

  /** What is gone from the database comes back from the journal first, if it has it. */
  async #write(sealed: readonly Fact[], row: CaseRow): Promise<AppendResult> {
    const { database } = this.#copies;
    const result = await database.append(sealed, row);
    if (result.ok || result.reason !== 'lost' || (await this.#mend([row.id])).entries === 0) return result;
    const again = await database.append(sealed, row);
    return again.ok ? { ok: true, recovered: MENDED_CASE } : again;
  }

  async load(caseId: string): Promise<LoadResult> {
    await this.#ready();
    const first = await this.#look(caseId);
    if (first.ok ? this.#mirror.last(caseId) <= first.facts.length : first.reason === 'refused')
      return this.#give(caseId, first);
    const { entries } = await this.#mend([caseId]);
    const again = entries > 0 ? await this.#look(caseId) : first;
    return this.#give(caseId, again.ok && entries > 0 ? { ...again, recovered: MENDED_CASE } : again);
  }

  async listCases(): Promise<ListResult> {
    await this.#ready();
    const listed = await this.#copies.database.listCases();
    return listed.ok && this.#said !== '' ? { ...listed, recovered: this.#said } : listed;
  }

  async keyrings(): ReturnType<RewritableStore['keyrings']> {
    await this.#ready();
    const read = await this.#copies.database.keyring();
    // A database that does not answer may hold the newer one: the journal's alone is not enough to go by.
    return read.ok ? { ok: true, copies: [read.value, this.#mirror.keyring] } : read;
  }

  async keepKeyring(keyring: unknown): ReturnType<RewritableStore['keepKeyring']> {
    await this.#ready();
    const written = await this.#copies.database.keepKeyring(keyring);
    return written.ok ? { ok: true, everywhere: await this.#mirror.keep(keyring) } : written;
  }

  async replace(facts: readonly Fact[], row: CaseRow): Promise<AppendResult> {
    await this.#ready();
    const { digest, database } = this.#copies;
    const sealed = digest === undefined ? facts : await seal(facts, '', digest);
    const result = await database.restore(sealed, row);
    if (!result.ok) return result;
    this.#tips.set(row.id, { seq: row.lastSeq, hash: linkOf(sealed.at(-1))?.hash ?? '' });
    await this.#mirror.add({ facts: sealed, row });
    const second = this.#mirror.state();
    return second.state === 'failing' ? { ok: false, reason: 'refused', why: second.why } : result;
  }

  async purge(): Promise<boolean> {
    await this.#ready();
    const journal = await this.#mirror.rewrite();
    const database = (await this.#copies.scrub?.()) ?? true;
    return journal && database;
  }

  secondCopy(): SecondCopy {
    return this.#mirror.state();
  }

  close(): void {
    this.#copies.database.close();
    this.#copies.journal?.close();
  }

  #ready(): Promise<void> {
    this.#started ??= this.#start();
    return this.#started;
  }

  /** Compares the copies once. A database that does not answer now is compared at the next start. */
  async #start(): Promise<void> {
    const { database, sentinel, newId } = this.#copies;
    const before = sentinel?.read();
    const id = await database.identity(before?.dbId ?? newId());
    this.#dbId = id?.dbId ?? before?.dbId ?? newId();
    const [listed, ends] = await Promise.all([database.listCases(), this.#mirror.open(this.#dbId)]);
    if (id === undefined || !listed.ok) {
      this.#started = undefined;
      return;
    }
    const rows = new Map(listed.rows.map((row) => [row.id, row.lastSeq]));
    const longer = [...ends].filter(([caseId, end]) => end.last > (rows.get(caseId) ?? 0)).map(([caseId]) => caseId);
    const mended = await this.#mend(longer);
    const total = mended.cases === 0 ? totalOf(listed) : totalOf(await database.listCases());
    const missing = Math.max(0, (before?.total ?? 0) - total);
    this.#said = lossSentence({ wiped: id.fresh && before !== undefined, ...mended, missing });
    sentinel?.write({ dbId: this.#dbId, total });
    this.#mirror.refill(
      [...rows].filter(([caseId, last]) => (ends.get(caseId)?.last ?? 0) < last).map(([caseId]) => caseId),
    );
  }

  /** Several windows count in one place; each adds what it wrote. */
  #count(more: number): void {
    const { sentinel } = this.#copies;
    sentinel?.write({ dbId: this.#dbId, total: (sentinel.read()?.total ?? 0) + more });
  }

  /** What cannot be chained to the entry before it, because that cannot be read now, is not written: it would break the chain. */
  async #seal(facts: readonly Fact[], row: CaseRow): Promise<readonly Fact[] | Failed<'refused'>> {
    const { digest, database } = this.#copies;
    const first = facts[0]?.seq ?? 1;
    if (digest === undefined) return facts;
    const tip = this.#tips.get(row.id);
    if (first === 1) return seal(facts, '', digest);
    if (tip?.seq === first - 1) return seal(facts, tip.hash, digest);
    const stored = await database.load(row.id);
    if (!stored.ok && stored.reason === 'refused') return { ...stored, reason: 'refused' };
    const entries = stored.ok || stored.reason === 'gap' ? stored.facts : [];
    return seal(facts, linkOf(entries[first - 2])?.hash ?? '', digest);
  }

  /** A case as the database has it, its chain checked. */
  async #look(caseId: string): Promise<LoadResult> {
    const stored = await this.#copies.database.load(caseId);
    if (!stored.ok && stored.reason !== 'gap') return stored;
    const sound = await soundLength(stored.facts, this.#copies.digest);
    if (sound === stored.facts.length) return stored;
    const beyond = stored.ok ? [] : stored.after;
    return {
      ok: false,
      reason: 'gap',
      why: chainBroken(sound + 1),
      facts: stored.facts.slice(0, sound),
      missing: sound + 1,
      after: [...stored.facts.slice(sound), ...beyond],
      ...(stored.row ? { row: stored.row } : {}),
    };
  }

  /** Without the chain, which is the disk's business. */
  #give(caseId: string, found: LoadResult): LoadResult {
    if (!found.ok && found.reason !== 'gap') return found;
    const last = found.facts.at(-1);
    if (found.ok) this.#tips.set(caseId, { seq: found.facts.length, hash: linkOf(last)?.hash ?? '' });
    const facts = found.facts.map(unsealed);
    const given: Loaded | Gap = found.ok ? { ...found, facts } : { ...found, facts, after: found.after.map(unsealed) };
    return given;
  }

  async #fromDatabase(caseId: string): Promise<JournalBatch | undefined> {
    const stored = await this.#look(caseId);
    return stored.ok && stored.row ? { facts: stored.facts, row: stored.row } : undefined;
  }

  /** Writes back what the journal has and the database has not, as far as the journal's own chain holds. */
  async #mend(caseIds: readonly string[]): Promise<Mended> {
    const { database, digest } = this.#copies;
    let mended: Mended = { cases: 0, entries: 0 };
    for (const { facts, row } of await this.#mirror.read(caseIds)) {
      const stored = await this.#look(row.id);
      if (!stored.ok && stored.reason === 'refused') continue;
      const have = stored.ok || stored.reason === 'gap' ? stored.facts.length : 0;
      const sound = facts.slice(0, await soundLength(facts, digest));
      const missing = sound.slice(have);
      const listed = stored.ok && stored.row !== undefined && stored.row.lastSeq >= sound.length;
      if (sound.length === 0 || (missing.length === 0 && listed)) continue;
      const written = await database.restore(missing, { ...row, lastSeq: sound.length });
      if (written.ok) mended = { cases: mended.cases + 1, entries: mended.entries + missing.length };
    }
    return mended;
  }
}

/** Entries of all cases together, by their rows. */
const totalOf = (listed: ListResult): number =>
  listed.ok ? listed.rows.reduce((sum, row) => sum + row.lastSeq, 0) : 0;

/** Facts in two copies, under the contract of one. */
export function createPairedStore(copies: Copies): RewritableStore {
  return new PairedStore(copies);
}
