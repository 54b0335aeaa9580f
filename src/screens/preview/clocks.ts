/** Invented clocks, at a fixed moment. */
import type { Disinfectant, Material } from '../../domain/protocol/types.ts';
import { defaultPractice } from '../../domain/protocol/practice.ts';
import type { RunningClock } from '../../app/model.ts';
import type { ClockPhase, ClockRow } from '../../domain/summary/types.ts';

export const NOW = Date.UTC(2026, 4, 12, 9, 41, 20);
const S = 1000;
const MIN = 60 * S;

const material = (id: string): Material => defaultPractice.materials.find((m) => m.id === id) as Material;
const agent = (id: string): Disinfectant => defaultPractice.disinfectants.find((d) => d.id === id) as Disinfectant;

interface Moments {
  readonly start: number;
  readonly seated: number | undefined;
  readonly out: number | undefined;
}

function phasesOf(m: Material, { start, seated, out }: Moments): readonly ClockPhase[] {
  const state = (from: number | undefined, due: number, ended: number | undefined): ClockPhase['state'] =>
    from === undefined ? 'waiting' : ended !== undefined ? 'done' : NOW >= due ? 'over' : 'running';
  const one = (
    id: ClockPhase['id'],
    label: string,
    [from, due, ended]: readonly [number | undefined, number, number | undefined],
  ): ClockPhase => ({
    id,
    label,
    from: from ?? due,
    dueAt: due,
    ...(ended === undefined ? {} : { endedAt: ended }),
    state: state(from, due, ended),
  });
  return [
    one('mix', 'mixing', [
      start,
      start + m.mixS * S,
      seated ?? (NOW > start + m.mixS * S ? start + m.mixS * S : undefined),
    ]),
    one('working', 'working time', [start, start + m.workingS * S, seated]),
    one('inMouth', 'setting in the mouth', [seated, start + m.removeS * S, out]),
    one('pourWithin', 'pour within', [out, (out ?? 0) + m.pourWithinMin * MIN, undefined]),
  ];
}

interface Times {
  readonly label: string;
  readonly ago: number;
  readonly seated?: number;
  readonly out?: number;
  readonly now: ClockPhase['id'];
}

/** Times in seconds: `ago` before now, `seated` and `out` after the start. */
export function impression(clock: string, materialId: string, { label, ago, seated, out, now }: Times): ClockRow {
  const m = material(materialId);
  const startedAt = NOW - ago * S;
  const seatedAt = seated === undefined ? undefined : startedAt + seated * S;
  const outAt = out === undefined ? undefined : startedAt + out * S;
  return {
    id: `${clock}/1`,
    clock,
    label,
    attempt: 1,
    flow: 'impression',
    name: m.name,
    material: m,
    startedAt,
    ...(seatedAt === undefined ? {} : { seatedAt }),
    ...(outAt === undefined ? {} : { outAt }),
    struck: false,
    stopped: false,
    phases: phasesOf(m, { start: startedAt, seated: seatedAt, out: outAt }),
    now,
    findings: [],
  };
}

export function bath(arch: 'upper' | 'lower', ago: number, done?: number): ClockRow {
  const clock = `disinfect-${arch}`;
  const a = agent('hypochlorite');
  const startedAt = NOW - ago * S;
  const dueAt = startedAt + a.minutes * MIN;
  const ended = done === undefined ? {} : { outAt: startedAt + done * S };
  return {
    id: `${clock}/1`,
    clock,
    label: `${arch}, disinfecting`,
    attempt: 1,
    flow: 'timed',
    name: a.name,
    of: `${arch}-impression`,
    startedAt,
    ...ended,
    struck: false,
    stopped: done !== undefined,
    phases: [
      { id: 'disinfect', label: 'disinfecting', from: startedAt, dueAt, state: NOW >= dueAt ? 'over' : 'running' },
    ],
    now: 'disinfect',
    findings: [],
  };
}

export const upperMixing = impression('upper-impression', 'alginate-regular', {
  label: 'upper impression',
  ago: 38,
  now: 'mix',
});
export const upperWorking = impression('upper-impression', 'alginate-regular', {
  label: 'upper impression',
  ago: 84,
  now: 'working',
});
export const upperSetting = impression('upper-impression', 'alginate-regular', {
  label: 'upper impression',
  ago: 163,
  seated: 108,
  now: 'inMouth',
});
export const upperLate: ClockRow = {
  ...impression('upper-impression', 'alginate-regular', {
    label: 'upper impression',
    ago: 190,
    seated: 131,
    now: 'inMouth',
  }),
  findings: [{ id: 'seatedLate', byMs: 11000 }],
};
export const upperOver = impression('upper-impression', 'alginate-regular', {
  label: 'upper impression',
  ago: 283,
  seated: 108,
  now: 'inMouth',
});
export const upperPour = impression('upper-impression', 'alginate-regular', {
  label: 'upper impression',
  ago: 900,
  seated: 104,
  out: 291,
  now: 'pourWithin',
});
export const lowerPour = impression('lower-impression', 'silicone-medium-light', {
  label: 'lower impression',
  ago: 3600,
  seated: 100,
  out: 380,
  now: 'pourWithin',
});
export const lowerSetting = impression('lower-impression', 'alginate-fast', {
  label: 'lower impression',
  ago: 110,
  seated: 66,
  now: 'inMouth',
});
export const upperBath = bath('upper', 322);
export const lowerBath = bath('lower', 612);
export const upperBathDone = bath('upper', 560, 603);

/** Of another patient, whose case is not open. */
export const otherPour: RunningClock = {
  ...impression('lower-primary', 'alginate-regular', {
    label: 'lower impression',
    ago: 1300,
    seated: 100,
    out: 280,
    now: 'pourWithin',
  }),
  case: { id: 'other', code: 'K-0417' },
};
