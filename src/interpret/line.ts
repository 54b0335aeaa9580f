/** The tokens of one utterance, and small questions about them that every grammar rule asks. */
import { AND, ARTICLE, DIGIT, HALF, HUNDRED, MIDDLE, OH, POINT, QUARTER, SOUNDS, TEEN, TENS, UNIT } from './roles.ts';
import type { Lexicon } from './lexicon.ts';
import type { Numeral } from './numerals.ts';
import { COMMA, SPACE } from './tokens.ts';
import type { Token } from './tokens.ts';

/** Gap behind the last token. */
const END = 9;
const NUMBER = DIGIT | TEEN | TENS;

export class Line {
  readonly tokens: readonly Token[];
  readonly lexicon: Lexicon;
  readonly length: number;

  constructor(tokens: readonly Token[], lexicon: Lexicon) {
    this.tokens = tokens;
    this.lexicon = lexicon;
    this.length = tokens.length;
  }

  private at(i: number): Token | undefined {
    return i >= 0 && i < this.length ? this.tokens[i] : undefined;
  }

  text(i: number): string {
    return this.at(i)?.text ?? '';
  }

  value(i: number): number {
    return this.at(i)?.lex.value ?? 0;
  }

  gap(i: number): number {
    return this.at(i)?.gap ?? END;
  }

  numeral(i: number): Numeral | undefined {
    return this.at(i)?.numeral;
  }

  /** The numeral at `i` if it is a plain number. */
  figures(i: number): Numeral | undefined {
    const numeral = this.numeral(i);
    return numeral?.kind === 'number' ? numeral : undefined;
  }

  /** The word at `i` has one of these roles. */
  has(i: number, roles: number): boolean {
    return i >= 0 && i < this.length && ((this.tokens[i] as Token).lex.roles & roles) !== 0;
  }

  /** `i` follows the token before without more than a blank or a hyphen. */
  touches(i: number): boolean {
    return this.gap(i) <= SPACE;
  }

  /** Both: it follows closely and has one of these roles. */
  near(i: number, roles: number): boolean {
    return this.touches(i) && this.has(i, roles);
  }

  /** The word before `i`, if close, has one of these roles. */
  after(i: number, roles: number): boolean {
    return this.touches(i) && this.has(i - 1, roles);
  }

  /** There is a word at `i`, and it stands in no table. */
  unknown(i: number): boolean {
    return this.at(i)?.lex.roles === 0;
  }

  /** A half or a quarter, counted or not: "half", "a half", "three quarters". */
  part(i: number): boolean {
    return this.has(i, HALF | QUARTER) || (this.has(i, ARTICLE | DIGIT) && this.has(i + 1, HALF | QUARTER));
  }

  /** A digit that was guessed from a word that only sounds like it. */
  guessed(i: number): boolean {
    return this.has(i, SOUNDS | MIDDLE);
  }

  /** The digit said at `i`, 0…9, or -1. `inside`: another part of the same number stands directly before. */
  digit(i: number, inside: boolean): number {
    const value = this.value(i);
    if (this.has(i, DIGIT)) return value;
    if (this.has(i, SOUNDS)) return inside || this.soundIsDigit(i) ? value : -1;
    if (this.has(i, MIDDLE)) return inside && this.middleIsDigit(i) ? value : -1;
    return this.has(i, OH) && (inside || this.near(i + 1, POINT)) ? 0 : -1;
  }

  /** "to", "for" are digits only before the point, "and", a unit or the end, and only after another number word. */
  private middleIsDigit(i: number): boolean {
    if (this.gap(i + 1) >= COMMA || this.has(i + 1, POINT | UNIT)) return true;
    return this.has(i + 1, AND) && !this.has(i + 2, NUMBER);
  }

  /** A sound-alike starts a number only when a number goes on from it ("ate six point") or nothing else was said. */
  private soundIsDigit(i: number): boolean {
    if (this.length === 1) return true;
    if (!this.touches(i + 1)) return false;
    if (this.has(i + 1, NUMBER | HUNDRED | POINT | OH | SOUNDS)) return true;
    return this.has(i + 1, MIDDLE) ? this.has(i + 2, POINT) : this.has(i + 1, AND) && this.part(i + 2);
  }
}
