/** Sound as numbers: 16 kHz, one channel, full scale 1. */
import type { Chance } from './random.ts';

export const RATE = 16_000;
const FRAME = RATE / 50;

/** Loudness all speech is brought to, while it sounds: about what a headset gives. */
export const SPEECH_RMS = 0.05;
/** A quiet room and a good headset: 45 dB below the speech (our choice; no room and no microphone gives digital silence). */
export const QUIET_RMS = SPEECH_RMS / 10 ** (45 / 20);

export type Sound = Float64Array;

export function fromPcm(bytes: Uint8Array): Sound {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return Float64Array.from({ length: Math.floor(bytes.byteLength / 2) }, (_, i) => view.getInt16(i * 2, true) / 32_768);
}

export function toPcm(sound: Sound): Uint8Array {
  const bytes = new Uint8Array(sound.length * 2);
  const view = new DataView(bytes.buffer);
  sound.forEach((x, i) => view.setInt16(i * 2, Math.round(Math.max(-1, Math.min(1, x)) * 32_767), true));
  return bytes;
}

const power = (sound: Sound): number => sound.reduce((sum, x) => sum + x * x, 0) / Math.max(1, sound.length);

export const rms = (sound: Sound): number => Math.sqrt(power(sound));

/** Loudness while it sounds: the mean over frames of 20 ms that are at most 30 dB below the loudest. */
export function activeRms(sound: Sound): number {
  const powers: number[] = [];
  for (let at = 0; at + FRAME <= sound.length; at += FRAME) powers.push(power(sound.subarray(at, at + FRAME)));
  const loudest = Math.max(0, ...powers);
  const active = powers.filter((p) => p > loudest / 1000);
  return active.length === 0 ? 0 : Math.sqrt(active.reduce((sum, p) => sum + p, 0) / active.length);
}

const scaled = (sound: Sound, factor: number): Sound => sound.map((x) => x * factor);

/** Brought to a loudness; silence stays silence. */
export function toLoudness(sound: Sound, wanted: number, measure = activeRms): Sound {
  const now = measure(sound);
  return now === 0 ? sound : scaled(sound, wanted / now);
}

/** Some silence before and after. */
export function padded(sound: Sound, before: number, after: number): Sound {
  const out = new Float64Array(sound.length + before + after);
  out.set(sound, before);
  return out;
}

/** A stretch of a longer sound, from a place chance gives; goes round at the end. */
export function stretch(sound: Sound, length: number, chance: Chance): Sound {
  const from = chance.whole(0, sound.length - 1);
  return Float64Array.from({ length }, (_, i) => sound[(from + i) % sound.length] ?? 0);
}

export function added(a: Sound, b: Sound): Sound {
  return a.map((x, i) => x + (b[i] ?? 0));
}

/** The room itself: faint white noise, so that no silence is ever made of noughts. */
export function room(length: number, chance: Chance): Sound {
  return Float64Array.from({ length }, () => (chance.next() - 0.5) * Math.sqrt(12) * QUIET_RMS);
}

/** Loudness of a noise that lies `db` below the speech. */
export const noiseRms = (db: number): number => SPEECH_RMS / 10 ** (db / 20);
