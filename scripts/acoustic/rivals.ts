/** Sentences that are easily taken for the one heard: one word other, one more or one less. The best of them is what to beat. */

const DIGITS = 'one two three four five six seven eight nine'.split(' ');
const TEENS = 'ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const FROM_TEN = [...TEENS, ...TENS];
const HUNDRED = ['one', 'hundred', 'and'];

type Words = readonly string[];

/** `words` with `length` of them from `at` on replaced. */
const put = (words: Words, [at, length]: readonly [at: number, length: number], instead: Words): Words => [
  ...words.slice(0, at),
  ...instead,
  ...words.slice(at + length),
];

const afterPoint = (words: Words, i: number): boolean => words[i - 1] === 'point';

/** What may stand at the place of one number word, itself and its neighbour included. */
function around(words: Words, i: number): readonly Words[] {
  const word = words[i] ?? '';
  const next = words[i + 1] ?? '';
  const one = (list: readonly string[]): readonly Words[] => list.map((other) => put(words, [i, 1], [other]));
  if (TENS.includes(word)) {
    const digit = DIGITS.includes(next);
    const more = digit
      ? [put(words, [i + 1, 1], []), put(words, [i, 1], [])]
      : DIGITS.map((d) => put(words, [i + 1, 0], [d]));
    return [...one(FROM_TEN), ...TEENS.map((teen) => put(words, [i, digit ? 2 : 1], [teen])), ...more];
  }
  if (TEENS.includes(word))
    return [...one([...FROM_TEN, ...DIGITS]), ...DIGITS.map((d) => put(words, [i, 1], ['eighty', d]))];
  if (word === 'zero' || DIGITS.includes(word)) {
    const close = afterPoint(words, i) ? [put(words, [i - 1, 2], []), put(words, [i + 1, 0], ['five'])] : one(FROM_TEN);
    return [...one(['zero', ...DIGITS]), ...close];
  }
  return [];
}

/** With and without a hundred, decimals, a half. */
function larger(words: Words): readonly Words[] {
  const at = words.indexOf('hundred');
  const first = words.findIndex((w) => FROM_TEN.includes(w) || DIGITS.includes(w));
  const half = words.indexOf('half');
  const last = words.findLastIndex((w) => FROM_TEN.includes(w) || DIGITS.includes(w) || w === 'hundred');
  const list: Words[] = [];
  if (at > 0) list.push(put(words, [at - 1, words[at + 1] === 'and' ? 3 : 2], []));
  else if (first >= 0) list.push(put(words, [first, 0], HUNDRED));
  if (half > 0) list.push(put(words, [half - 2, 3], []));
  else if (last >= 0 && !words.includes('point'))
    list.push(
      put(words, [last + 1, 0], ['and', 'a', 'half']),
      ...DIGITS.map((d) => put(words, [last + 1, 0], ['point', d])),
    );
  return list;
}

/** The phrases of one rule of the grammar. */
const phrasesOf = (jsgf: string, rule: string): readonly string[] =>
  new RegExp(`<${rule}> = ([^;]*);`).exec(jsgf)?.[1]?.split(' | ') ?? [];

/** The same number under every other name, and under none. */
function renamed(sentence: string, jsgf: string): readonly string[] {
  const names = phrasesOf(jsgf, 'name');
  const own = names.filter((name) => sentence.startsWith(`${name} `)).sort((a, b) => b.length - a.length)[0];
  if (own === undefined) return [];
  const rest = sentence.slice(own.length + 1);
  return [rest, ...names.map((name) => `${name} ${rest}`)];
}

/** Sentences to weigh `sentence` against; some may be none of the grammar, some may mean the same. */
export function rivalsOf(sentence: string, jsgf: string): readonly string[] {
  const words = sentence.split(' ');
  const numbers = [...words.flatMap((_, i) => around(words, i)), ...larger(words)].map((list) => list.join(' '));
  if (numbers.length > 0) return [...numbers, ...renamed(sentence, jsgf)];
  return [...phrasesOf(jsgf, 'command'), ...phrasesOf(jsgf, 'answer'), 'zero', ...DIGITS, ...FROM_TEN];
}

/** A grammar of exactly these sentences. */
export const grammarOfSentences = (sentences: readonly string[]): string =>
  `#JSGF V1.0; grammar once; public <said> = ${sentences.join(' | ')};`;
