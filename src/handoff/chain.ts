/** Hashes and digests. Canonical form is RFC 8785, hash is SHA-256 by the platform's own WebCrypto. */
import canonicalize from 'canonicalize';
import type { CaseFile, Entry } from './case-file.types.ts';

/** One writing for each value: sorted keys, no blanks, numbers as ECMAScript writes them. Throws on what JSON cannot say. */
export function canonical(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError('There is no canonical form of this value.');
  return text;
}

const hex = (bytes: ArrayBuffer) => Array.from(new Uint8Array(bytes), (b) => b.toString(16).padStart(2, '0')).join('');

/** SHA-256 of the UTF-8 of a text, lower-case hex. */
export async function sha256(text: string): Promise<string> {
  return hex(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text)));
}

/** The hash an entry must have in its case. */
export function entryHash(caseId: string, { writer, n, at, fact, prev }: Omit<Entry, 'hash'>): Promise<string> {
  return sha256(canonical({ case: caseId, writer, n, at, fact, prev }));
}

/** The digest over the last entry of every chain: what is printed, and what shows that a tail was cut off. */
export function digestOf(caseId: string, entries: readonly Pick<Entry, 'writer' | 'n' | 'hash'>[]): Promise<string> {
  const heads = new Map<string, { n: number; hash: string }>();
  for (const { writer, n, hash } of entries) if (n > (heads.get(writer)?.n ?? 0)) heads.set(writer, { n, hash });
  return sha256(canonical({ case: caseId, heads: Object.fromEntries(heads) }));
}

/** Entries of each writer in the order of their numbers. */
export function chainsOf(entries: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> {
  const chains = new Map<string, Entry[]>();
  for (const entry of entries) {
    const chain = chains.get(entry.writer);
    if (chain === undefined) chains.set(entry.writer, [entry]);
    else chain.push(entry);
  }
  for (const chain of chains.values()) chain.sort((a, b) => a.n - b.n);
  return chains;
}

/** The file as text: canonical, so that the same case is the same bytes everywhere. */
export const caseText = (file: CaseFile): string => `${canonical(file)}\n`;
