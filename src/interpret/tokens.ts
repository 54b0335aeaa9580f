/** Cuts an utterance into words and numerals, each with the pause that stands before it. Never throws, whatever the text. */
import { POINT, UNKNOWN } from './roles.ts';
import type { Lexeme } from './roles.ts';
import type { Lexicon } from './lexicon.ts';
import { numeralAt } from './numerals.ts';
import type { Numeral } from './numerals.ts';

/** What separates a token from the one before, from nothing at all to the end of a sentence. */
export const DIRECT = 0;
export const HYPHEN = 1;
export const SPACE = 2;
/** A hesitation ("uh") was said here. */
export const PAUSE = 3;
export const COMMA = 4;
export const STOP = 5;

export interface Token {
  readonly text: string;
  readonly gap: number;
  readonly lex: Lexeme;
  readonly numeral?: Numeral;
}

const FULL_WIDTH = /[\uff01-\uff5e]/g;
const MARKS = /[\u0300-\u036f]/g;
const isPlain = (s: string): boolean => {
  for (let i = 0; i < s.length; i++) if (s.charCodeAt(i) > 127) return false;
  return true;
};

/** Lower case, accents off, typographic variants to plain ones. Superscripts and other number signs stay what they are. */
export function fold(text: string): string {
  const lower = text.toLowerCase();
  if (isPlain(lower)) return lower;
  return lower
    .replace(FULL_WIDTH, (c) => String.fromCharCode(c.charCodeAt(0) - 0xfee0))
    .toLowerCase()
    .normalize('NFD')
    .replace(MARKS, '')
    .replace(/ß/g, 'ss')
    .replace(/œ/g, 'oe')
    .replace(/æ/g, 'ae')
    .replace(/[’‘ʼ`´]/g, "'")
    .replace(/[‐‑‒–]/g, '-')
    .replace(/㎜/g, 'mm')
    .replace(/−(?=\s*\d)/g, '-');
}

const WORD = /[\p{L}\p{N}]+/gu;
/** Folded words of a text. */
export const wordsOf = (text: string): readonly string[] => fold(text).match(WORD) ?? [];

const isDigit = (c: number): boolean => c >= 48 && c <= 57;
const isAsciiLetter = (c: number): boolean => c >= 97 && c <= 122;
const LETTER = /^[\p{L}\p{M}]$/u;
const ODD_NUMBER = /^\p{N}$/u;
const isLetter = (s: string, i: number): boolean => {
  const c = s.charCodeAt(i);
  return isAsciiLetter(c) || (c > 127 && LETTER.test(s[i] ?? ''));
};
const isBlank = (c: number): boolean =>
  c === 32 || (c >= 9 && c <= 13) || c === 160 || (c >= 0x2000 && c <= 0x200d) || c === 0x202f || c === 0xfeff;
/** Signs that are words: "62%", "±62", "62°". */
const SIGNS = '%€$£°±<>≤≥&#@';

function gapOf(c: number): number {
  if (isBlank(c)) return SPACE;
  if (c === 45) return HYPHEN;
  if (c === 39) return HYPHEN;
  if (c === 46 || c === 33 || c === 63 || c === 0x2026 || c === 10) return STOP;
  if (c === 34) return SPACE;
  return COMMA;
}

/** A dash before a digit is a minus only when nothing is written directly before it. */
function isMinus(s: string, i: number): boolean {
  if (s.charCodeAt(i) !== 45) return false;
  const after = s.charCodeAt(i + 1);
  const alone = i === 0 || isBlank(s.charCodeAt(i - 1));
  return (
    alone &&
    (isDigit(after) ||
      ((after === 46 || after === 44) && isDigit(s.charCodeAt(i + 2))) ||
      (i === 0 && /^-\s+\d/.test(s)))
  );
}

class Cutter {
  readonly out: Token[] = [];
  private readonly s: string;
  private readonly words: Lexicon;
  private gap = STOP;
  private i = 0;
  private minus = false;

  constructor(s: string, words: Lexicon) {
    this.s = s;
    this.words = words;
  }

  run(): Token[] {
    while (this.i < this.s.length) this.step();
    return this.out;
  }

  private step(): void {
    const c = this.s.charCodeAt(this.i);
    if (isLetter(this.s, this.i)) return this.word();
    const numeral = numeralAt(this.s, this.i);
    if (numeral) return this.numeral(numeral);
    if (isMinus(this.s, this.i)) return this.sign();
    if (c === 46 || c === 44) return this.dot(c);
    const sign = this.s[this.i] ?? '';
    if (SIGNS.includes(sign) || (c > 127 && ODD_NUMBER.test(sign))) return this.push(sign, this.i + 1);
    this.pass(gapOf(c));
  }

  private pass(gap: number): void {
    if (gap > this.gap) this.gap = gap;
    this.i++;
  }

  private sign(): void {
    this.minus = true;
    this.pass(SPACE);
  }

  /** A full stop or comma standing alone between numerals is a decimal point that a recogniser set apart: "76 . 5". */
  private dot(c: number): void {
    const alone =
      isBlank(this.s.charCodeAt(this.i - 1)) &&
      isBlank(this.s.charCodeAt(this.i + 1)) &&
      isDigit(this.s.charCodeAt(this.i + 2));
    const last = this.out[this.out.length - 1];
    if (last?.numeral && (alone || this.isTornPoint(c)) && (c === 46 || this.words.tables.commaIsPoint)) {
      this.out.push({ text: '.', gap: SPACE, lex: { roles: POINT, value: 0 } });
      this.gap = SPACE;
      this.i++;
    } else this.pass(c === 46 ? STOP : COMMA);
  }

  /** "92. 7": the recogniser took the point for the end of a sentence. Two digits ("62. 63") are two readings. */
  private isTornPoint(c: number): boolean {
    return c === 46 && this.gap === DIRECT && /^\. \d(?![\d.,:/])/.test(this.s.slice(this.i, this.i + 4));
  }

  private numeral(n: Numeral): void {
    const glued = this.gap === DIRECT && this.out.length > 0 && !this.out[this.out.length - 1]?.numeral;
    const kind = glued ? 'code' : n.kind;
    this.out.push({
      text: this.s.slice(this.i, n.end),
      gap: this.gap,
      lex: UNKNOWN,
      numeral: { ...n, kind, negative: this.minus },
    });
    this.after(n.end);
  }

  private word(): void {
    let end = this.i + 1;
    while (end < this.s.length && isLetter(this.s, end)) end++;
    this.push(this.s.slice(this.i, end), end);
  }

  private push(text: string, end: number): void {
    if (this.words.hesitations.has(text)) {
      this.i = end;
      if (this.gap < PAUSE) this.gap = PAUSE;
      return;
    }
    const lex = this.words.lookup(text);
    const parts = lex === UNKNOWN ? this.words.apart(text) : undefined;
    if (parts) this.pushParts(parts);
    else this.out.push({ text, gap: this.gap, lex });
    this.after(end);
  }

  private pushParts(parts: readonly string[]): void {
    for (const part of parts) {
      this.out.push({ text: part, gap: this.gap, lex: this.words.lookup(part) });
      this.gap = DIRECT;
    }
  }

  private after(end: number): void {
    this.i = end;
    this.gap = DIRECT;
    this.minus = false;
  }
}

function joinPhrases(tokens: Token[], words: Lexicon): Token[] {
  let out: Token[] | undefined;
  for (let i = 0; i < tokens.length;) {
    const token = tokens[i] as Token;
    const phrase = token.numeral ? undefined : words.phraseAt(tokens, i);
    if (phrase) {
      out ??= tokens.slice(0, i);
      const text = tokens
        .slice(i, i + phrase.length)
        .map((t) => t.text)
        .join(' ');
      out.push({ text, gap: token.gap, lex: phrase.lex });
      i += phrase.length;
    } else {
      out?.push(token);
      i++;
    }
  }
  return out ?? tokens;
}

/** Words and numerals of an utterance, phrases joined. */
export function tokenise(text: string, words: Lexicon): readonly Token[] {
  return joinPhrases(new Cutter(fold(text), words).run(), words);
}
