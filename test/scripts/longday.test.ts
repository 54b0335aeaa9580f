import { createContext, runInContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { fastTimeScript, realAt, simulated, type TimePlan } from '../../scripts/longday/fast-time.ts';
import {
  alarmLines,
  broken,
  heldLine,
  HOUR_MS,
  middle,
  table,
  type Day,
  type Look,
  type Rung,
} from '../../scripts/longday/judge.ts';
import { heldIn } from '../../scripts/longday/measure.ts';

const look = (hour: number, more: Partial<Look> = {}): Look => ({
  at: hour * HOUR_MS,
  visits: hour,
  heapBytes: 10_000_000,
  heldBytes: 5_000_000,
  nodes: 1000,
  listeners: 50,
  targets: 10,
  documents: 2,
  ears: hour * 100,
  ...more,
});
const rung = (more: Partial<Rung> = {}): Rung => ({
  due: 0.5 * HOUR_MS,
  lateSimulatedMs: 400,
  lateRealMs: 4,
  trueSpeed: false,
  ...more,
});
const second = rung({ due: 1.5 * HOUR_MS, lateRealMs: 9 });
const last = rung({ due: 2.1 * HOUR_MS, lateSimulatedMs: 5, lateRealMs: 5, trueSpeed: true });
const wanted = { hours: 2, visits: 2 };
const day = (more: Partial<Day> = {}): Day => ({
  looks: [look(1), look(2)],
  rungs: [rung(), second, last],
  clockOffMs: 1,
  visits: 2,
  troubles: [],
  ...more,
});

describe('a long day', () => {
  it('that is as it has to be has nothing against it', () => {
    expect(broken(day(), wanted)).toEqual([]);
    const most = look(2, { heapBytes: 13_000_000 });
    expect(
      broken(
        day({ looks: [look(1), most], rungs: [rung({ lateRealMs: 100 }), second, { ...last, lateRealMs: 100 }] }),
        wanted,
      ),
    ).toEqual([]);
    const moreCases = look(2, { listeners: 52, targets: 12 });
    expect(broken(day({ looks: [look(1), moreCases] }), wanted)).toEqual([]);
    const once = [rung({ lateRealMs: 300 }), ...Array.from({ length: 10 }, () => rung())];
    expect(broken(day({ rungs: [...once, second, last] }), wanted)).toEqual([]);
  });

  it.each([
    ['memory over 1.3 times that of the first hour', { looks: [look(1), look(2, { heapBytes: 13_000_001 })] }],
    ['memory without code over 1.3 times', { looks: [look(1), look(2, { heldBytes: 6_500_001 })] }],
    ['one more listener', { looks: [look(1), look(2, { listeners: 51 })] }],
    ['one more document', { looks: [look(1), look(2, { documents: 3 })] }],
    ['memory nobody could tell', { looks: [look(1), look(2, { heapBytes: Number.NaN })] }],
    ['an hour that was not looked at', { looks: [look(1)] }],
    ['an ear that was hardly ever begun', { looks: [look(1), look(2, { ears: 19 })] }],
    ['alarms over 100 ms late', { rungs: [rung({ lateRealMs: 100.1 }), second, last] }],
    ['an alarm over 100 ms late at true speed', { rungs: [rung(), second, { ...last, lateRealMs: 100.1 }] }],
    [
      'one alarm that was missed',
      { rungs: [rung({ lateRealMs: 1001 }), ...Array.from({ length: 10 }, () => rung()), second, last] },
    ],
    ['an hour without an alarm', { rungs: [rung(), last] }],
    ['a clock that is off', { clockOffMs: -101 }],
    ['an alarm before its time', { rungs: [rung({ lateSimulatedMs: -1 }), second, last] }],
    ['no alarm at true speed', { rungs: [rung(), second] }],
    ['an alarm at true speed before the last hour only', { rungs: [rung(), { ...last, due: HOUR_MS }] }],
    ['a visit that was not closed', { visits: 1 }],
    ['an error of the page', { troubles: ['Error: lost'] }],
  ] satisfies [string, Partial<Day>][])('is broken by %s', (_name, more) => {
    expect(broken(day(more), wanted).length).toBeGreaterThan(0);
  });

  it('is told hour by hour, each with its own alarms', () => {
    const looks = [look(1), look(2, { heapBytes: 12_340_000 })];
    const rows = table(day({ looks, rungs: [rung(), second, last] })).split('\n');
    expect(rows).toHaveLength(3);
    expect(rows[1]).toMatch(/1\.00 +1 +10000 +1\.00 +1000 +50 +10 +2 +100 +1 +4\.0 ms +4\.0 ms$/);
    expect(rows[2]).toMatch(/2\.00 +2 +12340 +1\.23 .* 1 +9\.0 ms +9\.0 ms$/);
    expect(alarmLines(day())).toMatch(/fast: 2; .*\n.*true speed, after the last hour: 1; /);
  });

  it('tells what is held without compiled code', () => {
    const nodes = [0, 100, 1, 20, 2, 3];
    const meta = { node_fields: ['type', 'self_size'], node_types: [['object', 'code', 'object shape']] as [string[]] };
    expect(heldIn({ snapshot: { meta }, nodes })).toBe(100);
    expect(heldLine(day())).toContain('5000 kB after the first hour, 5000 kB at the end, 1.00 times');
  });

  it('takes the middle of what is there', () => {
    expect(middle([9, 1, 5])).toBe(5);
    expect(middle([])).toBeNaN();
  });
});

describe('time that runs fast', () => {
  const plan: TimePlan = { from: 1000, until: 1100, rate: 130 };

  it('runs at its true speed before and after', () => {
    expect([0, 1000, 1001, 1100, 1101].map((real) => simulated(plan, real))).toEqual([0, 1000, 1130, 14_000, 14_001]);
  });

  it('is the same line in the page and in its workers, timers and the way back to true speed included', () => {
    const real = { now: 0 };
    const delays: number[] = [];
    const told: number[] = [];
    const scope = createContext({
      performance: { timeOrigin: 0, now: () => real.now },
      setTimeout: (_run: unknown, ms: number) => delays.push(ms),
      BroadcastChannel: class {
        postMessage = (until: number) => told.push(until);
      },
    });
    runInContext(fastTimeScript(plan), scope);
    const read = (code: string): unknown => runInContext(code, scope);
    const at = (now: number): unknown => {
      real.now = now;
      return read('[Date.now(), new Date().getTime(), performance.now()]');
    };
    const both = (now: number, until: number) => Array.from({ length: 3 }, () => simulated({ ...plan, until }, now));
    for (const now of [0, 999, 1000, 1050, 1090]) expect(at(now)).toEqual(both(now, Infinity));
    read('setTimeout(() => undefined, 260)');
    expect(read('rimwiseTrueSpeed(10)')).toBe(1100);
    expect(told).toEqual([1100]);
    for (const now of [1095, 1100, 1101, 2000]) expect(at(now)).toEqual(both(now, 1100));
    real.now = 1090;
    read('setTimeout(() => undefined, 1400)');
    real.now = 1200;
    read('setTimeout(() => undefined, 50)');
    expect(delays).toEqual([2, 110, 50]);
  });

  it('can be turned back into real time', () => {
    for (const real of [0, 999, 1000, 1050, 1100, 5000])
      expect(realAt(plan, simulated(plan, real))).toBeCloseTo(real, 6);
  });
});
