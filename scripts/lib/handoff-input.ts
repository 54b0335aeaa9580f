/** The facts of one case from whatever a person hands to the command: a case file, a saved record, or JSON lines. */
import { readCaseFile } from '../../src/app/handoff.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { parseFacts } from '../../src/domain/case/parse.ts';
import { toFacts } from '../../src/handoff/case-file.ts';
import type { Outcome, Refused } from '../../src/handoff/case-file.types.ts';

export interface Taken {
  readonly facts: readonly Fact[];
}

const refused = (where: string, text: string): Refused => ({ ok: false, reason: 'malformed', where, text });

function parsed(raw: readonly unknown[]): Outcome<Taken> {
  const result = parseFacts(raw);
  if (!result.ok) {
    const where = result.path === '' ? '' : ` (${result.path})`;
    return refused(`entry ${result.at}`, `entry ${result.at} cannot be read${where}: ${result.text}`);
  }
  if (result.facts.length === 0) return refused('', 'there is nothing in it.');
  return { ok: true, value: { facts: result.facts } };
}

function wholeJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** JSON lines of facts begin with one; anything else is no record, whatever its lines hold. */
function isRecord(lines: readonly string[]): boolean {
  const first = lines.find((line) => line.trim() !== '');
  if (first === undefined) return true;
  const json = wholeJson(first);
  return typeof json === 'object' && json !== null && 'seq' in json && 'body' in json;
}

function linesOf(lines: readonly string[]): Outcome<Taken> {
  const raw: unknown[] = [];
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '') continue;
    const json = wholeJson(line);
    if (json === undefined)
      return refused(`line ${i + 1}`, `line ${i + 1} is not JSON: it is cut off or not a line of a case.`);
    raw.push(json);
  }
  return parsed(raw);
}

/** Refuses with a sentence and, where there is one, the place. A case file's facts keep the origin of each entry. */
export async function factsIn(text: string, passphrase?: string): Promise<Outcome<Taken>> {
  const json = wholeJson(text);
  const { format, facts } = (typeof json === 'object' && json !== null ? json : {}) as {
    format?: unknown;
    facts?: unknown;
  };
  if (format === 'rimwise-facts') return parsed(Array.isArray(facts) ? facts : []);
  const lines = text.split(/\r?\n/);
  if (format === undefined && isRecord(lines)) return linesOf(lines);
  // The same words as where the app takes a file in.
  const file = await readCaseFile(text, passphrase);
  return file.ok ? { ok: true, value: { facts: toFacts(file.value) } } : file;
}
