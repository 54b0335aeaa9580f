import type { CaseRow, LoadResult } from './types.ts';

function isEntry(raw: unknown, caseId: string, seq: number): boolean {
  if (typeof raw !== 'object' || raw === null) return false;
  const { caseId: id, seq: number } = raw as { caseId?: unknown; seq?: unknown };
  return id === caseId && number === seq;
}

/**
 * Entries as they came from the store, in key order. A hole, a broken entry or an end before the row's `lastSeq` is
 * named, never skipped over: the part before it is good, the part after it is handed over apart.
 */
export function sift(caseId: string, raw: readonly unknown[], row: CaseRow | undefined): LoadResult {
  const withRow = row ? { row } : {};
  const last = row?.lastSeq ?? 0;
  if (raw.length === 0 && last === 0) {
    return { ok: false, reason: 'unknownCase', why: 'This case is not stored on this device.' };
  }
  const broken = raw.findIndex((entry, index) => !isEntry(entry, caseId, index + 1));
  const good = broken === -1 ? raw : raw.slice(0, broken);
  if (broken === -1 && good.length >= last) return { ok: true, facts: raw, unsaved: 0, ...withRow };
  const missing = good.length + 1;
  const after = raw.slice(good.length);
  const why = `Entry ${missing} of this case is missing or damaged. The ${good.length} before it are good.`;
  return { ok: false, reason: 'gap', why, facts: good, missing, after, ...withRow };
}
