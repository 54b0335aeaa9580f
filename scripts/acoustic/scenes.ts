/** What is said at which moment, and what it means: readings, commands, talk not meant for the machine, and bare noise. */
import type { Hundredths } from '../../src/domain/measure/length.ts';
import { speakNumber } from '../../src/interpret/index.ts';
import type { CommandId, ExpectedReading, Expectation } from '../../src/interpret/types.ts';
import { atClock, atPending, atReading, atStep } from './moments.ts';
import { chanceFrom } from './random.ts';
import type { Chance } from './random.ts';
import { TALK } from './talk.ts';
import type { Group } from './voices.ts';

export type Truth =
  | { readonly kind: 'reading'; readonly value: Hundredths; readonly reading: string }
  | { readonly kind: 'command'; readonly command: CommandId }
  | { readonly kind: 'answer'; readonly answer: string }
  | { readonly kind: 'nothing' };

export interface Scene {
  readonly id: string;
  readonly group: Group;
  readonly kind: 'reading' | 'command' | 'talk' | 'noise';
  /** Empty for bare noise. */
  readonly text: string;
  readonly expectation: Expectation;
  readonly truth: Truth;
}

export interface Counts {
  readonly readings: number;
  readonly commands: number;
  readonly talk: number;
  readonly noise: number;
}

/** Steps at which readings are tried: mostly the long distances a denture stands on, some short ones. */
const READING_STEPS = [
  'upper-width',
  'lower-width',
  'lower-length',
  'bone-height',
  'old-height',
  'rest-height',
  'rest-height',
  'closed-height',
  'closed-height',
  'record-height',
  'sulcus-upper-labial',
  'speaking-space',
  'midline-offset',
  'canine-lines',
  'interalar-width',
  'face-width',
  'axis-incisal',
  'rim-show',
] as const;
const OTHER_STEPS = ['upper-surface', 'upper-tray', 'marks', 'sign-in-blood'] as const;

/** Shares: seldom outside the expected range, mostly on the half millimetre, as a caliper is read aloud. */
const USUAL = 0.88;
const ON_THE_HALF = 0.8;
/** What repeated readings of one set differ by, at most (hundredths). */
const SPREAD = 100;

const onGrid = (value: Hundredths, grid: number): Hundredths => Math.round(value / grid) * grid;

function valueFor(reading: ExpectedReading, chance: Chance): Hundredths {
  const [low, high] = chance.next() < USUAL ? reading.expected : reading.plausible;
  return onGrid(chance.whole(low, high), chance.next() < ON_THE_HALF ? 50 : 10);
}

/** Words for a value as one person or another says them. */
export function wordsFor(value: Hundredths, chance: Chance): string {
  const plain = speakNumber(value, 'en').replaceAll('-', ' ');
  const half = value % 100 === 50 && value > 100 && chance.next() < 0.15;
  return half ? `${speakNumber(value - 50, 'en').replaceAll('-', ' ')} and a half` : plain;
}

function dressed(words: string, reading: ExpectedReading, chance: Chance): string {
  const way = chance.next();
  if (way < 0.65) return words;
  if (way < 0.8) return `${words} millimetres`;
  return `${chance.pick(reading.names)} ${words}`;
}

function readingScene(chance: Chance): Omit<Scene, 'id' | 'group'> {
  const step = chance.pick(READING_STEPS);
  const first = atReading(step, []);
  const current = first.current as ExpectedReading;
  const value = valueFor(current, chance);
  const repeats = step === 'rest-height' || step === 'closed-height' ? chance.whole(0, 2) : 0;
  const previous = Array.from({ length: repeats }, () => onGrid(value + chance.whole(-SPREAD, SPREAD), 50));
  return {
    kind: 'reading',
    text: dressed(wordsFor(value, chance), current, chance),
    expectation: atReading(step, previous),
    truth: { kind: 'reading', value, reading: current.id },
  };
}

type Told = readonly [text: string, truth: Truth, expectation: (chance: Chance) => Expectation];
const anyReading = (chance: Chance): Expectation => atReading(chance.pick(READING_STEPS), []);
const pending = (chance: Chance): Expectation => {
  const step = chance.pick(READING_STEPS);
  return atPending(step, valueFor(atReading(step, []).current as ExpectedReading, chance));
};
const command = (text: string, id: CommandId, when = anyReading): Told => [
  text,
  { kind: 'command', command: id },
  when,
];
const answer = (text: string, id: string, step: string): Told => [
  text,
  { kind: 'answer', answer: id },
  () => atStep(step),
];

const COMMANDS: readonly Told[] = [
  command('next', 'next'),
  command('back', 'back'),
  command('go back', 'back'),
  command('undo', 'undo'),
  command('scratch that', 'undo'),
  command('hold', 'hold'),
  command('pause', 'hold'),
  command('skip', 'skip'),
  command('help', 'help'),
  command('how long', 'howLong'),
  command('say again', 'sayAgain'),
  command('yes', 'yes', pending),
  command('yes', 'yes', pending),
  command('keep it', 'yes', pending),
  command('no', 'no', pending),
  command('wrong', 'no', pending),
  command('next', 'next', pending),
  command('start', 'start', () => atClock('upper-impression', 'idle')),
  command('start the clock', 'start', () => atClock('upper-impression', 'idle')),
  command('seated', 'seated', () => atClock('upper-impression', 'mixing')),
  command('out', 'out', () => atClock('upper-impression', 'seated')),
  answer('yes', 'yes', 'upper-surface'),
  answer('no', 'no', 'upper-surface'),
  answer('it fits', 'fits', 'upper-tray'),
  answer('another tray', 'next-tray', 'upper-tray'),
  answer('made', 'made', 'marks'),
];

/** Talk and noise come at any time: mostly while a number is awaited, which is when they do most harm. */
function anyMoment(chance: Chance): Expectation {
  const when = chance.next();
  if (when < 0.6) return anyReading(chance);
  if (when < 0.75) return pending(chance);
  if (when < 0.9) return atStep(chance.pick(OTHER_STEPS));
  return atClock('upper-impression', chance.pick(['idle', 'mixing', 'seated'] as const));
}

/** The nth of `count`: all commands in turn, or of fewer some from all over the list. */
function commandScene(chance: Chance, n: number, count: number): Omit<Scene, 'id' | 'group'> {
  const place = Math.floor(n * Math.max(1, COMMANDS.length / count)) % COMMANDS.length;
  const [text, truth, when] = COMMANDS[place] as Told;
  return { kind: 'command', text, truth, expectation: when(chance) };
}

const NOTHING: Truth = { kind: 'nothing' };

/** The trials of one group; the same ones every time for the same counts. */
export function scenesOf(group: Group, counts: Counts): readonly Scene[] {
  const talk = TALK[group];
  const many = (
    count: number,
    kind: Scene['kind'],
    make: (chance: Chance, n: number) => Omit<Scene, 'id' | 'group'>,
  ): Scene[] =>
    Array.from({ length: count }, (_, n) => {
      const id = `${group}/${kind}/${n}`;
      return { id, group, ...make(chanceFrom(id), n) };
    });
  return [
    ...many(counts.readings, 'reading', readingScene),
    ...many(counts.commands, 'command', (chance, n) => commandScene(chance, n, counts.commands)),
    ...many(counts.talk, 'talk', (chance, n) => ({
      kind: 'talk',
      text: talk[n % talk.length] as string,
      truth: NOTHING,
      expectation: anyMoment(chance),
    })),
    ...many(counts.noise, 'noise', (chance) => ({
      kind: 'noise',
      text: '',
      truth: NOTHING,
      expectation: anyMoment(chance),
    })),
  ];
}
