import { describe, expect, it } from 'vitest';
import { noiseCommand, NOISES } from '../../scripts/acoustic/noises.ts';
import { chanceFrom } from '../../scripts/acoustic/random.ts';
import { mannerOf, speakCommand, VOICES } from '../../scripts/acoustic/voices.ts';
import * as wave from '../../scripts/acoustic/wave.ts';

const tone = (length: number, loudness: number): wave.Sound =>
  Float64Array.from({ length }, (_, i) => loudness * Math.sin((2 * Math.PI * 440 * i) / wave.RATE));

describe('chance', () => {
  it('is the same for the same word, another for another', () => {
    const draw = (word: string) => Array.from({ length: 5 }, chanceFrom(word).next);
    expect(draw('a')).toEqual(draw('a'));
    expect(draw('a')).not.toEqual(draw('b'));
  });
  it('spreads evenly and reaches both ends', () => {
    const chance = chanceFrom('dice');
    const counts = new Map<number, number>();
    for (let i = 0; i < 6000; i += 1) {
      const n = chance.whole(1, 6);
      counts.set(n, (counts.get(n) ?? 0) + 1);
    }
    expect([...counts.keys()].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6]);
    for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(150);
  });
  it('has nothing to pick from nothing', () => expect(() => chanceFrom('x').pick([])).toThrow(RangeError));
});

describe('loudness', () => {
  it('leaves silence around speech out of account', () => {
    const speech = wave.padded(tone(wave.RATE, 0.2), wave.RATE, wave.RATE);
    expect(wave.activeRms(speech)).toBeCloseTo(0.2 / Math.SQRT2, 3);
    expect(wave.rms(speech)).toBeLessThan(0.1);
  });
  it('brings a sound to what is wanted, and silence to nothing', () => {
    expect(wave.rms(wave.toLoudness(tone(8000, 0.9), 0.05))).toBeCloseTo(0.05, 3);
    expect(wave.rms(wave.toLoudness(new Float64Array(800), 0.05))).toBe(0);
  });
  it('puts a noise the wanted number of decibels below the speech', () => {
    for (const db of [20, 15, 10]) expect(20 * Math.log10(wave.SPEECH_RMS / wave.noiseRms(db))).toBeCloseTo(db, 9);
  });
  it('makes a quiet room 45 dB below the speech', () => {
    const room = wave.room(50_000, chanceFrom('room'));
    expect(20 * Math.log10(wave.SPEECH_RMS / wave.rms(room))).toBeCloseTo(45, 0);
  });
});

describe('samples', () => {
  it('come back from bytes as they were, clipped at full scale', () => {
    const back = wave.fromPcm(wave.toPcm(Float64Array.of(0, 0.5, -0.5, 2, -2)));
    [0, 0.5, -0.5, 1, -1].forEach((x, i) => expect(back[i]).toBeCloseTo(x, 3));
  });
  it('go round at the end of a noise', () => {
    const out = wave.stretch(Float64Array.of(1, 2, 3), 7, chanceFrom('any'));
    expect(out).toHaveLength(7);
    for (let i = 0; i + 3 < 7; i += 1) expect(out[i]).toBe(out[i + 3]);
  });
});

describe('voices', () => {
  it('of one group are none of the other', () => {
    const names = (group: keyof typeof VOICES) => VOICES[group].map((v) => v.name);
    expect(names('tuning').filter((name) => names('held-out').includes(name))).toEqual([]);
  });
  it('speak through their own programs', () => {
    for (const voice of [...VOICES.tuning, ...VOICES['held-out']]) {
      const command = speakCommand('sixty', mannerOf(voice, chanceFrom('m')), 'out.wav');
      expect(command[0]).toBe(voice.program);
      expect(command).toEqual(expect.arrayContaining(['sixty', 'out.wav', voice.name]));
    }
  });
  it('of noises there are recipes for all but babble', () => {
    for (const noise of NOISES.filter((n) => n !== 'babble'))
      expect(noiseCommand(noise, 'out.wav')).toEqual(expect.arrayContaining(['sox', '-R', 'out.wav', 'synth']));
  });
});
