import { describe, expect, it } from 'vitest';
import { createClock } from '../../src/time/clock.ts';
import { FakeHost } from '../../src/time/fake-host.ts';
import { createTicker } from '../../src/time/ticker.ts';

const START = 1_800_000_000_100;

function setUp() {
  const host = new FakeHost(START);
  return { host, ticker: createTicker({ clock: createClock(host), host }) };
}

describe('the ticker', () => {
  it('ticks on the quarters of the second', () => {
    const { host, ticker } = setUp();
    const seen: number[] = [];
    ticker.subscribe((now) => seen.push(now % 1000));
    host.advance(1000);
    expect(seen).toEqual([250, 500, 750, 0]);
  });

  it('tells whole seconds once each, however late the ticks are', () => {
    const { host, ticker } = setUp();
    const seen: number[] = [];
    ticker.onSecond((now) => seen.push(Math.floor(now / 1000) - 1_800_000_000));
    host.advance(2000);
    host.setWallClock(5000);
    host.advance(1000);
    expect(seen).toEqual([1, 2, 7, 8]);
  });

  it('rests while nobody listens', () => {
    const { host, ticker } = setUp();
    const leave = [ticker.subscribe(() => undefined), ticker.subscribe(() => undefined)];
    expect(host.timers).toBe(1);
    for (const stop of leave) stop();
    expect(host.timers).toBe(0);
  });

  it('survives a listener that leaves while it is being told', () => {
    const { host, ticker } = setUp();
    let told = 0;
    const leave = ticker.subscribe(() => leave());
    ticker.subscribe(() => {
      told += 1;
    });
    host.advance(1000);
    expect(told).toBe(4);
  });
});
