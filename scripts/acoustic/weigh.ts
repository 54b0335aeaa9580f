/** Gathers the sentences a sound may have been, and weighs them by how well each lies over the whole sound. */
import type { Expectation } from '../../src/interpret/types.ts';
import type { Ear, Path } from './ear.ts';
import { fitOf, scoreOf, textOf } from './hearing.ts';
import type { Hearing, Sentence } from './hearing.ts';
import { meaningOf } from './outcome.ts';
import { grammarOfSentences, rivalsOf } from './rivals.ts';

export interface Grammar {
  readonly name: string;
  readonly jsgf: string;
  readonly accepts: (sentence: string) => boolean;
  /** The same grammar in parts: numbers alone, numbers with names, commands … */
  readonly kinds: readonly { readonly name: string; readonly accepts: (sentence: string) => boolean }[];
}

/** Rivals looked for around the best sentence, and once more around a better one. */
const RIVALS = 6;
const ROUNDS = 2;
/** Weighed in both ways. */
const MOST_SENTENCES = 6;

interface Found {
  readonly text: string;
  readonly meaning: string;
  readonly path: Path;
}

/** What was found so far, the best of each meaning. */
interface Finds {
  readonly list: Map<string, Found>;
  readonly tried: Set<string>;
  /** Only whole sentences of the grammar count: a search also hands over what was only their beginning. */
  readonly note: (path: Path) => boolean;
}

function finds(grammar: Grammar, expectation: Expectation): Finds {
  const list = new Map<string, Found>();
  const tried = new Set<string>();
  const note = (path: Path): boolean => {
    const text = textOf(path);
    if (text === '' || !grammar.accepts(text)) return false;
    tried.add(text);
    const meaning = meaningOf(text, expectation);
    const old = list.get(meaning);
    if (old === undefined || scoreOf(old.path) < scoreOf(path)) list.set(meaning, { text, meaning, path });
    return true;
  };
  return { list, tried, note };
}

const ranked = ({ list }: Finds): readonly Found[] =>
  [...list.values()].sort((a, b) => scoreOf(b.path) - scoreOf(a.path));

/** The best sentences of another meaning that are easily taken for `best`, one after the other. */
async function findRivals(ear: Ear, found: Finds, at: { grammar: Grammar; expectation: Expectation; best: Found }) {
  const { grammar, expectation, best } = at;
  const meaning = (text: string): string => meaningOf(text, expectation);
  let pool = [...new Set(rivalsOf(best.text, grammar.jsgf))].filter((text) => grammar.accepts(text));
  for (let n = 0; n < RIVALS; n += 1) {
    pool = pool.filter((text) => !found.tried.has(text) && !found.list.has(meaning(text)));
    if (pool.length === 0) return;
    if (!found.note(await ear.once('cleaned', grammarOfSentences(pool)))) return;
  }
}

/** Everything worth weighing: what both ways find first, the best of every other kind, and the nearest rivals. */
async function gather(ear: Ear, grammar: Grammar, expectation: Expectation): Promise<[Finds, readonly string[]]> {
  const found = finds(grammar, expectation);
  const first = await ear.with('cleaned', grammar.name);
  found.note(first);
  for (const kind of grammar.kinds) if (!kind.accepts(textOf(first))) found.note(await ear.with('cleaned', kind.name));
  const second = textOf(await ear.with('as it is', grammar.name));
  if (grammar.accepts(second) && !found.tried.has(second))
    found.note(await ear.once('cleaned', grammarOfSentences([second])));
  for (let round = 0, last = ''; round < ROUNDS; round += 1) {
    const best = ranked(found)[0];
    if (best === undefined || best.text === last) break;
    last = best.text;
    await findRivals(ear, found, { grammar, expectation, best });
  }
  const firsts = [textOf(first), second].filter((text) => grammar.accepts(text));
  return [found, firsts.map((text) => meaningOf(text, expectation))];
}

/** The sentences the last sound may have been. */
export async function weigh(
  ear: Ear,
  grammar: Grammar,
  expectation: Expectation,
): Promise<Pick<Hearing, 'sentences' | 'agree'>> {
  const [found, firsts] = await gather(ear, grammar, expectation);
  const sentences: Sentence[] = [];
  for (const { text, meaning, path } of ranked(found).slice(0, MOST_SENTENCES)) {
    const asItIs = await ear.once('as it is', grammarOfSentences([text]));
    if (asItIs.length > 0) sentences.push({ text, meaning, cleaned: path, asItIs });
  }
  sentences.sort((a, b) => fitOf(b) - fitOf(a));
  return { sentences, agree: firsts.filter((meaning) => meaning === sentences[0]?.meaning).length };
}
