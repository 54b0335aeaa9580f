import { describe, expect, it, vi } from 'vitest';
import { createClock } from '../../src/time/clock.ts';
import { FakeHost } from '../../src/time/fake-host.ts';
import { Listeners } from '../../src/time/listeners.ts';
import { createSound } from '../../src/time/sound.ts';
import { ALARM, BEEPS, samplesOf } from '../../src/time/tones.ts';
import type { LifecycleEvent } from '../../src/time/types.ts';

const START = 1_800_000_000_000;

interface Node {
  started: number[];
  stopped: (number | undefined)[];
  loop: boolean;
}

/** An audio context as browsers behave: suspended until resumed, and sometimes dead while it says it runs. */
function audio(host: FakeHost, behaviour: { allow?: boolean; dead?: boolean } = {}) {
  const nodes: Node[] = [];
  const contexts: Context[] = [];
  class Context {
    state: AudioContextState = 'suspended';
    onstatechange: (() => void) | null = null;
    sampleRate = 8000;
    destination = {};
    dead = behaviour.dead ?? false;
    #from = 0;
    #before = 0;
    constructor() {
      contexts.push(this);
    }
    get currentTime(): number {
      return this.state === 'running' && !this.dead
        ? this.#before + (host.monotonic() - this.#from) / 1000
        : this.#before;
    }
    resume(): Promise<void> {
      if (behaviour.allow === false || this.state === 'running') return Promise.resolve();
      this.#from = host.monotonic();
      this.become('running');
      return Promise.resolve();
    }
    become(state: AudioContextState): void {
      this.#before = this.currentTime;
      this.#from = host.monotonic();
      this.state = state;
      this.onstatechange?.();
    }
    close(): Promise<void> {
      this.state = 'closed';
      return Promise.resolve();
    }
    createGain() {
      return { gain: { value: 1 }, connect: () => undefined };
    }
    createBuffer() {
      return { copyToChannel: () => undefined };
    }
    createBufferSource() {
      const node = {
        started: [] as number[],
        stopped: [] as (number | undefined)[],
        loop: false,
        buffer: null,
        onended: null,
        connect: () => undefined,
        disconnect: () => undefined,
        start: (at: number) => void node.started.push(at),
        stop: (at?: number) => void node.stopped.push(at),
      };
      nodes.push(node);
      return node;
    }
  }
  return { nodes, contexts, Context: Context as unknown as new () => AudioContext };
}

function setUp(behaviour: { allow?: boolean; dead?: boolean } = {}) {
  const host = new FakeHost(START);
  const events = new Listeners<LifecycleEvent>();
  const lifecycle = { visible: () => true, subscribe: events.add.bind(events), stop: () => undefined };
  const made = audio(host, behaviour);
  const vibrate = vi.fn();
  const sound = createSound({ clock: createClock(host), lifecycle, host, AudioContext: made.Context, vibrate });
  const arm = async () => {
    const armed = sound.arm();
    await host.run(3000);
    return armed;
  };
  return { host, sound, arm, vibrate, events, ...made };
}

describe('arming', () => {
  it('needs a touch after every load, and is armed once the audio clock moves', async () => {
    const { sound, arm } = setUp();
    expect(sound.state()).toBe('needsTouch');
    expect(sound.ring()).toBe(false);
    expect(await arm()).toBe('armed');
    expect(sound.ring()).toBe(true);
  });

  it('asks the browser before anything is awaited, inside the touch', () => {
    const { sound, contexts } = setUp();
    void sound.arm();
    expect(contexts[0]?.state).toBe('running');
  });

  it('stays in need of a touch where the browser refuses', async () => {
    const { sound, arm } = setUp({ allow: false });
    expect(await arm()).toBe('needsTouch');
    expect(sound.state()).toBe('needsTouch');
  });

  it('does not believe a context that says it runs while its clock stands still', async () => {
    const { arm } = setUp({ dead: true });
    expect(await arm()).toBe('unavailable');
  });

  it('builds a new context when the old one came back dead from a telephone call', async () => {
    const { arm, contexts, host } = setUp();
    await arm();
    const first = contexts[0];
    first?.become('interrupted');
    if (first) first.dead = true;
    await host.run(1000);
    expect(await arm()).toBe('armed');
    expect(contexts).toHaveLength(2);
    expect(first?.state).toBe('closed');
  });

  it('is unavailable where there is no audio at all', async () => {
    const host = new FakeHost(START);
    const lifecycle = { visible: () => true, subscribe: () => () => undefined, stop: () => undefined };
    const sound = createSound({ clock: createClock(host), lifecycle, host });
    expect(sound.state()).toBe('unavailable');
    expect(await sound.arm()).toBe('unavailable');
  });
});

describe('losing the sound', () => {
  it.each(['interrupted', 'suspended'] as const)('%s: says that a touch is needed', async (state) => {
    const { sound, arm, contexts, host } = setUp();
    await arm();
    const seen: string[] = [];
    sound.subscribe((now) => seen.push(now));
    const context = contexts[0];
    if (context) context.resume = () => Promise.resolve();
    context?.become(state);
    await host.run(1000);
    expect(seen).toEqual(['needsTouch']);
    expect(sound.ring()).toBe(false);
  });

  it('looks again when the page is back: a context that stands still is not armed', async () => {
    const { sound, arm, contexts, host, events } = setUp();
    await arm();
    if (contexts[0]) contexts[0].dead = true;
    events.tell('visible');
    await host.run(1000);
    expect(sound.state()).toBe('needsTouch');
  });

  it('is armed again by itself when the browser lets it', async () => {
    const { sound, arm, contexts, host } = setUp();
    await arm();
    contexts[0]?.become('suspended');
    await host.run(1000);
    expect(sound.state()).toBe('armed');
  });
});

describe('tones on the audio clock', () => {
  it('start at the wall-clock moment, for half a minute', async () => {
    const { sound, arm, nodes, contexts } = setUp();
    await arm();
    const now = contexts[0]?.currentTime ?? NaN;
    sound.schedule([{ id: 'a', at: START + 3000 + 60_000 }]);
    expect(nodes[0]?.started[0]).toBeCloseTo(now + 60, 6);
    expect(nodes[0]?.stopped[0]).toBeCloseTo(now + 90, 6);
    expect(nodes[0]?.loop).toBe(true);
  });

  it('are set anew, and one that is about to sound is left alone', async () => {
    const { sound, arm, nodes, host } = setUp();
    await arm();
    const tones = [
      { id: 'soon', at: host.now() + 50 },
      { id: 'later', at: host.now() + 60_000 },
    ];
    sound.schedule(tones);
    sound.schedule(tones);
    expect(nodes.map(({ stopped }) => stopped.length)).toEqual([1, 2, 1]);
  });

  it('are not doubled by the ring, and end when silenced', async () => {
    const { sound, arm, nodes, host } = setUp();
    await arm();
    sound.schedule([{ id: 'a', at: host.now() + 1000 }]);
    await host.run(1010);
    sound.ring(undefined, 'a');
    expect(nodes).toHaveLength(1);
    sound.silence();
    expect(nodes[0]?.stopped).toHaveLength(2);
  });

  it('that have sounded to their end do not stand in the way of a later ring', async () => {
    const { sound, arm, nodes, host } = setUp();
    await arm();
    sound.schedule([{ id: 'a', at: host.now() + 1000 }]);
    await host.run(40_000);
    sound.ring(undefined, 'a');
    expect(nodes).toHaveLength(2);
  });

  it('shake the device too, armed or not', async () => {
    const { sound, vibrate } = setUp();
    sound.ring();
    expect(vibrate).toHaveBeenCalledWith(expect.arrayContaining([300]));
  });
});

describe('the samples', () => {
  it('sound where the pattern says and rest where it does not', () => {
    const rate = 8000;
    const samples = samplesOf(ALARM, rate);
    const loud = (fromMs: number, toMs: number) =>
      Math.max(...samples.slice((fromMs * rate) / 1000, (toMs * rate) / 1000).map(Math.abs));
    expect(samples).toHaveLength(12_000);
    for (const { atMs, ms } of ALARM.beeps) expect(loud(atMs, atMs + ms)).toBeGreaterThan(0.9);
    expect(loud(181, 279)).toBe(0);
    expect(loud(881, 1500)).toBe(0);
  });

  it('have the pitch that the pattern names', () => {
    const rate = 48_000;
    const samples = samplesOf(BEEPS.warn, rate);
    let crossings = 0;
    for (let index = 1; index < samples.length; index += 1) {
      if ((samples[index - 1] ?? 0) < 0 && (samples[index] ?? 0) >= 0) crossings += 1;
    }
    expect(crossings).toBeGreaterThanOrEqual(Math.floor(330 * 0.22) - 1);
    expect(crossings).toBeLessThanOrEqual(Math.ceil(330 * 0.22));
  });

  it('neither click at the edges nor clip', () => {
    const samples = samplesOf(BEEPS.kept, 8000);
    expect(Math.abs(samples[0] ?? 1)).toBe(0);
    expect(Math.max(...samples.map(Math.abs))).toBeLessThanOrEqual(1);
  });
});
