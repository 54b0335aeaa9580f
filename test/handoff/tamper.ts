/** Case files as loose JSON, to be changed in ways the types forbid. */
import type { CaseFile, Outcome } from '../../src/handoff/case-file.types.ts';
import { caseText, digestOf, entryHash } from '../../src/handoff/chain.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
export type Change = (file: Loose) => void;

export interface Loose {
  entries: unknown[];
}

/** The value, or an error that says why there is none. */
export function good<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`${outcome.reason} at ${outcome.where}: ${outcome.text}`);
  return outcome.value;
}

export const loose = (file: CaseFile): Loose => JSON.parse(caseText(file)) as Loose;

/** Sets the value at a path of keys and places joined by dots. */
export const put =
  (path: string, value: Json): Change =>
  (file) => {
    const keys = path.split('.');
    const last = keys.pop() ?? '';
    let at = file as unknown as Record<string, Json>;
    for (const key of keys) at = at[key] as Record<string, Json>;
    at[last] = value;
  };

/** Gives a changed file hashes and a digest that fit, as somebody with our source code could. One writer only. */
export async function rehashed(file: Loose): Promise<CaseFile> {
  const { caseId, entries } = file as unknown as { caseId: string; entries: { prev: string; hash: string }[] };
  let prev = '';
  for (const entry of entries) {
    entry.prev = prev;
    // oxlint-disable-next-line no-await-in-loop
    entry.hash = prev = await entryHash(caseId, entry as unknown as CaseFile['entries'][number]);
  }
  const whole = file as unknown as CaseFile;
  return { ...whole, digest: await digestOf(caseId, whole.entries) };
}
