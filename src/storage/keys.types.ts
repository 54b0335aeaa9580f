/** The key of the record, as the app sees it: whether there is one, whether it is at hand, and what can be done with it. */
import type { Lock } from './keyring.ts';
import type { Failed } from './types.ts';

/** `none`: no passphrase is set, entries lie in clear. `locked`: one is set and the key is not at hand. */
export type KeysState = 'none' | 'locked' | 'open';

/** `wrong`: does not open. `weak`: too short. `unsupported`: this browser makes no keys. `notKept`: the disk did not take it. */
export type KeysFailure = 'wrong' | 'weak' | 'unsupported' | 'notKept';

export type KeysResult = { readonly ok: true } | Failed<KeysFailure>;
export type CodeResult = { readonly ok: true; readonly code: string } | Failed<KeysFailure>;

export interface OpenWish {
  readonly lock: Lock;
  readonly secret: string;
}

export interface Keys {
  state(): KeysState;
  /** Entries are still in the form they had before the passphrase was set, or taken away. */
  unfinished(): boolean;
  /** Looks at the disk anew: another window may have set a passphrase or taken it away. */
  look(): Promise<KeysState>;
  /** Sets a passphrase; every entry is sealed from now on. The code is shown once and kept nowhere. */
  turnOn(passphrase: string): Promise<CodeResult>;
  unlock(wish: OpenWish): Promise<KeysResult>;
  /** Lets go of the key. */
  lock(): void;
  /** Another passphrase for the same key. */
  change(wish: OpenWish, passphrase: string): Promise<KeysResult>;
  /** Another recovery code; the one before opens nothing any more. */
  newCode(passphrase: string): Promise<CodeResult>;
  /** Takes the passphrase away; entries are put in clear again. */
  turnOff(passphrase: string): Promise<KeysResult>;
  /** Brings what is left from before into the form that holds now. True when nothing is left. */
  finish(): Promise<boolean>;
  /** A small text under the key, for what is not an entry; undefined while the key is not at hand. */
  seal(name: string, value: unknown): Promise<unknown>;
  open(name: string, sealed: unknown): Promise<unknown>;
}
