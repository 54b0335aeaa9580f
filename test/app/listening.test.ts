import { describe, expect, it } from 'vitest';
import { earEvents, Listening } from '../../src/app/listening.ts';
import type { EarMode } from '../../machines/listening.types.ts';
import type { Ear, Voice } from '../../src/voice/types.ts';

const at = (state: 'off' | 'asking' | 'starting' | 'listening' | 'finishing'): Ear => ({ state });
const heard: Ear = { state: 'heard', text: 'sixty' };
const speaking: Ear = { state: 'speaking', text: 'sixty-two' };
const denied: Ear = { state: 'blocked', cause: 'denied', why: 'no microphone', trying: false };
const lost: Ear = { state: 'blocked', cause: 'unreachable', why: 'no answer', trying: true };
const types = (before: Ear, now: Ear) => earEvents(before, now).map(({ type }) => type);

describe('what the voice reports means to the machine', () => {
  it.each([
    ['a session begins', at('starting'), at('listening'), ['STARTED']],
    ['words are half heard', at('listening'), heard, []],
    ['the words fade', heard, at('listening'), []],
    ['a session is over', at('listening'), at('starting'), ['ENDED']],
    ['the browser asks', at('starting'), at('asking'), ['PROMPTED']],
    ['the app speaks', at('listening'), speaking, ['SPEAK']],
    ['another text is spoken', speaking, { ...speaking, text: 'other' }, []],
    ['the app has spoken', speaking, at('starting'), ['SPOKEN', 'ENDED']],
    ['the app has spoken, and nobody wants the ear', speaking, at('off'), ['SPOKEN', 'ENDED']],
    ['the last words are waited for', at('listening'), at('finishing'), []],
    ['the last words are there', at('finishing'), at('off'), ['ENDED']],
    ['it cannot listen', at('starting'), denied, ['FAILED']],
    ['it still cannot', lost, lost, ['FAILED']],
    ['it fails after speaking', speaking, lost, ['SPOKEN', 'FAILED']],
    ['nothing changes', at('listening'), at('listening'), []],
  ] as const)('%s', (_what, before, now, expected) => {
    expect(types(before, now)).toEqual(expected);
  });

  it('why it failed is told with it', () => {
    expect(earEvents(at('starting'), lost)).toEqual([{ type: 'FAILED', cause: 'unreachable', trying: true }]);
  });
});

/** A voice that only does what it is told, and writes down what that was. */
function stage(mode: EarMode) {
  const asked: string[] = [];
  let ear: Ear = at('off');
  let tell = (): void => undefined;
  const voice = {
    listen: (on: boolean) => asked.push(on ? 'open' : 'close'),
    finish: () => asked.push('finish'),
    ear: () => ear,
    onEar: (listener: () => void) => {
      tell = listener;
      return () => (tell = () => undefined);
    },
  } as unknown as Voice;
  let changes = 0;
  const listening = new Listening(voice, mode, () => (changes += 1));
  const stop = listening.start();
  const becomes = (next: Ear): void => {
    ear = next;
    tell();
  };
  const visit = (reading: boolean, waits = false) => ({ listensFor: () => ({ reading, waits }) });
  return { asked, listening, becomes, visit, stop, changes: () => changes, state: () => listening.state('en') };
}

describe('the ear at run time', () => {
  it('opens when wanted on the visit’s screen, and closes when that is left', () => {
    const { asked, listening, becomes, visit, state } = stage('always');
    listening.want(true);
    expect([asked, state()]).toEqual([[], { state: 'shut', why: expect.stringContaining('visit') }]);
    listening.attend('always', visit(false));
    expect([asked, state()]).toEqual([['open'], { state: 'starting' }]);
    becomes(at('listening'));
    expect(state()).toEqual({ state: 'listening' });
    listening.attend('always', undefined);
    expect(asked).toEqual(['open', 'close']);
  });

  it('says that it waits for a yes', () => {
    const { listening, becomes, visit, state } = stage('always');
    listening.attend('always', visit(true, true));
    listening.want(true);
    becomes(at('listening'));
    expect(state()).toEqual({ state: 'listening', waits: true });
  });

  it('takes what is said only while it is open', () => {
    const { listening, becomes, visit, state } = stage('readings');
    listening.attend('readings', visit(true));
    listening.want(true);
    expect(listening.takes('sixty')).toBe(false);
    becomes(at('listening'));
    expect(listening.takes('sixty')).toBe(true);
    expect(state()).toEqual({ state: 'heard', text: 'sixty' });
    listening.understood();
    listening.attend('readings', visit(false));
    expect(listening.takes('sixty')).toBe(false);
    expect(state()).toEqual({ state: 'shut', why: expect.stringContaining('number') });
  });

  it('let go: waits for the last words, then closes', () => {
    const { asked, listening, becomes, visit, state } = stage('push');
    listening.attend('push', visit(true));
    listening.talk(true);
    becomes(at('listening'));
    listening.talk(false);
    becomes(at('finishing'));
    expect(asked).toEqual(['open', 'finish']);
    expect(listening.takes('sixty')).toBe(true);
    becomes(at('off'));
    listening.understood();
    expect(state()).toEqual({ state: 'shut', why: expect.stringContaining('F8') });
    expect(listening.takes('sixty')).toBe(false);
  });

  it('blocked and asked once more, it asks the voice once more', () => {
    const { asked, listening, becomes, visit, state } = stage('always');
    listening.attend('always', visit(true));
    listening.want(true);
    becomes(denied);
    expect([asked, state()]).toEqual([
      ['open', 'close'],
      { state: 'blocked', why: expect.stringMatching(/microphone/) },
    ]);
    listening.want(true);
    expect(asked).toEqual(['open', 'close', 'open']);
    becomes(lost);
    listening.want(true);
    expect(asked).toEqual(['open', 'close', 'open', 'open']);
    becomes(lost);
    expect(state()).toMatchObject({ state: 'blocked' });
    becomes(at('listening'));
    expect(state()).toEqual({ state: 'listening' });
  });

  it('a change of manner holds at once', () => {
    const { asked, listening, becomes, visit } = stage('always');
    listening.attend('always', visit(false));
    listening.want(true);
    becomes(at('listening'));
    listening.attend('readings', visit(false));
    listening.attend('readings', visit(true));
    listening.attend('push', visit(true));
    expect(asked).toEqual(['open', 'close', 'open', 'close']);
  });

  it('tells of every change that is to be seen, and closes when stopped', () => {
    const { asked, listening, visit, stop, changes } = stage('always');
    listening.attend('always', visit(true));
    const before = changes();
    listening.want(true);
    expect(changes()).toBeGreaterThan(before);
    stop();
    expect(asked).toEqual(['open', 'close']);
  });
});
