/** Makes the sounds: voices and noises, mixed at a set distance of loudness. Every sound is made once and kept for the run. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { run } from '../lib/run.mjs';
import { BURSTS, noiseCommand, NOISES } from './noises.ts';
import type { Burst, Noise } from './noises.ts';
import { chanceFrom } from './random.ts';
import type { Chance } from './random.ts';
import type { Scene } from './scenes.ts';
import { TALK } from './talk.ts';
import { mannerOf, speakCommand, VOICES } from './voices.ts';
import type { Group, Manner } from './voices.ts';
import * as wave from './wave.ts';
import type { Sound } from './wave.ts';

/** Decibels between speech and noise; clean is a quiet room. */
export const LEVELS = ['clean', 20, 15, 10] as const;
export type Level = (typeof LEVELS)[number];

const SECOND = wave.RATE;
const TALKERS = 5;
const SENTENCES_EACH = 5;
const LONGEST_BABBLE = 30 * SECOND;

async function must(command: readonly string[]): Promise<void> {
  const [program, ...args] = command;
  const { code, output } = await run(program as string, args);
  if (code !== 0) throw new Error(`${command.join(' ')}: ${output.trim() || `exit code ${code}`}`);
}

export interface Studio {
  /** The scene as it is heard at this level. */
  heard(scene: Scene, level: Level): Promise<Sound>;
}

const RAW = `-r ${wave.RATE} -c 1 -b 16 -e signed-integer -L -t raw`.split(' ');

/** Reads any sound file as 16 kHz, one channel. */
async function load(path: string): Promise<Sound> {
  const raw = `${path}.raw`;
  await must(['sox', '-R', path, ...RAW, raw]);
  const bytes = readFileSync(raw);
  rmSync(raw);
  rmSync(path);
  return wave.fromPcm(bytes);
}

let files = 0;
async function make(command: (path: string) => readonly string[], folder: string): Promise<Sound> {
  files += 1;
  const path = join(folder, `${process.pid}-${files}.wav`);
  await must(command(path));
  return load(path);
}

const speak = (text: string, manner: Manner, folder: string): Promise<Sound> =>
  make((path) => speakCommand(text, manner, path), folder);

/** Several people talking at once, from their own group's voices and sentences. */
async function babble(group: Group, folder: string): Promise<Sound> {
  const chance = chanceFrom(`babble/${group}`);
  let all: Sound = new Float64Array(LONGEST_BABBLE);
  for (let talker = 0; talker < TALKERS; talker += 1) {
    const voice = chance.pick(VOICES[group]);
    const manner = mannerOf(voice, chance);
    const text = Array.from({ length: SENTENCES_EACH }, () => chance.pick(TALK[group])).join('. ');
    const said = wave.toLoudness(await speak(text, manner, folder), 1);
    all = wave.added(all, wave.stretch(said, LONGEST_BABBLE, chance));
  }
  return all;
}

type Bank = Readonly<Record<Noise | Burst, Sound>>;

async function bankOf(group: Group, folder: string): Promise<Bank> {
  const [pink, suction, cough, clatter] = await Promise.all(
    (['pink', 'suction', ...BURSTS] as const).map((noise) => make((path) => noiseCommand(noise, path), folder)),
  );
  return { pink, suction, cough, clatter, babble: await babble(group, folder) } as Bank;
}

/** The noise of a level, as long as the sound it is to be laid under. */
function under(bank: Bank, level: Level, at: { length: number; noise: Noise; chance: Chance }): Sound {
  const quiet = wave.room(at.length, at.chance);
  if (level === 'clean') return quiet;
  const noise = wave.stretch(wave.toLoudness(bank[at.noise], 1, wave.rms), at.length, at.chance);
  return wave.added(
    quiet,
    wave.toLoudness(noise, wave.noiseRms(level), () => 1),
  );
}

/** Which noise a scene has at all its noisy levels. */
export const noiseOf = ({ id }: Pick<Scene, 'id'>): Noise => chanceFrom(`${id}/noise`).pick(NOISES);

/** Nobody speaks: the noise of the level, and often a cough or the clatter of instruments. */
function bare(bank: Bank, level: Level, at: { noise: Noise; chance: Chance }): Sound {
  const { noise, chance } = at;
  const length = Math.round((1 + chance.next() * 1.5) * SECOND);
  const background = under(bank, level, { length, noise, chance });
  const burst = level === 'clean' ? chance.pick(BURSTS) : chance.pick([...BURSTS, undefined]);
  if (burst === undefined) return background;
  const loud = wave.toLoudness(bank[burst], wave.SPEECH_RMS * (0.5 + chance.next()));
  return wave.added(background, wave.padded(loud, chance.whole(0, SECOND / 3), length));
}

export function openStudio(folder: string): Studio {
  const banks = new Map<Group, Promise<Bank>>();
  const spoken = new Map<string, Promise<Sound>>();
  const bank = (group: Group): Promise<Bank> => {
    const known = banks.get(group) ?? bankOf(group, folder);
    banks.set(group, known);
    return known;
  };
  const voiceOf = (scene: Scene): Promise<Sound> => {
    const chance = chanceFrom(`${scene.id}/voice`);
    const manner = mannerOf(chance.pick(VOICES[scene.group]), chance);
    const known = spoken.get(scene.id) ?? speak(scene.text, manner, folder);
    spoken.set(scene.id, known);
    return known;
  };
  return {
    async heard(scene, level) {
      const sounds = await bank(scene.group);
      const chance = chanceFrom(`${scene.id}/${level}`);
      const noise = noiseOf(scene);
      if (scene.kind === 'noise') return bare(sounds, level, { noise, chance });
      const voice = wave.toLoudness(await voiceOf(scene), wave.SPEECH_RMS);
      const padded = wave.padded(voice, chance.whole(SECOND / 8, SECOND / 4), chance.whole(SECOND / 8, SECOND / 3));
      return wave.added(padded, under(sounds, level, { length: padded.length, noise, chance }));
    },
  };
}
