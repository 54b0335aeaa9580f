/**
 * How well, how fast (processor time) and how large: our reading of spoken numbers beside general-purpose libraries and a
 * plain scan for figures, on our own sentences, or on a corpus given as BENCH_CORPUS (a file or several, comma-separated, each a list of
 * {"lang","text","expect": number|"ask"|"none"} lines). Libraries that are not installed are left out. The libraries only find numbers, so the
 * part of ours that does only that, with the words of numbers and units alone, stands in a row of its own.
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import type { Language } from '../../src/domain/protocol/types.ts';
import { freeExpectation } from '../../src/interpret/free.ts';
import { words as english } from '../../src/interpret/en/tables.ts';
import type * as Interpreter from '../../src/interpret/index.ts';
import type { Lexicon } from '../../src/interpret/lexicon.ts';
import type * as Lines from '../../src/interpret/line.ts';
import * as roles from '../../src/interpret/roles.ts';
import type * as Spans from '../../src/interpret/spans.ts';
import type * as Tokens from '../../src/interpret/tokens.ts';

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
/** Rounds of which the best counts: the processor time of the others holds what the machine did besides. */
const ROUNDS = 12;

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
  const names = (language: Language) => readingDefs.map((def) => ({ id: def.id, names: def.names[language] ?? [] }));
  const free = new Map(LANGUAGES.map((language) => [language, freeExpectation(language, names(language))]));
  const read = (text: string, language: Language): Taken => {
    const expectation = free.get(language) ?? freeExpectation(language);
    const heard = interpret({ source: 'voice', text, alternatives: [{ transcript: text }], at: 0 }, expectation);
    if (heard.kind !== 'reading') return heard.kind === 'ask' ? 'ask' : 'none';
    return heard.value >= LONGEST ? 'ask' : heard.value / 100;
  };
  return { name: 'ours', languages: LANGUAGES, read };
}

/** Words that are part of a number or say of what: no talk, no commands, no corrections. */
const OF_NUMBERS =
  roles.NUMBER_WORD | roles.POINT | roles.AND | roles.HALF | roles.QUARTER | roles.PARTS | roles.ARTICLE | roles.OH;
const BESIDE_NUMBERS = roles.MIDDLE | roles.SOUNDS | roles.UNIT | roles.NEGATIVE;

/** A program that finds numbers in English and does nothing else. */
function finderSource(): string {
  const from = (name: string): string =>
    JSON.stringify(fileURLToPath(new URL(`../../src/interpret/${name}.ts`, import.meta.url)));
  const words = english.filter(([role]) => (role & (OF_NUMBERS | BESIDE_NUMBERS)) !== 0);
  const plain = { language: 'en', commaIsPoint: false, andAfterHundred: true, words, commands: {} };
  const none = { suffixes: '', hesitation: 'uh um er', polite: '', note: '', confused: '' };
  return `export { numbersIn } from ${from('spans')};
export { Line } from ${from('line')};
export { tokenise } from ${from('tokens')};
import { Lexicon } from ${from('lexicon')};
import { tens } from ${from('en/tens')};
export const english = new Lexicon({ ...${JSON.stringify({ ...plain, ...none })}, tens });`;
}

type Finder = Pick<typeof Spans, 'numbersIn'> &
  Pick<typeof Lines, 'Line'> &
  Pick<typeof Tokens, 'tokenise'> & { readonly english: Lexicon };

/** Numbers found, read as those of a library; one that may be several numbers is a question. */
function ourFinder({ numbersIn, Line, tokenise, english: words }: Finder): Reader {
  const read = (text: string): Taken => {
    const found = numbersIn(new Line(tokenise(text, words), words)).filter(({ role }) => role === 'reading');
    if (found.some(({ problem }) => problem !== undefined)) return 'ask';
    return asTaken(found.map(({ value, negative }) => (negative ? -value : value) / 100));
  };
  return { name: 'ours, only finding numbers', languages: ['en'], read };
}

/** What a library finds, as fairly as can be: one number is taken, several that differ are a question, none is none. */
function asTaken(found: readonly unknown[]): Taken {
  const numbers = found.map((value) =>
    typeof value === 'string' && value !== '' ? Number(value.replace(',', '.')) : value,
  );
  const finite = [...new Set(numbers)].filter((n) => typeof n === 'number' && Number.isFinite(n)) as number[];
  return finite.length > 1 ? 'ask' : (finite[0] ?? 'none');
}

const scan: Reader = {
  name: 'scan for figures',
  languages: LANGUAGES,
  read: (text) => asTaken(text.match(/\d+(?:[.,]\d+)?/g) ?? []),
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
      asTaken(recognize(text, CULTURES[language]).map(({ resolution }) => resolution?.value));
    readers.push({ name: '@microsoft/recognizers-text-number', languages: LANGUAGES, read });
  }
  const compromise = await installed('compromise');
  if (compromise) {
    const nlp = compromise.default as unknown as (text: string) => { numbers(): { get(): unknown[] } };
    readers.push({ name: 'compromise', languages: ['en'], read: (text) => asTaken(nlp(text).numbers().get()) });
  }
  const words = await installed('words-to-numbers');
  if (words) {
    const toNumbers = words.wordsToNumbers as unknown as (text: string) => unknown;
    readers.push({ name: 'words-to-numbers', languages: ['en'], read: (text) => asTaken([toNumbers(text)]) });
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

/** Processor time of this process for one utterance, in the best of all rounds. */
function microsOf(reader: Reader, rows: readonly Row[]): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const start = process.cpuUsage();
    for (const row of rows) taken(reader, row);
    const { user, system } = process.cpuUsage(start);
    return (user + system) / rows.length;
  });
  return Math.min(...times);
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

/** A file of the interpreter as the browser gets it, in a folder of its own, with what it needs: languages apart. */
async function built(name: string): Promise<string> {
  return bundled(name, fileURLToPath(new URL(`../../src/interpret/${name}.ts`, import.meta.url)));
}

async function bundled(name: string, entry: string): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const output = { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' };
  const rolldownOptions = { input: { [name]: entry }, preserveEntrySignatures: 'strict' as const, output };
  await build({
    configFile: false,
    logLevel: 'silent',
    build: { outDir: folder, emptyOutDir: false, modulePreload: false, target: 'es2022', rolldownOptions },
  });
  return folder;
}

/** The same of a program given as text, which may import installed libraries. */
async function builtFrom(name: string, source: string): Promise<string> {
  const cache = fileURLToPath(new URL('../../.cache/', import.meta.url));
  mkdirSync(cache, { recursive: true });
  const place = mkdtempSync(join(cache, 'bench-'));
  try {
    writeFileSync(join(place, 'entry.js'), source);
    return await bundled(name, join(place, 'entry.js'));
  } finally {
    rmSync(place, { recursive: true });
  }
}

const gzipped = (text: string | Buffer): number => gzipSync(text, { level: 9 }).length;

function printSize(name: string, bytes: number): void {
  console.log(`${name.padEnd(46)} ${String(bytes).padStart(7)} bytes gzipped`);
}

/** What interpreting an utterance in English takes, what of it are the tables, and what each language adds. */
async function printSizes(whole: string): Promise<void> {
  const voice = await built('voice');
  printSize('interpreting speech in English', gzipped(readFileSync(join(voice, 'voice.js'))));
  printSize('  of it the tables of English', gzipped(english.map(([, list]) => list).join('\n')));
  printSize('the same with keypad, keys and reading back', gzipped(readFileSync(join(whole, 'index.js'))));
  for (const name of readdirSync(whole).filter((n) => n.endsWith('.js') && n !== 'index.js')) {
    const bytes = gzipped(readFileSync(join(whole, name)));
    if (bytes > 1000) printSize(`fetched when wanted: ${name}`, bytes);
  }
  rmSync(voice, { recursive: true });
}

/** What a browser would have to fetch for a library, whole. */
async function printPeerSizes(names: readonly string[]): Promise<void> {
  for (const name of names) {
    if ((await installed(name)) === undefined) continue;
    const folder = await builtFrom('peer', `import * as whole from '${name}';\nglobalThis.peer = whole;`);
    printSize(name, gzipped(readFileSync(join(folder, 'peer.js'))));
    rmSync(folder, { recursive: true });
  }
}

export default async function measure(): Promise<void> {
  const folder = await built('index');
  const interpreter = (await import(pathToFileURL(join(folder, 'index.js')).href)) as typeof Interpreter;
  await Promise.all(LANGUAGES.map((language) => interpreter.loadLanguage(language)));
  const given = process.env.BENCH_CORPUS;
  const rows = given === undefined ? ownRows() : corpusRows(given);
  const finder = await builtFrom('finder', finderSource());
  const finds = (await import(pathToFileURL(join(finder, 'finder.js')).href)) as Finder;
  const peers = await others();
  const readers = [ours(interpreter), ourFinder(finds), ...peers, scan];
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
  await printSizes(folder);
  printSize('only finding numbers in English', gzipped(readFileSync(join(finder, 'finder.js'))));
  await printPeerSizes(peers.map(({ name }) => name));
  for (const done of [folder, finder]) rmSync(done, { recursive: true });
}
