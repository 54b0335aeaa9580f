/** A language's tables made ready for looking up. Built once a language. */
import {
  ALIEN,
  AND,
  ARTICLE,
  CLOCK,
  COPULA,
  DIGIT,
  DOUBTFUL,
  FIX,
  HALF,
  HUNDRED,
  HUNDREDS,
  LABEL,
  MIDDLE,
  MONTH,
  NEGATIVE,
  NOT,
  NUMBER_WORD,
  OH,
  ORDINAL,
  PARTS,
  PLAIN,
  POINT,
  POINTING,
  QUARTER,
  RANGE,
  SIDED,
  SOUNDS,
  TALK,
  TEEN,
  TENS,
  THOUSAND,
  UNIT,
  UNKNOWN,
} from './roles.ts';
import type { Lexeme } from './roles.ts';
import type { LanguageTables, RoleName } from './language.ts';
import type { Token, Words } from './tokens.ts';

const ROLE: Readonly<Record<RoleName, number>> = {
  digit: DIGIT,
  teen: TEEN,
  tens: TENS,
  hundred: HUNDRED,
  hundreds: HUNDREDS,
  thousand: THOUSAND,
  point: POINT,
  and: AND,
  half: HALF,
  quarter: QUARTER,
  parts: PARTS,
  article: ARTICLE,
  oh: OH,
  middle: MIDDLE,
  sounds: SOUNDS,
  plain: PLAIN,
  label: LABEL,
  ordinal: ORDINAL,
  fix: FIX,
  negative: NEGATIVE,
  range: RANGE,
  sided: SIDED,
  unit: UNIT,
  alien: ALIEN,
  clock: CLOCK,
  month: MONTH,
  talk: TALK,
  copula: COPULA,
  pointing: POINTING,
  doubtful: DOUBTFUL,
  not: NOT,
};

interface Phrase {
  readonly words: readonly string[];
  readonly lex: Lexeme;
}

export interface Lexicon extends Words {
  readonly tables: LanguageTables;
  /** Single words that are part of a number, for telling a slip of the ear from a plain word. */
  readonly numberWords: readonly string[];
  isPolite(text: string): boolean;
}

const add = (map: Map<string, Lexeme>, word: string, role: number, value: number): void => {
  const old = map.get(word) ?? UNKNOWN;
  map.set(word, { roles: old.roles | role, value: value || old.value });
};

function addPhrase(phrases: Map<string, Phrase[]>, joined: string, lex: Lexeme): void {
  const words = joined.split('_');
  const first = words[0] ?? '';
  const list = phrases.get(first) ?? [];
  const same = list.findIndex((p) => p.words.join('_') === joined);
  if (same >= 0) list[same] = { words, lex: { roles: lex.roles | (list[same] as Phrase).lex.roles, value: lex.value } };
  else list.push({ words, lex });
  list.sort((a, b) => b.words.length - a.words.length);
  phrases.set(first, list);
}

/** A table's entries as [word, value]. */
export function entries(list: string): readonly (readonly [string, number])[] {
  return list
    .trim()
    .split(/\s+/)
    .filter((entry) => entry !== '')
    .map((entry) => {
      const [word = '', value] = entry.split('=');
      return [word, value === undefined ? 0 : Number(value)] as const;
    });
}

const matches = (phrase: Phrase, tokens: readonly Token[], i: number): boolean =>
  phrase.words.every((word, k) => {
    const token = tokens[i + k];
    return token !== undefined && token.text === word && (k === 0 || token.gap <= 3);
  });

function phraseFinder(phrases: ReadonlyMap<string, readonly Phrase[]>): Words['phraseAt'] {
  return (tokens, i) => {
    const list = phrases.get((tokens[i] as Token).text);
    if (!list) return undefined;
    const phrase = list.find((p) => matches(p, tokens, i));
    if (!phrase) return undefined;
    const length = phrase.words.length;
    const pointing = (tokens[i + length - 1] as Token).lex.roles & POINTING;
    return { length, lex: pointing === 0 ? phrase.lex : { ...phrase.lex, roles: phrase.lex.roles | pointing } };
  };
}

/** Roles a word keeps when it is inflected. Number words never are: "fifths" and "sixes" are not "five" and "six". */
const INFLECTS = PLAIN | COPULA | LABEL | TALK | UNIT | ALIEN | ORDINAL;

/** "measured", "gauges": the word without its ending, if that is known and harmless. */
function inflected(word: string, map: ReadonlyMap<string, Lexeme>, suffixes: readonly string[]): Lexeme {
  for (const suffix of suffixes) {
    if (!word.endsWith(suffix) || word.length < suffix.length + 3) continue;
    const stem = word.slice(0, -suffix.length);
    const lex = map.get(stem) ?? map.get(`${stem}e`);
    if (lex && (lex.roles & ~INFLECTS) === 0) return lex;
  }
  return UNKNOWN;
}

export function buildLexicon(tables: LanguageTables): Lexicon {
  const map = new Map<string, Lexeme>();
  const phrases = new Map<string, Phrase[]>();
  for (const [name, list] of Object.entries(tables.words) as [RoleName, string][]) {
    for (const [word, value] of entries(list)) {
      if (word.includes('_')) addPhrase(phrases, word, { roles: ROLE[name], value });
      else add(map, word, ROLE[name], value);
    }
  }
  const hesitations = new Set(tables.hesitation.split(' '));
  const polite = new Set(tables.polite.split(' ').map((word) => word.replaceAll('_', ' ')));
  const suffixes = tables.suffixes.split(' ');
  const numberWords = [...map].filter(([, lex]) => (lex.roles & NUMBER_WORD) !== 0).map(([word]) => word);
  const lexicon: Lexicon = {
    tables,
    numberWords,
    isPolite: (text) => polite.has(text),
    commaIsPoint: tables.commaIsPoint,
    lookup: (word) => map.get(word) ?? inflected(word, map, suffixes),
    isHesitation: (word) => hesitations.has(word),
    split: (word) => tables.split?.(word),
    phraseAt: phraseFinder(phrases),
  };
  return lexicon;
}
