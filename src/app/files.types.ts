/** Files that come in and go out, and the bench: what the screens are given and may ask for. */
import type { BackupView } from './backup.types.ts';

export interface FilesView {
  /** Something that was asked for is not done yet. */
  readonly busy: boolean;
  /** A sealed file was chosen: the passphrase is asked for. Only its name is kept for the screen. */
  readonly locked?: { readonly name: string };
  /** What the last file brought, or why it was refused, a sentence each. */
  readonly lines: readonly string[];
  /** The lines say why nothing was taken in. */
  readonly refused?: true;
  /** All cases and settings as one file. */
  readonly backup?: BackupView;
  /** The case as it stands, by its digest: absent until it was asked for, and again once an entry came. */
  readonly digest?: CaseCode;
}

export interface CaseCode {
  /** SHA-256, lower-case hex. */
  readonly value: string;
  /** The digest as a QR code: an SVG path of unit squares on a grid of `size` by `size`, without its white edge. */
  readonly path: string;
  readonly size: number;
}

export type FilesRequest =
  /** The open case as a file; sealed when a passphrase is given. */
  | { readonly ask: 'caseFile'; readonly passphrase?: string }
  /** The open case as a FHIR document bundle. */
  | { readonly ask: 'fhir' }
  /** The digest of the open case, for the screen. */
  | { readonly ask: 'digest' }
  /** A file somebody chose: a case file, sealed or not. */
  | { readonly ask: 'takeIn'; readonly name: string; readonly bytes: Uint8Array }
  /** The passphrase of the sealed file that waits; empty = leave it. */
  | { readonly ask: 'open'; readonly passphrase: string }
  /** Something done, asked or sent back between clinic and laboratory; `by` are initials. */
  | { readonly ask: 'bench'; readonly deed: BenchDeed; readonly by: string };

export type BenchDeed =
  | { readonly do: 'done'; readonly line: string }
  /** Takes back what the laboratory, or the clinic to it, wrote in this act. */
  | { readonly do: 'takeBack'; readonly act: number }
  /** Poured or taken over: its wait ends. */
  | { readonly do: 'taken'; readonly clock: string }
  /** With `line` empty: about the work as a whole. */
  | { readonly do: 'ask'; readonly line: string; readonly text: string }
  | { readonly do: 'answer'; readonly question: number; readonly text: string }
  | { readonly do: 'returned'; readonly text: string };
