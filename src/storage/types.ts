/**
 * Contract of the store: facts go in once, in order, and come back as they went in. Nothing here knows what a fact means,
 * and nothing here throws: every outcome has a name and, when it is a failure, a sentence for the screen.
 */
import type { Fact } from '../domain/case/facts.ts';

/** One small row per case, written in the same transaction as the facts, so that the list never reads the facts. */
export interface CaseRow {
  readonly id: string;
  readonly code: string;
  readonly demo: boolean;
  readonly openedAt: number;
  readonly lastAt: number;
  readonly visit: number;
  readonly closed: boolean;
  /** seq of the last fact written; a log that ends earlier has lost something. */
  readonly lastSeq: number;
  /** A clock of the case runs: it has to ring although the case is not open. Absent on rows from before this was told. */
  readonly ticks?: boolean;
  /** What is waited for outside the visits, in words, and its day; absent when nothing is. */
  readonly stands?: { readonly text: string; readonly due?: string };
}

/**
 * `anotherWriter`: someone else has written these numbers. `full`: no room. `refused`: the browser will not store
 * (absent, private, blocked, broken). `malformed`: the facts are not a batch that can be stored. `lost`: what the case had
 * before is gone from the disk, so that what is to be written would hang in the air.
 */
export type StoreFailure = 'anotherWriter' | 'full' | 'refused' | 'malformed' | 'lost';

export interface Failed<Reason extends string> {
  readonly ok: false;
  readonly reason: Reason;
  /** A plain sentence for the screen. */
  readonly why: string;
}

/** `recovered`: what had to be written again before this could be kept, in a sentence. */
export type Kept = { readonly ok: true; readonly recovered?: string };
export type AppendResult = Kept | Failed<StoreFailure>;

/** `facts` are raw: whoever reads them parses them. `unsaved` of them exist only in memory. */
export interface Loaded {
  readonly ok: true;
  readonly facts: readonly unknown[];
  readonly row?: CaseRow;
  readonly unsaved: number;
  /** What had to be mended before this could be read, in a sentence. */
  readonly recovered?: string;
}

/** The log has a hole or a broken entry at `missing`: `facts` is the good part before it, `after` what lies beyond. */
export interface Gap extends Failed<'gap'> {
  readonly facts: readonly unknown[];
  readonly missing: number;
  readonly after: readonly unknown[];
  readonly row?: CaseRow;
}

export type LoadResult = Loaded | Gap | Failed<'unknownCase'> | Failed<'refused'>;

/** Newest first. `broken` rows could not be read as rows and are left out. */
export type ListResult =
  | {
      readonly ok: true;
      readonly rows: readonly CaseRow[];
      readonly broken: number;
      /** What had been lost on this device and was mended, or could not be, in a sentence; until it is said elsewhere. */
      readonly recovered?: string;
    }
  | Failed<'refused'>;

/** Whether every entry lies in a second place as well; when not, why. */
export type SecondCopy = { readonly state: 'kept' } | { readonly state: 'none' | 'failing'; readonly why: string };

export interface FactStore {
  /** All or nothing, on disk when it answers `ok`. */
  append(facts: readonly Fact[], row: CaseRow): Promise<AppendResult>;
  load(caseId: string): Promise<LoadResult>;
  listCases(): Promise<ListResult>;
  /** Absent on a store that is a single copy by nature. */
  secondCopy?(): SecondCopy;
  close(): void;
}

/** A store whose damaged entries can be written again from another copy. */
export interface RepairableStore extends FactStore {
  /** Writes `entries` over whatever stands at their numbers, and the row unless a later one is there. */
  restore(entries: readonly unknown[], row: CaseRow): Promise<AppendResult>;
  /** The name this database was given when it was made: `proposed` if it was made just now. */
  identity(proposed: string): Promise<{ readonly dbId: string; readonly fresh: boolean } | undefined>;
  /** The record of keys, undefined when there is none. */
  keyring(): Promise<{ readonly ok: true; readonly value: unknown } | Failed<'refused'>>;
  keepKeyring(keyring: unknown): Promise<AppendResult>;
}

/** A store in which entries can be put into another form, and what they were before is then written over. */
export interface RewritableStore extends FactStore {
  /** The record of keys, as each copy has it. */
  keyrings(): Promise<{ readonly ok: true; readonly copies: readonly unknown[] } | Failed<'refused'>>;
  /** `everywhere`: in every copy there is; one that failed gets it at the next start. */
  keepKeyring(keyring: unknown): Promise<{ readonly ok: true; readonly everywhere: boolean } | Failed<StoreFailure>>;
  /** A whole case again: the same numbers, in another form. */
  replace(facts: readonly Fact[], row: CaseRow): Promise<AppendResult>;
  /** Writes over what was replaced, as far as a page can. False when a copy could not. */
  purge(): Promise<boolean>;
}

export type TimerId = ReturnType<typeof setTimeout> | number;

/** What the store needs of its surroundings; tests pass their own. */
export interface StorageHost {
  readonly indexedDB?: IDBFactory | undefined;
  readonly IDBKeyRange?: Pick<typeof IDBKeyRange, 'bound'> | undefined;
  setTimeout(run: () => void, ms: number): TimerId;
  clearTimeout(id: TimerId): void;
}

/** Why facts are only in memory. */
export type MemoryCause = 'full' | 'refused' | 'slow' | 'anotherWriter';

export type SaveStatus =
  | {
      readonly state: 'kept';
      /** Why it is kept in one place only, in a sentence. */
      readonly oneCopy?: string;
    }
  | { readonly state: 'keeping'; readonly unsaved: number }
  | { readonly state: 'memory'; readonly cause: MemoryCause; readonly why: string; readonly unsaved: number };

/** `memory`: not on disk, but nothing is lost; the log goes on trying unless the cause is `anotherWriter`. */
export type LogResult = Kept | (Failed<'memory'> & { readonly cause: MemoryCause }) | Failed<'malformed'>;

/** `complete` is false when the disk could not be read, so that older facts may be missing from the file. */
export interface ExportedFile {
  readonly name: string;
  readonly text: string;
  readonly facts: number;
  readonly unsaved: number;
  readonly complete: boolean;
  readonly why: string;
}

export interface FactLog {
  /** Stored facts followed by those still in memory. */
  open(caseId: string): Promise<LoadResult>;
  append(facts: readonly Fact[], row: CaseRow): Promise<LogResult>;
  /** Try now to write what is still in memory. */
  flush(): Promise<SaveStatus>;
  status(): SaveStatus;
  subscribe(listener: (status: SaveStatus) => void): () => void;
  unsaved(caseId?: string): readonly Fact[];
  cases(): Promise<ListResult>;
  /** `writer`: this device's name in case files. */
  exportFile(caseId: string, writer?: string): Promise<ExportedFile>;
  /** After `anotherWriter`: hands over the facts that lost their numbers, so that they can be numbered anew and appended. */
  takeBack(caseId: string): readonly Fact[];
  /** Lets go of what was read; entries not on disk yet are kept. */
  forget(): void;
  stop(): void;
}
