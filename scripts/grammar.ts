/**
 * Prints what may be said now as a JSGF grammar.
 *   npm run -s grammar -- --lang en [--step ID]
 * Without a step: any length, every reading by its name, every command.
 */
import { protocols, readingDefs } from '../src/domain/protocol/index.ts';
import type { Language, ReadingDef, Step } from '../src/domain/protocol/types.ts';
import { freeExpectation } from '../src/interpret/free.ts';
import { grammarOf } from '../src/interpret/grammar.ts';
import { loadLanguage } from '../src/interpret/index.ts';
import type { CommandId, ExpectedReading, Expectation } from '../src/interpret/types.ts';

const CLOCK_COMMANDS: readonly CommandId[] = ['start', 'seated', 'out'];

const named = (def: ReadingDef, language: Language): ExpectedReading => ({
  id: def.id,
  names: def.names[language] ?? [],
  unit: def.unit,
  plausible: def.plausible,
  expected: def.expected,
  previous: [],
});

/** What may be said at a step, before anything has been said there. */
function expectationAt(step: Step, language: Language): Expectation {
  const { current: _, ...free } = freeExpectation(language);
  const readings = readingDefs.map((def) => named(def, language));
  const current = step.kind === 'reading' ? readings.find((r) => r.id === step.reading) : undefined;
  const offered = step.kind === 'check' || step.kind === 'decision' ? step.answers : [];
  const answers = offered.map((a) => ({ id: a.id, words: a.words[language] ?? [] }));
  const commands = free.commands.filter((c) => step.kind === 'clock' || !CLOCK_COMMANDS.includes(c));
  return { ...free, step: step.id, mode: step.kind, readings, answers, commands, ...(current ? { current } : {}) };
}

function option(argv: readonly string[], name: string): string | undefined {
  const at = argv.indexOf(name);
  return at < 0 ? undefined : (argv[at + 1] ?? '');
}

async function main(argv: readonly string[]): Promise<number> {
  const language = (['en', 'de', 'es', 'fr'] as const).find((l) => l === (option(argv, '--lang') ?? 'en'));
  if (!language) {
    console.error('usage: npm run -s grammar -- --lang en|de|es|fr [--step ID]');
    return 2;
  }
  await loadLanguage(language);
  const id = option(argv, '--step');
  const step = protocols.flatMap((p) => p.steps).find((s) => s.id === id);
  if (id !== undefined && !step) {
    console.error(`unknown step: ${id}`);
    return 2;
  }
  const anywhere = { ...freeExpectation(language), readings: readingDefs.map((def) => named(def, language)) };
  process.stdout.write(grammarOf(step ? expectationAt(step, language) : anywhere));
  return 0;
}

process.exitCode = await main(process.argv.slice(2));
