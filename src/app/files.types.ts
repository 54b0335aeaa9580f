/** Files that come in and go out, and the bench: what the screens are given and may ask for. */

export interface FilesView {
  /** A file is being made or read. */
  readonly busy: boolean;
  /** A sealed file was chosen: the passphrase is asked for. Only its name is kept for the screen. */
  readonly locked?: { readonly name: string };
  /** What the last file brought, or why it was refused, a sentence each. */
  readonly lines: readonly string[];
}

export type FilesRequest =
  /** The open case as a file; sealed when a passphrase is given. */
  | { readonly ask: 'caseFile'; readonly passphrase?: string }
  /** The open case as a FHIR document bundle. */
  | { readonly ask: 'fhir' }
  /** A file somebody chose: a case file, sealed or not. */
  | { readonly ask: 'takeIn'; readonly name: string; readonly bytes: Uint8Array }
  /** The passphrase of the sealed file that waits; empty = leave it. */
  | { readonly ask: 'open'; readonly passphrase: string };
