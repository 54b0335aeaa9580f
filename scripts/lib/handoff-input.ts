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

function linesOf(text: string): Outcome<Taken> {
  const raw: unknown[] = [];
  for (const [i, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue;
    try {
      raw.push(JSON.parse(line));
    } catch {
      return refused(`line ${i + 1}`, `line ${i + 1} is not JSON.`);
    }
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
  if (json === undefined || format === undefined) return linesOf(text);
  const file = await readCaseFile(text, passphrase);
  return file.ok ? { ok: true, value: { facts: toFacts(file.value) } } : file;
}
