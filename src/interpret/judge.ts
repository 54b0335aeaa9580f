/** From the numbers in an utterance and the words around them to one meaning: a value, a question, or nothing. */
import { AND, COPULA, DOUBTFUL, FIX, LABEL, MIDDLE, OH, POINT, SIDED, TALK, UNIT } from './roles.ts';
import type { SpokenUnit } from './roles.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import { has, touches } from './digits.ts';
import type { Lexicon } from './lexicon.ts';
import { soundsLikeNumber } from './near.ts';
import { TOO_LARGE } from './number.ts';
import { classify, scan } from './spans.ts';
import type { Found } from './spans.ts';
import type { UnclearReason } from './types.ts';
import { SPACE } from './tokens.ts';
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

/** Bare numbers up to here are counts, hours or pronouns as often as readings. */
const SMALL = 1200;

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

/** A small whole number without a unit: "one by one" is no repetition of a reading. */
const isBare = (f: Found): boolean =>
  f.unit === undefined && f.span.value <= SMALL && (!f.span.decimal || !f.span.hasWhole);

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
    const same =
      !(isBare(next) && touches(tokens, next.span.start)) &&
      next.span.problem === undefined &&
      next.span.value === last.span.value &&
      next.unit === last.unit;
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
  readonly strayUnit: boolean;
}

function around(tokens: readonly Token[], found: readonly Found[]): Around {
  let unknown = 0;
  let others = 0;
  let roles = 0;
  let strayUnit = false;
  let k = 0;
  for (let i = 0; i < tokens.length; i++) {
    while (k < found.length && (found[k] as Found).end <= i) k++;
    if (k < found.length && (found[k] as Found).span.start <= i) continue;
    const lex = (tokens[i] as Token).lex;
    others++;
    roles |= lex.roles;
    if (lex.roles & UNIT && lex.value > 0) strayUnit = true;
    if (lex.roles === 0) unknown++;
  }
  return { unknown, others, talk: (roles & TALK) !== 0, strayUnit };
}

/** A word that is in no table stands directly beside the number. */
const unknownAt = (tokens: readonly Token[], i: number, link: number): boolean =>
  i >= 0 && touches(tokens, link) && tokens[i]?.lex.roles === 0;

type Doubt = 'plain' | 'doubtful' | 'ask' | 'talk';

/** What stands before a small bare number lets it be a reading: nothing, a pause, "is", "please", a correction. */
function introduced(tokens: readonly Token[], f: Found, lexicon: Lexicon): boolean {
  const before = f.span.start - 1;
  const gap = (tokens[f.span.start] as Token).gap;
  if (before < 0 || gap > SPACE) return true;
  return has(tokens, before, COPULA | FIX | AND | OH) || lexicon.isPolite((tokens[before] as Token).text);
}

/** "tray five", "batch number 62": the number names a thing. */
function isNumbered(tokens: readonly Token[], i: number): boolean {
  let at = i;
  while (has(tokens, at, LABEL) && !has(tokens, at, DOUBTFUL)) at--;
  return has(tokens, at, LABEL);
}

/** "these two", "high five", "tray five": a small bare number is a reading only when nothing else speaks. */
function smallCount(tokens: readonly Token[], f: Found, lexicon: Lexicon): Doubt {
  if (f.span.decimal || f.unit !== undefined) return 'plain';
  const before = touches(tokens, f.span.start) ? f.span.start - 1 : -1;
  const numbered = isNumbered(tokens, before);
  if (f.span.value > SMALL) return numbered ? 'ask' : 'plain';
  if (numbered) return 'talk';
  return introduced(tokens, f, lexicon) && !talksOn(tokens, f.end, lexicon) ? 'plain' : 'ask';
}

/** Something other than politeness, a correction or a place follows the number. */
function talksOn(tokens: readonly Token[], from: number, lexicon: Lexicon): boolean {
  for (let i = from; i < tokens.length; i++) {
    const token = tokens[i] as Token;
    if (touches(tokens, i) && !has(tokens, i, FIX) && !lexicon.isPolite(token.text)) return true;
  }
  return false;
}

/** "sixty fine", "sixty for the upper": the word after an open number may have been its digit. */
const isHalfHeard = (tokens: readonly Token[], f: Found, lexicon: Lexicon): boolean =>
  f.span.open &&
  f.end === f.span.end &&
  touches(tokens, f.end) &&
  (has(tokens, f.end, MIDDLE) || soundsLikeNumber((tokens[f.end] as Token).text, lexicon));

/** "just under sixty", "at least fifty", "sixty and a bit": not the number said. */
function isSided(tokens: readonly Token[], f: Found): boolean {
  const { start } = f.span;
  if (start > 0 && touches(tokens, start) && has(tokens, start - 1, SIDED)) return true;
  if (start > 1 && touches(tokens, start - 1) && has(tokens, start - 2, SIDED) && touches(tokens, start)) return true;
  return touches(tokens, f.end) && has(tokens, f.end, SIDED);
}

/** "half", "three quarters" without a unit: of what? */
const isBarePart = (tokens: readonly Token[], f: Found): boolean =>
  !f.span.hasWhole &&
  f.unit === undefined &&
  tokens[f.span.start]?.numeral === undefined &&
  !has(tokens, f.span.start, POINT);

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
  if (isSided(tokens, f) || isHalfHeard(tokens, f, lexicon)) return 'ask';
  if (isBarePart(tokens, f))
    return introduced(tokens, f, lexicon) && !talksOn(tokens, f.end, lexicon) ? 'plain' : 'ask';
  return smallCount(tokens, f, lexicon);
}

/** What the rest of the utterance says about the number. */
function further(tokens: readonly Token[], f: Found, a: Around): Doubt {
  const strong = f.span.decimal || f.unit === 'mm';
  if (a.talk) return strong ? 'ask' : 'talk';
  if (a.strayUnit || a.others > MOST_WORDS) return 'ask';
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
  if (settled.conflict && around(tokens, found).talk && !readings.some((f) => f.span.decimal || f.unit === 'mm'))
    return NOTHING;
  if (settled.conflict || readings.some((f) => f.negative)) return ask('twoNumbers', candidatesOf(readings));
  if (last.denied || last.span.value >= TOO_LARGE) return ask('noise', []);
  if (last.span.problem) return around(tokens, found).talk ? NOTHING : ask(last.span.problem, last.span.candidates);
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
