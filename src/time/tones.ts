import type { Beep, Pattern } from './types.ts';

/** Three beeps and a rest, for half a minute: told apart from instruments' single beeps by its rhythm. */
export const ALARM: Pattern = {
  hz: 880,
  beeps: [
    { atMs: 0, ms: 180 },
    { atMs: 280, ms: 180 },
    { atMs: 560, ms: 320 },
  ],
  roundMs: 1500,
  rounds: 20,
};

function once(hz: number, ...beeps: readonly (readonly [atMs: number, ms: number])[]): Pattern {
  const last = beeps[beeps.length - 1] ?? [0, 0];
  return { hz, beeps: beeps.map(([atMs, ms]) => ({ atMs, ms })), roundMs: last[0] + last[1] + 20, rounds: 1 };
}

export const BEEPS: Readonly<Record<Beep, Pattern>> = {
  heard: once(660, [0, 60]),
  kept: once(990, [0, 90]),
  ask: once(550, [0, 90], [150, 90]),
  warn: once(330, [0, 220]),
};

/** Rise and fall of a beep, so that it does not click. */
const EDGE_S = 0.008;

/** One round of a pattern as samples between -1 and 1. */
export function samplesOf(pattern: Pattern, sampleRate: number): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.max(1, Math.ceil((pattern.roundMs / 1000) * sampleRate)));
  for (const { atMs, ms } of pattern.beeps) {
    const first = Math.round((atMs / 1000) * sampleRate);
    const length = Math.round((ms / 1000) * sampleRate);
    for (let index = 0; index < length && first + index < samples.length; index += 1) {
      const seconds = index / sampleRate;
      const edge = Math.min(1, seconds / EDGE_S, (length / sampleRate - seconds) / EDGE_S);
      samples[first + index] = edge * Math.sin(2 * Math.PI * pattern.hz * seconds);
    }
  }
  return samples;
}
