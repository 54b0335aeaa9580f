/** Promises about the ear: what it does is always to be seen, and without it the visit goes on. */
import { beforeAll, describe, expect, it } from 'vitest';
import { demoOpen, fakeApp, type FakeApp } from '../helpers/app.ts';

const model = (app: FakeApp) => app.runtime.model.getState();

beforeAll(async () => {
  await import('../../src/app/visit-kit.ts');
});

async function listening(app: FakeApp): Promise<void> {
  app.runtime.setEar(true);
  for (let i = 0; i < 20 && model(app).ear.state !== 'listening'; i += 1) await app.pass(100);
}

describe('the ear', () => {
  it('asks for consent before speech may leave the device, and can be told no again', async () => {
    const app = await demoOpen();
    app.runtime.setEar(true);
    for (let i = 0; i < 20 && model(app).ear.state !== 'blocked'; i += 1) await app.pass(100);
    expect(model(app).ear).toMatchObject({ state: 'blocked', consent: true });
    expect(app.speech.sessions).toHaveLength(0);
    app.runtime.setSpeechMayLeave(true);
    for (let i = 0; i < 20 && model(app).ear.state !== 'listening'; i += 1) await app.pass(100);
    expect(model(app).ear.state).toBe('listening');
    app.runtime.setSpeechMayLeave(false);
    await app.pass(100);
    expect(model(app).ear.state).toBe('off');
    expect(model(app).speechMayLeave).toBe(false);
  });

  it('hears a word and does what the same touch would do', async () => {
    const app = await demoOpen();
    app.runtime.setSpeechMayLeave(true);
    await listening(app);
    expect(app.speech.say('yes')).toBe(true);
    await app.pass(50);
    expect(model(app).step?.step.id).toBe('sign-in-consent');
  });

  it('shows what was not understood, and talk not meant for it moves nothing', async () => {
    const app = await demoOpen();
    app.runtime.setSpeechMayLeave(true);
    await listening(app);
    app.speech.say('seated');
    await app.pass(50);
    expect(model(app).step?.step.id).toBe('sign-in-patient');
    expect(model(app).trouble).toContain('seated');
    app.speech.say('are you comfortable in that chair');
    await app.pass(50);
    expect(model(app).step?.step.id).toBe('sign-in-patient');
  });

  it('with the microphone denied says why, and the keypad goes on', async () => {
    const app = await demoOpen({ speech: { microphone: 'denied' } });
    app.runtime.setSpeechMayLeave(true);
    for (let i = 0; i < 20 && model(app).ear.state !== 'blocked'; i += 1) await app.pass(100);
    expect(model(app).ear.state).toBe('blocked');
    expect(JSON.stringify(model(app).ear)).toMatch(/microphone/i);
    app.runtime.press('answer:yes');
    await app.pass();
    expect(model(app).step?.step.id).toBe('sign-in-consent');
  });

  it('is shut while the app itself speaks', async () => {
    const app = await demoOpen();
    app.runtime.setSpeechMayLeave(true);
    await listening(app);
    app.runtime.press('goto:upper-width');
    await app.pass(50);
    app.speech.say('fifty-eight point five');
    await app.pass(50);
    expect(model(app).step?.pending?.digits).toBe('58.5');
    expect(model(app).ear.state).toBe('speaking');
    expect(app.speech.spoken.at(-1)?.text).toContain('fifty-eight point five');
    expect(app.speech.listening).toBe(false);
    for (let i = 0; i < 100 && model(app).ear.state !== 'listening'; i += 1) await app.pass(200);
    app.speech.say('yes');
    await app.pass(50);
    expect(model(app).summary?.readings.at(-1)?.value).toBe(5850);
  });
});

/** Waits, in steps, until the ear shows this. */
async function until(app: FakeApp, state: string): Promise<void> {
  for (let i = 0; i < 100 && model(app).ear.state !== state; i += 1) await app.pass(100);
  expect(model(app).ear.state).toBe(state);
}

/** For what is fetched when it is first wanted: that takes time of its own, beside the clock's. */
async function eventually(app: FakeApp, done: () => boolean): Promise<void> {
  for (let i = 0; i < 300 && !done(); i += 1) {
    await app.pass(20);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  expect(done()).toBe(true);
}

/** With consent and these preferences, the ear on. */
async function wantedOpen(preferences: Parameters<FakeApp['runtime']['setPreferences']>[0] = {}): Promise<FakeApp> {
  const app = await demoOpen();
  app.runtime.setPreferences({ mayLeaveDevice: true, ...preferences });
  await app.pass();
  app.runtime.setEar(true);
  await app.pass(100);
  return app;
}

describe('consent', () => {
  it('refused: nothing is begun, and the question comes only when the ear is wanted again', async () => {
    const app = await demoOpen();
    app.runtime.setEar(true);
    await until(app, 'blocked');
    app.runtime.setSpeechMayLeave(false);
    app.runtime.press('answer:yes');
    await app.pass(30_000);
    expect(model(app).ear).toMatchObject({ state: 'blocked', consent: true });
    expect(app.speech.sessions).toEqual([]);
    expect(model(app).step?.step.id).toBe('sign-in-consent');
  });

  it('given in the settings opens no ear by itself', async () => {
    const app = await demoOpen();
    app.runtime.go('settings');
    app.runtime.setPreferences({ mayLeaveDevice: true });
    app.runtime.go('visit');
    await app.pass(5000);
    expect(model(app).ear.state).toBe('off');
    expect(app.speech.sessions).toEqual([]);
  });

  it('outlasts the page, and so does taking it back', async () => {
    const app = await demoOpen();
    app.runtime.setSpeechMayLeave(true);
    await app.pass();
    const again = await app.reload(1000);
    expect(again.runtime.mayLeaveDevice()).toBe(true);
    again.runtime.setSpeechMayLeave(false);
    await again.pass();
    expect((await again.reload(1000)).runtime.mayLeaveDevice()).toBe(false);
  });

  it('is not wanted where the words are on the device, which can be fetched', async () => {
    const app = await demoOpen({ speech: { install: 'works' } });
    app.runtime.setEar(true);
    await until(app, 'blocked');
    app.runtime.go('settings');
    await app.pass();
    expect(model(app).preferences?.onDevice).toBe('fetchable');
    app.runtime.fetchOnDevice();
    expect(model(app).preferences?.onDevice).toBe('fetching');
    await app.pass();
    expect(model(app).preferences?.onDevice).toBe('ready');
    app.runtime.go('visit');
    await until(app, 'listening');
    expect(app.speech.sessions).toMatchObject([{ onDevice: true }]);
    expect(model(app).speechMayLeave).toBe(false);
  });

  it('a fetch that comes to nothing is said to have failed', async () => {
    const app = await demoOpen({ speech: { install: 'throws' } });
    app.runtime.go('settings');
    app.runtime.fetchOnDevice();
    await app.pass();
    expect(model(app).preferences?.onDevice).toBe('failed');
  });
});

describe('the microphone', () => {
  it('denied and allowed later: one touch and the ear is open', async () => {
    const app = await demoOpen({ speech: { microphone: 'denied' } });
    app.runtime.setSpeechMayLeave(true);
    await until(app, 'blocked');
    app.speech.conditions.microphone = 'granted';
    app.runtime.setEar(true);
    await until(app, 'listening');
    expect(app.speech.say('yes')).toBe(true);
    await app.pass(50);
    expect(model(app).step?.step.id).toBe('sign-in-consent');
  });

  it('is closed on every screen but the visit’s, and open again on return', async () => {
    const app = await wantedOpen();
    await until(app, 'listening');
    for (const place of ['summary', 'settings', 'record', 'cases'] as const) {
      app.runtime.go(place);
      await app.pass(1000);
      expect([place, app.speech.listening]).toEqual([place, false]);
    }
    app.runtime.go('visit');
    await until(app, 'listening');
  });
});

describe('talk that must not move the visit', () => {
  it('ear only at readings: shut and said to be so elsewhere, open while a number is asked for or waits', async () => {
    const app = await wantedOpen({ earMode: 'readings' });
    expect(model(app).ear).toMatchObject({ state: 'shut', why: expect.stringContaining('number') });
    expect(app.speech.say('yes')).toBe(false);
    app.runtime.press('goto:upper-width');
    await until(app, 'listening');
    app.speech.say('fifty-eight point five');
    await app.pass(50);
    expect(model(app).step?.pending?.digits).toBe('58.5');
    await until(app, 'listening');
    app.runtime.press('yes');
    app.runtime.press('goto:sign-in-patient');
    await app.pass(5000);
    expect(model(app).ear.state).toBe('shut');
    expect(app.speech.listening).toBe(false);
  });

  it('push-to-talk: open only while held, and what was being said at the release still counts', async () => {
    const app = await wantedOpen({ earMode: 'push' });
    expect(model(app).ear).toMatchObject({ state: 'shut', why: expect.stringContaining('F8') });
    expect(app.speech.say('yes')).toBe(false);
    app.runtime.talk(true);
    await until(app, 'listening');
    app.speech.murmur('yes');
    app.runtime.talk(false);
    await app.pass(100);
    expect(model(app).step?.step.id).toBe('sign-in-consent');
    expect(app.speech.listening).toBe(false);
    expect(model(app).ear.state).toBe('shut');
  });

  it('with an address word only what begins with it is a command; numbers at a reading need none', async () => {
    const app = await wantedOpen({ addressWord: 'Rim' });
    await eventually(app, () => model(app).preferences?.addressWord === 'rim');
    await until(app, 'listening');
    app.speech.say('yes');
    await app.pass(50);
    expect(model(app).step?.step.id).toBe('sign-in-patient');
    app.speech.say('rim yes');
    await app.pass(50);
    expect(model(app).step?.step.id).toBe('sign-in-consent');
    app.runtime.press('goto:upper-width');
    await until(app, 'listening');
    app.speech.say('fifty-eight point five');
    await app.pass(50);
    await until(app, 'listening');
    app.speech.say('yes');
    await app.pass(50);
    expect(model(app).summary?.readings.at(-1)?.value).toBe(5850);
  });

  it('a word that means something already is refused as an address, and says why', async () => {
    const app = await demoOpen();
    app.runtime.setPreferences({ addressWord: 'next' });
    await eventually(app, () => model(app).trouble !== '');
    expect(model(app).preferences?.addressWord).toBe('');
    expect(model(app).trouble).toContain('next');
  });
});

describe('reading aloud', () => {
  it('as loud and as fast as was set, also after the page was opened again', async () => {
    const app = await demoOpen();
    app.runtime.setPreferences({ volume: 0.4, rate: 1.2 });
    await app.pass();
    const again = await app.reload(1000);
    again.runtime.trySpeech();
    const sample = () => again.speech.spoken.find(({ text }) => text !== '');
    await eventually(again, () => sample() !== undefined);
    expect(sample()).toMatchObject({ text: 'sixty-two point five', volume: 0.4, rate: 1.2 });
  });

  it('silent: nothing is spoken, and a number keeps itself after the pause that was set', async () => {
    const app = await wantedOpen({ speech: false, keepAfterMs: 2000 });
    app.runtime.press('goto:upper-width');
    await until(app, 'listening');
    app.speech.say('fifty-eight point five');
    await app.pass(1500);
    expect(model(app).step?.pending?.digits).toBe('58.5');
    await app.pass(2000);
    expect(model(app).step?.pending).toBeUndefined();
    expect(model(app).summary?.readings.at(-1)?.value).toBe(5850);
    expect(app.speech.spoken.filter(({ text }) => text !== '')).toEqual([]);
  });
});

describe('the language', () => {
  async function germanVisit(): Promise<FakeApp> {
    const app = await fakeApp();
    app.runtime.setPreferences({ language: 'de', mayLeaveDevice: true });
    await eventually(app, () => model(app).preferences?.language === 'de');
    app.runtime.newCase({ code: 'DEMO-02', clinician: 'KV', assistant: 'BR', demo: true });
    await eventually(app, () => model(app).step !== undefined);
    return app;
  }

  it('chosen is heard, understood and read back', async () => {
    const app = await germanVisit();
    app.runtime.setEar(true);
    await until(app, 'listening');
    expect(app.speech.sessions.at(-1)?.tag).toBe('de-DE');
    app.speech.say('ja');
    await app.pass(50);
    expect(model(app).step?.step.id).toBe('sign-in-consent');
    app.runtime.press('goto:upper-width');
    await until(app, 'listening');
    app.speech.say('achtundfünfzig Komma fünf');
    await app.pass(50);
    expect(model(app).step?.pending?.digits).toBe('58.5');
    expect(app.speech.spoken.at(-1)).toMatchObject({ text: 'achtundfünfzig Komma fünf', lang: 'de-DE' });
    await until(app, 'listening');
    app.speech.say('ja');
    await app.pass(50);
    expect(model(app).summary?.readings.at(-1)?.value).toBe(5850);
    const kept = app.speech.spoken.at(-1);
    expect(kept?.lang).toBe('de-DE');
    expect(kept?.text).toMatch(/achtundfünfzig Komma fünf$/);
    expect(kept?.text).not.toMatch(/ridge|width/i);
  });

  it('of a visit stays what it was opened in', async () => {
    const app = await germanVisit();
    app.runtime.setPreferences({ language: 'en' });
    await eventually(app, () => model(app).preferences?.language === 'en');
    expect(model(app).preferences).toMatchObject({ language: 'en', visitLanguage: 'de' });
    app.runtime.setEar(true);
    await until(app, 'listening');
    expect(app.speech.sessions.at(-1)?.tag).toBe('de-DE');
    const again = await app.reload(1000);
    again.runtime.openCase(model(again).cases[0]?.id ?? '');
    await eventually(again, () => model(again).step !== undefined);
    again.runtime.setEar(true);
    await until(again, 'listening');
    expect(again.speech.sessions.at(-1)?.tag).toBe('de-DE');
    again.speech.say('ja');
    await again.pass(50);
    expect(model(again).step?.step.id).toBe('sign-in-consent');
  });
});
