import { describe, expect, it } from 'vitest';
import { ear } from './set-up.ts';

describe('hearing', () => {
  it('hands on everything the recogniser thought it heard, with the time', async () => {
    const { listen, speech, heard, host } = ear();
    await listen();
    speech.say([
      { transcript: ' fifty ', confidence: 0.61 },
      { transcript: 'fifteen', confidence: 0.58 },
      { transcript: 'fifty three' },
    ]);
    expect(heard).toEqual([
      {
        text: 'fifty',
        alternatives: [
          { transcript: 'fifty', confidence: 0.61 },
          { transcript: 'fifteen', confidence: 0.58 },
          { transcript: 'fifty three', confidence: 0 },
        ],
        at: host.now(),
        since: host.now(),
      },
    ]);
  });

  it('asks for five alternatives and goes on after each utterance', async () => {
    const { listen, speech, texts } = ear();
    await listen();
    for (const text of ['sixty two', 'next', 'sixty three']) speech.say(text);
    expect(texts()).toEqual(['sixty two', 'next', 'sixty three']);
    expect(speech.sessions).toHaveLength(1);
    expect(speech.sessions[0]?.alternatives).toBe(5);
  });

  it('shows what is half heard and never acts on it', async () => {
    const { listen, speech, heard, interim } = ear();
    await listen();
    speech.murmur('sixty');
    expect(interim).toEqual(['sixty']);
    expect(heard).toEqual([]);
  });

  it('an empty result is nothing', async () => {
    const { listen, speech, heard } = ear();
    await listen();
    speech.say('  ');
    expect(heard).toEqual([]);
  });
});

describe('echoes of the recogniser', () => {
  it('the same words within a second are one utterance', async () => {
    const { listen, speech, texts, host } = ear();
    await listen();
    speech.say('sixty two');
    await host.run(900);
    speech.say('Sixty  two.');
    expect(texts()).toEqual(['sixty two']);
  });

  it('the same words after a second are two', async () => {
    const { listen, speech, texts, host } = ear();
    await listen();
    speech.say('sixty two');
    await host.run(1000);
    speech.say('sixty two');
    expect(texts()).toEqual(['sixty two', 'sixty two']);
  });

  it('the same words after the app asked again are an answer', async () => {
    const { listen, speech, texts, recogniser } = ear();
    await listen();
    speech.say('sixty two');
    recogniser.askAgain();
    speech.say('sixty two');
    expect(texts()).toEqual(['sixty two', 'sixty two']);
  });

  it('a lost point is not an echo: 62.5 and 625 are different words', async () => {
    const { listen, speech, texts } = ear();
    await listen();
    speech.say('62.5');
    speech.say('625');
    expect(texts()).toEqual(['62.5', '625']);
  });
});

describe('on Android', () => {
  const userAgent = 'Mozilla/5.0 (Linux; Android 14) made up';

  it('an utterance is heard once, though it comes without confidence first and twice in the end', async () => {
    const { listen, speech, heard } = ear({ android: true, userAgent });
    await listen();
    speech.say([{ transcript: 'sixty two', confidence: 0.8 }]);
    expect(heard.map(({ alternatives }) => alternatives)).toEqual([[{ transcript: 'sixty two', confidence: 0.8 }]]);
  });

  it('every session hears one utterance; the next begins at once', async () => {
    const { listen, speech, texts, host } = ear({ android: true, userAgent });
    await listen();
    for (const text of ['sixty two', 'sixty three', 'next']) {
      expect(speech.say(text)).toBe(true);
      await host.run(150);
    }
    expect(texts()).toEqual(['sixty two', 'sixty three', 'next']);
    expect(speech.sessions).toHaveLength(4);
  });

  it('elsewhere a result without confidence is a result', async () => {
    const { listen, speech, texts } = ear();
    await listen();
    speech.say([{ transcript: 'sixty two', confidence: 0 }]);
    expect(texts()).toEqual(['sixty two']);
  });
});

describe('sessions that the browser ends', () => {
  it('are begun anew after a long one, almost at once', async () => {
    const { listen, speech, host, recogniser } = ear();
    await listen();
    await host.run(60_000 - 50);
    const before = speech.sessions.length;
    speech.finish();
    expect(recogniser.state()).toEqual({ state: 'starting' });
    await host.run(110);
    expect(recogniser.state()).toEqual({ state: 'listening' });
    expect(speech.sessions).toHaveLength(before + 1);
  });

  it('for want of speech are no failure', async () => {
    const { listen, speech, host, recogniser } = ear();
    await listen();
    for (let time = 0; time < 5; time += 1) {
      await host.run(8000);
      speech.fail('no-speech');
      await host.run(110);
      expect(recogniser.state()).toEqual({ state: 'listening' });
    }
  });

  it('without a network are begun anew ever more slowly, from 0.3 to 5 s, and it is said', async () => {
    const { listen, speech, host, states } = ear({ online: false });
    await listen();
    await host.run(60_000);
    const starts = speech.sessions.map(({ startedAt }) => startedAt);
    const pauses = starts.slice(1).map((at, index) => at - (starts[index] ?? 0));
    expect(pauses.slice(0, 7)).toEqual([300, 600, 1200, 2400, 4800, 5000, 5000]);
    expect(states).toContain('blocked unreachable');
    expect(states.slice(states.indexOf('blocked unreachable'))).not.toContain('listening');
  });

  it('is listening again when the network is back, once a session has lasted', async () => {
    const { listen, speech, host, recogniser } = ear({ online: false });
    await listen();
    await host.run(20_000);
    expect(recogniser.state()).toMatchObject({ state: 'blocked', cause: 'unreachable', trying: true });
    speech.conditions.online = true;
    await host.run(7000);
    expect(recogniser.state()).toEqual({ state: 'listening' });
  });

  it('aborted by somebody else are begun anew', async () => {
    const { listen, speech, host, recogniser } = ear();
    await listen();
    speech.fail('aborted');
    await host.run(400);
    expect(recogniser.state()).toEqual({ state: 'listening' });
  });

  it('are begun anew even if the end is never told after an error', async () => {
    const { listen, speech, host, recogniser } = ear();
    await listen();
    speech.conditions.endless = true;
    speech.fail('network');
    speech.conditions.endless = false;
    await host.run(2000);
    expect(recogniser.state()).toEqual({ state: 'listening' });
    expect(speech.say('next')).toBe(true);
  });

  it('with no event for 15 s are thrown away and begun with a new object', async () => {
    const { listen, speech, host, texts } = ear();
    await listen();
    await host.run(14_900);
    expect(speech.sessions).toHaveLength(1);
    await host.run(300);
    expect(speech.sessions).toHaveLength(2);
    speech.say('next');
    expect(texts()).toEqual(['next']);
  });

  it('that never give a sign of life close the ear with a reason', async () => {
    const { listen, speech, host, recogniser } = ear({ mute: true });
    await listen();
    await host.run(60_000);
    expect(recogniser.state()).toMatchObject({ state: 'blocked', cause: 'silent', trying: false });
    expect(speech.sessions).toHaveLength(3);
  });
});

describe('one session without a sign of life now and then', () => {
  it('does not close the ear', async () => {
    const { listen, speech, host, recogniser } = ear({ mute: true });
    await listen();
    await host.run(30_100);
    speech.conditions.mute = false;
    await host.run(15_000);
    expect(recogniser.state()).toEqual({ state: 'listening' });
    speech.conditions.mute = true;
    speech.finish();
    await host.run(15_500);
    expect(recogniser.state()).toEqual({ state: 'starting' });
  });
});

describe('stopping', () => {
  it('is at once; what was being said is not told, even if it comes late', async () => {
    const { listen, speech, recogniser, texts } = ear({ lateResults: true });
    await listen();
    recogniser.stop();
    expect(recogniser.state()).toEqual({ state: 'off' });
    expect(speech.say('sixty two')).toBe(true);
    expect(texts()).toEqual([]);
  });

  it('and starting again at once waits for the end of the old session', async () => {
    const { listen, speech, recogniser, host, texts } = ear();
    await listen();
    recogniser.stop();
    recogniser.start('en');
    await host.run(50);
    expect(recogniser.state()).toEqual({ state: 'listening' });
    speech.say('next');
    expect(texts()).toEqual(['next']);
  });

  it('and starting again works when the old session never ends', async () => {
    const { listen, speech, recogniser, host } = ear();
    await listen();
    speech.conditions.endless = true;
    recogniser.stop();
    recogniser.start('en');
    speech.conditions.endless = false;
    await host.run(1100);
    expect(recogniser.state()).toEqual({ state: 'listening' });
    expect(speech.sessions).toHaveLength(2);
  });

  it('and starting again before the browser has answered begins one session, not two', async () => {
    const { recogniser, speech, host } = ear();
    recogniser.start('en');
    recogniser.stop();
    recogniser.start('en');
    await host.run(50);
    expect(speech.sessions).toHaveLength(1);
    expect(recogniser.state()).toEqual({ state: 'listening' });
  });

  it('leaves no timer behind', async () => {
    const { listen, recogniser, host } = ear();
    await listen();
    recogniser.stop();
    await host.run(2000);
    expect(host.timers).toBe(0);
  });

  it('starting twice is starting once', async () => {
    const { listen, recogniser, speech } = ear();
    await listen();
    recogniser.start('en');
    recogniser.start('en');
    expect(speech.sessions).toHaveLength(1);
  });

  it('another language begins a new session in that language', async () => {
    const { listen, recogniser, speech, host } = ear({ languages: ['de-AT', 'en-GB'] });
    await listen();
    recogniser.start('de');
    await host.run(50);
    expect(speech.sessions.map(({ tag }) => tag)).toEqual(['en-GB', 'de-AT']);
  });
});
