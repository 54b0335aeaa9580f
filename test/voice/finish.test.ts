import { describe, expect, it } from 'vitest';
import { ear, earAndVoice } from './set-up.ts';

describe('released', () => {
  it('the ear takes no more sound, but what was being said is still told', async () => {
    const { voice, host, speech, texts } = earAndVoice();
    voice.listen(true);
    await host.run(50);
    speech.murmur('sixty two');
    voice.finish();
    expect(voice.ear()).toEqual({ state: 'finishing' });
    await host.run(50);
    expect(texts).toEqual(['sixty two']);
    expect(voice.ear()).toEqual({ state: 'off' });
    await host.run(5000);
    expect([speech.listening, speech.sessions.length]).toEqual([false, 1]);
  });

  it('with nothing said it is simply off', async () => {
    const { voice, host, texts } = earAndVoice();
    voice.listen(true);
    await host.run(50);
    voice.finish();
    await host.run(50);
    expect([texts, voice.ear()]).toEqual([[], { state: 'off' }]);
  });

  it('before it listened at all it is off at once', async () => {
    const { voice, host, speech } = earAndVoice();
    voice.listen(true);
    voice.finish();
    expect(voice.ear()).toEqual({ state: 'off' });
    await host.run(5000);
    expect(speech.listening).toBe(false);
  });

  it('a recogniser that never says that it is over is waited for three seconds', async () => {
    const { listen, host, recogniser, speech } = ear({ endless: true });
    await listen();
    recogniser.finish();
    await host.run(2900);
    expect(recogniser.state()).toEqual({ state: 'listening' });
    await host.run(200);
    expect(recogniser.state()).toEqual({ state: 'off' });
    expect(speech.sessions).toHaveLength(1);
    expect(host.timers).toBe(0);
  });

  it('wanted again meanwhile: the old session ends, a new one begins', async () => {
    const { voice, host, speech } = earAndVoice();
    voice.listen(true);
    await host.run(50);
    voice.finish();
    voice.listen(true);
    await host.run(50);
    expect(voice.ear()).toEqual({ state: 'listening' });
    expect(speech.sessions).toHaveLength(2);
  });

  it('while the app begins to speak: its own words are not taken', async () => {
    const { voice, host, speech, texts } = earAndVoice({ echo: true, lateResults: true });
    voice.listen(true);
    await host.run(50);
    speech.murmur('sixty two');
    voice.finish();
    void voice.say('sixty-two', 'en');
    await host.run(5000);
    expect(texts).toEqual([]);
    expect(speech.listening).toBe(false);
    expect(voice.ear()).toEqual({ state: 'off' });
  });
});
