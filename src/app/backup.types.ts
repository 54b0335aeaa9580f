/** A backup of everything on this device: what the screens are given and may ask for. */

/** Days after which a backup is called old; 0 = never. */
export const BACKUP_EVERY = [1, 7, 30, 0] as const;
export type BackupEveryDays = (typeof BACKUP_EVERY)[number];

export interface FoundBackup {
  readonly name: string;
  /** "3 cases, made on 2 December 2026" or what is wrong with the file, a sentence each. */
  readonly lines: readonly string[];
  /** What is damaged, each with its place. Empty for a sound file. */
  readonly faults: readonly string[];
  /** Cases that can be read. */
  readonly cases: number;
  /** What its settings would change here, a sentence each; empty when nothing. */
  readonly settings: readonly string[];
}

export interface BackupView {
  /** What is being done, in words; empty when nothing is. */
  readonly busy: string;
  /** When the last backup was made; absent when none ever was, or it is not known yet. */
  readonly lastAt?: number;
  /** Cases with entries that are not in it. */
  readonly changed: number;
  /** Older than is wanted, and something has changed. */
  readonly due: boolean;
  /** A plain backup would show what the record keeps under its passphrase. */
  readonly mustSeal: boolean;
  /** A sealed file was chosen: its passphrase is asked for. */
  readonly locked?: { readonly name: string };
  /** A file was read, and waits for a decision. */
  readonly found?: FoundBackup;
  /** What the last backup or restoring brought, a sentence each. */
  readonly lines: readonly string[];
}

export type BackupRequest =
  | { readonly do: 'make'; readonly passphrase?: string }
  | { readonly do: 'read'; readonly name: string; readonly bytes: Uint8Array }
  /** The passphrase of the sealed file that waits. */
  | { readonly do: 'open'; readonly passphrase: string }
  /** Adds what is not here yet; settings only when wanted. */
  | { readonly do: 'restore'; readonly settings: boolean }
  /** Leaves the file alone. */
  | { readonly do: 'leave' };

/** As it is asked for beside the files of the open case. */
export interface BackupAsked {
  readonly ask: 'backup';
  readonly backup: BackupRequest;
}
