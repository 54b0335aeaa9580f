/** Promises about a case of several visits: each has its own answers and marks, and cautions stay. */
import { beforeAll, describe, expect, it } from 'vitest';
import { demoOpen, type FakeApp } from '../helpers/app.ts';

const model = (app: FakeApp) => app.runtime.model.getState();

beforeAll(async () => {
  await import('../../src/app/visit-kit.ts');
  await import('../../src/domain/protocol/index.ts');
});

async function press(app: FakeApp, ...intents: string[]): Promise<void> {
  for (const intent of intents) {
    app.runtime.press(intent);
    await app.pass(100);
  }
}

async function closeVisit(app: FakeApp): Promise<void> {
  await press(app, 'goto:signoff-clinician', 'sign:KV', 'reason:not-possible');
  for (let i = 0; i < 20 && model(app).step?.mode !== 'closed'; i += 1) await app.pass(50);
}

async function openVisit(app: FakeApp, visit: number): Promise<void> {
  app.runtime.openVisit({ visit, clinician: 'LM', assistant: 'BR' });
  const there = () => model(app).summary?.visit === visit && model(app).step?.mode !== 'closed';
  for (let i = 0; i < 50 && !there(); i += 1) await app.pass(50);
}

describe('a case of several visits', () => {
  it('opens the next visit only when the one before is closed', async () => {
    const app = await demoOpen();
    app.runtime.openVisit({ visit: 2, clinician: 'LM', assistant: 'BR' });
    await app.pass(100);
    expect(model(app).trouble).toContain('close the one before it first');
    await closeVisit(app);
    expect(model(app).caseLine?.map((v) => v.state)).toEqual(['done', 'next', 'later', 'later', 'later']);
    await openVisit(app, 2);
    expect(model(app)).toMatchObject({ place: 'visit', summary: { visit: 2, clinician: 'LM' } });
    expect(model(app).caseLine?.map((v) => v.state)).toEqual(['done', 'now', 'later', 'later', 'later']);
  });

  it('keeps the cautions of the first visit on screen, and begins without its answers', async () => {
    const app = await demoOpen();
    await press(app, 'goto:sign-in-allergy', 'answer:latex');
    const caution = model(app).cautions[0];
    expect(caution).toMatch(/latex/i);
    await closeVisit(app);
    await openVisit(app, 2);
    expect(model(app).cautions).toContain(caution);
    expect(model(app).summary?.answers).toEqual([]);
    expect(model(app).summary?.signed).toEqual([]);
  });

  it('compares heights only within the marks of one visit', async () => {
    const app = await demoOpen();
    await press(app, 'goto:marks', 'answer:made', 'goto:rest-height');
    for (const mm of ['70.5', '71', '70']) {
      app.runtime.type(mm);
      await app.pass(50);
      await press(app, 'yes');
    }
    await closeVisit(app);
    await openVisit(app, 2);
    await press(app, 'goto:marks', 'answer:made', 'goto:closed-height');
    expect(model(app).step?.step.id).toBe('closed-height');
    for (const mm of ['64', '64']) {
      app.runtime.type(mm);
      await app.pass(50);
      await press(app, 'yes');
    }
    const summary = model(app).summary!;
    expect(summary.sets.map((set) => set.markSet)).toEqual(['visit 2, marks 1']);
    expect(summary.vertical.restSpaceMm).toBeUndefined();
    expect(summary.earlier.map((e) => [e.visit, e.vertical.rest?.n])).toEqual([['visit 1', 3]]);
  });

  it('undo never reaches back into a closed visit, nor does a correction', async () => {
    const app = await demoOpen();
    await press(app, 'answer:yes');
    await closeVisit(app);
    await openVisit(app, 2);
    await press(app, 'undo');
    expect(model(app).trouble).toBe('There is nothing to undo.');
    await press(app, 'correct:3');
    expect(model(app).trouble).toContain('earlier visit');
  });

  it.each([
    ['the patient was not the right one', 1, ['goto:sign-in-patient', 'answer:no', 'reason:not-possible']],
    ['stopped and referred at the mouth check', 1, ['goto:finding', 'answer:yes', 'goto:finding-next', 'answer:stop']],
    ['consent was not given', 2, ['goto:sign-in-consent', 'answer:no', 'reason:not-possible']],
    ['the work was not here', 2, ['goto:work-returned', 'answer:no', 'reason:not-possible']],
    ['the bite was refused at the try-in', 3, ['goto:bite-agrees', 'answer:no', 'reason:not-possible']],
    ['no consent to finish', 3, ['goto:finish-consent', 'answer:no', 'reason:not-possible']],
  ])('the same visit comes again where %s, and the next one after that', async (_why, visit, intents) => {
    const app = await demoOpen();
    for (let before = 2; before <= visit; before += 1) {
      await closeVisit(app);
      await openVisit(app, before);
    }
    await press(app, ...intents);
    await closeVisit(app);
    expect(model(app).caseLine?.find((one) => one.state === 'next')?.name).toBe(`visit ${visit}, time 2`);
    await openVisit(app, visit);
    expect(model(app).summary?.visitName).toBe(`visit ${visit}, time 2`);
    await closeVisit(app);
    expect(model(app).caseLine?.find((one) => one.state === 'next')?.name).toBe(`visit ${visit + 1}`);
  });

  it('work that was not here is no caution any more once it is; one about the patient stays', async () => {
    const app = await demoOpen();
    await press(app, 'goto:sign-in-allergy', 'answer:latex');
    await closeVisit(app);
    await openVisit(app, 2);
    await press(app, 'goto:work-returned', 'answer:no', 'reason:not-possible');
    expect(model(app).cautions.join(' ')).toContain('The lab work was not here');
    await closeVisit(app);
    await openVisit(app, 2);
    expect(model(app).cautions.join(' ')).toContain('The lab work was not here');
    await press(app, 'goto:work-returned', 'answer:yes');
    expect(model(app).cautions.join(' ')).not.toContain('The lab work was not here');
    expect(model(app).cautions.join(' ')).toMatch(/latex/i);
  });

  it('the review can be opened as often as needed', async () => {
    const app = await demoOpen();
    for (const visit of [2, 3, 4, 5, 5]) {
      await closeVisit(app);
      await openVisit(app, visit);
    }
    expect(model(app).summary?.visitName).toBe('visit 5, time 2');
    const next = await app.reload(1000);
    next.runtime.openCase('case-1');
    for (let i = 0; i < 30 && model(next).summary === undefined; i += 1) await next.pass(50);
    expect(model(next).summary?.visitName).toBe('visit 5, time 2');
  });
});
