/**
 * How well, how fast and how large: our reading of spoken numbers beside general-purpose libraries and a plain scan for
 * figures, on our own sentences, or on a corpus given as BENCH_CORPUS (a file or several, comma-separated, each a list of
 * {"lang","text","expect": number|"ask"|"none"} lines). Libraries that are not installed are left out.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import type { Language } from '../../src/domain/protocol/types.ts';
import { freeExpectation } from '../../src/interpret/free.ts';
import type * as Interpreter from '../../src/interpret/index.ts';

interface Row {
  readonly lang: Language;
  readonly text: string;
  readonly expect: number | 'ask' | 'none';
}
type Taken = number | 'ask' | 'none';
interface Reader {
  readonly name: string;
  readonly languages: readonly Language[];
  read(text: string, language: Language): Taken;
}

const LANGUAGES: readonly Language[] = ['en', 'de', 'es', 'fr'];
const ROUNDS = 7;

function ownRows(): readonly Row[] {
  const file = new URL('../../test/interpret/sentences/en.txt', import.meta.url);
  const lines = readFileSync(file, 'utf8').split('\n');
  return lines.flatMap((line) => {
    const [text, truth] = line.split(' | ');
    if (text === undefined || truth === undefined || truth === 'no value' || text.startsWith('# ')) return [];
    return [{ lang: 'en' as const, text, expect: truth === 'ask' || truth === 'none' ? truth : Number(truth) }];
  });
}

function corpusRows(files: string): readonly Row[] {
  const lines = files.split(',').flatMap((file) => readFileSync(file, 'utf8').split('\n'));
  return lines.filter((line) => line.trim() !== '').map((line) => JSON.parse(line) as Row);
}

/** Readings above 199.99 mm are shown and asked about. */
const LONGEST = 20_000;

function ours({ interpret }: typeof Interpreter): Reader {
  const free = new Map(LANGUAGES.map((language) => [language, freeExpectation(language)]));
  const read = (text: string, language: Language): Taken => {
    const expectation = free.get(language) ?? freeExpectation(language);
    const heard = interpret({ source: 'voice', text, alternatives: [{ transcript: text }], at: 0 }, expectation);
    if (heard.kind !== 'reading') return heard.kind === 'ask' ? 'ask' : 'none';
    return heard.value >= LONGEST ? 'ask' : heard.value / 100;
  };
  return { name: 'ours', languages: LANGUAGES, read };
}

const scan: Reader = {
  name: 'scan for figures',
  languages: LANGUAGES,
  read(text) {
    const figures = /\d+(?:[.,]\d+)?/.exec(text);
    return figures ? Number(figures[0].replace(',', '.')) : 'none';
  },
};

const asTaken = (value: unknown): Taken => {
  const number = typeof value === 'string' && value !== '' ? Number(value) : value;
  return typeof number === 'number' && Number.isFinite(number) ? number : 'none';
};

/** A library, or undefined when it is not installed. Its name is kept from the type checker, which may not know it. */
async function installed(name: string): Promise<Record<string, never> | undefined> {
  try {
    return (await import(name)) as Record<string, never>;
  } catch {
    return undefined;
  }
}

const CULTURES: Readonly<Record<Language, string>> = { en: 'en-us', de: 'de-de', es: 'es-es', fr: 'fr-fr' };

async function others(): Promise<readonly Reader[]> {
  const readers: Reader[] = [];
  const recognizers = await installed('@microsoft/recognizers-text-number');
  if (recognizers) {
    const recognize = recognizers.recognizeNumber as unknown as (
      text: string,
      culture: string,
    ) => { resolution?: { value?: string } }[];
    const read = (text: string, language: Language): Taken =>
      asTaken(recognize(text, CULTURES[language])[0]?.resolution?.value);
    readers.push({ name: '@microsoft/recognizers-text-number', languages: LANGUAGES, read });
  }
  const compromise = await installed('compromise');
  if (compromise) {
    const nlp = compromise.default as unknown as (text: string) => { numbers(): { get(): unknown[] } };
    readers.push({ name: 'compromise', languages: ['en'], read: (text) => asTaken(nlp(text).numbers().get()[0]) });
  }
  const words = await installed('words-to-numbers');
  if (words) {
    const toNumbers = words.wordsToNumbers as unknown as (text: string) => unknown;
    readers.push({ name: 'words-to-numbers', languages: ['en'], read: (text) => asTaken(toNumbers(text)) });
  }
  return readers;
}

interface Score {
  readonly exact: number;
  readonly asked: number;
  readonly wrong: number;
  readonly micros: number;
}

function taken(reader: Reader, row: Row): Taken {
  try {
    return reader.read(row.text, row.lang);
  } catch {
    return 'none';
  }
}

function microsOf(reader: Reader, rows: readonly Row[]): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const start = process.hrtime.bigint();
    for (const row of rows) taken(reader, row);
    return Number(process.hrtime.bigint() - start) / 1000 / rows.length;
  });
  return times.toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? 0;
}

function score(reader: Reader, rows: readonly Row[]): Score {
  const results = rows.map((row) => ({ got: taken(reader, row), want: row.expect }));
  const share = (count: number): number => (100 * count) / Math.max(1, rows.length);
  const same = (got: Taken, want: Taken): boolean =>
    typeof got === 'number' && typeof want === 'number' ? Math.abs(got - want) < 1e-9 : got === want;
  return {
    exact: share(results.filter((r) => same(r.got, r.want)).length),
    asked: share(results.filter((r) => r.got === 'ask' && r.want !== 'ask').length),
    wrong: share(results.filter((r) => typeof r.got === 'number' && !same(r.got, r.want)).length),
    micros: microsOf(reader, rows),
  };
}

/** The interpreter as the browser gets it, in a folder of its own: the part for every language, and each language's. */
async function built(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const entry = fileURLToPath(new URL('../../src/interpret/index.ts', import.meta.url));
  const lib = { entry, formats: ['es' as const], fileName: 'interpret' };
  await build({
    configFile: false,
    logLevel: 'silent',
    build: { outDir: folder, emptyOutDir: false, lib, minify: true },
  });
  return folder;
}

function printSizes(folder: string): void {
  for (const name of readdirSync(folder).filter((n) => n.endsWith('.js'))) {
    const bytes = gzipSync(readFileSync(join(folder, name)), { level: 9 }).length;
    console.log(`${name.padEnd(24)} ${String(bytes).padStart(7)} bytes gzipped`);
  }
}

export default async function measure(): Promise<void> {
  const folder = await built();
  const interpreter = (await import(pathToFileURL(join(folder, 'interpret.js')).href)) as typeof Interpreter;
  await Promise.all(LANGUAGES.map((language) => interpreter.loadLanguage(language)));
  const given = process.env.BENCH_CORPUS;
  const rows = given === undefined ? ownRows() : corpusRows(given);
  const readers = [ours(interpreter), ...(await others()), scan];
  for (const language of LANGUAGES) {
    const spoken = rows.filter((row) => row.lang === language);
    if (spoken.length === 0) continue;
    console.log(`\n${language}: ${spoken.length} utterances`.padEnd(40) + '  exact%  asked%  wrong%   µs each');
    for (const reader of readers.filter((r) => r.languages.includes(language))) {
      const { exact, asked, wrong, micros } = score(reader, spoken);
      const columns = [exact, asked, wrong].map((n) => n.toFixed(1).padStart(7)).join(' ');
      console.log(`${reader.name.padEnd(38)} ${columns} ${micros.toFixed(1).padStart(9)}`);
    }
  }
  console.log('');
  printSizes(folder);
  rmSync(folder, { recursive: true });
}
