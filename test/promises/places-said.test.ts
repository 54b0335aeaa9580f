/** Promise: a place on a fitting surface is named by touch or by word, in each of the four languages, and means the same. */
import { beforeAll, describe, expect, it } from 'vitest';
import { expectationOf } from '../../src/app/expectation.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { answersOf } from '../../src/domain/protocol/validate.ts';
import { stepOf } from '../../src/domain/protocol/path.ts';
import type { Language, VisitProtocol } from '../../src/domain/protocol/types.ts';
import { visit4 } from '../../src/domain/protocol/visit4.ts';
import { visit5 } from '../../src/domain/protocol/visit5.ts';
import { lookFirst } from '../../src/domain/protocol/sore-causes.ts';
import { lowerRegions, upperRegions } from '../../src/domain/protocol/regions.ts';
import { interpret, loadLanguage } from '../../src/interpret/index.ts';
import { bench } from '../helpers/visit.ts';

const LANGUAGES: readonly Language[] = ['en', 'de', 'es', 'fr'];
const STEPS: readonly (readonly [VisitProtocol, string, readonly string[]])[] = [
  [visit5, 'sore-1-upper', ['goto:sore-1', 'answer:upper']],
  [visit5, 'sore-1-lower', ['goto:sore-1', 'answer:lower']],
  [visit4, 'relieved-upper-1', ['goto:paste-upper', 'answer:relieved']],
  [visit4, 'relieved-lower-2', ['goto:paste-lower', 'answer:relieved', 'goto:relieved-lower-2']],
];

beforeAll(async () => {
  await Promise.all(LANGUAGES.map((language) => loadLanguage(language)));
});

describe.each(STEPS)('%# at %s', (protocol, id, way) => {
  it.each(LANGUAGES)('every region answers to its words in %s', (language) => {
    const ground = { protocol, readings: readingDefs, practice: defaultPractice };
    const b = bench(ground);
    for (const intent of way) b.press(intent);
    expect(b.step()).toBe(id);
    const { session } = b;
    const expectation = expectationOf({ view: session.view(), context: session.context(), ...ground, language });
    const astray: string[] = [];
    for (const answer of answersOf(stepOf(protocol, id)!)) {
      for (const word of answer.words[language] ?? []) {
        const heard = interpret(
          { source: 'voice', text: word, alternatives: [{ transcript: word }], at: 0 },
          expectation,
        );
        if (heard.kind !== 'answer' || heard.answer !== answer.id) astray.push(`${word}: ${JSON.stringify(heard)}`);
      }
    }
    expect(astray).toEqual([]);
  });
});

it('every region has words in every language, and something to look at first that names no disease and calms nobody', () => {
  for (const region of [...upperRegions, ...lowerRegions]) {
    for (const language of LANGUAGES) expect(region.words[language]?.[0], region.id).toMatch(/\S/);
    const look = lookFirst(region.id);
    expect(look?.at, region.id).toMatch(/\S/);
    expect(look?.status).toMatch(/^(from memory|common practice)$/);
    expect(look?.at).not.toMatch(/harmless|nothing|cancer|stomatitis|infection|normal/i);
  }
});
