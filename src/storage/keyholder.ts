/** Holds the key while it is at hand, in memory only, and the record that it is unwrapped from. */
import {
  isKeyring,
  keptKey,
  newest,
  newKey,
  unwrapKey,
  wrapKey,
  type Keyring,
  type KeyringState,
  type Lock,
} from './keyring.ts';
import type { CodeResult, KeysFailure, KeysResult, KeysState, OpenWish } from './keys.types.ts';
import { newRecoveryCode } from './recovery-code.ts';
import { TOO_SHORT, tooShort, type Cost } from './passphrase.ts';
import type { Failed, RewritableStore } from './types.ts';

const SENTENCES: Readonly<Record<Exclude<KeysFailure, 'notKept'>, string>> = {
  wrong: 'That does not open the record.',
  weak: TOO_SHORT,
  unsupported: 'This browser does not allow a key to be made from a passphrase.',
};

export function keysFailed(reason: Exclude<KeysFailure, 'notKept'>): Failed<KeysFailure> {
  return { ok: false, reason, why: SENTENCES[reason] };
}

export class Keyholder {
  readonly #store: Pick<RewritableStore, 'keyrings' | 'keepKeyring'>;
  readonly #cost: Cost | undefined;
  #ring: Keyring | undefined;
  #key: CryptoKey | undefined;
  #looked = false;

  constructor(store: Pick<RewritableStore, 'keyrings' | 'keepKeyring'>, cost?: Cost) {
    this.#store = store;
    this.#cost = cost;
  }

  get key(): CryptoKey | undefined {
    return this.#key;
  }

  /** Whether what is written now is to be sealed. */
  get seals(): boolean {
    return this.#ring?.state === 'sealing' || this.#ring?.state === 'on';
  }

  get unfinished(): boolean {
    return this.#ring?.state === 'sealing' || this.#ring?.state === 'opening';
  }

  state(): KeysState {
    if (this.#ring === undefined || this.#ring.state === 'off') return 'none';
    return this.#key === undefined ? 'locked' : 'open';
  }

  /** Reads the record once; a disk that does not answer is asked again the next time. */
  async ready(): Promise<Failed<'refused'> | undefined> {
    return this.#looked ? undefined : this.look();
  }

  async look(): Promise<Failed<'refused'> | undefined> {
    const read = await this.#store.keyrings();
    if (!read.ok) return read;
    this.#looked = true;
    const ring = newest(read.copies);
    if (ring === undefined || ring.rev < (this.#ring?.rev ?? 0)) return undefined;
    this.#ring = ring;
    if (ring.state === 'off') this.#key = undefined;
    // A copy that is behind, or was lost, is brought level.
    if (read.copies.some((copy) => !isKeyring(copy) || copy.rev < ring.rev)) await this.#store.keepKeyring(ring);
    return undefined;
  }

  /** Writes the record again as it is in this window. */
  async keepAgain(): Promise<void> {
    if (this.#ring !== undefined) await this.#store.keepKeyring(this.#ring);
  }

  drop(): void {
    this.#key = undefined;
  }

  async unlock(wish: OpenWish): Promise<KeysResult> {
    await this.look();
    return this.#with(wish, false, async (key) => {
      this.#key = key;
      return { ok: true };
    });
  }

  /** A new key under a new passphrase and a new code. Kept in every copy, or not at all. */
  async begin(passphrase: string): Promise<CodeResult> {
    if (tooShort(passphrase)) return keysFailed('weak');
    const code = newRecoveryCode();
    try {
      const key = await newKey();
      const wrapped = await this.#wrapped(key, { passphrase, code });
      const rev = (this.#ring?.rev ?? 0) + 1;
      const ring: Keyring = { format: 'rimwise-keyring', v: 1, rev, state: 'sealing', ...wrapped };
      const kept = await this.#keep(ring, true);
      if (kept.ok) this.#key = await keptKey(key);
      return kept.ok ? { ok: true, code } : kept;
    } catch {
      return keysFailed('unsupported');
    }
  }

  async rewrap(wish: OpenWish, passphrase: string): Promise<KeysResult> {
    return tooShort(passphrase) ? keysFailed('weak') : this.#wrapAnew(wish, 'passphrase', passphrase);
  }

  async newCode(passphrase: string): Promise<CodeResult> {
    const code = newRecoveryCode();
    const done = await this.#wrapAnew({ lock: 'passphrase', secret: passphrase }, 'recovery', code);
    return done.ok ? { ok: true, code } : done;
  }

  /** Opens the record to make sure of who asks, and changes nothing. */
  check(wish: OpenWish): Promise<KeysResult> {
    return this.#with(wish, false, () => Promise.resolve({ ok: true }));
  }

  async advance(state: KeyringState): Promise<KeysResult> {
    if (this.#ring === undefined) return { ok: true };
    const kept = await this.#keep({ ...this.#ring, rev: this.#ring.rev + 1, state }, false);
    if (kept.ok && state === 'off') this.#key = undefined;
    return kept;
  }

  async #wrapAnew(wish: OpenWish, lock: Lock, secret: string): Promise<KeysResult> {
    await this.look();
    return this.#with(wish, true, async (key) => {
      const wrap = await wrapKey(key, { lock, secret, ...this.#at() });
      const ring = this.#ring;
      if (ring === undefined) return keysFailed('wrong');
      const kept = await this.#keep({ ...ring, rev: ring.rev + 1, [lock]: wrap }, false);
      if (kept.ok) this.#key = await keptKey(key);
      return kept;
    });
  }

  async #wrapped(key: CryptoKey, { passphrase, code }: { passphrase: string; code: string }) {
    return {
      passphrase: await wrapKey(key, { lock: 'passphrase', secret: passphrase, ...this.#at() }),
      recovery: await wrapKey(key, { lock: 'recovery', secret: code, ...this.#at() }),
    };
  }

  #at(): { cost?: Cost } {
    return this.#cost === undefined ? {} : { cost: this.#cost };
  }

  async #with(wish: OpenWish, toRewrap: boolean, work: (key: CryptoKey) => Promise<KeysResult>): Promise<KeysResult> {
    const ring = this.#ring;
    if (ring === undefined) return keysFailed('wrong');
    try {
      const key = await unwrapKey(ring, { ...wish, toRewrap });
      return key === undefined ? keysFailed('wrong') : await work(key);
    } catch {
      return keysFailed('unsupported');
    }
  }

  /** The database first: of two records that differ, the newer one counts, and either of them opens the same key. */
  async #keep(ring: Keyring, everywhere: boolean): Promise<KeysResult> {
    const kept = await this.#store.keepKeyring(ring);
    if (!kept.ok) return { ok: false, reason: 'notKept', why: kept.why };
    if (everywhere && !kept.everywhere) {
      await this.#store.keepKeyring({ ...ring, rev: ring.rev + 1, state: 'off' });
      await this.look();
      return {
        ok: false,
        reason: 'notKept',
        why: 'The second copy on this device cannot be written. Try again later.',
      };
    }
    this.#ring = ring;
    return { ok: true };
  }
}
