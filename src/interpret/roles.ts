/**
 * What a word can be inside a dictated reading. A word may be several things at once ("to" is a sound-alike of two and the
 * middle of a range), so roles are bits; the grammar rules decide by place which one is meant.
 */
export const DIGIT = 1 << 0;
/** A closed number from ten upwards that takes no further digit: "fifteen", "veintidós". */
export const TEEN = 1 << 1;
/** A round ten with an empty place for a digit: "sixty". */
export const TENS = 1 << 2;
/** Multiplies the digit before it: "hundred". */
export const HUNDRED = 1 << 3;
/** A fixed hundred that is not multiplied: "doscientos". */
export const HUNDREDS = 1 << 4;
export const THOUSAND = 1 << 5;
export const POINT = 1 << 6;
export const AND = 1 << 7;
export const HALF = 1 << 8;
export const QUARTER = 1 << 9;
/** "tenths", "hundredths": value is what one of them is worth in hundredths. */
export const PARTS = 1 << 10;
/** "a", "ein", "un": one, but only in front of hundred, half, quarter and the like. */
export const ARTICLE = 1 << 11;
/** "oh": nought, but only between or after digits. */
export const OH = 1 << 12;
/** Counts as a digit only in the middle of a number: "to", "too", "for". */
export const MIDDLE = 1 << 13;
/** Sounds like a number word and is hardly ever anything else beside a number: "ate", "fife". */
export const SOUNDS = 1 << 14;
/** Known, harmless, means nothing: "the", "about", "please". */
export const PLAIN = 1 << 15;
/** "reading", "try": a small number after it counts readings, it is not one. */
export const LABEL = 1 << 16;
export const ORDINAL = 1 << 17;
/** A spoken correction: what came before no longer counts. */
export const FIX = 1 << 18;
export const NEGATIVE = 1 << 19;
/** "or", "to", "between": two readings in one breath. */
export const RANGE = 1 << 20;
/** "just under", "at least", "a bit": the number said is not the number meant. */
export const SIDED = 1 << 21;
/** A unit a reading can have: value indexes UNIT_NAMES. */
export const UNIT = 1 << 22;
/** After a number it makes the number something else: "minutes", "per cent", "patients". */
export const ALIEN = 1 << 23;
/** Makes numbers beside it a time of day: "o'clock", "past". */
export const CLOCK = 1 << 24;
export const MONTH = 1 << 25;
/** Talk: a number in such an utterance is hardly a reading. */
export const TALK = 1 << 26;
/** "is", "reads", "measures": what follows is a value. */
export const COPULA = 1 << 27;
/** Before "one" it makes a pronoun of it: "this one", "the last one". */
export const POINTING = 1 << 28;
/** A small bare number right after it is probably a count or a time: "these", "in", "at". */
export const DOUBTFUL = 1 << 29;
export const NOT = 1 << 30;
/** "she is", "they": a bare number said of a person is an age or a count. */
export const PERSON = 1 << 31;

export const NUMBER_WORD = DIGIT | TEEN | TENS | HUNDRED | HUNDREDS | THOUSAND;

export interface Lexeme {
  readonly roles: number;
  readonly value: number;
}

/** Of a word that stands in no table. */
export const UNKNOWN: Lexeme = { roles: 0, value: 0 };

/** Order matters: UNIT lexemes carry an index into this list. */
export const UNIT_NAMES = ['mm', 'cm', 'inch', 'weeks', '°C', 'points', '°', 'g', 'ml'] as const;
export type SpokenUnit = (typeof UNIT_NAMES)[number];
