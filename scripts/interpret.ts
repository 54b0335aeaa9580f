/**
 * Reads one utterance a line on stdin and prints one JSON object a line: what was understood.
 *   npm run -s interpret -- --lang en
 * A line may also be JSON: {"alternatives":[{"transcript":"sixty two","confidence":0.8}],"expect":"rest-height","previous":[62.5]}
 */
import { lengthFromMm } from '../src/domain/measure/length.ts';
import type { Hundredths } from '../src/domain/measure/length.ts';
import { readingDefs } from '../src/domain/protocol/readings.ts';
import type { Language, ReadingDef } from '../src/domain/protocol/types.ts';
import { freeExpectation } from '../src/interpret/free.ts';
import { interpret, loadLanguage } from '../src/interpret/index.ts';
import type { Alternative, ExpectedReading, Expectation, Interpretation } from '../src/interpret/types.ts';

interface Line {
  readonly alternatives: readonly Alternative[];
  readonly expectation: Expectation;
}
type Parsed = Line | { readonly error: string };

const expected = (def: ReadingDef, language: Language, previous: readonly Hundredths[]): ExpectedReading => ({
  id: def.id,
  names: def.names[language] ?? [],
  unit: def.unit,
  plausible: def.plausible,
  expected: def.expected,
  previous,
});

const allReadings = new Map<Language, readonly ExpectedReading[]>();
function readingsIn(language: Language): readonly ExpectedReading[] {
  const known = allReadings.get(language) ?? readingDefs.map((def) => expected(def, language, []));
  allReadings.set(language, known);
  return known;
}

const free = new Map<Language, Expectation>();
/** Any length, and every reading by its name. */
function anything(language: Language): Expectation {
  const known = free.get(language) ?? freeExpectation(language, readingsIn(language));
  free.set(language, known);
  return known;
}

function expectationFor(id: unknown, previous: unknown, language: Language): Expectation | { readonly error: string } {
  if (id === undefined) return anything(language);
  const def = readingDefs.find((r) => r.id === id);
  if (!def) return { error: `unknown reading: ${typeof id === 'string' ? id : JSON.stringify(id)}` };
  const list = previous === undefined ? [] : previous;
  if (!Array.isArray(list)) return { error: 'previous: want a list of numbers' };
  const lengths = list.map((mm) => (typeof mm === 'number' ? lengthFromMm(mm) : { ok: false as const }));
  if (!lengths.every((l) => l.ok)) return { error: 'previous: want numbers of at most two decimals' };
  const current = expected(
    def,
    language,
    lengths.map((l) => (l.ok ? Number(l.value) : 0)),
  );
  return {
    ...freeExpectation(language),
    step: def.id,
    current,
    readings: [...readingsIn(language).filter((r) => r.id !== def.id), current],
  };
}

function alternativesOf(list: unknown): readonly Alternative[] | undefined {
  if (!Array.isArray(list) || list.length === 0) return undefined;
  const good = list.every(
    (a) => typeof a?.transcript === 'string' && (a.confidence === undefined || Number.isFinite(a.confidence)),
  );
  return good
    ? list.map((a) =>
        a.confidence === undefined
          ? { transcript: a.transcript }
          : { transcript: a.transcript, confidence: a.confidence },
      )
    : undefined;
}

function parseJson(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

function parseLine(line: string, language: Language): Parsed {
  const plain: Line = { alternatives: [{ transcript: line }], expectation: anything(language) };
  if (!line.startsWith('{')) return plain;
  const data = parseJson(line);
  if (data === undefined) return plain;
  const alternatives = alternativesOf((data as { alternatives?: unknown }).alternatives);
  if (!alternatives) return { error: 'alternatives: want a list of {transcript, confidence}' };
  const { expect, previous } = data as { expect?: unknown; previous?: unknown };
  const expectation = expectationFor(expect, previous, language);
  return 'error' in expectation ? expectation : { alternatives, expectation };
}

const isConverted = (result: Interpretation): boolean =>
  result.kind === 'reading' && result.why.some((w) => w.startsWith('said in'));
const isOutside = (result: Interpretation): boolean =>
  result.kind === 'reading' && result.why.some((w) => w.startsWith('outside'));

/** The printed form of an interpretation. `ask`: not to be taken without asking the speaker. */
function print(result: Interpretation): Record<string, unknown> {
  const value = result.kind === 'reading' ? result.value / 100 : null;
  const ask = result.kind === 'ask' || isConverted(result) || isOutside(result);
  const command = result.kind === 'command' ? result.command : null;
  const certainty =
    result.kind === 'reading'
      ? result.certainty
      : result.kind === 'ask'
        ? 'ask'
        : result.kind === 'command'
          ? 'sure'
          : 'unclear';
  const base = { value, ask, command, certainty, kind: result.kind };
  if (result.kind === 'reading')
    return {
      ...base,
      correction: result.correction,
      why: result.why,
      ...(result.reading === undefined ? {} : { reading: result.reading }),
    };
  if (result.kind === 'ask')
    return { ...base, reason: result.reason, candidates: result.candidates.map((c) => c / 100) };
  if (result.kind === 'unclear') return { ...base, reason: result.reason };
  return result.kind === 'note' ? { ...base, note: result.note } : base;
}

function answer(line: string, language: Language): Record<string, unknown> {
  const parsed = parseLine(line, language);
  if ('error' in parsed) return { value: null, ask: false, command: null, certainty: 'unclear', error: parsed.error };
  const text = parsed.alternatives[0]?.transcript ?? '';
  return print(interpret({ source: 'voice', text, alternatives: parsed.alternatives, at: 0 }, parsed.expectation));
}

function languageFrom(argv: readonly string[]): Language | undefined {
  const at = argv.indexOf('--lang');
  const given = at < 0 ? 'en' : argv[at + 1];
  return (['en', 'de', 'es', 'fr'] as const).find((l) => l === given);
}

/** Lines end at \n only (an utterance may hold any other separator); a \r before it is not part of the line. */
async function* lines(input: NodeJS.ReadableStream): AsyncGenerator<readonly string[]> {
  input.setEncoding('utf8');
  const open: string[] = [];
  for await (const chunk of input as AsyncIterable<string>) {
    const parts = chunk.split('\n');
    const last = parts.pop() ?? '';
    if (parts.length > 0) {
      parts[0] = open.splice(0).join('') + (parts[0] ?? '');
      yield parts.map((line) => line.replace(/\r$/, ''));
    }
    open.push(last);
  }
  const rest = open.join('');
  if (rest !== '') yield [rest.replace(/\r$/, '')];
}

async function main(): Promise<void> {
  const language = languageFrom(process.argv.slice(2));
  if (!language) {
    console.error('usage: npm run -s interpret -- --lang en|de|es|fr   (one utterance a line on stdin)');
    process.exitCode = 2;
    return;
  }
  await loadLanguage(language);
  for await (const batch of lines(process.stdin)) {
    const out = batch.map((line) => `${JSON.stringify(answer(line, language))}\n`).join('');
    if (!process.stdout.write(out)) await new Promise((resolve) => process.stdout.once('drain', resolve));
  }
}

await main();
