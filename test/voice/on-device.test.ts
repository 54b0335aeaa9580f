import { describe, expect, it } from 'vitest';
import type { WebRecognitionMaker } from '../../src/voice/web-types.ts';
import { ear } from './set-up.ts';

const maker = (window: object) => (window as { SpeechRecognition: WebRecognitionMaker }).SpeechRecognition;

describe('words on the device', () => {
  it.each([
    ['available', 'ready'],
    ['downloadable', 'fetchable'],
    ['downloading', 'fetching'],
    ['unavailable', 'unavailable'],
    ['something new', 'unavailable'],
  ])('the browser says %s: %s', async (answer, state) => {
    const { recogniser, window } = ear();
    Object.assign(maker(window), { available: () => Promise.resolve(answer) });
    expect(await recogniser.onDevice('en')).toBe(state);
  });

  it('a browser that cannot tell, or cannot fetch, offers nothing', async () => {
    const { recogniser, window } = ear();
    Object.assign(maker(window), { install: undefined });
    expect(await recogniser.onDevice('en')).toBe('unavailable');
    expect(await recogniser.fetchOnDevice('en')).toBe('unavailable');
    Object.assign(maker(window), { available: () => Promise.reject(new Error('no')) });
    expect(await recogniser.onDevice('en')).toBe('unavailable');
  });

  it('fetched, the language is heard here from then on, without consent', async () => {
    const { recogniser, speech, listen } = ear({ mayLeaveDevice: false, install: 'works', languages: ['de-AT'] });
    await listen();
    expect(recogniser.state()).toMatchObject({ state: 'blocked', cause: 'consent' });
    expect(await recogniser.fetchOnDevice('en')).toBe('ready');
    await listen();
    expect(recogniser.state()).toEqual({ state: 'listening' });
    expect(speech.sessions).toMatchObject([{ tag: 'en-US', onDevice: true }]);
  });

  it.each(['does nothing', 'throws'] as const)(
    'a browser that %s when asked has failed, and says so',
    async (install) => {
      const { recogniser } = ear({ install });
      expect(await recogniser.fetchOnDevice('de')).toBe('failed');
      expect(await recogniser.onDevice('de')).toBe('fetchable');
    },
  );

  it('a browser that says done and has nothing is not believed', async () => {
    const { recogniser, window } = ear();
    Object.assign(maker(window), { install: () => Promise.resolve(true) });
    expect(await recogniser.fetchOnDevice('de')).toBe('failed');
  });
});

describe('words likely to be said now', () => {
  const here = { onDevice: ['en-US'], mayLeaveDevice: false } as const;

  it('go to a recogniser on the device that takes them', async () => {
    const { recogniser, speech, listen } = ear({ ...here, phrases: 'taken' });
    recogniser.setPhrases(['next', ' upper width ', 'next', '']);
    await listen();
    expect(speech.sessions[0]?.phrases).toEqual(['next', 'upper width']);
  });

  it('changed while it listens hold for the next session at the latest', async () => {
    const { recogniser, speech, listen, host } = ear({ ...here, phrases: 'taken' });
    recogniser.setPhrases(['next']);
    await listen();
    recogniser.setPhrases(['yes', 'no']);
    speech.finish();
    await host.run(500);
    expect(speech.sessions.map(({ phrases }) => phrases)).toEqual([['next'], ['yes', 'no']]);
  });

  it('never leave the device', async () => {
    const { recogniser, speech, listen } = ear({ phrases: 'taken' });
    recogniser.setPhrases(['next']);
    await listen();
    expect(speech.sessions).toMatchObject([{ onDevice: false, phrases: [] }]);
  });

  it('refused by the recogniser: it goes on without them and is not asked again', async () => {
    const { recogniser, speech, listen, host, states } = ear({ ...here, phrases: 'refused' });
    recogniser.setPhrases(['next']);
    await listen();
    await host.run(200);
    expect(recogniser.state()).toEqual({ state: 'listening' });
    expect(speech.sessions.map(({ phrases }) => phrases)).toEqual([['next'], []]);
    expect(states).not.toContain('blocked unreachable');
    recogniser.setPhrases(['yes']);
    speech.finish();
    await host.run(500);
    expect(speech.sessions).toHaveLength(3);
    expect(speech.sessions[2]?.phrases).toEqual([]);
  });

  it('in a browser that knows none: nothing is set', async () => {
    const { recogniser, speech, listen } = ear(here);
    recogniser.setPhrases(['next']);
    await listen();
    expect(recogniser.state()).toEqual({ state: 'listening' });
    expect(speech.sessions[0]?.phrases).toEqual([]);
  });

  it('too many for a recogniser are cut', async () => {
    const { recogniser, speech, listen } = ear({ ...here, phrases: 'taken' });
    recogniser.setPhrases(Array.from({ length: 500 }, (_, i) => `word ${i}`));
    await listen();
    expect(speech.sessions[0]?.phrases).toHaveLength(60);
  });
});
