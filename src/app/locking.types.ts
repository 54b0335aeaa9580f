/** Contract between the lock and the screens: what is known of it, and what can be asked of it. */
import type { PhaseId } from '../domain/case/facts.ts';

/** Minutes without a touch after which it locks by itself; 0 = never. */
export const LOCK_AFTER_MIN = [0, 2, 5, 15] as const;
export type LockAfterMin = (typeof LOCK_AFTER_MIN)[number];

/** A clock's phase while the record is locked: which impression, which phase, and nothing of whose it is. */
export interface LockedAlarm {
  readonly caseId: string;
  /** Its name within the case. */
  readonly due: string;
  readonly clock: string;
  readonly phase: PhaseId;
  /** "Lower impression: setting in the mouth over" and the material. */
  readonly label: string;
  readonly at: number;
  /** It has rung, and is to be written down after unlocking. */
  readonly rang?: { readonly at: number; readonly late: boolean };
  /** Somebody has seen that it rang. */
  readonly seen?: true;
}

export interface LockView {
  /** `none`: no passphrase is set. `asking`: the disk has not told yet. */
  readonly state: 'asking' | 'none' | 'locked' | 'open';
  /** What is being done, in words; empty when nothing is. */
  readonly busy: string;
  readonly said: string;
  readonly trouble: string;
  /** No passphrase is tried before this moment. */
  readonly waitUntil: number;
  /** The recovery code, to be written down now; empty once that was said. */
  readonly code: string;
  /** Entries from before are still in the form they had. */
  readonly unfinished: boolean;
  /** While locked. */
  readonly alarms: readonly LockedAlarm[];
}

export type LockRequest =
  | { readonly ask: 'turnOn'; readonly passphrase: string }
  | { readonly ask: 'turnOff'; readonly passphrase: string }
  | { readonly ask: 'unlock'; readonly passphrase: string }
  /** By the recovery code, and another passphrase with it. */
  | { readonly ask: 'recover'; readonly code: string; readonly passphrase: string }
  | { readonly ask: 'change'; readonly from: string; readonly to: string }
  | { readonly ask: 'newCode'; readonly passphrase: string }
  | { readonly ask: 'codeSeen' }
  | { readonly ask: 'lock' };
