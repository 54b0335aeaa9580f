import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { protocols } from '../../../src/domain/protocol/index.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { answersOf, protocolProblems } from '../../../src/domain/protocol/validate.ts';
import { nextStep, stepOf } from '../../../src/domain/protocol/path.ts';
import type { Language, VisitProtocol } from '../../../src/domain/protocol/types.ts';
import { namesIn, textsOf } from './texts.ts';

const LANGUAGES: readonly Language[] = ['en', 'de', 'es', 'fr'];

/** A title tells what to do: its first word is one of these. */
const VERBS = new Set(
  'Adapt Agree Answer Ask Build Check Choose Decide Disinfect Draw Feel Fix Get Judge Listen Look Make Mark Match Measure Mix Mould Plan Read Say Score Show Sign Teach Touch Transfer Try'.split(
    ' ',
  ),
);

/** Words that move the visit on; an answer must not share them, or one word would mean two things. */
const COMMANDS = new Set(
  [
    'next, back, undo, hold, skip, start, seated, out, help, carry on, say again, how long, note',
    'weiter, zurück, rückgängig, halt, überspringen, hilfe, notiz',
    'siguiente, atrás, deshacer, saltar, ayuda, nota',
    'suivant, retour, annuler, passer, aide, note',
  ].flatMap((list) => list.split(', ')),
);

/**
 * Walks a visit with the given choices (answer number at each question, reused in turn); after `patience` retakes every
 * question is answered with its first answer that is none. Returns the ids walked.
 */
function walk(protocol: VisitProtocol, choices: readonly number[], patience = 3): readonly string[] {
  const answers: Record<string, string> = {};
  const walked: string[] = [];
  let retakes = 0;
  let step = protocol.steps[0];
  while (step !== undefined && walked.length < 1000) {
    walked.push(step.id);
    const offered = answersOf(step).filter((answer) => answer.retake !== true || retakes < patience);
    const chosen = offered[(choices[walked.length % choices.length] ?? 0) % Math.max(1, offered.length)];
    if (chosen !== undefined) answers[step.id] = chosen.id;
    if (chosen?.retake === true) retakes += 1;
    step = chosen?.goto === undefined ? nextStep(protocol, step.id, answers) : stepOf(protocol, chosen.goto);
  }
  return walked;
}

describe.each(protocols.map((protocol) => [protocol.id, protocol] as const))('%s', (_id, protocol) => {
  it('has no problem of form', () => {
    expect(protocolProblems(protocol, readingDefs, defaultPractice)).toEqual([]);
  });

  it('begins every title with a verb', () => {
    const others = protocol.steps.filter((step) => !VERBS.has(step.title.split(/[ ,:]/)[0] ?? ''));
    expect(others.map((step) => `${step.id}: ${step.title}`)).toEqual([]);
  });

  it('never shouts', () => {
    expect(textsOf(protocol).filter(({ text }) => /[!¡]/.test(text))).toEqual([]);
  });

  it('names no maker and no person', () => {
    expect(textsOf(protocol).flatMap(({ where, text }) => namesIn(text).map((name) => `${where}: ${name}`))).toEqual(
      [],
    );
  });

  it('never calls a finding harmless', () => {
    const soothing = /harmless|benign|nothing to worry|safe to ignore|is normal\b/i;
    expect(textsOf(protocol).filter(({ text }) => soothing.test(text))).toEqual([]);
  });

  it('gives every answer a spoken word in each language, apart from the words that move the visit', () => {
    const silent: string[] = [];
    for (const step of protocol.steps) {
      for (const answer of answersOf(step)) {
        for (const language of LANGUAGES) {
          const words = answer.words[language] ?? [];
          if (words.length === 0 && answer.id !== 'yes' && answer.id !== 'no')
            silent.push(`${step.id}.${answer.id}.${language}`);
          silent.push(
            ...[answer.label.toLowerCase(), ...words]
              .filter((word) => COMMANDS.has(word))
              .map((word) => `${step.id}.${answer.id}: ${word}`),
          );
        }
      }
    }
    expect(silent).toEqual([]);
  });

  it('never lets two answers of a step listen to the same word, labels and yes/no included', () => {
    const shared: string[] = [];
    for (const step of protocol.steps) {
      for (const language of LANGUAGES) {
        const owner = new Map<string, string>();
        for (const answer of answersOf(step)) {
          for (const word of new Set([answer.label.toLowerCase(), ...(answer.words[language] ?? [])])) {
            const other = owner.get(word);
            if (other !== undefined && other !== answer.id) shared.push(`${step.id} ${language}: ${word}`);
            owner.set(word, answer.id);
          }
        }
      }
    }
    expect(shared).toEqual([]);
  });

  it('asks for a reason wherever a branch ends the visit early or an attempt is given up', () => {
    const hasty = protocol.steps.flatMap((step) =>
      answersOf(step)
        .filter((answer) => answer.goto === 'read-back' && answer.id !== 'stop' && answer.needsReason !== true)
        .map((answer) => `${step.id}.${answer.id}`),
    );
    expect(hasty).toEqual([]);
  });

  it('arrives at the closing signature whatever is answered', () => {
    const last = protocol.steps.at(-1)?.id;
    fc.assert(
      fc.property(fc.array(fc.nat(20), { minLength: 1, maxLength: 40 }), (choices) => {
        const walked = walk(protocol, choices);
        expect(walked.at(-1)).toBe(last);
        expect(walked.length).toBeLessThan(1000);
      }),
      { seed: 20260302, numRuns: 200 },
    );
  });

  it('shows every step to somebody', () => {
    const seen = new Set<string>();
    const sample = fc.sample(fc.array(fc.nat(20), { minLength: 20, maxLength: 60 }), { seed: 7, numRuns: 400 });
    for (const choices of sample) for (const id of walk(protocol, choices)) seen.add(id);
    expect(protocol.steps.map((step) => step.id).filter((id) => !seen.has(id))).toEqual([]);
  });

  it('goes on after a suspicious finding only by a decision with a reason', () => {
    const goOn = protocol.steps.flatMap((step) => answersOf(step).filter((answer) => answer.id === 'go-on'));
    expect(goOn.every((answer) => answer.needsReason === true && answer.caution !== undefined)).toBe(true);
  });
});

it('tells versions of one protocol apart', () => {
  const keys = protocols.map((protocol) => `${protocol.id}@${protocol.version}`);
  expect(new Set(keys).size).toBe(keys.length);
});

it('finds a capitalised name in mid-sentence, so that the check above can fail', () => {
  expect(namesIn('Mix the Superfast paste')).toEqual(['Superfast']);
  expect(namesIn('Type A. Use it: Then wait')).toEqual([]);
});
