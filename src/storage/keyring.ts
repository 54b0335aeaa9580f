/**
 * The one small record that makes the others readable: a random key, wrapped twice, once under the passphrase and once
 * under the recovery code. Another passphrase wraps the same key anew; no entry is written again for it.
 */
import { fromBase64, toBase64, type Bytes } from './bytes.ts';
import { readRecoveryCode } from './recovery-code.ts';
import { COST, typed, type Cost } from './passphrase.ts';

export interface Wrap {
  readonly memoryKiB: number;
  readonly passes: number;
  readonly lanes: number;
  readonly salt: string;
  readonly iv: string;
  readonly data: string;
}

/** `sealing`: entries from before are still being sealed; `opening`: they are being put in clear again; `off`: all are. */
export type KeyringState = 'sealing' | 'on' | 'opening' | 'off';

export interface Keyring {
  readonly format: 'rimwise-keyring';
  readonly v: 1;
  /** Rises with every change: of two copies the higher one counts. */
  readonly rev: number;
  readonly state: KeyringState;
  readonly passphrase: Wrap;
  readonly recovery: Wrap;
}

export type Lock = 'passphrase' | 'recovery';

/** Bounds: a record must not be able to make its reader work without end. */
const WITHIN: Readonly<Record<keyof Cost, readonly [number, number]>> = {
  memoryKiB: [8192, 262_144],
  passes: [1, 10],
  lanes: [1, 4],
};
const STATES: readonly unknown[] = ['sealing', 'on', 'opening', 'off'];

function isWrap(raw: unknown): raw is Wrap {
  if (typeof raw !== 'object' || raw === null) return false;
  const wrap = raw as Record<string, unknown>;
  const texts = [wrap['salt'], wrap['iv'], wrap['data']];
  const costs = Object.entries(WITHIN).every(([name, [low, high]]) => {
    const value = wrap[name];
    return Number.isSafeInteger(value) && Number(value) >= low && Number(value) <= high;
  });
  return costs && texts.every((text) => typeof text === 'string' && (fromBase64(text)?.length ?? 0) >= 12);
}

export function isKeyring(raw: unknown): raw is Keyring {
  if (typeof raw !== 'object' || raw === null) return false;
  const { format, v, rev, state, passphrase, recovery } = raw as Record<string, unknown>;
  const head = format === 'rimwise-keyring' && v === 1 && Number.isSafeInteger(rev) && STATES.includes(state);
  return head && isWrap(passphrase) && isWrap(recovery);
}

/** The newest of the copies that can be read. */
export function newest(copies: readonly unknown[]): Keyring | undefined {
  return copies.filter(isKeyring).sort((a, b) => b.rev - a.rev)[0];
}

/** What a lock is opened with, as it is compared. */
function secretOf(lock: Lock, text: string): string {
  return lock === 'passphrase' ? typed(text) : readRecoveryCode(text);
}

/** What makes keys is fetched only when there is one to make. */
async function keyUnder(secret: string, cost: Cost, salt: Bytes): Promise<CryptoKey> {
  const { stretch } = await import('./stretch.ts');
  return stretch(secret, { ...cost, salt });
}

function wrapping(lock: Lock, iv: Bytes): AesGcmParams {
  return { name: 'AES-GCM', iv, additionalData: new TextEncoder().encode(`rimwise-keyring 1 ${lock}`) };
}

export function newKey(): Promise<CryptoKey> {
  return crypto.subtle.generateKey({ name: 'AES-GCM', length: 256 }, true, ['encrypt', 'decrypt']);
}

/** The same key, in a form that never leaves the browser's own keeping. */
export async function keptKey(key: CryptoKey): Promise<CryptoKey> {
  const raw = await crypto.subtle.exportKey('raw', key);
  return crypto.subtle.importKey('raw', raw, 'AES-GCM', false, ['encrypt', 'decrypt']);
}

export interface WrapWish {
  readonly lock: Lock;
  readonly secret: string;
  readonly cost?: Cost;
}

export async function wrapKey(key: CryptoKey, { lock, secret, cost = COST }: WrapWish): Promise<Wrap> {
  const salt = crypto.getRandomValues(new Uint8Array(16));
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const under = await keyUnder(secretOf(lock, secret), cost, salt);
  const data = new Uint8Array(await crypto.subtle.wrapKey('raw', key, under, wrapping(lock, iv)));
  const { memoryKiB, passes, lanes } = cost;
  return { memoryKiB, passes, lanes, salt: toBase64(salt), iv: toBase64(iv), data: toBase64(data) };
}

interface Opening {
  readonly lock: Lock;
  readonly secret: string;
  /** To be wrapped anew; otherwise the key stays in the browser's keeping. */
  readonly toRewrap?: boolean;
}

/** Undefined when the secret is not the one the key was wrapped under. Rejects where a key cannot be made at all. */
export async function unwrapKey(
  ring: Keyring,
  { lock, secret, toRewrap = false }: Opening,
): Promise<CryptoKey | undefined> {
  const { memoryKiB, passes, lanes, ...texts } = ring[lock];
  const [salt, iv, data] = [texts.salt, texts.iv, texts.data].map(fromBase64);
  if (salt === undefined || iv === undefined || data === undefined) return undefined;
  const under = await keyUnder(secretOf(lock, secret), { memoryKiB, passes, lanes }, salt);
  const how = wrapping(lock, iv);
  try {
    return await crypto.subtle.unwrapKey('raw', data, under, how, 'AES-GCM', toRewrap, ['encrypt', 'decrypt']);
  } catch {
    return undefined;
  }
}
