/** One transcript, by itself: what it says, given what is expected. Range, set and alternatives come later. */
import { judge } from './judge.ts';
import type { Meaning } from './judge.ts';
import { lexiconOf } from './languages.ts';
import type { Lexicon } from './lexicon.ts';
import { Line } from './line.ts';
import { takeNames } from './names.ts';
import { answersOf, match } from './phrases.ts';
import { tokenise } from './tokens.ts';
import type { Token } from './tokens.ts';
import type { CommandId, Expectation } from './types.ts';

export type Said =
  | (Meaning & { readonly ids?: readonly string[] })
  | { readonly kind: 'command'; readonly command: CommandId }
  | { readonly kind: 'answer'; readonly answer: string }
  | { readonly kind: 'note'; readonly note: string };

/** Longer than anything said in one breath; of such a text only the start is looked at, for a remark. */
const LONGEST = 600;
/** A remark that long is no number. */
const LONGEST_NUMBER = 60;

/** A yes or no also answers a question whose answers are called so. */
export const answers = (command: CommandId, { mode, answers: offered }: Expectation): boolean =>
  (command === 'yes' || command === 'no') && mode !== 'confirm' && offered.some((a) => a.id === command);

function wholeUtterance(tokens: readonly Token[], lexicon: Lexicon, expectation: Expectation): Said | undefined {
  const words = tokens.flatMap((token) => token.text.split(' '));
  const answer = match(words, answersOf(expectation), lexicon);
  if (answer !== undefined) return { kind: 'answer', answer };
  const command = match(words, lexicon.commands, lexicon);
  if (command === undefined) return undefined;
  return answers(command, expectation) ? { kind: 'answer', answer: command } : { kind: 'command', command };
}

function numberIn(tokens: readonly Token[], lexicon: Lexicon, expectation: Expectation): Said {
  const named = takeNames(tokens, expectation.readings);
  const meaning = judge(new Line(named.tokens, lexicon));
  return named.ids.length === 0 ? meaning : { ...meaning, ids: named.ids };
}

/** A remark, word for word. "note 62.5" may be a remark or a reading: ask. */
function noteIn(text: string, expectation: Expectation): Said {
  const note = text.replace(/^[^\p{L}]*\p{L}+[\s:,.–-]*/u, '').trim();
  if (note === '') return { kind: 'unclear', reason: 'noise' };
  const number = note.length <= LONGEST_NUMBER ? said(note, expectation) : undefined;
  return number?.kind === 'value' && !number.doubtful
    ? { kind: 'ask', candidates: [number.value], reason: 'noise' }
    : { kind: 'note', note };
}

export function said(transcript: string, expectation: Expectation): Said {
  const text = transcript.trim();
  const lexicon = lexiconOf(expectation.language);
  const tokens = tokenise(text.slice(0, LONGEST), lexicon);
  // In "note down 62" and "note bien 62" the note word is part of a phrase, so of a longer token.
  if (lexicon.notes.has(tokens[0]?.text ?? '')) return noteIn(text, expectation);
  if (text.length > LONGEST) return { kind: 'none' };
  return wholeUtterance(tokens, lexicon, expectation) ?? numberIn(tokens, lexicon, expectation);
}
