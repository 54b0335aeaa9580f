/** One transcript, by itself: what it says, given what is expected. Range, set and alternatives come later. */
import { judge } from './judge.ts';
import type { Meaning } from './judge.ts';
import { languagePack } from './languages.ts';
import { Line } from './line.ts';
import { takeNames } from './names.ts';
import { answersOf, match, remarkIn, wordsOf } from './phrases.ts';
import { tokenise } from './tokens.ts';
import type { CommandId, Expectation } from './types.ts';

export type Said =
  | (Meaning & { readonly ids?: readonly string[] })
  | { readonly kind: 'command'; readonly command: CommandId }
  | { readonly kind: 'answer'; readonly answer: string }
  | { readonly kind: 'note'; readonly note: string };

const LONGEST_COMMAND = 80;
/** Longer than anything said in one breath; such a text is never read. */
const LONGEST = 600;

/** A command word also answers a question whose answers are called yes and no. */
function commandOrAnswer(command: CommandId, expectation: Expectation): Said {
  const isAnswer = (command === 'yes' || command === 'no') && expectation.mode !== 'confirm';
  if (isAnswer && expectation.answers.some((a) => a.id === command)) return { kind: 'answer', answer: command };
  return { kind: 'command', command };
}

function wholeUtterance(text: string, expectation: Expectation): Said | undefined {
  const { book } = languagePack(expectation.language);
  if (text.length > LONGEST_COMMAND) return undefined;
  const words = wordsOf(text);
  const answer = match(words, answersOf(expectation), book);
  if (answer !== undefined) return { kind: 'answer', answer };
  const command = match(words, book.commands, book);
  return command === undefined ? undefined : commandOrAnswer(command, expectation);
}

function numberIn(text: string, expectation: Expectation): Meaning & { ids?: readonly string[] } {
  const { lexicon } = languagePack(expectation.language);
  const named = takeNames(tokenise(text, lexicon), expectation.readings);
  const meaning = judge(new Line(named.tokens, lexicon));
  return named.ids.length === 0 ? meaning : { ...meaning, ids: named.ids };
}

/** "note down 62", "note bien 62" are no remarks: there the note word is part of a phrase. */
function startsWithNote(text: string, expectation: Expectation): boolean {
  const { book, lexicon } = languagePack(expectation.language);
  const first = tokenise(text.slice(0, 80), lexicon)[0];
  return first !== undefined && book.note.has(first.text);
}

/** "note 62.5" is either; anything longer is a remark. */
function noteOf(note: string, expectation: Expectation): Said {
  if (note === '') return { kind: 'unclear', reason: 'noise' };
  const number = note.length <= 60 ? numberIn(note, expectation) : undefined;
  if (number?.kind === 'value' && wordsOf(note).length <= 8)
    return { kind: 'ask', candidates: [number.value], reason: 'noise' };
  return { kind: 'note', note };
}

export function said(transcript: string, expectation: Expectation): Said {
  const text = transcript.trim();
  const { book } = languagePack(expectation.language);
  const whole = wholeUtterance(text, expectation);
  if (whole) return whole;
  const note = startsWithNote(text, expectation) ? remarkIn(text, book) : undefined;
  if (note !== undefined) return noteOf(note, expectation);
  return text.length > LONGEST ? { kind: 'none' } : numberIn(text, expectation);
}
