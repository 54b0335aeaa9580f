/** Who speaks: voices of two synthesizers in two groups. What is tuned is tuned on one group and told of the other. */
import type { Chance } from './random.ts';

export type Group = 'tuning' | 'held-out';

export interface Voice {
  readonly program: 'espeak-ng' | 'flite';
  readonly name: string;
}

const espeak = (name: string): Voice => ({ program: 'espeak-ng', name });
const flite = (name: string): Voice => ({ program: 'flite', name });

export const VOICES: Readonly<Record<Group, readonly Voice[]>> = {
  tuning: [
    flite('rms'),
    flite('kal16'),
    espeak('en-us'),
    espeak('en-gb-scotland+f2'),
    espeak('en-gb-x-rp+m3'),
    espeak('en-us+f4'),
    espeak('en-us+m2'),
    espeak('en-gb-scotland+m5'),
    espeak('en-gb-x-rp+f5'),
    espeak('en-029+m1'),
  ],
  'held-out': [
    flite('slt'),
    flite('awb'),
    espeak('en-gb'),
    espeak('en-us+f3'),
    espeak('en-gb-x-gbclan+m7'),
    espeak('en-us-nyc+f1'),
  ],
};

/** One way of saying one thing. */
export interface Manner {
  readonly voice: Voice;
  /** 1 is the voice's own pace. */
  readonly pace: number;
  /** 0…99 for espeak-ng, where 50 is its own pitch. */
  readonly pitch: number;
}

export function mannerOf(voice: Voice, chance: Chance): Manner {
  return { voice, pace: 0.85 + chance.next() * 0.3, pitch: chance.whole(35, 65) };
}

/** The program and arguments that write `text` to the sound file `path`. */
export function speakCommand(text: string, { voice, pace, pitch }: Manner, path: string): readonly string[] {
  if (voice.program === 'flite')
    return [
      'flite',
      '-voice',
      voice.name,
      '--setf',
      `duration_stretch=${(1 / pace).toFixed(3)}`,
      '-t',
      text,
      '-o',
      path,
    ];
  const wordsAMinute = String(Math.round(160 * pace));
  return ['espeak-ng', '-v', voice.name, '-s', wordsAMinute, '-p', String(pitch), '-w', path, text];
}
