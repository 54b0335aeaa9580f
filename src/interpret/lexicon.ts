/** A language's tables made ready for looking up. Built once a language. */
import {
  ALIEN,
  AND,
  ARTICLE,
  COPULA,
  DOUBTFUL,
  HALF,
  LABEL,
  NUMBER_WORD,
  ORDINAL,
  PLAIN,
  POINT,
  POINTING,
  QUARTER,
  TALK,
  UNIT,
  UNKNOWN,
} from './roles.ts';
import type { Lexeme } from './roles.ts';
import type { LanguageTables } from './language.ts';
import { PAUSE, wordsOf } from './tokens.ts';
import type { Token } from './tokens.ts';
import type { CommandId } from './types.ts';

/** A lexeme for some tokens taken together. */
interface Joined {
  readonly length: number;
  readonly lex: Lexeme;
}

/** Roles a word keeps when it is inflected. Number words never are: "fifths" and "sixes" are not "five" and "six". */
const INFLECTS = PLAIN | COPULA | LABEL | TALK | UNIT | ALIEN | ORDINAL | POINTING | DOUBTFUL;
/** What the last word of a phrase still does: "call that one", "both of the two". */
const KEPT = POINTING | DOUBTFUL;
const SHORTEST_STEM = 3;
/** What number words written together are made of. */
const JOINED = NUMBER_WORD | AND | ARTICLE | HALF | POINT | QUARTER;
const LONGEST_JOINED = 50;

const unjoin = (phrase: string): string => phrase.replaceAll('_', ' ');
const listed = (list: string): readonly string[] => list.split(' ').map(unjoin);

export class Lexicon {
  readonly tables: LanguageTables;
  /** Folded words of a command → the command. */
  readonly commands: ReadonlyMap<string, CommandId>;
  readonly hesitations: ReadonlySet<string>;
  /** Words that may stand around a command or a small number without changing it. */
  readonly polite: ReadonlySet<string>;
  readonly notes: ReadonlySet<string>;
  /** Single words that are part of a number. */
  readonly numberWords: readonly string[];
  private readonly suffixes: readonly string[];
  private readonly lexemes = new Map<string, Lexeme>();
  /** Words of the longest phrase that starts with a word. */
  private readonly longest = new Map<string, number>();

  constructor(tables: LanguageTables) {
    this.tables = tables;
    this.hesitations = new Set(listed(tables.hesitation));
    this.polite = new Set(listed(tables.polite));
    this.notes = new Set(listed(tables.note));
    this.suffixes = listed(tables.suffixes);
    for (const [roles, list] of tables.words) this.learn(roles, list);
    this.numberWords = [...this.lexemes].filter(([, lex]) => (lex.roles & NUMBER_WORD) !== 0).map(([word]) => word);
    const commands = Object.entries(tables.commands) as [CommandId, string][];
    this.commands = new Map(
      commands.flatMap(([id, list]) => list.split('|').map((phrase) => [wordsOf(phrase).join(' '), id])),
    );
  }

  private learn(roles: number, list: string): void {
    for (const entry of list.split(' ')) {
      const [joined = '', value = 0] = entry.split('=');
      const word = unjoin(joined);
      const old = this.lexemes.get(word) ?? UNKNOWN;
      this.lexemes.set(word, { roles: old.roles | roles, value: Number(value) || old.value });
      const words = word.split(' ');
      const first = words[0] ?? '';
      if (words.length > 1) this.longest.set(first, Math.max(words.length, this.longest.get(first) ?? 0));
    }
  }

  lookup(word: string): Lexeme {
    return this.lexemes.get(word) ?? this.inflected(word);
  }

  /** "measured", "gauges": the word without its ending, if that is known and harmless. */
  private inflected(word: string): Lexeme {
    for (const suffix of this.suffixes) {
      if (!word.endsWith(suffix) || word.length < suffix.length + SHORTEST_STEM) continue;
      const stem = word.slice(0, -suffix.length);
      const lex = this.lexemes.get(stem) ?? this.lexemes.get(`${stem}e`);
      if (lex && (lex.roles & ~INFLECTS) === 0) return lex;
    }
    return UNKNOWN;
  }

  /** Number words written together, one by one: "sixtytwo", "zweiundsechzigeinhalb". Undefined when anything is left over. */
  apart(word: string): readonly string[] | undefined {
    if (word.length > LONGEST_JOINED) return undefined;
    for (let end = word.length; end > 0; end--) {
      const part = word.slice(0, end);
      if (!((this.lexemes.get(part)?.roles ?? 0) & JOINED)) continue;
      const rest = end < word.length ? this.apart(word.slice(end)) : [];
      if (rest) return [part, ...rest];
    }
    return undefined;
  }

  /** Words that mean something together: the longest phrase that starts at `i`. It points ("call that") if its last word does. */
  phraseAt(tokens: readonly Token[], i: number): Joined | undefined {
    const most = this.longest.get((tokens[i] as Token).text) ?? 1;
    for (let length = Math.min(most, tokens.length - i); length > 1; length--) {
      const words = tokens.slice(i, i + length);
      const lex = words.every((t, k) => k === 0 || t.gap <= PAUSE)
        ? this.lexemes.get(words.map((t) => t.text).join(' '))
        : undefined;
      if (lex) return { length, lex: { ...lex, roles: lex.roles | ((words[length - 1] as Token).lex.roles & KEPT) } };
    }
    return undefined;
  }
}
