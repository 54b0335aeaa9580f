/** Passphrase, key and record put together: a store that seals, and what can be done with its key. */
import { Keyholder } from './keyholder.ts';
import type { CodeResult, Keys, KeysResult, KeysState, OpenWish } from './keys.types.ts';
import { isSealed, openValue, sealValue } from './sealing.ts';
import { SealingStore } from './sealing-store.ts';
import type { Cost } from './passphrase.ts';
import type { FactStore, RewritableStore } from './types.ts';

class KeysOf implements Keys {
  readonly #holder: Keyholder;
  readonly #store: SealingStore;
  #finishing: Promise<boolean> | undefined;

  constructor(holder: Keyholder, store: SealingStore) {
    this.#holder = holder;
    this.#store = store;
  }

  state(): KeysState {
    return this.#holder.state();
  }

  unfinished(): boolean {
    return this.#holder.unfinished;
  }

  async look(): Promise<KeysState> {
    await this.#holder.look();
    if (this.state() !== 'open') this.#store.forget();
    return this.state();
  }

  turnOn(passphrase: string): Promise<CodeResult> {
    return this.#holder.begin(passphrase);
  }

  async unlock(wish: OpenWish): Promise<KeysResult> {
    const opened = await this.#holder.unlock(wish);
    // A window that knew of no passphrase may have written in clear meanwhile.
    if (opened.ok && this.#holder.seals && !this.unfinished() && (await this.#store.left()) > 0)
      await this.#holder.advance('sealing');
    return opened;
  }

  lock(): void {
    this.#holder.drop();
    this.#store.forget();
  }

  change(wish: OpenWish, passphrase: string): Promise<KeysResult> {
    return this.#cleared(this.#holder.rewrap(wish, passphrase));
  }

  newCode(passphrase: string): Promise<CodeResult> {
    return this.#cleared(this.#holder.newCode(passphrase));
  }

  async turnOff(passphrase: string): Promise<KeysResult> {
    const checked = await this.#holder.check({ lock: 'passphrase', secret: passphrase });
    return checked.ok ? this.#holder.advance('opening') : checked;
  }

  finish(): Promise<boolean> {
    this.#finishing ??= this.#finish().finally(() => {
      this.#finishing = undefined;
    });
    return this.#finishing;
  }

  async seal(name: string, value: unknown): Promise<unknown> {
    const { key } = this.#holder;
    return key === undefined ? undefined : { sealed: await sealValue(key, `setting ${name}`, value) };
  }

  async open(name: string, sealed: unknown): Promise<unknown> {
    const { key } = this.#holder;
    if (key === undefined || !isSealed(sealed)) return undefined;
    return openValue(key, `setting ${name}`, (sealed as { sealed: string }).sealed);
  }

  async #finish(): Promise<boolean> {
    if (this.state() !== 'open' || !this.unfinished()) return true;
    const { seals } = this.#holder;
    if (!(await this.#store.convertAll())) return false;
    return (await this.#holder.advance(seals ? 'on' : 'off')).ok;
  }

  /** The old wrapping goes from the files too, in the background: it opens the same key. */
  async #cleared<T extends { readonly ok: boolean }>(done: Promise<T>): Promise<T> {
    const result = await done;
    if (result.ok) void this.#store.purge();
    return result;
  }
}

/** A store over `inner` that seals while a passphrase is set. `cost`: of making a key; tests take a smaller one. */
export function createSealedStore(inner: RewritableStore, cost?: Cost): { store: FactStore; keys: Keys } {
  const holder = new Keyholder(inner, cost);
  const store = new SealingStore(inner, holder);
  return { store, keys: new KeysOf(holder, store) };
}
