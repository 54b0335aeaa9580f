/** Promise: a number that waited for its yes when the page went away is not kept, and the person is told so. */
import { beforeAll, describe, expect, it } from 'vitest';
import { demoOpen, type FakeApp } from '../helpers/app.ts';

const model = (app: FakeApp) => app.runtime.model.getState();
const DAY = 86_400_000;

async function waits(): Promise<FakeApp> {
  const app = await demoOpen();
  app.runtime.press('goto:upper-width');
  await app.pass();
  app.runtime.type('62.5');
  await app.pass();
  expect(model(app).step?.mode).toBe('confirm');
  return app;
}

async function again(app: FakeApp, ms = 1000): Promise<FakeApp> {
  const next = await app.reload(ms);
  await next.pass();
  next.runtime.openCase(model(next).cases[0]!.id);
  for (let i = 0; i < 50 && model(next).step === undefined; i += 1) await next.pass();
  return next;
}

const told = (app: FakeApp) => `${model(app).said} ${model(app).trouble}`;

beforeAll(async () => {
  await Promise.all([import('../../src/app/visit-kit.ts'), import('../../src/domain/protocol/index.ts')]);
});

describe('after a reload', () => {
  it('the number that waited is named, and what to do', async () => {
    const app = await again(await waits());
    expect(model(app).step?.mode).toBe('reading');
    expect(told(app)).toContain('Not kept: upper ridge width 62.5 mm, which waited for its yes.');
    expect(told(app)).toContain('Measure again, or say it again.');
  });

  it('also a day later, after another reload, and after an alarm has rung meanwhile', async () => {
    const app = await again(await again(await waits(), DAY));
    expect(told(app)).toContain('Not kept: upper ridge width 62.5 mm');
  });

  it.each([['yes'], ['no'], ['next']])('nothing is said once it was answered with “%s”', async (answer) => {
    const app = await waits();
    app.runtime.press(answer);
    await app.pass();
    const next = await again(app);
    expect(told(next)).not.toContain('Not kept');
  });

  it('nothing is said any more once the visit has gone on without it', async () => {
    const app = await again(await waits());
    app.runtime.press('back');
    await app.pass();
    expect(told(await again(app))).not.toContain('Not kept');
  });

  it('nothing is said in another case', async () => {
    const app = await waits();
    app.runtime.newCase({ code: 'X-2', clinician: 'KV', assistant: 'BR', demo: false });
    await app.pass(100);
    const next = await app.reload(1000);
    await next.pass();
    next.runtime.openCase(model(next).cases.find((row) => row.code === 'X-2')!.id);
    for (let i = 0; i < 50 && model(next).step === undefined; i += 1) await next.pass();
    expect(model(next).summary?.caseCode).toBe('X-2');
    expect(told(next)).not.toContain('Not kept');
  });
});
