/** What a case file brings to the record of this machine: facts to append, behind those that are there. */
import type { Fact } from '../domain/case/facts.ts';
import { mergeCaseFiles, numbered, placesOf, refuse, toCaseFile } from './case-file.ts';
import type { CaseFile, Outcome } from './case-file.types.ts';

export interface Arrival {
  /** To be appended in this order; numbered on from the facts that are here. Empty when nothing is new. */
  readonly facts: readonly Fact[];
  /** The case as it stands afterwards. */
  readonly merged: CaseFile;
}

/**
 * Merges a verified file into the facts of the same case on this machine (`[]` for a case not here yet). Stored facts are
 * never touched. Refused as in mergeCaseFiles and toCaseFile.
 */
export async function arrivalOf(here: readonly Fact[], file: CaseFile, writer: string): Promise<Outcome<Arrival>> {
  if (here.length === 0) {
    return { ok: true, value: { facts: numberedOf(file, writer, []), merged: file } };
  }
  if (here[0]?.caseId !== file.caseId) return refuse('foreign', 'caseId', 'This file belongs to another case.');
  const mine = await toCaseFile(here, writer);
  if (!mine.ok) return mine;
  const merged = await mergeCaseFiles(mine.value, file);
  if (!merged.ok) return merged;
  return { ok: true, value: { facts: numberedOf(merged.value, writer, here), merged: merged.value } };
}

function numberedOf(file: CaseFile, own: string, here: readonly Fact[]): readonly Fact[] {
  const after = placesOf(here, own);
  const entries = file.entries.filter(({ writer, n }) => !after.has(`${writer}/${n}`));
  return numbered({ caseId: file.caseId, entries, own, after });
}
