/** One digit, said as a word. Small rules shared by whole numbers and decimals. */
import { AND, ARTICLE, DIGIT, HALF, HUNDRED, MIDDLE, OH, POINT, QUARTER, SOUNDS, TEEN, TENS, UNIT } from './roles.ts';
import { COMMA, SPACE } from './tokens.ts';
import type { Token } from './tokens.ts';

export const rolesAt = (tokens: readonly Token[], i: number): number => tokens[i]?.lex.roles ?? 0;
export const has = (tokens: readonly Token[], i: number, role: number): boolean => (rolesAt(tokens, i) & role) !== 0;
/** The token at `i` follows the one before without more than a blank or hyphen. */
export const touches = (tokens: readonly Token[], i: number): boolean =>
  i < tokens.length && (tokens[i] as Token).gap <= SPACE;

/** "to", "for" are digits only before the point, "and", a unit or the end, and only after another number word. */
function middleIsDigit(tokens: readonly Token[], i: number): boolean {
  const next = tokens[i + 1];
  if (!next || next.gap >= COMMA) return true;
  return has(tokens, i + 1, POINT | UNIT) || (has(tokens, i + 1, AND) && !has(tokens, i + 2, DIGIT | TEEN | TENS));
}

/** A sound-alike starts a number only when a number goes on from it ("ate six point", "won hundred") or nothing else was said. */
function soundIsDigit(tokens: readonly Token[], i: number): boolean {
  if (tokens.length === 1) return true;
  if (!touches(tokens, i + 1)) return false;
  if (has(tokens, i + 1, DIGIT | TEEN | TENS | HUNDRED | POINT | OH | SOUNDS)) return true;
  if (has(tokens, i + 1, MIDDLE)) return has(tokens, i + 2, POINT);
  return (
    has(tokens, i + 1, AND) &&
    (has(tokens, i + 2, HALF) || (has(tokens, i + 2, ARTICLE | DIGIT) && has(tokens, i + 3, HALF | QUARTER)))
  );
}

/**
 * The digit said at `i`, 0…9, or -1. `inside`: another part of the same number stands directly before.
 */
export function digitAt(tokens: readonly Token[], i: number, inside: boolean): number {
  const token = tokens[i];
  if (!token) return -1;
  const { roles, value } = token.lex;
  if (roles & DIGIT) return value;
  if (roles & SOUNDS) return inside || soundIsDigit(tokens, i) ? value : -1;
  if (roles & MIDDLE && inside) return middleIsDigit(tokens, i) ? value : -1;
  if (roles & OH) return inside || (has(tokens, i + 1, POINT) && touches(tokens, i + 1)) ? 0 : -1;
  return -1;
}

/** A digit that was guessed from a sound-alike. */
export const isGuess = (tokens: readonly Token[], i: number): boolean => has(tokens, i, SOUNDS | MIDDLE);
