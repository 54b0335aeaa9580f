/** What speaks for and against the sentence that fits best, as numbers. */
import type { Expectation } from '../../src/interpret/types.ts';
import type { Path } from './ear.ts';
import { fitOf, scoreOf, wordsOf } from './hearing.ts';
import type { Hearing, Sentence } from './hearing.ts';

/** How far a rival must be behind to count less by e, beside the others (thousands). */
const CROWD = 0.2;
/** A rival this far behind is as good as none (thousands). */
const NO_RIVAL = 3;

/** How much better the first sentence fits than the nearest with another meaning. */
function lead({ sentences }: Hearing, fit: (sentence: Sentence) => number): number {
  const [top, ...others] = sentences;
  if (top === undefined) return 0;
  return Math.min(NO_RIVAL, ...others.map((other) => fit(top) - fit(other)));
}

/** How much room the rivals take beside the first sentence, as a logarithm. */
function crowd({ sentences }: Hearing): number {
  const [top, ...others] = sentences;
  if (top === undefined) return 0;
  return Math.log(0.001 + total(others.map((other) => Math.exp((fitOf(other) - fitOf(top)) / CROWD))));
}

/** What the first sentence is, beside what is awaited: a number for another reading, a word, a number between the halves. */
function kindOf({ meaning }: Sentence, { current }: Expectation): readonly number[] {
  const [name = '', value] = meaning.split(' ');
  const number = /^\d+$/.test(value ?? '');
  const kinds = [number && name !== current?.id, !number, number && Number(value) % 50 !== 0];
  return kinds.map(Number);
}

/** The phone loop's score spread over the frames of its phones. */
function loopByFrame(loop: Path, frames: number): Float64Array {
  const scores = new Float64Array(frames + 1);
  for (const [, first, last, score] of loop)
    for (let f = first; f <= last && f <= frames; f += 1) scores[f] = score / (last - first + 1);
  return scores;
}

const lengthOf = ([, first, last]: Path[number]): number => last - first + 1;
const total = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0);

/** What each word loses against the phones that fit best, a frame. */
export function wordLosses(path: Path, loop: Path, frames: number): readonly number[] {
  const best = loopByFrame(loop, frames);
  return wordsOf(path).map((word) => {
    const [, first, last, score] = word;
    let free = 0;
    for (let f = first; f <= last; f += 1) free += best[f] ?? 0;
    return (free - score) / lengthOf(word);
  });
}

/** Steady noise leaves no silence around the words; beyond this share less silence says no more. */
const LITTLE_SILENCE = 0.05;

/** Names of the numbers of `cluesOf`. */
export const CLUES = [
  'mean loss, cleaned',
  'worst loss, cleaned',
  'mean loss, as it is',
  'worst loss, as it is',
  'lead',
  'lead, cleaned',
  'lead, as it is',
  'agree',
  'loop',
  'silence',
  'longest word',
  'shortest word',
  'words',
  'length',
  'one word',
  'crowd',
  'another reading',
  'a word',
  'between the halves',
] as const;

/** In the order of CLUES; undefined when no word was heard. */
export function cluesOf(hearing: Hearing, expectation: Expectation): readonly number[] | undefined {
  const top = hearing.sentences[0];
  if (top === undefined) return undefined;
  const lengths = wordsOf(top.cleaned).map(lengthOf);
  const all = total(lengths);
  const losses = ([top.cleaned, top.asItIs] as const).flatMap((path, way) => {
    const list = wordLosses(path, hearing.loops[way] ?? [], hearing.frames);
    const own = wordsOf(path).map(lengthOf);
    return [total(list.map((loss, i) => loss * (own[i] ?? 0))) / total(own), Math.max(...list)];
  });
  const leads = [fitOf, ({ cleaned }: Sentence) => scoreOf(cleaned), ({ asItIs }: Sentence) => scoreOf(asItIs)];
  return [
    ...losses,
    ...leads.map((fit) => Math.tanh(2 * lead(hearing, fit))),
    hearing.agree,
    -scoreOf(hearing.loops[0] ?? []) / hearing.frames,
    Math.log(LITTLE_SILENCE + 1 - all / hearing.frames),
    Math.max(...lengths),
    Math.min(...lengths),
    lengths.length,
    all,
    Number(lengths.length === 1),
    crowd(hearing),
    ...kindOf(top, expectation),
  ];
}
