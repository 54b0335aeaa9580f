/** Whole utterances that are one word of command or one answer: everything else in them must be politeness. */
import { fold } from './tokens.ts';
import type { LanguageTables } from './language.ts';
import type { CommandId, Expectation } from './types.ts';

const WORD = /[\p{L}\p{N}]+/gu;

/** Folded words of a text. */
export const wordsOf = (text: string): readonly string[] => fold(text).match(WORD) ?? [];

export interface PhraseBook {
  readonly commands: ReadonlyMap<string, CommandId>;
  readonly polite: ReadonlySet<string>;
  readonly note: ReadonlySet<string>;
  readonly hesitation: ReadonlySet<string>;
}

export function buildPhraseBook(tables: LanguageTables): PhraseBook {
  const commands = new Map<string, CommandId>();
  for (const [id, list] of Object.entries(tables.commands) as [CommandId, string][]) {
    for (const phrase of list.split(' ')) commands.set(phrase.replaceAll('_', ' '), id);
  }
  const set = (list: string): ReadonlySet<string> => new Set(list.split(' ').map((word) => word.replaceAll('_', ' ')));
  return { commands, polite: set(tables.polite), note: set(tables.note), hesitation: set(tables.hesitation) };
}

/** No command or answer is longer. */
const MOST_WORDS = 8;

/** How many words at `single`, or from `pair` on, are politeness: "please", "thank you". */
function politeWords(words: readonly string[], pair: number, single: number, book: PhraseBook): number {
  if (book.polite.has(words[single] ?? '')) return 1;
  return pair >= 0 && book.polite.has(`${words[pair]} ${words[pair + 1]}`) ? 2 : 0;
}

/** What `table` holds for these words: as they stand, or with politeness taken off either end; "yes yes" counts as "yes". */
export function match<T>(words: readonly string[], table: ReadonlyMap<string, T>, book: PhraseBook): T | undefined {
  const said = words.filter((word) => !book.hesitation.has(word));
  if (said.length === 0 || said.length > MOST_WORDS) return undefined;
  const one = said.every((word) => word === said[0]) ? said.slice(0, 1) : said;
  let from = 0;
  let to = one.length;
  for (;;) {
    const found = table.get(one.slice(from, to).join(' '));
    if (found !== undefined || to - from <= 1) return found;
    const end = politeWords(one, to - 2, to - 1, book);
    const start = end > 0 ? 0 : politeWords(one, from, from, book);
    if (end + start === 0) return undefined;
    to -= end;
    from += start;
  }
}

const answerTables = new WeakMap<Expectation['answers'], ReadonlyMap<string, string>>();

/** Words of the answers on offer, folded; a word two answers share belongs to neither. */
export function answersOf(expectation: Expectation): ReadonlyMap<string, string> {
  const known = answerTables.get(expectation.answers);
  if (known) return known;
  const table = new Map<string, string>();
  const shared = new Set<string>();
  for (const { id, words } of expectation.answers) {
    for (const phrase of words) {
      const key = wordsOf(phrase).join(' ');
      if (key === '') continue;
      if (table.has(key) && table.get(key) !== id) shared.add(key);
      table.set(key, id);
    }
  }
  for (const key of shared) table.delete(key);
  answerTables.set(expectation.answers, table);
  return table;
}

/** A remark to keep word for word, or undefined when the first word is not the note word. */
export function remarkIn(text: string, book: PhraseBook): string | undefined {
  const head = /^[^\p{L}]*(\p{L}+)[\s:,.–-]*/u.exec(text);
  if (!head || !book.note.has(fold(head[1] ?? ''))) return undefined;
  return text.slice(head[0].length).trim();
}
