// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { FakeHost } from '../../src/time/fake-host.ts';
import { createFakeWindow, installFakeSpeech, type FakeSpeechOptions } from '../../src/voice/fake.ts';
import { voiceWindow, type WebRecognition } from '../../src/voice/web-types.ts';

/** A recogniser of the made-up window, used as a page would that knows nothing of our wrapper. */
function bare(options: FakeSpeechOptions = {}) {
  const host = new FakeHost(0);
  const { window, speech } = createFakeWindow({ host, ...options });
  const Maker = window.SpeechRecognition;
  if (!Maker) throw new Error('the made-up window has no recogniser');
  const recognition: WebRecognition = new Maker();
  recognition.lang = 'en-US';
  return { host, speech, recognition };
}

describe('the made-up recogniser keeps the order of a real one', () => {
  it('one utterance, not continuous', () => {
    const { host, speech, recognition } = bare();
    recognition.start();
    host.advance(0);
    speech.say('sixty two');
    expect(speech.log).toEqual([
      'start',
      'audiostart',
      'soundstart',
      'speechstart',
      'result',
      'speechend',
      'soundend',
      'audioend',
      'end',
    ]);
  });

  it('continuous: goes on after a result, with interim results when asked for', () => {
    const { host, speech, recognition } = bare();
    recognition.continuous = recognition.interimResults = true;
    recognition.start();
    host.advance(0);
    speech.say('sixty two');
    expect(speech.log).toEqual([
      'start',
      'audiostart',
      'soundstart',
      'speechstart',
      'interim',
      'result',
      'speechend',
      'soundend',
    ]);
    expect(speech.listening).toBe(true);
  });

  it('no network: start, audiostart, audioend, error, end', () => {
    const { host, speech, recognition } = bare({ online: false });
    recognition.start();
    host.advance(10);
    expect(speech.log).toEqual(['start', 'audiostart', 'audioend', 'error network', 'end']);
  });

  it('a language that is not on the device: an error and nothing after it', () => {
    const { host, speech, recognition } = bare();
    recognition.processLocally = true;
    recognition.start();
    host.advance(10_000);
    expect(speech.log).toEqual(['error language-not-supported']);
  });

  it('microphone denied: error, end', () => {
    const { host, speech, recognition } = bare({ microphone: 'denied' });
    recognition.start();
    host.advance(10);
    expect(speech.log).toEqual(['error not-allowed', 'end']);
  });

  it('a second start throws, and so does a start right after an abort', () => {
    const { host, speech, recognition } = bare();
    recognition.start();
    expect(() => recognition.start()).toThrow(expect.objectContaining({ name: 'InvalidStateError' }));
    host.advance(0);
    expect(speech.listening).toBe(true);
    recognition.abort();
    expect(() => recognition.start()).toThrow(expect.objectContaining({ name: 'InvalidStateError' }));
    host.advance(0);
    expect(() => recognition.start()).not.toThrow();
  });

  it('aborted: no error, an end; aborted without a start: nothing', () => {
    const { host, speech, recognition } = bare();
    recognition.abort();
    host.advance(10);
    expect(speech.log).toEqual([]);
    recognition.start();
    recognition.abort();
    recognition.abort();
    host.advance(10);
    expect(speech.log).toEqual(['end']);
  });

  it('nobody hears what is said while it does not listen', () => {
    const { speech } = bare();
    expect(speech.say('sixty two')).toBe(false);
    expect(speech.log).toEqual([]);
  });
});

describe('installed in a page', () => {
  it('takes the place of the page’s own speech and of the question about the microphone', async () => {
    const speech = installFakeSpeech(window, { microphone: 'denied' });
    const page = voiceWindow(window);
    expect(page.SpeechRecognition).toBe(page.webkitSpeechRecognition);
    expect(await page.navigator.permissions?.query({ name: 'microphone' })).toEqual({ state: 'denied' });
    const Utterance = page.SpeechSynthesisUtterance;
    if (Utterance) page.speechSynthesis?.speak(new Utterance('sixty-two'));
    expect(speech.spoken.map(({ text }) => text)).toEqual(['sixty-two']);
  });
});
