/**
 * The address word: with one set, talk is meant for the machine only when it begins with that word. Numbers at a reading
 * step, and everything while a number waits for its yes, need none: there the person is already being listened to.
 */
import { interpret } from './index.ts';
import { wordsOf } from './tokens.ts';
import { fold } from './tokens.ts';
import type { Alternative, Expectation, Interpretation, Utterance } from './types.ts';

/** Longest address that is taken: two words. */
const MOST_WORDS = 2;
const MOST_LETTERS = 24;

/** An address word as it will be listened for, or a sentence saying why it would not do. Empty means none is wanted. */
export type AddressWord = { readonly ok: true; readonly word: string } | { readonly ok: false; readonly why: string };

/** One or two words of letters. A figure or a command word would be taken for itself. */
export function addressWord(text: string, commands: readonly string[]): AddressWord {
  const words = wordsOf(text);
  if (words.length === 0)
    return text.trim() === '' ? { ok: true, word: '' } : { ok: false, why: 'The address word needs letters.' };
  const word = words.join(' ');
  if (words.length > MOST_WORDS || word.length > MOST_LETTERS) return { ok: false, why: 'One short word, or two.' };
  if (word.length < 3 || /\p{N}/u.test(word)) return { ok: false, why: 'At least three letters, and no figures.' };
  const taken = commands.map((command) => wordsOf(command).join(' '));
  if (taken.includes(word)) return { ok: false, why: `“${word}” already means something here. Choose another word.` };
  return { ok: true, word };
}

const WORD = /[\p{L}\p{N}]+/gu;
/** What may stand between the address and the rest. A dash stays: before figures it is a minus. */
const BREAK = /^(?:[\s,:;!?…]|\.(?!\d))+/u;

/** The text after the address, or undefined when it does not begin with it. */
function afterAddress(text: string, address: readonly string[]): string | undefined {
  let at = 0;
  let end = 0;
  for (const found of text.matchAll(WORD)) {
    if (fold(found[0]) !== address[at]) return undefined;
    end = found.index + found[0].length;
    at += 1;
    if (at === address.length) return text.slice(end).replace(BREAK, '');
  }
  return undefined;
}

const sameWords = (a: string, b: string): boolean => wordsOf(a).join(' ') === wordsOf(b).join(' ');

/** The rest of the top transcript, when it was addressed: by itself, or as another transcript of the same rest says. */
function rest(utterance: Utterance, address: readonly string[]): string | undefined {
  const own = afterAddress(utterance.text, address);
  if (own !== undefined) return own;
  const first = utterance.text.match(WORD)?.[0];
  if (first === undefined) return undefined;
  const without = utterance.text.slice(utterance.text.indexOf(first) + first.length).replace(BREAK, '');
  return utterance.alternatives.some(({ transcript }) => {
    const other = afterAddress(transcript, address);
    return other !== undefined && other !== '' && sameWords(other, without);
  })
    ? without
    : undefined;
}

/** The address taken off every transcript that bears it; the others stay as they are, and may still object. */
function unaddressed(utterance: Utterance, text: string, address: readonly string[]): Utterance {
  const alternatives = utterance.alternatives.map((one): Alternative => {
    if (one.transcript === utterance.text) return { ...one, transcript: text };
    return { ...one, transcript: afterAddress(one.transcript, address) ?? one.transcript };
  });
  return { ...utterance, text, alternatives };
}

/** What may be taken although it was not addressed to the machine. */
function needsNoAddress(heard: Interpretation, { mode }: Expectation): boolean {
  if (mode === 'confirm' || mode === 'choose') return true;
  if (mode !== 'reading') return false;
  if (heard.kind === 'reading' || heard.kind === 'ask') return true;
  // A number that could not be read is said to be so; a word that could not be is nobody's business here.
  return heard.kind === 'unclear' && heard.reason !== 'notNow' && heard.reason !== 'noise';
}

/** As `interpret`, for an ear that answers to a name. Without one it is `interpret`. */
export function interpretAddressed(utterance: Utterance, expectation: Expectation, word: string): Interpretation {
  const address = wordsOf(word);
  if (utterance.source !== 'voice' || address.length === 0) return interpret(utterance, expectation);
  const text = rest(utterance, address);
  if (text === '') return { kind: 'none', text: utterance.text };
  // On record goes what was said, address included.
  if (text !== undefined)
    return { ...interpret(unaddressed(utterance, text, address), expectation), text: utterance.text };
  const heard = interpret(utterance, expectation);
  return needsNoAddress(heard, expectation) ? heard : { kind: 'none', text: utterance.text };
}
