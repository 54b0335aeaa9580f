/** The recogniser as a process: sound in, then the names of grammars, and what it made of the sound out. */
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { Sound } from './wave.ts';
import { toPcm } from './wave.ts';

/** A word or phone, its first and last frame of 10 ms, and its score: 0 is the best the model could do, less is worse. */
export type Part = readonly [word: string, first: number, last: number, score: number];
export type Path = readonly Part[];

/** What is done to the sound before it is listened to: steady noise taken out, or nothing. */
export type Way = 'cleaned' | 'as it is';
const WAYS: readonly Way[] = ['cleaned', 'as it is'];

export interface Loops {
  readonly frames: number;
  /** The sound as the phones it sounds most like, whatever the grammar; for each way. */
  readonly loops: readonly Path[];
}

export interface EarFiles {
  readonly program: string;
  readonly model: string;
  readonly dictionary: string;
  readonly moreWords: string;
  readonly phoneModel: string;
  /** Where the fit of every piece of the model is kept for a moment; another place for every ear. */
  readonly scores: string;
  /** Name → path of a grammar in JSGF. */
  readonly grammars: ReadonlyMap<string, string>;
}

export interface Ear {
  /** One at a time: wait for one answer before the next question. */
  hear(sound: Sound): Promise<Loops>;
  /** The last sound with one of the grammars. */
  with(way: Way, grammar: string): Promise<Path>;
  /** The last sound with a grammar for this one time. */
  once(way: Way, jsgf: string): Promise<Path>;
  close(): void;
}

function start({ program, model, dictionary, moreWords, phoneModel, scores, grammars }: EarFiles) {
  const named = [...grammars].map(([name, path]) => `${name}=${path}`);
  const child = spawn(program, [model, dictionary, moreWords, phoneModel, scores, ...named], {
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  child.stdin.on('error', () => undefined);
  return child;
}

export function openEar(files: EarFiles): Ear {
  const child = start(files);
  let complaints = '';
  child.stderr.on('data', (chunk: Buffer) => (complaints += chunk.toString('utf8')));
  const waiting: { done: (line: string) => void; failed: (error: Error) => void }[] = [];
  createInterface({ input: child.stdout }).on('line', (line) => waiting.shift()?.done(line));
  let ended: string | undefined;
  const end = (why: string): void => {
    ended = why;
    for (const { failed } of waiting.splice(0)) failed(new Error(why));
  };
  child.on('error', (error) => end(`the recogniser did not start: ${error.message}`));
  child.on('close', (code) => end(`the recogniser ended with code ${code}: ${complaints.trim()}`));
  const ask = async (line: string, body?: Uint8Array): Promise<unknown> => {
    if (ended !== undefined) throw new Error(ended);
    const answer = await new Promise<string>((done, failed) => {
      waiting.push({ done, failed });
      child.stdin.write(`${line}\n`);
      if (body !== undefined) child.stdin.write(body);
    });
    return JSON.parse(answer);
  };
  return {
    hear: async (sound) => (await ask(`hear ${sound.length}`, toPcm(sound))) as Loops,
    with: async (way, grammar) => (await ask(`with ${WAYS.indexOf(way)} ${grammar}`)) as Path,
    once: async (way, jsgf) => {
      const bytes = new TextEncoder().encode(jsgf);
      return (await ask(`once ${WAYS.indexOf(way)} ${bytes.length}`, bytes)) as Path;
    },
    close: () => child.stdin.end(),
  };
}
