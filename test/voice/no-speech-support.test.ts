import { describe, expect, it } from 'vitest';
import { FakeHost } from '../../src/time/fake-host.ts';
import { createBrowserVoice } from '../../src/voice/real.ts';

const navigator = { userAgent: 'a browser without speech' };

describe('a browser that can neither listen nor speak', () => {
  const voice = () => createBrowserVoice({ navigator }, { mayLeaveDevice: () => true, host: new FakeHost(0) });

  it('says so when asked to listen, and the rest goes on', () => {
    const ours = voice();
    expect(ours.ear()).toEqual({ state: 'off' });
    ours.listen(true);
    const why = expect.stringContaining('keypad');
    expect(ours.ear()).toEqual({ state: 'blocked', cause: 'absent', why, trying: false });
    ours.listen(false);
    expect(ours.ear()).toEqual({ state: 'off' });
  });

  it('cannot speak, and nobody waits for it', async () => {
    const ours = voice();
    expect(ours.canSpeak()).toBe(false);
    await ours.say('sixty-two', 'en');
    expect(ours.ear()).toEqual({ state: 'off' });
  });

  it('has nothing on the device and nothing to fetch', async () => {
    expect(await voice().onDevice('en')).toBe('unavailable');
    expect(await voice().fetchOnDevice('en')).toBe('unavailable');
  });

  it('may be asked for anything without throwing', async () => {
    const ours = voice();
    ours.unlock();
    ours.setPhrases(['next']);
    ours.finish();
    ours.askAgain();
    ours.setLanguage('de');
    ours.setSpeaker({ volume: 0.5 });
    ours.stop();
    expect(ours.ear()).toEqual({ state: 'off' });
  });
});
