/** Promises about the ear: what it does is always to be seen, and without it the visit goes on. */
import { beforeAll, describe, expect, it } from 'vitest';
import { demoOpen, type FakeApp } from '../helpers/app.ts';

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
