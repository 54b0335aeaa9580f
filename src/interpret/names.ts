/** Finds a reading's name in an utterance ("upper width fifty-three") and takes it out of the grammar's way. */
import { COPULA, PLAIN } from './roles.ts';
import type { ExpectedReading } from './types.ts';
import { PAUSE } from './tokens.ts';
import type { Token } from './tokens.ts';
import { wordsOf } from './tokens.ts';

interface Name {
  readonly id: string;
  readonly words: readonly string[];
}

/** By first word, longest name first. */
type NameTable = ReadonlyMap<string, readonly Name[]>;

const tables = new WeakMap<readonly ExpectedReading[], NameTable>();

function nameTable(readings: readonly ExpectedReading[]): NameTable {
  const known = tables.get(readings);
  if (known) return known;
  const table = new Map<string, Name[]>();
  for (const { id, names } of readings) {
    for (const name of names) {
      const words = wordsOf(name);
      const first = words[0];
      if (first === undefined) continue;
      const list = table.get(first) ?? [];
      list.push({ id, words });
      list.sort((a, b) => b.words.length - a.words.length);
      table.set(first, list);
    }
  }
  tables.set(readings, table);
  return table;
}

export interface Named {
  readonly tokens: readonly Token[];
  /** Ids of the readings named; a name two readings share gives both. */
  readonly ids: readonly string[];
}

const NAMED = { roles: PLAIN | COPULA, value: 0 };

/** Tokens joined to phrases are compared by their words. */
function matchLength(tokens: readonly Token[], i: number, words: readonly string[]): number {
  let at = i;
  let k = 0;
  while (k < words.length) {
    const token = tokens[at];
    if (!token || token.numeral || (at > i && token.gap > PAUSE)) return 0;
    for (const part of token.text.split(' ')) if (part !== words[k++]) return 0;
    at++;
  }
  return at - i;
}

/** Replaces every reading's name by one harmless token. */
export function takeNames(tokens: readonly Token[], readings: readonly ExpectedReading[]): Named {
  if (readings.length === 0) return { tokens, ids: [] };
  const table = nameTable(readings);
  const out: Token[] = [];
  const ids: string[] = [];
  for (let i = 0; i < tokens.length;) {
    const token = tokens[i] as Token;
    const list = token.numeral ? undefined : table.get(token.text.split(' ', 1)[0] ?? '');
    let length = 0;
    for (const name of list ?? []) {
      const found =
        length === 0 ? matchLength(tokens, i, name.words) : matchLength(tokens, i, name.words) === length ? length : 0;
      if (found === 0) continue;
      length = found;
      if (!ids.includes(name.id)) ids.push(name.id);
    }
    if (length > 0) out.push({ text: token.text, gap: token.gap, lex: NAMED });
    else out.push(token);
    i += length || 1;
  }
  return { tokens: out, ids };
}
