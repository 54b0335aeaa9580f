/**
 * What lies on the disk under a passphrase: AES-256-GCM (NIST SP 800-38D), a fresh 96-bit IV each time, and the place the
 * entry belongs to sealed in with it, so that no entry can be put in another's place. Case and number stay in clear: the
 * copies are compared by them.
 */
import type { Fact } from '../domain/case/facts.ts';
import { fromBase64, toBase64 } from './bytes.ts';
import type { CaseRow } from './types.ts';

const IV_BYTES = 12;
const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { fatal: true });

export interface SealedEntry {
  readonly caseId: string;
  readonly seq: number;
  /** IV and ciphertext, base64. */
  readonly sealed: string;
}

export type SealedRow = CaseRow & { readonly sealed: string };

const placeOf = (caseId: string, seq: number): string => `entry ${seq} of ${caseId}`;
const rowPlace = (id: string): string => `row of ${id}`;

/** `value` as JSON under `key`, bound to `place`. */
export async function sealValue(key: CryptoKey, place: string, value: unknown): Promise<string> {
  const iv = crypto.getRandomValues(new Uint8Array(IV_BYTES));
  const how = { name: 'AES-GCM', iv, additionalData: encoder.encode(place) };
  const data = await crypto.subtle.encrypt(how, key, encoder.encode(JSON.stringify(value)));
  const all = new Uint8Array(IV_BYTES + data.byteLength);
  all.set(iv);
  all.set(new Uint8Array(data), IV_BYTES);
  return toBase64(all);
}

/** Undefined for what this key did not seal at this place, or what was changed since. */
export async function openValue(key: CryptoKey, place: string, sealed: string): Promise<unknown> {
  const bytes = fromBase64(sealed);
  if (bytes === undefined || bytes.length <= IV_BYTES) return undefined;
  const how = { name: 'AES-GCM', iv: bytes.subarray(0, IV_BYTES), additionalData: encoder.encode(place) };
  try {
    const text = decoder.decode(await crypto.subtle.decrypt(how, key, bytes.subarray(IV_BYTES)));
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function sealedText(raw: unknown): string | undefined {
  const sealed = typeof raw === 'object' && raw !== null ? (raw as { sealed?: unknown }).sealed : undefined;
  return typeof sealed === 'string' ? sealed : undefined;
}

export function isSealed(raw: unknown): boolean {
  return sealedText(raw) !== undefined;
}

export async function sealEntry(key: CryptoKey, fact: Fact): Promise<SealedEntry> {
  const { caseId, seq } = fact;
  return { caseId, seq, sealed: await sealValue(key, placeOf(caseId, seq), fact) };
}

/** The fact as it went in; an entry in clear as it is; undefined for one that does not open. */
export async function openEntry(key: CryptoKey, raw: unknown): Promise<unknown> {
  const sealed = sealedText(raw);
  if (sealed === undefined) return raw;
  const { caseId, seq } = raw as { caseId?: unknown; seq?: unknown };
  return openValue(key, placeOf(String(caseId), Number(seq)), sealed);
}

/** Only the case's id and the number of its last entry stay in clear. */
export async function sealRow(key: CryptoKey, row: CaseRow): Promise<SealedRow> {
  const { id, lastSeq } = row;
  const empty = { code: '', demo: false, openedAt: 0, lastAt: 0, visit: 0, closed: false };
  return { ...empty, id, lastSeq, sealed: await sealValue(key, rowPlace(id), row) };
}

/** The row as it went in; one in clear as it is; undefined for one that does not open. */
export async function openRow(key: CryptoKey, row: CaseRow): Promise<CaseRow | undefined> {
  const sealed = sealedText(row);
  if (sealed === undefined) return row;
  const opened = (await openValue(key, rowPlace(row.id), sealed)) as CaseRow | undefined;
  // What was mended from the other copy may end earlier or later than it did when the row was sealed.
  return opened === undefined ? undefined : { ...opened, id: row.id, lastSeq: row.lastSeq };
}
