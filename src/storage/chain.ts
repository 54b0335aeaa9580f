/**
 * Each stored entry carries the hash of itself and of the entry before it, so that an entry that was changed, swapped or
 * replaced after it was written is noticed when the case is read. The hash is about the record on disk, not about the
 * fact: facts go in and come out without it.
 */
import type { Fact } from '../domain/case/facts.ts';

/** SHA-256 of `text` as lower-case hex. */
export type Digest = (text: string) => Promise<string>;

export interface Link {
  /** Hash of the entry before; '' at the first, and at the first one after entries from before there was a chain. */
  readonly prev: string;
  readonly hash: string;
}

export type SealedFact = Fact & { readonly chain?: Link };

/** JSON with the keys of every object in order: the same fact gives the same text, however it was put together. */
export function stableText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(stableText).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, inner]) => `${JSON.stringify(key)}:${stableText(inner)}`).join(',')}}`;
}

const encoder = new TextEncoder();

/** The browser's own SHA-256; undefined on pages that are not served securely, where it has none. */
export function browserDigest(): Digest | undefined {
  const subtle: SubtleCrypto | undefined = globalThis.crypto?.subtle;
  if (subtle === undefined) return undefined;
  return async (text) => {
    const bytes = new Uint8Array(await subtle.digest('SHA-256', encoder.encode(text)));
    return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  };
}

function hashOf(fact: unknown, prev: string, digest: Digest): Promise<string> {
  return digest(stableText({ fact, prev }));
}

export async function seal(facts: readonly Fact[], before: string, digest: Digest): Promise<SealedFact[]> {
  const sealed: SealedFact[] = [];
  let prev = before;
  for (const fact of facts) {
    const hash = await hashOf(fact, prev, digest);
    sealed.push({ ...fact, chain: { prev, hash } });
    prev = hash;
  }
  return sealed;
}

/** The link an entry carries, whatever it is. */
export function linkOf(entry: unknown): Link | undefined {
  const chain = typeof entry === 'object' && entry !== null ? (entry as { chain?: unknown }).chain : undefined;
  if (typeof chain !== 'object' || chain === null) return undefined;
  const { prev, hash } = chain as { prev?: unknown; hash?: unknown };
  return typeof prev === 'string' && typeof hash === 'string' ? { prev, hash } : undefined;
}

/** The entry as it went in. */
export function unsealed(entry: unknown): unknown {
  if (typeof entry !== 'object' || entry === null || !('chain' in entry)) return entry;
  const { chain: _chain, ...fact } = entry as Record<string, unknown>;
  return fact;
}

/**
 * How many entries from the first on are as they were written. Entries from before there was a chain carry none and are
 * believed; once the chain has begun, an entry without its link is a break.
 */
export async function soundLength(entries: readonly unknown[], digest: Digest | undefined): Promise<number> {
  if (digest === undefined) return entries.length;
  let prev = '';
  for (const [index, entry] of entries.entries()) {
    const link = linkOf(entry);
    if (link === undefined && prev === '') continue;
    if (link === undefined || link.prev !== prev) return index;
    if (link.hash !== (await hashOf(unsealed(entry), prev, digest))) return index;
    prev = link.hash;
  }
  return entries.length;
}
