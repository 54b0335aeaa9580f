// @vitest-environment node
/**
 * Files made to do harm, at every edge where something from outside comes in. Each attack is put into a sound file of each
 * kind: it is refused with a sentence, nothing throws, and what every object inherits stays as it was.
 */
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { readCaseFile } from '../../src/app/handoff.ts';
import { parseRecording } from '../../src/app/replay.ts';
import { soundSettings } from '../../src/app/settings.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { parseFacts } from '../../src/domain/case/parse.ts';
import { practiceFileText, readPractice, readPracticeFile } from '../../src/domain/case/practiceFile.ts';
import { protocolFileText, readProtocolFile, readProtocolShape } from '../../src/domain/case/protocolFile.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { BackupMaker, readBackup } from '../../src/handoff/backup.ts';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import { caseText } from '../../src/handoff/chain.ts';
import { seal } from '../../src/handoff/sealed.ts';
import { isCaseRow } from '../../src/storage/batch.ts';
import { defaultSettings } from '../../src/stores/stores.ts';
import { good } from '../handoff/tamper.ts';
import { opening, reading, stamp } from '../helpers/facts.ts';

// Bounds in time are measured by hand (docs/hazards.md); here the machine may be busy with other things.
vi.setConfig({ testTimeout: 60_000 });

type Tree = Record<string, unknown>;

const facts: readonly Fact[] = stamp([
  ...opening,
  { kind: 'note', step: 'a', text: 'remark', source: 'keypad' },
  reading(6750),
  { kind: 'attemptStarted', step: 'a', goto: 'a', steps: ['a'], reason: 'again' },
]);

const PASS = 'seven wet gloves';
const REPLAY = [
  '{"replay":1,"case":"T-1","visit":1,"clinician":"KV","assistant":"BR","startedAt":"2026-03-02T08:00:00Z"}',
  '{"t":0,"source":"keypad","text":"62.5"}',
];

interface FileEdge {
  readonly name: string;
  /** A sound file. */
  make(): Promise<string>;
  /** Places to attack: a sealed file costs a key each. */
  readonly most: number;
  /** False = refused. */
  takes(text: string): Promise<boolean>;
}

const plainCase = async () => caseText(good(await toCaseFile(facts, 'chair-1')));

const edges: readonly FileEdge[] = [
  { name: 'a case file', most: 40, make: plainCase, takes: async (text) => (await readCaseFile(text)).ok },
  {
    name: 'a sealed case file',
    most: 4,
    make: async () => good(await seal(await plainCase(), PASS)),
    takes: async (text) => (await readCaseFile(text, PASS)).ok,
  },
  {
    name: 'what lies in a sealed file',
    most: 4,
    make: plainCase,
    takes: async (text) => (await readCaseFile(good(await seal(text, PASS)), PASS)).ok,
  },
  {
    name: 'a backup',
    most: 20,
    make: async () => {
      const settings = { preferences: defaultSettings, practice: defaultPractice, protocols: [] };
      const maker = new BackupMaker({ at: 1, writer: 'chair-1', settings });
      good(await maker.add(facts));
      return good(await maker.text());
    },
    takes: async (text) => {
      const read = await readBackup(text);
      return read.ok && read.value.faults.length === 0;
    },
  },
  {
    name: 'a practice file',
    most: 40,
    make: () => Promise.resolve(practiceFileText(defaultPractice)),
    takes: (text) => Promise.resolve(readPracticeFile(text).ok),
  },
  {
    name: 'a protocol file',
    most: 40,
    make: () => Promise.resolve(protocolFileText(visit1)),
    takes: (text) => Promise.resolve(readProtocolFile(text, defaultPractice).ok),
  },
  {
    name: 'a replay file',
    most: 40,
    make: () => Promise.resolve(REPLAY.join('\n')),
    takes: (text) => Promise.resolve(parseRecording(text).ok),
  },
];

/** Every place in a text at which an object begins; at most so many of them, spread over the text. */
function objectStarts(text: string, most = 1000): readonly number[] {
  const all = [...text.matchAll(/\{(?=\s*")/g)].map(({ index }) => index + 1);
  const every = Math.max(1, Math.ceil(all.length / most));
  return all.filter((_, i) => i % every === 0);
}

/** A text made from a sound one: `at` is a place where an object has just begun. */
const attacks: readonly (readonly [name: string, (text: string, at: number) => string])[] = [
  ['a __proto__ key', (text, at) => `${text.slice(0, at)}"__proto__":{"polluted":true},${text.slice(at)}`],
  [
    'a constructor key',
    (text, at) => `${text.slice(0, at)}"constructor":{"prototype":{"polluted":true}},${text.slice(at)}`,
  ],
  ['a prototype key', (text, at) => `${text.slice(0, at)}"prototype":{"polluted":true},${text.slice(at)}`],
  ['half a letter in a name', (text, at) => `${text.slice(0, at)}"\\ud800":1,${text.slice(at)}`],
  ['a number beyond all numbers', (text, at) => `${text.slice(0, at)}"huge":1e999,${text.slice(at)}`],
];

const big: readonly (readonly [name: string, (text: string, at: number) => string])[] = [
  ['50 MB of text in a field', (text, at) => `${text.slice(0, at)}"x":"${'x'.repeat(50e6)}",${text.slice(at)}`],
  ['50 MB of blanks behind it', (text) => `${text}${' '.repeat(50e6)}?`],
  [
    'brackets 100,000 deep',
    (text, at) => `${text.slice(0, at)}"x":${'['.repeat(1e5)}${']'.repeat(1e5)},${text.slice(at)}`,
  ],
  [
    'objects 100,000 deep',
    (text, at) => `${text.slice(0, at)}"x":${'{"a":'.repeat(1e5)}1${'}'.repeat(1e5)},${text.slice(at)}`,
  ],
  ['brackets that never close', () => '['.repeat(5e6)],
  ['a list of a million', (text, at) => `${text.slice(0, at)}"x":[${'0,'.repeat(1e6)}0],${text.slice(at)}`],
  [
    'a hundred thousand names',
    (text, at) =>
      `${text.slice(0, at)}${Array.from({ length: 1e5 }, (_, i) => `"k${i}":0,`).join('')}${text.slice(at)}`,
  ],
  ['zeros, NUL letters', () => '\u0000'.repeat(1e6)],
];

function cleanAsBefore(): void {
  expect(({} as Tree)['polluted']).toBeUndefined();
  expect(Object.keys(Object.prototype)).toEqual([]);
  expect(([] as unknown as Tree)['polluted']).toBeUndefined();
}

afterEach(cleanAsBefore);

describe.each(edges)('$name made to do harm', ({ name, make, takes, most }) => {
  let text = '';
  beforeAll(async () => {
    text = await make();
  });

  it('is taken without the harm', async () => {
    expect(await takes(text)).toBe(true);
  });

  it.each(attacks)('is refused with %s, wherever it stands', async (_name, attack) => {
    const starts = objectStarts(text, most);
    expect(starts.length).toBeGreaterThan(1);
    for (const at of starts) expect(await takes(attack(text, at)), text.slice(at, at + 40)).toBe(false);
    cleanAsBefore();
  });

  // To seal 50 MB is our own work, and opened they are the case file above.
  it.each(name.startsWith('what') ? big.slice(2) : big)('is refused with %s', async (_name, attack) => {
    expect(await takes(attack(text, objectStarts(text).at(-1) ?? 1))).toBe(false);
  });
});

/** What lies on the disk needs no JSON: it comes as it was stored, and the disk may be anybody's. */
const NOT_NUMBERS: readonly unknown[] = [
  'NaN',
  Number.NaN,
  Infinity,
  -Infinity,
  1e308,
  -1,
  2 ** 60,
  '1',
  [],
  {},
  null,
  true,
];

function withField(tree: unknown, path: readonly string[], value: unknown): unknown {
  const copy = structuredClone(tree);
  let at = copy as Tree;
  for (const key of path.slice(0, -1)) at = at[key] as Tree;
  Object.defineProperty(at, path.at(-1) ?? '', { value, enumerable: true, configurable: true, writable: true });
  return copy;
}

/** Paths of all fields of a tree. */
function paths(
  value: unknown,
  kind: 'number' | 'string' | 'object',
  above: readonly string[] = [],
): readonly string[][] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const here = [...above, key];
    const own = typeof inner === kind && inner !== null ? [here] : [];
    return [...own, ...paths(inner, kind, here)];
  });
}

/** Paths of all lists of a tree. */
function lists(tree: unknown): readonly string[][] {
  const at = (path: readonly string[]) => path.reduce<unknown>((value, key) => (value as Tree)[key], tree);
  return paths(tree, 'object').filter((path) => Array.isArray(at(path)));
}

const stored = [
  { name: 'facts', sound: facts, takes: (raw: unknown) => parseFacts(raw as readonly unknown[]).ok },
  { name: 'the practice', sound: defaultPractice, takes: (raw: unknown) => readPractice(raw).ok },
  { name: 'a protocol', sound: visit1, takes: (raw: unknown) => readProtocolShape(raw).ok },
] as const;

describe.each(stored)('$name on a disk made to do harm', ({ name, sound, takes }) => {
  it('is taken without the harm', () => {
    expect(takes(sound)).toBe(true);
  });

  it('is refused with what is no number where one is wanted', () => {
    const places = paths(sound, 'number').slice(0, 60);
    expect(places.length).toBeGreaterThan(name === 'a protocol' ? 1 : 5);
    for (const path of places)
      for (const value of ['NaN', Number.NaN, Infinity, '1', [], {}, null, true])
        expect(takes(withField(sound, path, value)), `${path.join('.')} = ${JSON.stringify(value)}`).toBe(false);
    expect(NOT_NUMBERS.length).toBeGreaterThan(5);
  });

  it('is refused with 10 MB in a text, or with a list of a million', () => {
    const long = 'x'.repeat(10e6);
    for (const path of paths(sound, 'string').slice(0, 20))
      expect(takes(withField(sound, path, long)), path.join('.')).toBe(false);
    const many = Array.from({ length: 1e6 }, () => 'a');
    for (const path of lists(sound).slice(0, 5))
      expect(takes(withField(sound, path, many)), path.join('.')).toBe(false);
  });

  it('never hands on a name that reaches into what every object inherits', () => {
    for (const path of [[], ...paths(sound, 'object')].slice(0, 60)) {
      const value = JSON.parse('{"polluted":true}') as unknown;
      for (const key of ['__proto__', 'constructor', 'prototype']) takes(withField(sound, [...path, key], value));
    }
    expect(({} as Tree)['polluted']).toBeUndefined();
    cleanAsBefore();
  });
});

it('preferences made to do harm stay at what is sound', () => {
  for (const key of Object.keys(defaultSettings))
    for (const value of [
      ...NOT_NUMBERS.filter((one) => one !== true),
      'x'.repeat(10e6),
      '<img src=x onerror=alert(1)>',
    ])
      expect(soundSettings({ [key]: value }), key).toEqual(defaultSettings);
  expect(soundSettings(JSON.parse('{"__proto__":{"polluted":true},"constructor":{"polluted":true}}'))).toEqual(
    defaultSettings,
  );
});

it('a row of the list made to do harm is left out', () => {
  const row = { id: 'a', code: 'K', demo: false, openedAt: 1, lastAt: 1, visit: 1, closed: false, lastSeq: 1 };
  expect(isCaseRow(row)).toBe(true);
  for (const key of ['openedAt', 'lastAt', 'visit', 'lastSeq'])
    for (const value of ['NaN', Number.NaN, Infinity, null, {}])
      expect(isCaseRow({ ...row, [key]: value })).toBe(false);
});
