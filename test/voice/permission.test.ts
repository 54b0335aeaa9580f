import { describe, expect, it } from 'vitest';
import { ear } from './set-up.ts';

describe('the microphone', () => {
  it('denied: the ear is closed, says why, and nothing is tried again by itself', async () => {
    const { listen, host, recogniser, speech } = ear({ microphone: 'denied' });
    await listen();
    await host.run(60_000);
    expect(recogniser.state()).toMatchObject({
      state: 'blocked',
      cause: 'denied',
      trying: false,
      why: expect.stringContaining('keypad'),
    });
    expect(speech.sessions).toEqual([]);
  });

  it.each(['not-allowed', 'service-not-allowed', 'audio-capture'])('%s in the middle closes the ear', async (error) => {
    const { listen, host, recogniser, speech } = ear();
    await listen();
    speech.fail(error);
    await host.run(60_000);
    expect(recogniser.state()).toMatchObject({ state: 'blocked', cause: 'denied', trying: false });
    expect(speech.sessions).toHaveLength(1);
    expect(host.timers).toBe(0);
  });

  it('asked for: says asking for as long as the person takes, then listens', async () => {
    const { listen, host, recogniser, speech } = ear({ microphone: 'prompt' });
    await listen();
    await host.run(40_000);
    expect(recogniser.state()).toEqual({ state: 'asking' });
    expect(speech.sessions).toHaveLength(1);
    speech.answerPrompt(true);
    await host.run(10);
    expect(recogniser.state()).toEqual({ state: 'listening' });
  });

  it('asked for and refused: closed', async () => {
    const { listen, host, recogniser, speech } = ear({ microphone: 'prompt' });
    await listen();
    speech.answerPrompt(false);
    await host.run(10);
    expect(recogniser.state()).toMatchObject({ state: 'blocked', cause: 'denied' });
  });

  it('allowed later: starting again works', async () => {
    const { listen, recogniser, speech } = ear({ microphone: 'denied' });
    await listen();
    speech.conditions.microphone = 'granted';
    await listen();
    expect(recogniser.state()).toEqual({ state: 'listening' });
  });

  it('in a browser that does not tell beforehand: asking is guessed from the silence', async () => {
    const made = ear({ microphone: 'prompt' });
    Object.assign(made.window.navigator, { permissions: undefined });
    await made.listen();
    expect(made.recogniser.state()).toEqual({ state: 'starting' });
    await made.host.run(1300);
    expect(made.recogniser.state()).toEqual({ state: 'asking' });
  });

  it('in a browser that never answers the question: tried after two seconds', async () => {
    const made = ear();
    Object.assign(made.window.navigator, { permissions: { query: () => new Promise(() => undefined) } });
    await made.listen();
    await made.host.run(2100);
    expect(made.recogniser.state()).toEqual({ state: 'listening' });
  });
});

describe('consent', () => {
  it('is asked for before any speech may leave the device; nothing is begun without it', async () => {
    const { listen, recogniser, speech, host } = ear({ mayLeaveDevice: false });
    await listen();
    await host.run(10_000);
    expect(recogniser.state()).toMatchObject({
      state: 'blocked',
      cause: 'consent',
      why: expect.stringContaining('asks for your consent first'),
    });
    expect(speech.sessions).toEqual([]);
  });

  it('given: listens elsewhere', async () => {
    const { listen, recogniser, speech, consent } = ear({ mayLeaveDevice: false });
    await listen();
    consent.given = true;
    await listen();
    expect(recogniser.state()).toEqual({ state: 'listening' });
    expect(speech.sessions.map(({ onDevice }) => onDevice)).toEqual([false]);
  });

  it('revoked: the next session is not begun', async () => {
    const { listen, recogniser, speech, consent, host } = ear();
    await listen();
    consent.given = false;
    await host.run(5000);
    speech.finish();
    await host.run(200);
    expect(recogniser.state()).toMatchObject({ state: 'blocked', cause: 'consent' });
    expect(speech.sessions).toHaveLength(1);
  });

  it('is not needed where the browser promises to listen on the device', async () => {
    const { listen, recogniser, speech } = ear({ mayLeaveDevice: false, onDevice: ['en-US'] });
    await listen();
    expect(recogniser.state()).toEqual({ state: 'listening' });
    expect(speech.sessions.map(({ onDevice }) => onDevice)).toEqual([true]);
  });

  it('on the device is preferred even with consent', async () => {
    const { listen, speech } = ear({ onDevice: ['en-US'] });
    await listen();
    expect(speech.sessions.map(({ onDevice }) => onDevice)).toEqual([true]);
  });

  it('a promise the browser does not keep is not replaced by sending speech away', async () => {
    const { listen, recogniser, speech, window, host } = ear({ mayLeaveDevice: false });
    Object.assign(window.SpeechRecognition ?? {}, { available: () => Promise.resolve('available') });
    await listen();
    await host.run(2000);
    expect(recogniser.state()).toMatchObject({ state: 'blocked', cause: 'consent' });
    expect(speech.sessions.map(({ onDevice }) => onDevice)).toEqual([true]);
  });

  it('with consent, a promise not kept leads on to listening elsewhere', async () => {
    const { listen, recogniser, speech, window, host } = ear();
    Object.assign(window.SpeechRecognition ?? {}, { available: () => Promise.resolve('available') });
    await listen();
    await host.run(2000);
    expect(recogniser.state()).toEqual({ state: 'listening' });
    expect(speech.sessions.map(({ onDevice }) => onDevice)).toEqual([true, false]);
  });

  it.each([
    ['throws', () => Promise.reject(new Error('no'))],
    ['never answers', () => new Promise<string>(() => undefined)],
  ])('a browser that %s when asked counts as elsewhere', async (_what, available) => {
    const { listen, recogniser, window, host } = ear({ mayLeaveDevice: false });
    Object.assign(window.SpeechRecognition ?? {}, { available });
    await listen();
    await host.run(2100);
    expect(recogniser.state()).toMatchObject({ state: 'blocked', cause: 'consent' });
  });

  it('a language the browser does not know closes the ear', async () => {
    const { listen, recogniser, speech, host } = ear();
    await listen();
    speech.fail('language-not-supported');
    await host.run(5000);
    expect(recogniser.state()).toMatchObject({
      state: 'blocked',
      cause: 'language',
      why: expect.stringContaining('English'),
    });
  });
});
