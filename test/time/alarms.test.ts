import { describe, expect, it } from 'vitest';
import { createLocalPort, type AlarmPort } from '../../src/time/alarm-port.ts';
import { createAlarms, type AlarmParts } from '../../src/time/alarms.ts';
import { createClock } from '../../src/time/clock.ts';
import { createFakeTime } from '../../src/time/fake.ts';
import { FakeHost } from '../../src/time/fake-host.ts';
import { Listeners } from '../../src/time/listeners.ts';
import type { Deadline, LifecycleEvent, Ring, Ticker } from '../../src/time/types.ts';

const START = 1_800_000_000_000;

function deadline(id: string, inMs: number): Deadline {
  return { id, at: START + inMs, label: `${id} is over` };
}

/** Alarms with every trigger cut but the one under test. */
function withOnly(trigger: 'worker' | 'tick' | 'lifecycle') {
  const host = new FakeHost(START);
  const rings: (Ring & { id: string })[] = [];
  const ticks = new Listeners<number>();
  const events = new Listeners<LifecycleEvent>();
  const dead: Ticker = {
    subscribe: (listener) => ticks.add(listener),
    onSecond: () => () => undefined,
    stop: () => undefined,
  };
  const port: AlarmPort = trigger === 'worker' ? createLocalPort(host) : { set() {}, onDue() {}, close() {} };
  const parts: AlarmParts = {
    clock: createClock(host),
    ticker: dead,
    lifecycle: { visible: () => true, subscribe: (listener) => events.add(listener), stop: () => undefined },
    onRing: (id, ring) => rings.push({ id, ...ring }),
    port,
  };
  return {
    host,
    rings,
    alarms: createAlarms(parts),
    tick: () => ticks.tell(host.now()),
    event: (e: LifecycleEvent) => events.tell(e),
  };
}

describe('each trigger alone rings', () => {
  it('the worker, to the millisecond, though it sleeps a second at most', () => {
    const { host, rings, alarms } = withOnly('worker');
    alarms.setDeadlines([deadline('working', 4321)]);
    host.advance(4320);
    expect(rings).toEqual([]);
    host.advance(1);
    expect(rings).toMatchObject([
      { id: 'working', dueAt: START + 4321, rangAt: START + 4321, late: false, by: 'worker' },
    ]);
  });

  it('the worker, on time, though somebody has set the device back by an hour', () => {
    const { host, rings, alarms, tick } = withOnly('worker');
    alarms.setDeadlines([deadline('working', 60_000)]);
    host.advance(1000);
    host.setWallClock(-3_600_000);
    tick();
    host.advance(59_000);
    expect(rings).toMatchObject([{ rangAt: START + 60_000, by: 'worker' }]);
  });

  it('the look at a tick', () => {
    const { host, rings, alarms, tick } = withOnly('tick');
    alarms.setDeadlines([deadline('working', 1000)]);
    host.advance(1200);
    tick();
    expect(rings).toMatchObject([{ id: 'working', rangAt: START + 1200, late: false, by: 'check' }]);
  });

  it.each(['visible', 'shown', 'focus', 'resumed'] as const)('the look when the page is %s', (event) => {
    const { host, rings, alarms, event: happen } = withOnly('lifecycle');
    alarms.setDeadlines([deadline('working', 1000)]);
    host.advance(61_000);
    happen(event);
    expect(rings).toMatchObject([{ id: 'working', rangAt: START + 61_000, late: true, lateMs: 60_000 }]);
  });
});

function page() {
  const time = createFakeTime(START);
  const rings: (Ring & { id: string })[] = [];
  const open = () => time.open({ onRing: (id, ring) => rings.push({ id, ...ring }) });
  return { time, rings, open };
}

describe('a deadline', () => {
  it('rings once, whatever is handed in again', () => {
    const { time, rings, open } = page();
    const { alarms } = open();
    alarms.setDeadlines([deadline('working', 1000), deadline('inMouth', 3000)]);
    time.advance(1500);
    alarms.setDeadlines([deadline('working', 1000), deadline('inMouth', 3000)]);
    alarms.setDeadlines([]);
    alarms.setDeadlines([deadline('working', 1000), deadline('inMouth', 3000)]);
    time.advance(5000);
    expect(rings.map(({ id }) => id)).toEqual(['working', 'inMouth']);
  });

  it('taken off the list before its moment does not ring', () => {
    const { time, rings, open } = page();
    const { alarms } = open();
    alarms.setDeadlines([deadline('working', 1000)]);
    alarms.setDeadlines([]);
    time.advance(5000);
    expect(rings).toEqual([]);
    expect(time.heard).toEqual([]);
  });

  it('moved to another moment rings again, once for each moment', () => {
    const { time, rings, open } = page();
    const { alarms } = open();
    alarms.setDeadlines([deadline('working', 1000)]);
    time.advance(2000);
    alarms.setDeadlines([deadline('working', 500)]);
    alarms.setDeadlines([deadline('working', 500)]);
    alarms.setDeadlines([deadline('working', 4000)]);
    time.advance(5000);
    expect(rings.map(({ rangAt }) => rangAt - START)).toEqual([1000, 2000, 4000]);
  });

  it('rings together with others due at the same moment, each once, the earlier first', () => {
    const { time, rings, open } = page();
    const { alarms } = open();
    alarms.setDeadlines([deadline('c', 2000), deadline('a', 1000), deadline('b', 1000)]);
    expect(alarms.waiting().map(({ id }) => id)).toEqual(['a', 'b', 'c']);
    time.advance(3000);
    expect(rings.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
    expect(alarms.waiting()).toEqual([]);
  });

  it('rings once even if whoever hears it hands in a new list at once', () => {
    const time = createFakeTime(START);
    const rings: string[] = [];
    const left = new Set(['a', 'b', 'c']);
    const list = (): Deadline[] => [...left].map((id) => deadline(id, 1000));
    const { alarms } = time.open({
      onRing: (id) => {
        rings.push(id);
        left.delete(id);
        alarms.setDeadlines(list());
      },
    });
    alarms.setDeadlines(list());
    time.advance(2000);
    expect(rings).toEqual(['a', 'b', 'c']);
  });

  it('that is no moment is left out', () => {
    const { time, rings, open } = page();
    const { alarms } = open();
    alarms.setDeadlines([{ id: 'x', at: NaN, label: '' }, deadline('working', 1000)]);
    time.advance(2000);
    expect(rings.map(({ id }) => id)).toEqual(['working']);
  });
});

describe('a clock does not care what happens to the page', () => {
  it('overdue after a reload it rings at once and says how late', () => {
    const { time, rings, open } = page();
    open().alarms.setDeadlines([deadline('working', 10_000)]);
    time.advance(4000);
    time.close();
    time.advance(56_000);
    expect(rings).toEqual([]);
    open().alarms.setDeadlines([deadline('working', 10_000)]);
    expect(rings).toMatchObject([{ dueAt: START + 10_000, rangAt: START + 60_000, late: true, lateMs: 50_000 }]);
  });

  it('still running after a reload it rings on time', () => {
    const { time, rings, open } = page();
    open().alarms.setDeadlines([deadline('working', 10_000)]);
    time.advance(4000);
    open().alarms.setDeadlines([deadline('working', 10_000)]);
    time.advance(20_000);
    expect(rings).toMatchObject([{ rangAt: START + 10_000, late: false }]);
  });

  it('a device that slept through it rings on waking', () => {
    const { time, rings, open } = page();
    open().alarms.setDeadlines([deadline('working', 60_000)]);
    time.setWallClock(300_000);
    time.advance(250);
    expect(rings).toMatchObject([{ late: true, rangAt: START + 300_250 }]);
  });

  it('somebody sets the device back by an hour: it rings when it is due all the same', () => {
    const { time, rings, open } = page();
    open().alarms.setDeadlines([deadline('working', 60_000)]);
    time.advance(1000);
    time.setWallClock(-3_600_000);
    time.advance(59_000);
    expect(rings).toMatchObject([{ rangAt: START + 60_000, late: false }]);
  });
});

describe('the tone', () => {
  it('is on the audio clock ahead of time and is not doubled by the ring', async () => {
    const { time, rings, open } = page();
    const { alarms, sound } = open();
    await sound.arm();
    alarms.setDeadlines([deadline('working', 12_300)]);
    time.advance(13_000);
    expect(rings).toHaveLength(1);
    expect(time.heard).toEqual([{ at: START + 12_300, what: 'tone', id: 'working' }]);
  });

  it('is put on the clock when sound is armed after the deadline was set', async () => {
    const { time, open } = page();
    const { alarms, sound } = open();
    alarms.setDeadlines([deadline('working', 5000)]);
    await sound.arm();
    time.advance(6000);
    expect(time.heard).toEqual([{ at: START + 5000, what: 'tone', id: 'working' }]);
  });

  it('follows the wall clock within ten seconds when the device slept', async () => {
    const { time, open } = page();
    const { alarms, sound } = open();
    await sound.arm();
    alarms.setDeadlines([deadline('working', 100_000)]);
    time.setWallClock(60_000);
    time.advance(10_000);
    time.advance(31_000);
    expect(time.heard).toEqual([{ at: START + 100_000, what: 'tone', id: 'working' }]);
  });

  it('begins with the ring when the deadline was overdue', async () => {
    const { time, open } = page();
    const { alarms, sound } = open();
    await sound.arm();
    alarms.setDeadlines([deadline('working', -3000)]);
    expect(time.heard).toEqual([{ at: START, what: 'ring', id: 'working' }]);
  });

  it('is silent while sound needs a touch, but the ring is told', () => {
    const { time, rings, open } = page();
    open().alarms.setDeadlines([deadline('working', 1000)]);
    time.advance(2000);
    expect(rings).toHaveLength(1);
    expect(time.heard).toEqual([]);
  });
});

it('eight hours with an alarm every ten minutes: none late, none lost, no timer left behind', () => {
  const { time, rings, open } = page();
  const { alarms } = open();
  const all = Array.from({ length: 48 }, (_, index) => deadline(`clock ${index}`, (index + 1) * 600_000 - 123));
  alarms.setDeadlines(all);
  time.advance(8 * 3_600_000);
  expect(rings.map(({ rangAt, dueAt }) => rangAt - dueAt)).toEqual(all.map(() => 0));
  time.close();
  expect((time.host as FakeHost).timers).toBe(0);
});
