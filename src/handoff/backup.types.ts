/**
 * All cases of one device and its settings as one file: JSON lines, so that what a cut leaves whole can still be read. The
 * first line is the head; behind it stands one case file a line, in the head's order. See docs/handoff.md.
 */
import type { CaseFile, Refused } from './case-file.types.ts';

/** A case named in the head; its line must be this case with this digest. */
export interface BackedUpCase {
  readonly id: string;
  readonly digest: string;
}

/** A case that could not be read on the device when the file was made. */
export interface LeftCase {
  readonly id: string;
  readonly code: string;
}

/** As they lay on the device, each checked by whoever takes it. */
export interface BackupSettings {
  readonly preferences?: unknown;
  readonly practice?: unknown;
  readonly protocols?: unknown;
}

export interface BackupHead {
  readonly format: 'rimwise-backup';
  readonly v: 1;
  /** Wall clock of the device, ms since 1970 UTC. */
  readonly at: number;
  /** The device's name in case files. */
  readonly writer: string;
  readonly cases: readonly BackedUpCase[];
  readonly left: readonly LeftCase[];
  readonly settings: BackupSettings;
  /** SHA-256 over the canonical form of the head without this field: through the cases' digests it covers the file. */
  readonly digest: string;
}

export interface ReadBackup {
  /** Undefined when the head cannot be trusted; nothing is then known of settings, or of how many cases there were. */
  readonly head: Omit<BackupHead, 'digest'> | undefined;
  /** Cases that are whole and unchanged. */
  readonly cases: readonly CaseFile[];
  /** What is wrong, each with its place ("line 3"). Empty for a sound file. */
  readonly faults: readonly Refused[];
}
