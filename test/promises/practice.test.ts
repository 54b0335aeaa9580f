/** Promises about the practice's own things: what it sets holds from the next visit on, survives a reload, and travels. */
import { beforeAll, describe, expect, it } from 'vitest';
import { fakeApp, type FakeApp } from '../helpers/app.ts';

const model = (app: FakeApp) => app.runtime.model.getState();

async function until(app: FakeApp, there: () => boolean): Promise<void> {
  for (let i = 0; i < 50 && !there(); i += 1) await app.pass(20);
  expect(there()).toBe(true);
}

async function atPractice(app: FakeApp): Promise<void> {
  app.runtime.go('practice');
  await until(app, () => model(app).own !== undefined);
}

beforeAll(async () => {
  await Promise.all([import('../../src/app/visit-kit.ts'), import('../../src/app/desk.ts')]);
  await import('../../src/domain/protocol/index.ts');
});

describe('the practice', () => {
  it('an edited visit is followed by the next case, in this page and after a reload', async () => {
    const app = await fakeApp();
    await atPractice(app);
    app.runtime.askOwn({ ask: 'edit', visit: 1 });
    await until(app, () => model(app).own?.protocol !== undefined);
    expect(model(app).place).toBe('protocol');
    const [first, second] = model(app).own!.protocol!.draft.steps;
    app.runtime.askOwn({ ask: 'move', step: second!.id, by: -1 });
    await until(app, () => model(app).own?.protocol?.difference.length === 1);
    app.runtime.askOwn({ ask: 'saveProtocol' });
    await until(app, () => model(app).said.startsWith('Saved as a new version'));
    const next = await app.reload(1000);
    next.runtime.newCase({ code: 'X', clinician: 'KV', assistant: 'BR', demo: false });
    await until(next, () => model(next).step !== undefined);
    expect(model(next).step?.step.id).toBe(second!.id);
    expect(first!.id).not.toBe(second!.id);
    expect(model(next).summary?.protocol).toBe('visit-1-own@2');
  });

  it('a file that cannot be used is refused with place and reason, and nothing is changed', async () => {
    const app = await fakeApp();
    await atPractice(app);
    const before = model(app).own?.practice;
    app.runtime.askOwn({ ask: 'importPractice', text: '{"kind":"rimwise practice","format":1,"content":{}}' });
    await until(app, () => model(app).trouble !== '');
    expect(model(app).trouble).toBe('The file was not taken: restSpaceTarget: This is missing.');
    expect(model(app).own?.practice).toEqual(before);
    expect(app.settings.has('practice')).toBe(false);
  });

  it('its settings leave as a file and come in on another device', async () => {
    const app = await fakeApp();
    await atPractice(app);
    const practice = { ...model(app).own!.practice, restSpaceTarget: 250 };
    app.runtime.askOwn({ ask: 'savePractice', practice });
    await until(app, () => model(app).own?.practice.restSpaceTarget === 250);
    app.runtime.askOwn({ ask: 'exportPractice' });
    await until(app, () => app.files.length === 1);
    const other = await fakeApp();
    await atPractice(other);
    other.runtime.askOwn({ ask: 'importPractice', text: app.files[0]!.text });
    await until(other, () => model(other).own?.practice.restSpaceTarget === 250);
    other.runtime.newCase({ code: 'X', clinician: 'KV', assistant: 'BR', demo: false });
    await until(other, () => model(other).summary !== undefined);
    expect(model(other).summary?.vertical.targetSpaceMm).toBe(2.5);
  });
});
