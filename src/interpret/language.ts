/** What a language has to say about itself: plain tables, a rule for numbers below one hundred, and (apart) its words for reading back. */
import type { Language } from '../domain/protocol/types.ts';
import type { CommandId } from './types.ts';
import type { Line } from './line.ts';

/** A number below one hundred found at a place in the tokens. */
export interface Below100 {
  readonly value: number;
  readonly end: number;
  /** 10 when the unit's place is still empty ("sixty"), else 1. */
  readonly open: 1 | 10;
}

/** Reads a spoken number below one hundred at `i`. */
export type TensRule = (line: Line, i: number) => Below100 | undefined;

/**
 * Roles and the words that have them, blank-separated; `word=value` where a value is needed; `_` joins a phrase:
 * "one=1 scratch_that". Folded: lower case, no accents, no apostrophes.
 */
export type WordTable = readonly (readonly [roles: number, words: string])[];

/** Values of a language's whole numbers and decimals as words, for reading back. */
export interface Speech {
  /** 0…199 as words. */
  whole(n: number): string;
  readonly point: string;
  /** 0…9, as said after the point. */
  readonly digits: readonly string[];
  /** "and a half" */
  readonly half: string;
  readonly unit: string;
}

export interface LanguageTables {
  readonly language: Language;
  /** A decimal comma is usual, so a comma set apart between numerals is a point. */
  readonly commaIsPoint: boolean;
  readonly words: WordTable;
  /** Endings that make other forms of a harmless word: "measure", "measured". */
  readonly suffixes: string;
  /** "uh": dropped, wherever it stands. */
  readonly hesitation: string;
  /** Every command's words, as written, between bars; the first is the one shown on screen. */
  readonly commands: Readonly<Record<CommandId, string>>;
  /** Words that may stand around a command without changing it: "please". */
  readonly polite: string;
  /** First word of a remark to be kept. */
  readonly note: string;
  /** "fifty", not "fifteen": pairs an ear takes for one another, as "15/50". */
  readonly confused: string;
  readonly tens: TensRule;
  /** "A hundred AND two" is one number here. */
  readonly andAfterHundred: boolean;
}
