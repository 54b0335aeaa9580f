/** Ids that come out the same each time, so that a bundle sent twice replaces itself instead of doubling. */
import { sha256 } from './chain.ts';

/** Gives the resource with this key its id. */
export type IdOf = (key: string) => string;

/** A UUID of version 8 (RFC 9562: content of the maker's choice) from the first 16 bytes of SHA-256. */
export async function uuidOf(caseId: string, key: string): Promise<string> {
  const hex = await sha256(JSON.stringify([caseId, key]));
  const variant = (8 + (Number.parseInt(hex[16] ?? '0', 16) % 4)).toString(16);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

/** Runs `build` once to learn which ids it wants, and once more with them: hashing is asynchronous, building is not. */
export async function withIds<T>(caseId: string, build: (idOf: IdOf) => T): Promise<T> {
  const keys = new Set<string>();
  build((key) => {
    keys.add(key);
    return key;
  });
  const ids = new Map(await Promise.all([...keys].map(async (key) => [key, await uuidOf(caseId, key)] as const)));
  return build((key) => ids.get(key) ?? key);
}
