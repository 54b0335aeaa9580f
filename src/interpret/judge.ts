/** From the numbers in an utterance and the words around them to one meaning: a value, a question, or nothing. */
import { COPULA, DOUBTFUL, FIX, LABEL, SIDED, TALK, UNIT } from './roles.ts';
import type { SpokenUnit } from './roles.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import { has, touches } from './digits.ts';
import type { Lexicon } from './lexicon.ts';
import { soundsLikeNumber } from './near.ts';
import { TOO_LARGE } from './number.ts';
import { classify, scan } from './spans.ts';
import type { Found } from './spans.ts';
import type { UnclearReason } from './types.ts';
import type { Token } from './tokens.ts';

export interface Value {
  readonly kind: 'value';
  readonly value: Hundredths;
  readonly unit?: SpokenUnit;
  readonly correction: boolean;
  /** Heard with a word guessed or left over: never `sure`. */
  readonly doubtful: boolean;
  /** First and last token of number and unit. */
  readonly from: number;
  readonly to: number;
}
export type Meaning =
  | Value
  | { readonly kind: 'ask'; readonly candidates: readonly Hundredths[]; readonly reason: UnclearReason }
  | { readonly kind: 'unclear'; readonly reason: UnclearReason }
  | { readonly kind: 'none' };

const NOTHING: Meaning = { kind: 'none' };
const ask = (reason: UnclearReason, candidates: readonly Hundredths[]): Meaning => ({
  kind: 'ask',
  reason,
  candidates,
});

/** A reading is hardly ever told in more words than this. */
const MOST_WORDS = 14;

const candidatesOf = (found: readonly Found[]): readonly Hundredths[] => [
  ...new Set(found.flatMap((f) => (f.span.problem ? f.span.candidates : [f.span.value]))),
];

/** A correction was spoken between two tokens. */
function fixed(tokens: readonly Token[], from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (has(tokens, i, FIX)) return true;
  return false;
}

/** "62.5, no, point six", "62 no 6": only a part was corrected, and we cannot know which. */
const correctsOnlyAPart = (before: Found, after: Found): boolean =>
  !after.span.hasWhole ||
  (!after.span.decimal && after.span.value < 1000 && (before.span.value >= 1000 || before.span.value < 0));

interface Settled {
  readonly last: Found;
  readonly correction: boolean;
  readonly conflict: boolean;
}

/** Corrections and repetitions folded: what stands at the end, and whether a second reading remains beside it. */
function settle(tokens: readonly Token[], found: readonly Found[]): Settled {
  let last = found[0] as Found;
  let correction = fixed(tokens, 0, last.span.start);
  let conflict = false;
  for (const next of found.slice(1)) {
    const corrected = !next.denied && (last.denied || fixed(tokens, last.end, next.span.start));
    const same = next.span.problem === undefined && next.span.value === last.span.value && next.unit === last.unit;
    if (corrected && !same) {
      conflict ||= correctsOnlyAPart(last, next);
      correction = true;
    } else if (!same) conflict = true;
    last = next;
  }
  return { last, correction, conflict };
}

interface Around {
  readonly unknown: number;
  readonly others: number;
  readonly talk: boolean;
  readonly sided: boolean;
  readonly strayUnit: boolean;
}

function around(tokens: readonly Token[], found: readonly Found[]): Around {
  let unknown = 0;
  let others = 0;
  let roles = 0;
  let k = 0;
  for (let i = 0; i < tokens.length; i++) {
    while (k < found.length && (found[k] as Found).end <= i) k++;
    if (k < found.length && (found[k] as Found).span.start <= i) continue;
    const lex = (tokens[i] as Token).lex;
    others++;
    roles |= lex.roles;
    if (lex.roles === 0) unknown++;
  }
  const strayUnit = (roles & UNIT) !== 0 && found.every((f) => f.unit === undefined);
  return { unknown, others, talk: (roles & TALK) !== 0, sided: (roles & SIDED) !== 0, strayUnit };
}

/** A word that is in no table stands directly beside the number. */
const unknownAt = (tokens: readonly Token[], i: number, link: number): boolean =>
  i >= 0 && touches(tokens, link) && tokens[i]?.lex.roles === 0;

type Doubt = 'plain' | 'doubtful' | 'ask' | 'talk';

/** "these two", "at five", "reading five": a small bare number after such a word is hardly a value. */
function isSmallCount(tokens: readonly Token[], f: Found): boolean {
  if (f.span.decimal || f.unit !== undefined || f.span.value > 1200) return false;
  return f.span.start > 0 && touches(tokens, f.span.start) && has(tokens, f.span.start - 1, DOUBTFUL | LABEL);
}

/** What the words directly beside the number say about it. */
function beside(tokens: readonly Token[], f: Found, lexicon: Lexicon): Doubt {
  const strong = f.span.decimal || f.unit === 'mm';
  if (unknownAt(tokens, f.end, f.end)) {
    const near = soundsLikeNumber((tokens[f.end] as Token).text, lexicon);
    return near || strong ? 'ask' : f.span.value <= 2000 ? 'talk' : 'ask';
  }
  const before = f.span.start - 1;
  if (unknownAt(tokens, before, f.span.start)) {
    if (!strong || soundsLikeNumber((tokens[before] as Token).text, lexicon)) return 'ask';
    return 'doubtful';
  }
  return isSmallCount(tokens, f) ? 'ask' : 'plain';
}

/** What the rest of the utterance says about the number. */
function further(tokens: readonly Token[], f: Found, a: Around): Doubt {
  const strong = f.span.decimal || f.unit === 'mm';
  if (a.talk) return strong ? 'ask' : 'talk';
  if (a.sided || a.strayUnit || a.others > MOST_WORDS) return 'ask';
  if (a.unknown === 0) return 'plain';
  const told = f.span.start > 0 && has(tokens, f.span.start - 1, COPULA);
  if (a.unknown > 2) return 'ask';
  return strong || told ? 'doubtful' : 'ask';
}

/** "sixty two, no": taken back and nothing put in its place. */
function takenBack(tokens: readonly Token[], from: number): boolean {
  for (let i = from; i < tokens.length; i++)
    if (has(tokens, i, FIX) && (tokens[i] as Token).lex.value === 0) return true;
  return false;
}

function weigh(tokens: readonly Token[], found: readonly Found[], settled: Settled, lexicon: Lexicon): Meaning {
  const f = settled.last;
  const doubts = [beside(tokens, f, lexicon), further(tokens, f, around(tokens, found))];
  if (doubts.includes('talk')) return NOTHING;
  if (doubts.includes('ask') || takenBack(tokens, f.end)) return ask('noise', [f.span.value]);
  const doubtful = f.span.guess || doubts.includes('doubtful');
  const value = {
    kind: 'value',
    value: f.span.value,
    correction: settled.correction,
    doubtful,
    from: f.span.start,
    to: f.end,
  } as const;
  return f.unit === undefined ? value : { ...value, unit: f.unit };
}

function meaningOf(
  tokens: readonly Token[],
  found: readonly Found[],
  readings: readonly Found[],
  lexicon: Lexicon,
): Meaning {
  const settled = settle(tokens, readings);
  const { last } = settled;
  if (readings.every((f) => f.negative)) return { kind: 'unclear', reason: 'negative' };
  if (readings.every((f) => f.span.value >= TOO_LARGE)) return { kind: 'unclear', reason: 'outOfRange' };
  if (settled.conflict || readings.some((f) => f.negative)) return ask('twoNumbers', candidatesOf(readings));
  if (last.denied || last.span.value >= TOO_LARGE) return ask('noise', []);
  if (last.span.problem) return ask(last.span.problem, last.span.candidates);
  return weigh(tokens, found, settled, lexicon);
}

/** The one meaning of an utterance's numbers. */
export function judge(tokens: readonly Token[], lexicon: Lexicon): Meaning {
  const found = classify(tokens, scan(tokens, lexicon.tables));
  if (found.length === 0) return NOTHING;
  const readings = found.filter((f) => f.role === 'reading');
  if (readings.length === 0) return NOTHING;
  if (readings.length + found.filter((f) => f.role === 'label').length < found.length)
    return ask('twoNumbers', candidatesOf(readings));
  return meaningOf(tokens, found, readings, lexicon);
}
