import { describe, expect, it } from 'vitest';
import { createClock } from '../../src/time/clock.ts';
import { FakeHost } from '../../src/time/fake-host.ts';
import type { ClockJump } from '../../src/time/types.ts';

const START = 1_800_000_000_000;

function setUp() {
  const host = new FakeHost(START);
  const jumps: ClockJump[] = [];
  return { host, jumps, clock: createClock(host, (jump) => jumps.push(jump)) };
}

describe('the clock', () => {
  it('is the wall clock', () => {
    const { host, clock, jumps } = setUp();
    host.advance(1234);
    expect(clock.now()).toBe(START + 1234);
    expect(jumps).toEqual([]);
  });

  it('goes on evenly when somebody sets the device back by an hour', () => {
    const { host, clock, jumps } = setUp();
    host.advance(1000);
    clock.now();
    host.setWallClock(-3_600_000);
    host.advance(1000);
    expect(clock.now()).toBe(START + 2000);
    expect(clock.skewMs()).toBe(3_600_000);
    expect(jumps).toEqual([{ kind: 'back', byMs: 3_600_000, at: START + 2000 }]);
  });

  it('follows the device again when it is set right', () => {
    const { host, clock } = setUp();
    host.setWallClock(-3_600_000);
    clock.now();
    host.setWallClock(3_600_000);
    expect(clock.now()).toBe(START);
    expect(clock.skewMs()).toBe(0);
  });

  it('believes the wall clock when the device has slept', () => {
    const { host, clock, jumps } = setUp();
    host.setWallClock(600_000);
    expect(clock.now()).toBe(START + 600_000);
    expect(jumps).toEqual([{ kind: 'forward', byMs: 600_000, at: START + 600_000 }]);
  });

  it('does not add up small corrections to a jump', () => {
    const { host, clock, jumps } = setUp();
    for (let step = 0; step < 20; step += 1) {
      host.setWallClock(-500);
      host.advance(250);
      clock.now();
    }
    expect(jumps).toEqual([]);
    expect(clock.skewMs()).toBe(0);
  });
});
