/** The journal as text: one act a line, each with a checksum of its own, so that a torn line is known for what it is. */
import { isCaseRow } from './batch.ts';
import { linkOf } from './chain.ts';
import type { CaseRow } from './types.ts';

/** One act: its entries as they stand in the other copy, and the case's row after it. */
export interface JournalBatch {
  readonly facts: readonly unknown[];
  readonly row: CaseRow;
}

/** The journal's end of one case: its last number, and the hash of that entry ('' when it has none). */
export interface CaseEnd {
  readonly last: number;
  readonly hash: string;
}

const TABLE = Uint32Array.from({ length: 256 }, (_, index) => {
  let crc = index;
  for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  return crc;
});

/** CRC-32 as in ISO 3309 and gzip. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (crc >>> 8) ^ (TABLE[(crc ^ byte) & 0xff] ?? 0);
  return (crc ^ 0xffffffff) >>> 0;
}

const NEWLINE = 10;
const CHECK = 8;
const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { fatal: true });

/** `checksum json newline`. JSON text holds no bare newline. */
export function lineFor(value: unknown): Uint8Array {
  const json = encoder.encode(JSON.stringify(value));
  const check = encoder.encode(`${crc32(json).toString(16).padStart(CHECK, '0')} `);
  const line = new Uint8Array(check.length + json.length + 1);
  line.set(check);
  line.set(json, check.length);
  line[line.length - 1] = NEWLINE;
  return line;
}

/** What a line says, or undefined when it is torn or damaged. */
function readLine(line: Uint8Array): unknown {
  const json = line.subarray(CHECK + 1);
  try {
    const wanted = decoder.decode(line.subarray(0, CHECK + 1));
    if (`${crc32(json).toString(16).padStart(CHECK, '0')} ` !== wanted) return undefined;
    return JSON.parse(decoder.decode(json)) as unknown;
  } catch {
    return undefined;
  }
}

export function asBatch(value: unknown): JournalBatch | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { facts, row } = value as { facts?: unknown; row?: unknown };
  return Array.isArray(facts) && facts.length > 0 && isCaseRow(row) ? { facts, row } : undefined;
}

/** The record of keys that a line carries, whatever it is. */
export function keyringOf(value: unknown): unknown {
  return typeof value === 'object' && value !== null ? (value as { keyring?: unknown }).keyring : undefined;
}

/** A case as a few lines rather than one, so that one damaged line does not take the whole case. */
const FACTS_A_LINE = 16;

export function* linesOf({ facts, row }: JournalBatch): Generator<Uint8Array> {
  const before = row.lastSeq - facts.length;
  for (let at = 0; at < facts.length; at += FACTS_A_LINE) {
    const part = facts.slice(at, at + FACTS_A_LINE);
    yield lineFor({ facts: part, row: { ...row, lastSeq: before + at + part.length } });
  }
}

/** Bytes that say nothing: one long line that is passed over. */
export function blanks(length: number): Uint8Array {
  const bytes = new Uint8Array(length).fill(32);
  if (length > 0) bytes[length - 1] = NEWLINE;
  return bytes;
}

export interface Scan {
  /** Bytes up to the end of the last good line; what follows is torn. */
  readonly good: number;
  /** Damaged lines with good ones behind them. */
  readonly damaged: number;
}

/** Goes through the lines in `bytes` and hands each good one to `take`. */
export function scan(bytes: Uint8Array, take: (value: unknown) => void): Scan {
  let good = 0;
  let damaged = 0;
  let pending = 0;
  for (let start = 0; start < bytes.length;) {
    const end = bytes.indexOf(NEWLINE, start);
    const value = end === -1 ? undefined : readLine(bytes.subarray(start, end));
    if (value === undefined) pending += 1;
    else {
      take(value);
      damaged += pending;
      pending = 0;
      good = end + 1;
    }
    start = end === -1 ? bytes.length : end + 1;
  }
  return { good, damaged };
}

function seqOf(entry: unknown): number {
  const seq = typeof entry === 'object' && entry !== null ? (entry as { seq?: unknown }).seq : undefined;
  return typeof seq === 'number' ? seq : NaN;
}

/** The number of a batch's first entry; NaN when its entries are not numbered one after the other up to the row's last. */
export function firstSeq({ facts, row }: JournalBatch): number {
  const first = row.lastSeq - facts.length + 1;
  return facts.every((entry, index) => seqOf(entry) === first + index) ? first : NaN;
}

export function endOf({ facts, row }: JournalBatch): CaseEnd {
  return { last: row.lastSeq, hash: linkOf(facts.at(-1))?.hash ?? '' };
}
