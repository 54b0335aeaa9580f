import type { Fact } from '../domain/case/facts.ts';
import { isWhole, merge, type Merged } from './merge.ts';
import type { ExportedFile, LoadResult } from './types.ts';

export const FILE_FORMAT = 'rimwise-facts';

interface Parts {
  readonly caseId: string;
  readonly stored: LoadResult;
  /** Entries seen earlier in this session, for when the disk no longer answers. */
  readonly known: readonly unknown[];
  readonly unsaved: readonly Fact[];
  /** This device's name in case files, where it has one: without it the file cannot be taken in elsewhere. */
  readonly writer?: string | undefined;
}

/** What is on record, as far as it can be read, and what stands apart from it. */
function gather({ stored, known, unsaved }: Parts): Merged {
  if (stored.ok) return merge(stored.facts, unsaved);
  if (stored.reason === 'gap') return { facts: stored.facts, apart: [...stored.after, ...unsaved] };
  if (isWhole(known)) return merge(known, unsaved);
  const all = [...known, ...unsaved];
  return isWhole(all) ? { facts: all, apart: [] } : { facts: [], apart: all };
}

function fileName(caseId: string): string {
  const plain = caseId.replace(/[^A-Za-z0-9_-]+/g, '-').slice(0, 60);
  return `case-${plain === '' ? 'unnamed' : plain}.json`;
}

/**
 * The facts of one case as a text file (docs/fact-format.md). Always gives a file: when the disk cannot be read it holds
 * what this session knows, and `complete` says whether that is the whole case.
 */
export function exportText(parts: Parts): ExportedFile {
  const { stored, unsaved, caseId, writer } = parts;
  const { facts, apart } = gather(parts);
  const complete = stored.ok || (stored.reason !== 'gap' && isWhole(facts));
  const named = writer === undefined ? {} : { writer };
  const file = { format: FILE_FORMAT, v: 1, caseId, ...named, complete, facts, apart };
  return {
    name: fileName(caseId),
    text: `${JSON.stringify(file, null, 1)}\n`,
    facts: facts.length + apart.length,
    unsaved: unsaved.length,
    complete,
    why: complete || stored.ok ? '' : stored.why,
  };
}
