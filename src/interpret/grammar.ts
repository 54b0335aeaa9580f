/**
 * What may be said now as a grammar in the JSpeech Grammar Format (W3C note of 5 June 2000), made from the same tables as
 * the interpreter. For recognisers that take a grammar; sound-alikes are left out, since those are a recogniser's mistakes.
 */
import type { Language } from '../domain/protocol/types.ts';
import { commandWords } from './commands.ts';
import { answers } from './said.ts';
import { speechOf } from './speak.ts';
import type { Expectation } from './types.ts';

/** Whole numbers a length can have. */
const WHOLE_NUMBERS = 200;
const NUMBER_MODES: readonly Expectation['mode'][] = ['reading', 'confirm', 'choose'];

/** Words a recogniser's dictionary can hold: small letters, no hyphens. Undefined when figures or nothing remain. */
function spoken(text: string): string | undefined {
  const words = text.toLowerCase().match(/[\p{L}\p{M}\p{N}']+/gu) ?? [];
  return words.length === 0 || words.some((word) => /\p{N}/u.test(word)) ? undefined : words.join(' ');
}

/** `<name> = a | b;` or nothing when there is nothing to say. */
function rule(name: string, choices: readonly (string | undefined)[]): string | undefined {
  const known = [...new Set(choices)].filter((choice) => choice !== undefined);
  return known.length === 0 ? undefined : `<${name}> = ${known.join(' | ')};`;
}

/** Rules for numbers, from the words for reading back. */
function numberRules(language: Language): readonly (string | undefined)[] {
  const speech = speechOf(language);
  const whole = Array.from({ length: WHOLE_NUMBERS }, (_, n) => spoken(speech.whole(n)));
  return [
    rule('whole', whole),
    rule('digit', speech.digits.map(spoken)),
    rule('twentieth', [spoken(speech.digits[5] ?? '')]),
    rule('decimals', [`${spoken(speech.point)} <digit> [<twentieth>]`]),
    rule('half', [spoken(speech.half)]),
    rule('unit', [spoken(speech.unit)]),
    rule('number', ['<whole> [<decimals> | <half>] [<unit>]']),
  ];
}

function answerWords({ answers: offered, language }: Expectation): readonly (string | undefined)[] {
  const commands = commandWords(language);
  return offered
    .flatMap(({ id, words }) => [...words, ...(id === 'yes' || id === 'no' ? commands[id] : [])])
    .map(spoken);
}

/** The grammar of everything that means something under this expectation. */
export function grammarOf(expectation: Expectation): string {
  const { language, mode, commands, readings, current } = expectation;
  const words = commandWords(language);
  const legal = commands.filter((id) => !answers(id, expectation)).flatMap((id) => words[id].map(spoken));
  const command = rule('command', legal);
  const answer = rule('answer', answerWords(expectation));
  const name = rule(
    'name',
    readings.flatMap((r) => r.names.map(spoken)),
  );
  const correction = rule('correction', [spoken(words.no[0] ?? '')]);
  const numbers = current !== undefined && NUMBER_MODES.includes(mode);
  const said = [
    numbers ? '[<correction>] <number>' : undefined,
    name === undefined ? undefined : '<name> <number>',
    answer === undefined ? undefined : '<answer>',
    command === undefined ? undefined : '<command>',
  ];
  const needed = numbers || name !== undefined ? [...numberRules(language), numbers ? correction : undefined] : [];
  const rules = [...needed, name, answer, command, rule('said', said)].filter((line) => line !== undefined);
  return (
    ['#JSGF V1.0 UTF-8;', `grammar rimwise.${language};`, ...rules].join('\n').replace('<said> =', 'public <said> =') +
    '\n'
  );
}
