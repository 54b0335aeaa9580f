/**
 * A case as it travels between machines. Every writer (a chair, a bench) has a chain of its own; entries point at each
 * other by writer and number, never by the place they have in one machine's record. See docs/decisions/0010-case-file.md.
 */

/** An entry by its writer and its number in that writer's chain. */
export interface Ref {
  readonly writer: string;
  readonly n: number;
}

/** A fact without what belongs to one machine: no case, no seq; `act` and every reference in `body` are Refs. */
export interface PortableFact {
  readonly v: 1;
  readonly act: Ref;
  readonly protocol: string;
  readonly app: string;
  readonly body: Readonly<Record<string, unknown>>;
}

export interface Entry {
  readonly writer: string;
  /** 1, 2, 3 … within the writer, no gaps. */
  readonly n: number;
  /** Wall clock of the writer, ms since 1970 UTC. */
  readonly at: number;
  readonly fact: PortableFact;
  /** Hash of the writer's entry before this one; '' for the first. */
  readonly prev: string;
  /** SHA-256 over the canonical form of { case, writer, n, at, fact, prev }, lower-case hex. */
  readonly hash: string;
}

export interface CaseFile {
  readonly format: 'rimwise-case';
  readonly v: 1;
  readonly caseId: string;
  /** In the order in which they are to be read. */
  readonly entries: readonly Entry[];
  /** SHA-256 over the canonical form of { case, heads }, heads being each writer's last number and hash. */
  readonly digest: string;
}

/**
 * `changed`: an entry or a chain does not have the hash it claims. `cut`: entries are missing. `foreign`: another case.
 * `forked`: two different entries claim one place. `dangling`: a reference to an entry that is not there. `locked`: a
 * passphrase is needed; `wrongPassphrase`: it does not open the file, or the sealed part was changed; `unsupported`: this
 * browser does not let a key be made from a passphrase.
 */
export type CaseFileFailure =
  | 'notJson'
  | 'notACaseFile'
  | 'newerFormat'
  | 'malformed'
  | 'changed'
  | 'cut'
  | 'foreign'
  | 'forked'
  | 'dangling'
  | 'locked'
  | 'wrongPassphrase'
  | 'unsupported';

export interface Refused {
  readonly ok: false;
  readonly reason: CaseFileFailure;
  /** The place: "lab/3", "entries.4.fact.body.value" … or '' when it is the file as a whole. */
  readonly where: string;
  /** A plain sentence for the screen. */
  readonly text: string;
}

export type Outcome<T> = { readonly ok: true; readonly value: T } | Refused;
