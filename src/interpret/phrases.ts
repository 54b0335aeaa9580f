/** Whole utterances that are one word of command or one answer: everything else in them must be politeness. */
import type { Lexicon } from './lexicon.ts';
import { wordsOf } from './tokens.ts';
import type { Expectation } from './types.ts';

/** No command or answer is longer. */
const MOST_WORDS = 8;

/** What `table` holds for these words: as they stand, or with politeness taken off either end; "yes yes" counts as "yes". */
export function match<T>(words: readonly string[], table: ReadonlyMap<string, T>, { polite }: Lexicon): T | undefined {
  if (words.length === 0 || words.length > MOST_WORDS) return undefined;
  let rest = words.every((word) => word === words[0]) ? words.slice(0, 1) : words;
  for (;;) {
    const found = table.get(rest.join(' '));
    if (found !== undefined || rest.length < 2) return found;
    if (polite.has(rest[rest.length - 1] ?? '')) rest = rest.slice(0, -1);
    else if (polite.has(rest.slice(-2).join(' '))) rest = rest.slice(0, -2);
    else if (polite.has(rest[0] ?? '')) rest = rest.slice(1);
    else return undefined;
  }
}

const answerTables = new WeakMap<Expectation['answers'], ReadonlyMap<string, string>>();

/** Words of the answers on offer, folded; a word two answers share belongs to neither. */
export function answersOf({ answers }: Expectation): ReadonlyMap<string, string> {
  const known = answerTables.get(answers);
  if (known) return known;
  const table = new Map<string, string>();
  for (const { id, words } of answers) {
    for (const phrase of words) {
      const key = wordsOf(phrase).join(' ');
      table.set(key, table.has(key) && table.get(key) !== id ? SHARED : id);
    }
  }
  for (const [key, id] of table) if (id === SHARED) table.delete(key);
  answerTables.set(answers, table);
  return table;
}

/** No answer has this id. */
const SHARED = '\0';
