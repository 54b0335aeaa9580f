import { describe, expect, it } from 'vitest';
import { FakeHost } from '../../src/time/fake-host.ts';
import { createFakeWindow } from '../../src/voice/fake.ts';
import { createReadBack } from '../../src/voice/read-back.ts';
import type { Recogniser, RecogniserEvent } from '../../src/voice/types.ts';
import { createVoice } from '../../src/voice/voice.ts';
import { earAndVoice, START } from './set-up.ts';

async function listening(options: Parameters<typeof earAndVoice>[0] = {}) {
  const made = earAndVoice({ echo: true, ...options });
  made.voice.listen(true);
  await made.host.run(50);
  return made;
}

describe('while the app speaks', () => {
  it('it does not hear itself, though the microphone does', async () => {
    const { voice, host, speech, texts } = await listening();
    void voice.say('sixty-two. Keep it?', 'en');
    expect(voice.ear()).toEqual({ state: 'speaking', text: 'sixty-two. Keep it?' });
    await host.run(10_000);
    expect(speech.spoken).toHaveLength(1);
    expect(texts).toEqual([]);
    expect(voice.ear()).toEqual({ state: 'listening' });
  });

  it('it does not hear itself even if the recogniser goes on giving results after an abort', async () => {
    const { voice, host, texts } = await listening({ lateResults: true });
    void voice.say('sixty-two', 'en');
    await host.run(10_000);
    expect(texts).toEqual([]);
  });

  it('the microphone would have heard it: an open ear does', async () => {
    const { speaker, host, texts } = await listening();
    void speaker.say('sixty-two', 'en');
    await host.run(10_000);
    expect(texts).toEqual(['sixty-two']);
  });

  it('speaking begins at once, without waiting for the recogniser', async () => {
    const { voice, host, speech } = await listening({ endless: true });
    const at = host.now();
    void voice.say('sixty-two', 'en');
    expect(speech.spoken).toMatchObject([{ text: 'sixty-two', at }]);
  });

  it('the ear opens 0.8 s after the last word, and only then is the saying over', async () => {
    const { voice, host, speech, texts } = await listening();
    let over = false;
    void voice.say('sixty-two', 'en').then(() => (over = true));
    await host.run(9 * 20 + 799);
    expect([over, speech.listening]).toEqual([false, false]);
    await host.run(20);
    expect([over, speech.listening]).toEqual([true, true]);
    speech.say('yes');
    expect(texts).toEqual(['yes']);
  });

  it('the ear opens again when the browser never says that the words are over', async () => {
    const { voice, host, speech, troubles } = await listening({ speech: 'dead' });
    void voice.say('sixty-two', 'en');
    await host.run(9 * 90 + 3000 + 900);
    expect(speech.listening).toBe(true);
    expect(voice.ear()).toEqual({ state: 'listening' });
    expect(troubles).toEqual([expect.stringContaining('did not come to an end')]);
  });

  it('what was begun before the ear opened is not taken for an answer', async () => {
    const host = new FakeHost(START);
    const listeners: ((event: RecogniserEvent) => void)[] = [];
    const recogniser: Recogniser = {
      state: () => ({ state: 'listening' }),
      start: () => undefined,
      stop: () => undefined,
      finish: () => undefined,
      setPhrases: () => undefined,
      onDevice: () => Promise.resolve('unavailable'),
      fetchOnDevice: () => Promise.resolve('unavailable'),
      askAgain: () => undefined,
      onEvent: (listener) => {
        listeners.push(listener);
        return () => undefined;
      },
    };
    const { window } = createFakeWindow({ host });
    const speaker = createReadBack(window, { host, mayLeaveDevice: () => false });
    const voice = createVoice({ recogniser, speaker, host });
    const texts: string[] = [];
    voice.onSpoken(({ text }) => texts.push(text));
    const hear = (text: string, since?: number): void => {
      const spoken = {
        text,
        alternatives: [{ transcript: text }],
        at: host.now(),
        ...(since === undefined ? {} : { since }),
      };
      for (const listener of listeners) listener({ kind: 'heard', spoken });
    };
    voice.listen(true);
    void voice.say('sixty-two', 'en');
    await host.run(100);
    const whileSpeaking = host.now();
    hear('sixty-two', whileSpeaking);
    await host.run(5000);
    hear('sixty-two', whileSpeaking);
    hear('yes', host.now());
    hear('next');
    expect(texts).toEqual(['yes', 'next']);
  });
});

describe('several texts', () => {
  it('are read one after the other, with the ear shut all the while', async () => {
    const { voice, host, speech, texts } = await listening();
    void voice.say('Working time is over.', 'en');
    void voice.say('sixty-two', 'en');
    await host.run(21 * 20 + 5);
    expect(voice.ear()).toEqual({ state: 'speaking', text: 'sixty-two' });
    await host.run(5000);
    expect(speech.spoken.map(({ text }) => text)).toEqual(['Working time is over.', 'sixty-two']);
    expect(texts).toEqual([]);
  });

  it('of which more than two wait: the oldest waiting gives way, and nobody waits for ever', async () => {
    const { voice, host, speech } = await listening();
    const all = ['one', 'two', 'three', 'four', 'five'].map((text) => voice.say(text, 'en'));
    await host.run(20_000);
    await Promise.all(all);
    expect(speech.spoken.map(({ text }) => text)).toEqual(['one', 'four', 'five']);
  });

  it('begun in the tail of another keep the ear shut, and both are over', async () => {
    const { voice, host, speech } = await listening();
    const first = voice.say('one', 'en');
    await host.run(3 * 20 + 400);
    const second = voice.say('two', 'en');
    await host.run(3 * 20 + 790);
    expect(speech.listening).toBe(false);
    await host.run(100);
    await Promise.all([first, second]);
    expect(speech.listening).toBe(true);
  });
});

describe('the ear', () => {
  it('stays shut after speaking when nobody wants it open', async () => {
    const made = earAndVoice();
    void made.voice.say('sixty-two', 'en');
    await made.host.run(5000);
    expect(made.speech.sessions).toEqual([]);
    expect(made.voice.ear()).toEqual({ state: 'off' });
  });

  it('switched off while the app speaks stays off', async () => {
    const { voice, host, speech } = await listening();
    void voice.say('sixty-two', 'en');
    voice.listen(false);
    await host.run(5000);
    expect(speech.listening).toBe(false);
    expect(voice.ear()).toEqual({ state: 'off' });
  });

  it('shows what it heard for a while, half or whole', async () => {
    const { voice, host, speech } = await listening();
    speech.murmur('sixty');
    expect(voice.ear()).toEqual({ state: 'heard', text: 'sixty' });
    speech.say('sixty two');
    expect(voice.ear()).toEqual({ state: 'heard', text: 'sixty two' });
    await host.run(2500);
    expect(voice.ear()).toEqual({ state: 'listening' });
  });

  it('shut for a beep, opens after it', async () => {
    const { voice, host, speech } = await listening();
    voice.hush(90);
    expect(speech.listening).toBe(false);
    await host.run(1000);
    expect(speech.listening).toBe(true);
  });

  it('closed for good by a denied microphone is not knocked at after every read-back', async () => {
    const { voice, host, speech, recogniser } = await listening({ microphone: 'denied' });
    const why = voice.ear();
    expect(why).toMatchObject({ state: 'blocked' });
    const changes: unknown[] = [];
    recogniser.onEvent((event) => changes.push(event));
    for (let time = 0; time < 3; time += 1) {
      void voice.say('sixty-two', 'en');
      await host.run(5000);
      expect(voice.ear()).toEqual(why);
    }
    expect(speech.spoken).toHaveLength(3);
    expect(changes).toEqual([]);
    speech.conditions.microphone = 'granted';
    voice.listen(true);
    await host.run(50);
    expect(voice.ear()).toEqual({ state: 'listening' });
  });

  it('without a network says so after read-back too', async () => {
    const { voice, host } = await listening({ online: false });
    await host.run(20_000);
    void voice.say('sixty-two', 'en');
    await host.run(3000);
    expect(voice.ear()).toMatchObject({ state: 'blocked', why: expect.stringContaining('keypad') });
  });

  it('listens in the language set, at once', async () => {
    const { voice, host, speech } = await listening();
    voice.setLanguage('de');
    await host.run(50);
    expect(speech.sessions.map(({ tag }) => tag)).toEqual(['en-US', 'de-DE']);
  });

  it('silent mode leaves it open', async () => {
    const { voice, host, speech } = await listening();
    voice.setSpeaker({ silent: true });
    await voice.say('sixty-two', 'en');
    await host.run(10);
    expect(speech.spoken).toEqual([]);
    expect(speech.listening).toBe(true);
  });

  it('an hour of work leaves no timer and no session behind', async () => {
    const { voice, host, speech, texts } = await listening({ echo: false });
    for (let minute = 0; minute < 60; minute += 1) {
      speech.say(`reading ${minute}`);
      void voice.say(`reading ${minute}`, 'en');
      await host.run(50_000);
      speech.fail('no-speech');
      await host.run(10_000);
    }
    expect(texts).toHaveLength(60);
    voice.stop();
    await host.run(5000);
    expect([host.timers, speech.listening]).toEqual([0, false]);
  });
});
