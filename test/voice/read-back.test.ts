import { describe, expect, it } from 'vitest';
import { FakeHost } from '../../src/time/fake-host.ts';
import { createFakeWindow, type FakeSpeechOptions } from '../../src/voice/fake.ts';
import { createReadBack, pieces } from '../../src/voice/read-back.ts';
import type { SayResult } from '../../src/voice/types.ts';

function setUp(options: FakeSpeechOptions = {}, mayLeave = false) {
  const host = new FakeHost(0);
  const { window, speech } = createFakeWindow({ host, ...options });
  const speaker = createReadBack(window, { host, mayLeaveDevice: () => mayLeave });
  const say = (text: string, language: 'en' | 'de' = 'en') => {
    const told: { result?: SayResult; at?: number } = {};
    void speaker.say(text, language).then((result) => Object.assign(told, { result, at: host.now() }));
    return told;
  };
  return { host, window, speech, speaker, say };
}

describe('reading aloud', () => {
  it('ends when the words end', async () => {
    const { host, say, speech } = setUp();
    const told = say('sixty-two');
    await host.run(5000);
    expect(told).toEqual({ result: { ok: true }, at: 9 * 20 });
    expect(speech.spoken).toMatchObject([{ text: 'sixty-two', lang: 'en-US', volume: 1, rate: 1 }]);
  });

  it.each(['noEnd', 'dead'] as const)('ends after 90 ms a character and 3 s when the browser is %s', async (kind) => {
    const { host, say } = setUp({ speech: kind });
    const told = say('sixty-two');
    await host.run(9 * 90 + 2999);
    expect(told).toEqual({});
    await host.run(1);
    expect(told.result).toMatchObject({ ok: false, reason: 'timedOut' });
  });

  it.each([
    ['fails', 'failed'],
    ['untouched', 'needsTouch'],
  ] as const)('%s: named, with a sentence', async (kind, reason) => {
    const { host, say } = setUp({ speech: kind });
    const told = say('sixty-two');
    await host.run(10);
    expect(told.result).toMatchObject({ ok: false, reason, why: expect.stringMatching(/\.$/) });
  });

  it('goes on after a failure', async () => {
    const { host, say, speech } = setUp({ speech: 'dead' });
    say('sixty-two');
    await host.run(10_000);
    speech.conditions.speech = 'works';
    const told = say('sixty-three');
    await host.run(10_000);
    expect(told.result).toEqual({ ok: true });
  });

  it('a new text cuts the old one short', async () => {
    const { host, say, speech } = setUp();
    const first = say('sixty-two');
    await host.run(40);
    const second = say('sixty-three');
    await host.run(5000);
    expect(speech.spoken.map(({ at }) => at)).toEqual([0, 40]);
    expect([first.result, second.result]).toMatchObject([{ ok: false, reason: 'cut' }, { ok: true }]);
    expect(speech.spoken.map(({ text }) => text)).toEqual(['sixty-two', 'sixty-three']);
  });

  it('a new text between two pieces of an old one leaves the rest of it unsaid', async () => {
    const { host, say, speech } = setUp();
    const long = 'The rest height is sixty-two point five. '.repeat(5).trim();
    const first = say(long);
    host.advance((pieces(long)[0]?.length ?? 0) * 20);
    say('sixty-three');
    await host.run(60_000);
    expect(first.result).toMatchObject({ ok: false, reason: 'cut' });
    expect(speech.spoken.map(({ text }) => text)).toEqual([pieces(long)[0], 'sixty-three']);
  });

  it('silent: says nothing', async () => {
    const { host, say, speech, speaker } = setUp();
    speaker.set({ silent: true });
    const told = say('sixty-two');
    await host.run(5000);
    expect(told.result).toMatchObject({ ok: false, reason: 'silent' });
    expect(speaker.willSpeak('en')).toBe(false);
    expect(speech.spoken).toEqual([]);
  });

  it('takes volume and rate, within what ears can bear', async () => {
    const { host, say, speech, speaker } = setUp();
    speaker.set({ volume: 3, rate: 9 });
    say('a');
    await host.run(4000);
    speaker.set({ volume: 0.4, rate: 0.8 });
    say('b');
    await host.run(4000);
    expect(speech.spoken).toMatchObject([
      { volume: 1, rate: 2 },
      { volume: 0.4, rate: 0.8 },
    ]);
  });

  it('unlocks itself without a sound', async () => {
    const { host, speaker, speech } = setUp();
    speaker.unlock();
    await host.run(100);
    expect(speech.spoken).toMatchObject([{ text: '', volume: 0 }]);
  });
});

describe('voices', () => {
  const remote = { lang: 'de-DE', localService: false };

  it('none listed is normal: the browser’s own is used', async () => {
    const { host, say, speech } = setUp({ voices: [] });
    const told = say('zweiundsechzig', 'de');
    await host.run(5000);
    expect(told.result).toEqual({ ok: true });
    expect(speech.spoken).toMatchObject([{ lang: 'de-DE', local: undefined }]);
  });

  it('one on the device is taken before one elsewhere, even of another country', async () => {
    const { host, say, speech } = setUp({ voices: [remote, { lang: 'de_AT', localService: true }] }, true);
    say('zweiundsechzig', 'de');
    await host.run(5000);
    expect(speech.spoken).toMatchObject([{ lang: 'de_AT', local: true }]);
  });

  it('one elsewhere is used only with consent', async () => {
    const without = setUp({ voices: [remote] });
    const told = without.say('zweiundsechzig', 'de');
    await without.host.run(5000);
    expect(told.result).toMatchObject({ ok: false, reason: 'noVoice', why: expect.stringContaining('German') });
    expect(without.speech.spoken).toEqual([]);
    const given = setUp({ voices: [remote] }, true);
    given.say('zweiundsechzig', 'de');
    await given.host.run(5000);
    expect(given.speech.spoken).toMatchObject([{ local: false }]);
  });
});

describe('long texts', () => {
  it('are read in pieces short enough for every voice, cut where one would breathe', () => {
    const text = 'Upper impression: working time is over, 20 seconds late. '.repeat(4).trim();
    const cut = pieces(text);
    expect(cut.every((piece) => piece.length <= 100)).toBe(true);
    expect(cut.join(' ')).toBe(text);
    expect(cut.every((piece) => piece.endsWith('.'))).toBe(true);
  });

  it('without a place to breathe are cut all the same, and nothing is lost', () => {
    const text = 'x'.repeat(250);
    expect(pieces(text).join('')).toBe(text);
    expect(pieces(text).every((piece) => piece.length <= 100)).toBe(true);
    expect(pieces('')).toEqual([]);
  });

  it('are read to the end', async () => {
    const { host, say, speech } = setUp();
    const text = 'The rest height is sixty-two point five. '.repeat(5).trim();
    const told = say(text);
    await host.run(60_000);
    expect(told.result).toEqual({ ok: true });
    expect(speech.spoken.map((one) => one.text).join(' ')).toBe(text);
  });
});
