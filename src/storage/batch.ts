import type { Fact } from '../domain/case/facts.ts';
import type { CaseRow, Failed } from './types.ts';

const DEEPEST = 32;

/** Where `value` stops being plain JSON ("body.value"), or undefined when it is plain all through. */
function notPlainAt(value: unknown, path: string, depth: number): string | undefined {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return undefined;
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : path;
  if (typeof value !== 'object' || depth > DEEPEST) return path;
  const proto: unknown = Object.getPrototypeOf(value);
  if (!Array.isArray(value) && proto !== Object.prototype && proto !== null) return path;
  for (const [key, inner] of Object.entries(value)) {
    const found = notPlainAt(inner, path === '' ? key : `${path}.${key}`, depth + 1);
    if (found !== undefined) return found;
  }
  return undefined;
}

function malformed(why: string): Failed<'malformed'> {
  return { ok: false, reason: 'malformed', why };
}

/**
 * A batch is one act: facts of one case, numbered without a gap, and the row that names the last of them. Checked before
 * anything is written, because a value that cannot be stored would otherwise leave the ones before it behind.
 */
export function checkBatch(facts: readonly Fact[], row: CaseRow): Failed<'malformed'> | undefined {
  const first = facts[0];
  if (!first) return malformed('There was nothing to keep.');
  if (!Number.isSafeInteger(first.seq) || first.seq < 1) return malformed(`Entry number ${first.seq} is not a number.`);
  for (const [index, fact] of facts.entries()) {
    if (fact.caseId !== row.id) return malformed('The entries belong to different cases.');
    if (fact.seq !== first.seq + index) return malformed(`Entry ${first.seq + index} is missing.`);
    const path = notPlainAt(fact, '', 0);
    if (path !== undefined) return malformed(`Entry ${fact.seq} holds something that cannot be stored at ${path}.`);
  }
  if (row.lastSeq !== first.seq + facts.length - 1) return malformed('The case row does not name the last entry.');
  const path = notPlainAt(row, '', 0);
  return path === undefined ? undefined : malformed(`The case row holds something that cannot be stored at ${path}.`);
}

/** True when both lists hold the same facts: the same batch written twice, not a second writer. */
export function sameFacts(stored: readonly unknown[], facts: readonly Fact[]): boolean {
  return stored.length === facts.length && JSON.stringify(stored) === JSON.stringify(facts);
}

export function isCaseRow(raw: unknown): raw is CaseRow {
  if (typeof raw !== 'object' || raw === null) return false;
  const row = raw as Record<string, unknown>;
  const numbers = [row['openedAt'], row['lastAt'], row['visit'], row['lastSeq']];
  return (
    typeof row['id'] === 'string' &&
    typeof row['code'] === 'string' &&
    typeof row['demo'] === 'boolean' &&
    typeof row['closed'] === 'boolean' &&
    numbers.every((value) => Number.isFinite(value))
  );
}
