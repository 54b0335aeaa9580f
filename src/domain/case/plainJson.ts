/**
 * JSON from outside, held to bounds before anything else looks at it: length, depth, and what plain data may hold. The
 * work is linear in the length of the text, whatever stands in it, and nothing recurses.
 */

/** Brackets within brackets. The deepest file of our own has nine. Our choice. */
export const DEEPEST_JSON = 64;

/** Names that would reach into what every object inherits. No file of ours has a field called like one of them. */
const REACHING: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/** A surrogate without its other half: no text that a person wrote holds one, and it has no canonical form. */
const HALF_LETTER = /\p{Cs}/u;

export type PlainJson =
  | { readonly ok: true; readonly value: unknown }
  /** `path` names the place ("steps.3.title"), empty for the text as a whole; `text` is one sentence. */
  | {
      readonly ok: false;
      readonly reason: 'notJson' | 'tooLong' | 'tooDeep' | 'notPlain';
      readonly path: string;
      readonly text: string;
    };

type Refusal = Extract<PlainJson, { ok: false }>;

const refusal = (reason: Refusal['reason'], path: string, text: string): Refusal => ({ ok: false, reason, path, text });

const QUOTE = 0x22;
const BACKSLASH = 0x5c;

/** True when brackets outside of strings lie deeper than allowed; stops there. */
function isTooDeep(text: string): boolean {
  let depth = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === QUOTE) quoted = !quoted;
    else if (quoted) at += code === BACKSLASH ? 1 : 0;
    // [ and {, then ] and }: they differ from each other in one bit.
    else if ((code | 0x20) === 0x7b) depth += 1;
    else if ((code | 0x20) === 0x7d) depth -= 1;
    if (depth > DEEPEST_JSON) return true;
  }
  return false;
}

interface Place {
  readonly value: object;
  readonly key: string;
  readonly within: Place | undefined;
}

function pathOf(place: Place, key: string): string {
  const keys = [key];
  for (let at: Place | undefined = place; at !== undefined; at = at.within) if (at.key !== '') keys.unshift(at.key);
  return keys.join('.');
}

/** What is wrong with one value by itself, in a sentence; undefined when nothing is. */
function oddity(key: string, value: unknown): string | undefined {
  if (REACHING.has(key)) return 'This name has no place in a file.';
  if (typeof value === 'number' && !Number.isFinite(value)) return 'This number is too large to be one.';
  if (typeof value === 'string' && HALF_LETTER.test(value)) return 'This text holds half a letter.';
  return HALF_LETTER.test(key) ? 'This name holds half a letter.' : undefined;
}

function firstOddity(value: unknown): Refusal | undefined {
  const top = oddity('', value);
  if (top !== undefined) return refusal('notPlain', '', top);
  const open: Place[] = typeof value === 'object' && value !== null ? [{ value, key: '', within: undefined }] : [];
  for (let place = open.pop(); place !== undefined; place = open.pop()) {
    // By place or by name, without a list of pairs beside it: there may be a million.
    const keys = Array.isArray(place.value) ? undefined : Object.keys(place.value);
    const count = keys?.length ?? (place.value as unknown[]).length;
    for (let i = 0; i < count; i += 1) {
      const key = keys?.[i] ?? '';
      const inner = (place.value as Readonly<Record<string | number, unknown>>)[keys === undefined ? i : key];
      const odd = oddity(key, inner);
      if (odd !== undefined) return refusal('notPlain', pathOf(place, keys === undefined ? String(i) : key), odd);
      if (typeof inner === 'object' && inner !== null)
        open.push({ value: inner, key: keys === undefined ? String(i) : key, within: place });
    }
  }
  return undefined;
}

/**
 * Text from outside → plain data: `notJson`, `tooLong` (more than `most` letters), `tooDeep` (more than DEEPEST_JSON
 * brackets within each other) or `notPlain` (a name like `__proto__`, a number beyond all numbers, half a letter).
 */
export function readJson(text: string, most: number): PlainJson {
  if (text.length > most) return refusal('tooLong', '', `This is longer than ${most} letters and was not read.`);
  if (isTooDeep(text)) return refusal('tooDeep', '', `This is nested more than ${DEEPEST_JSON} deep and was not read.`);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refusal('notJson', '', 'This is not JSON.');
  }
  return firstOddity(value) ?? { ok: true, value };
}
