// @vitest-environment happy-dom
import { describe, expect, it, vi } from 'vitest';
import { createLifecycle } from '../../src/time/lifecycle.ts';
import { Listeners } from '../../src/time/listeners.ts';
import { createTime, type TimeWindow } from '../../src/time/real.ts';
import type { LifecycleEvent } from '../../src/time/types.ts';
import { createWakeLock } from '../../src/time/wake-lock.ts';

async function settle(): Promise<void> {
  for (let turn = 0; turn < 10; turn += 1) await Promise.resolve();
}

describe('lifecycle', () => {
  it('tells showing, hiding, freezing, focus and the ways in and out', () => {
    const lifecycle = createLifecycle(window);
    const seen: LifecycleEvent[] = [];
    lifecycle.subscribe((event) => seen.push(event));
    const state = vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden');
    document.dispatchEvent(new Event('visibilitychange'));
    state.mockReturnValue('visible');
    document.dispatchEvent(new Event('visibilitychange'));
    for (const name of ['freeze', 'resume']) document.dispatchEvent(new Event(name));
    for (const name of ['pageshow', 'pagehide', 'focus']) window.dispatchEvent(new Event(name));
    expect(seen).toEqual(['hidden', 'visible', 'frozen', 'resumed', 'shown', 'leaving', 'focus']);
    lifecycle.stop();
    window.dispatchEvent(new Event('focus'));
    expect(seen).toHaveLength(7);
  });
});

describe('wake lock', () => {
  function setUp(answer: () => Promise<unknown> = () => Promise.resolve(undefined)) {
    const events = new Listeners<LifecycleEvent>();
    let visible = true;
    const lifecycle = { visible: () => visible, subscribe: events.add.bind(events), stop: () => undefined };
    const held: { release: ReturnType<typeof vi.fn>; lose: () => void }[] = [];
    const request = vi.fn(async () => {
      await answer();
      let lost: () => void = () => undefined;
      const release = vi.fn(async () => lost());
      held.push({ release, lose: () => lost() });
      return {
        released: false,
        release,
        addEventListener: (_: 'release', listener: () => void) => void (lost = listener),
      };
    });
    const show = (on: boolean): void => {
      visible = on;
      if (!on) held.at(-1)?.lose();
      events.tell(on ? 'visible' : 'hidden');
    };
    return { lock: createWakeLock({ request }, lifecycle), request, held, show };
  }

  it('is held while wanted and given back after', async () => {
    const { lock, held } = setUp();
    lock.want(true);
    await settle();
    expect(lock.state()).toBe('held');
    lock.want(false);
    expect(held[0]?.release).toHaveBeenCalledOnce();
    expect(lock.state()).toBe('off');
  });

  it('is asked for again when the page is visible again', async () => {
    const { lock, request, show } = setUp();
    lock.want(true);
    await settle();
    show(false);
    expect(lock.state()).toBe('waiting');
    show(true);
    await settle();
    expect(lock.state()).toBe('held');
    expect(request).toHaveBeenCalledTimes(2);
  });

  it('refused is said, and tried again at the next chance', async () => {
    let refuse = true;
    const { lock, show } = setUp(() => (refuse ? Promise.reject(new Error('no')) : Promise.resolve()));
    lock.want(true);
    await settle();
    expect(lock.state()).toBe('refused');
    refuse = false;
    show(true);
    await settle();
    expect(lock.state()).toBe('held');
  });

  it('no longer wanted while the browser was still thinking is given back', async () => {
    const { lock, held } = setUp();
    lock.want(true);
    lock.want(false);
    await settle();
    expect(held[0]?.release).toHaveBeenCalledOnce();
    expect(lock.state()).toBe('off');
  });

  it('unavailable where the browser has none', () => {
    const lifecycle = { visible: () => true, subscribe: () => () => undefined, stop: () => undefined };
    const lock = createWakeLock(undefined, lifecycle);
    lock.want(true);
    expect(lock.state()).toBe('unavailable');
  });
});

describe('time as the page has it', () => {
  it('goes with any window, without worker, sound or wake lock, and still rings', async () => {
    const rings: string[] = [];
    const bare = Object.assign(new EventTarget(), {
      document: Object.assign(new EventTarget(), { visibilityState: 'visible' as const }),
      navigator: {},
    });
    const time = createTime(bare, { onRing: (id) => rings.push(id) });
    expect([time.sound.state(), time.wakeLock.state()]).toEqual(['unavailable', 'unavailable']);
    time.alarms.setDeadlines([{ id: 'working', at: Date.now() + 100, label: 'working time' }]);
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(rings).toEqual(['working']);
    time.stop();
  });

  it('takes the real window', () => {
    const real: (window: Window & typeof globalThis) => TimeWindow = (window) => window;
    expect(real(window as never)).toBe(window);
  });
});
