/** Keypad, keys, pedal and touch: no guessing, but the same meanings as the voice. */
import { parseHundredths } from '../domain/measure/length.ts';
import type { LengthFailure } from '../domain/measure/length.ts';
import { oddities } from './certainty.ts';
import { commandNow, isCommand } from './commands.ts';
import { wordsOf } from './tokens.ts';
import type { CommandId, ExpectedReading, Expectation, Interpretation, UnclearReason } from './types.ts';

const REASONS: Readonly<Record<LengthFailure, UnclearReason>> = {
  empty: 'notANumber',
  notANumber: 'notANumber',
  negative: 'negative',
  tooFine: 'tooFine',
  tooLarge: 'outOfRange',
};

/** "upper width 53": a reading named before the figures, else the one asked for. */
function target(
  text: string,
  expectation: Expectation,
): { reading?: ExpectedReading; named: boolean; figures: string } {
  const split = /^(.*\p{L}.*?)[\s:=]+(\S+)$/u.exec(text.trim());
  const { current } = expectation;
  if (!split) return current ? { reading: current, named: false, figures: text } : { named: false, figures: text };
  const name = wordsOf(split[1] ?? '').join(' ');
  const reading = expectation.readings.find(
    (r) => r.id === split[1] || r.names.some((n) => wordsOf(n).join(' ') === name),
  );
  return reading
    ? { reading, named: reading.id !== current?.id, figures: split[2] ?? '' }
    : { named: true, figures: text };
}

/** Nothing sensible is longer. */
const LONGEST_TYPED = 80;

/** Typed figures. Sure unless out of range or far from the set; then a yes is wanted. */
export function interpretKeypad(text: string, expectation: Expectation): Interpretation {
  if (text.length > LONGEST_TYPED) return { kind: 'unclear', reason: 'notANumber', text };
  const { reading, named, figures } = target(text, expectation);
  const parsed = parseHundredths(figures);
  if (!parsed.ok) return { kind: 'unclear', reason: REASONS[parsed.reason], text };
  if (!reading) return { kind: 'unclear', reason: 'notNow', text };
  const why = oddities(parsed.value, reading);
  const certainty = why.length > 0 ? 'check' : 'sure';
  return {
    kind: 'reading',
    value: parsed.value,
    certainty,
    correction: false,
    text,
    why,
    ...(named ? { reading: reading.id } : {}),
  };
}

const KEYS: Readonly<Record<string, CommandId>> = {
  PageDown: 'next',
  ArrowRight: 'next',
  PageUp: 'back',
  ArrowLeft: 'back',
  Backspace: 'undo',
  y: 'yes',
  n: 'no',
};
const CLOCK_STEPS: readonly CommandId[] = ['start', 'seated', 'out'];

/** Enter and Space do what the screen asks for now. */
function mainKey(expectation: Expectation): CommandId {
  if (expectation.mode === 'confirm') return 'yes';
  if (expectation.mode === 'signoff' && expectation.commands.includes('yes') && !expectation.passable) return 'yes';
  if (expectation.mode === 'held') return 'carryOn';
  const clock = expectation.mode === 'clock' ? CLOCK_STEPS.find((c) => expectation.commands.includes(c)) : undefined;
  return clock ?? 'next';
}

function keyCommand(key: string, expectation: Expectation): CommandId | undefined {
  if (key === 'Enter' || key === ' ') return mainKey(expectation);
  if (key === 'h' || key === 'H') return expectation.mode === 'held' ? 'carryOn' : 'hold';
  return KEYS[key.length === 1 ? key.toLowerCase() : key];
}

/** KeyboardEvent.key, from keyboard or pedal. A key without a meaning does nothing. */
export function interpretKey(key: string, expectation: Expectation): Interpretation {
  const { mainAnswer } = expectation;
  if ((key === 'Enter' || key === ' ') && mainAnswer !== undefined)
    return { kind: 'answer', answer: mainAnswer, text: key };
  const command = keyCommand(key, expectation);
  return command === undefined ? { kind: 'none', text: key } : commandNow(command, key, expectation);
}

/** "choose:5000": one of the numbers asked about, in hundredths. Touched, so meant. */
function chosen(rest: string, text: string): Interpretation {
  if (!/^\d{1,6}$/.test(rest)) return { kind: 'unclear', reason: 'notANumber', text };
  return { kind: 'reading', value: Number(rest), certainty: 'sure', correction: false, text, why: [] };
}

/** Intent ids of the screen: a command, "answer:ID", "reason:ID", "material:ID", "choose:HUNDREDTHS", "note:TEXT". */
export function interpretTouch(text: string, expectation: Expectation): Interpretation {
  if (isCommand(text)) return commandNow(text, text, expectation);
  const colon = text.indexOf(':');
  const kind = colon < 0 ? '' : text.slice(0, colon);
  const rest = text.slice(colon + 1);
  if (kind === 'choose') return chosen(rest, text);
  if (kind === 'note')
    return rest.trim() === '' ? { kind: 'unclear', reason: 'noise', text } : { kind: 'note', note: rest.trim(), text };
  if (kind === 'answer' || kind === 'reason' || kind === 'material') {
    const offered = expectation.answers.some((a) => a.id === rest);
    return offered ? { kind: 'answer', answer: rest, text } : { kind: 'unclear', reason: 'notNow', text };
  }
  return { kind: 'unclear', reason: 'notNow', text };
}
