/** Promise: between visits the list and the case line say what the laboratory has, what came back and what is due. */
import { beforeAll, describe, expect, it } from 'vitest';
import { fakeApp, type FakeApp } from '../helpers/app.ts';

const model = (app: FakeApp) => app.runtime.model.getState();
const DAY = 86_400_000;

async function until(app: FakeApp, there: () => boolean): Promise<void> {
  for (let i = 0; i < 50 && !there(); i += 1) await app.pass(20);
  expect(there()).toBe(true);
}

async function press(app: FakeApp, ...intents: readonly string[]): Promise<void> {
  for (const intent of intents) {
    app.runtime.press(intent);
    await app.pass();
  }
}

/** Monday the 2nd of March 2026; the order of visit 1 is right, the visit signed although much is open. */
async function ordered(): Promise<FakeApp> {
  const app = await fakeApp();
  app.runtime.newCase({ code: 'X', clinician: 'KV', assistant: 'BR', demo: false });
  await until(app, () => model(app).step !== undefined);
  await press(app, 'goto:lab-order', 'answer:yes');
  return app;
}

const closing = ['goto:signoff-clinician', 'sign:KV', 'reason:not-possible'] as const;
const rowOf = (app: FakeApp) => model(app).cases[0]?.stands;
const cards = (app: FakeApp) => model(app).caseLine?.map(({ lab }) => lab?.text ?? '');

beforeAll(async () => {
  await Promise.all([import('../../src/app/visit-kit.ts'), import('../../src/domain/protocol/index.ts')]);
});

describe('between visits', () => {
  it('a day can be agreed from the moment the order is right, and it is said back', async () => {
    const app = await ordered();
    expect(model(app).labDue).toMatchObject({ what: 'custom trays', day: '2026-03-09', agreed: false });
    await press(app, 'labDue:2026-03-11');
    expect(model(app).said).toBe('work due back Wed 11 Mar');
    expect(model(app).labDue).toMatchObject({ day: '2026-03-11', agreed: true });
    await press(app, 'undo');
    expect(model(app).labDue).toMatchObject({ day: '2026-03-09', agreed: false });
  });

  it('the list and the case line say what the laboratory has and until when, also in a new page', async () => {
    const app = await ordered();
    await press(app, ...closing);
    await until(app, () => rowOf(app) !== undefined);
    expect(rowOf(app)).toEqual({ text: 'lab has: custom trays', due: '2026-03-09' });
    expect(cards(app)).toEqual(['lab has: custom trays, due Mon 9 Mar', '', '', '', '']);
    await press(app, 'labDue:2026-03-11');
    await until(app, () => rowOf(app)?.due === '2026-03-11');
    const next = await app.reload(10 * DAY);
    await until(next, () => model(next).cases.length > 0);
    expect(rowOf(next)?.due).toBe('2026-03-11');
    next.runtime.openCase(model(next).cases[0]!.id);
    await until(next, () => model(next).caseLine !== undefined);
    expect(model(next).caseLine?.[0]?.lab).toEqual({ text: 'lab has: custom trays, was due Wed 11 Mar', late: true });
  });

  it('a day that has passed is not taken, and why is said', async () => {
    const app = await ordered();
    await press(app, 'labDue:2026-03-01');
    expect(model(app).trouble).toBe('Sun 1 Mar has passed.');
    expect(model(app).labDue?.agreed).toBe(false);
  });

  it('what came back is found at the next visit, and no longer offered a day', async () => {
    const app = await ordered();
    await press(app, ...closing);
    app.runtime.openVisit({ visit: 2, clinician: 'KV', assistant: 'BR' });
    await until(app, () => model(app).summary?.visit === 2);
    expect(model(app).labDue).toBeUndefined();
    await press(app, 'goto:work-returned', 'answer:yes');
    await until(app, () => rowOf(app)?.text === 'work returned: custom trays');
    expect(rowOf(app)).toEqual({ text: 'work returned: custom trays' });
    expect(cards(app)?.[0]).toBe('work returned: custom trays');
  });

  it('a visit without an order claims nothing', async () => {
    const app = await fakeApp();
    app.runtime.newCase({ code: 'X', clinician: 'KV', assistant: 'BR', demo: false });
    await until(app, () => model(app).step !== undefined);
    await press(app, ...closing);
    expect(rowOf(app)).toBeUndefined();
    expect(model(app).labDue).toBeUndefined();
  });

  it('after the insertion the next review is due', async () => {
    const app = await ordered();
    await press(app, ...closing);
    for (const visit of [2, 3, 4]) {
      app.runtime.openVisit({ visit, clinician: 'KV', assistant: 'BR' });
      await until(app, () => model(app).summary?.visit === visit);
      await press(app, 'goto:work-returned', 'answer:yes', ...closing);
    }
    await until(app, () => rowOf(app)?.text === 'first review, 24 to 48 hours');
    expect(rowOf(app)).toEqual({ text: 'first review, 24 to 48 hours', due: '2026-03-04' });
    const review = model(app).caseLine?.find(({ visit }) => visit === 5);
    expect(review?.lab).toEqual({ text: 'first review, 24 to 48 hours: Tue 3 Mar to Wed 4 Mar', late: false });
  });
});
