/** A key made from a passphrase: argon2id (RFC 9106). Fetched only when a passphrase is in play. */
import { argon2id } from 'hash-wasm';
import type { Bytes } from './bytes.ts';
import type { Cost } from './passphrase.ts';

export interface Stretched extends Cost {
  readonly salt: Bytes;
}

/** A key that wraps other keys. Rejects where WebAssembly is not allowed. */
export async function stretch(secret: string, { memoryKiB, passes, lanes, salt }: Stretched): Promise<CryptoKey> {
  const raw = await argon2id({
    password: secret,
    salt,
    memorySize: memoryKiB,
    iterations: passes,
    parallelism: lanes,
    hashLength: 32,
    outputType: 'binary',
  });
  return crypto.subtle.importKey('raw', raw as Bytes, 'AES-GCM', false, ['wrapKey', 'unwrapKey']);
}
