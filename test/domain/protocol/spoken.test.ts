/** The words in the data, heard by the interpreter that will hear them at the chair. */
import { describe, expect, it } from 'vitest';
import { protocols } from '../../../src/domain/protocol/index.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import type { Step, VisitProtocol } from '../../../src/domain/protocol/types.ts';
import { answersOf } from '../../../src/domain/protocol/validate.ts';
import { freeExpectation } from '../../../src/interpret/free.ts';
import { interpret } from '../../../src/interpret/index.ts';
import type { Expectation } from '../../../src/interpret/types.ts';

function expectationAt(protocol: VisitProtocol, step: Step): Expectation {
  const { current: _current, ...free } = freeExpectation('en');
  const asked = new Set(protocol.steps.flatMap((other) => (other.kind === 'reading' ? [other.reading] : [])));
  return {
    ...free,
    mode: step.kind,
    step: step.id,
    commands: ['next', 'back', 'undo', 'hold', 'skip', 'howLong', 'sayAgain', 'help'],
    answers: answersOf(step).map((answer) => ({
      id: answer.id,
      words: [answer.label.toLowerCase(), ...(answer.words.en ?? [])],
    })),
    readings: readingDefs
      .filter((def) => asked.has(def.id))
      .map(({ id, names, unit, plausible, expected }) => ({
        id,
        names: names.en ?? [],
        unit,
        plausible,
        expected,
        previous: [],
      })),
  };
}

const hear = (text: string, expectation: Expectation) =>
  interpret({ source: 'voice', text, alternatives: [{ transcript: text }], at: 0 }, expectation);

describe.each(protocols.map((protocol) => [protocol.id, protocol] as const))('%s', (_id, protocol) => {
  it('files every reading called out of turn under its own name', () => {
    const first = protocol.steps[0]!;
    const astray: string[] = [];
    for (const def of readingDefs) {
      if (!protocol.steps.some((step) => step.kind === 'reading' && step.reading === def.id)) continue;
      const number = Math.round((def.expected[0] + def.expected[1]) / 200);
      for (const name of def.names.en ?? []) {
        const heard = hear(`${name} ${number}`, expectationAt(protocol, first));
        const right = heard.kind === 'reading' && heard.reading === def.id && heard.value === number * 100;
        if (!right) astray.push(`${name} ${number}: ${JSON.stringify(heard)}`);
      }
    }
    expect(astray).toEqual([]);
  });

  it('takes every answer word for its own answer', () => {
    const astray: string[] = [];
    for (const step of protocol.steps) {
      for (const answer of answersOf(step)) {
        for (const word of answer.words.en ?? []) {
          const heard = hear(word, expectationAt(protocol, step));
          const right = heard.kind === 'answer' && heard.answer === answer.id;
          if (!right) astray.push(`${step.id}, ${word}: ${JSON.stringify(heard)}`);
        }
      }
    }
    expect(astray).toEqual([]);
  });
});
