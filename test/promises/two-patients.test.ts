/** Promises about several patients at once: the impression of one waits to be poured while the next sits in the chair. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Fact } from '../../src/domain/case/facts.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { createFakeTime } from '../../src/time/fake.ts';
import { demoOpen, fakeApp, type FakeApp } from '../helpers/app.ts';
import { fakeBrowser } from '../helpers/windows.ts';

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const model = (app: FakeApp) => app.runtime.model.getState();
const kinds = (app: FakeApp, id: string, kind: Fact['body']['kind']) =>
  ((app.disk.facts.get(id) ?? []) as Fact[]).filter(({ body }) => body.kind === kind).map(({ body }) => body);

beforeAll(async () => {
  await import('../../src/app/visit-kit.ts');
});

async function until(app: FakeApp, holds: () => boolean): Promise<void> {
  for (let i = 0; i < 60 && !holds(); i += 1) await app.pass();
  expect(holds()).toBe(true);
}

async function impressionOut(app: FakeApp): Promise<void> {
  app.runtime.press('goto:upper-impression');
  await app.pass();
  app.runtime.press('material:alginate-regular');
  app.runtime.press('start');
  await app.pass(100 * SECOND);
  app.runtime.press('seated');
  await app.pass(171 * SECOND);
  app.runtime.press('out');
  await app.pass();
  app.runtime.silence();
  await app.pass();
}

/** Patient one's impression is out and waits; patient two's case is open and mixes. */
async function twoPatients(options: Parameters<typeof demoOpen>[0] = {}): Promise<FakeApp> {
  const app = await demoOpen(options);
  app.runtime.armSound();
  await app.pass();
  await impressionOut(app);
  app.runtime.newCase({ code: 'TWO-02', clinician: 'KV', assistant: 'BR', demo: false });
  await until(app, () => model(app).summary?.caseCode === 'TWO-02' && model(app).clocks.length === 1);
  app.runtime.press('goto:upper-impression');
  await app.pass();
  app.runtime.press('material:alginate-fast');
  app.runtime.press('start');
  await app.pass();
  return app;
}

const named = (app: FakeApp) => model(app).clocks.map((row) => [row.case?.code ?? 'open', row.label, row.now]);

describe('two patients', { timeout: 20_000 }, () => {
  it('the clocks of both run on the screen, the other one named with its case', async () => {
    const app = await twoPatients();
    expect(named(app)).toEqual([
      ['open', 'upper impression', 'mix'],
      ['DEMO-01', 'upper impression', 'pourWithin'],
    ]);
  });

  it('both ring, and the ring of the other is named with its case, heard, said and on its own record', async () => {
    const app = await twoPatients();
    await app.pass(76 * SECOND);
    await app.pass(SECOND);
    expect(model(app).ringing.map((ring) => [ring.case?.code, ring.phase])).toEqual([[undefined, 'working']]);
    app.runtime.silence();
    await app.pass();
    const later = await app.reload(27 * MINUTE);
    later.runtime.openCase('case-2');
    await until(later, () => model(later).summary?.caseCode === 'TWO-02' && model(later).clocks.length === 2);
    later.runtime.armSound();
    await later.pass();
    expect(model(later).ringing.filter((ring) => ring.case !== undefined)).toEqual([]);
    const before = later.time.heard.length;
    await later.pass(2 * MINUTE);
    await until(later, () => model(later).ringing.some((ring) => ring.case?.code === 'DEMO-01'));
    expect(later.time.heard.slice(before).map(({ id }) => id)).toContain('case-1|upper-primary/1:pourWithin');
    await until(later, () => later.speech.spoken.some(({ text }) => text.startsWith('DEMO-01, upper impression')));
    expect(kinds(later, 'case-1', 'rang')).toContainEqual(
      expect.objectContaining({ phase: 'pourWithin', late: false }),
    );
    expect(kinds(later, 'case-2', 'rang').map((body) => 'phase' in body && body.phase)).not.toContain('pourWithin');
  });

  it('a ring whose case cannot be read at that moment is heard and said all the same, and written once it can be', async () => {
    const app = await (await twoPatients()).reload(27 * MINUTE);
    app.runtime.openCase('case-2');
    await until(app, () => model(app).caseId === 'case-2' && model(app).clocks.length === 2);
    app.runtime.armSound();
    await app.pass();
    const whole = app.disk.facts.get('case-1') ?? [];
    // A hole in the middle, as a disk that answers badly for a while.
    app.disk.facts.set('case-1', [...whole.slice(0, 5), ...whole.slice(6)]);
    await app.pass(4 * MINUTE);
    await until(app, () => app.speech.spoken.some(({ text }) => text.startsWith('DEMO-01, upper impression')));
    expect(model(app).ringing.some((ring) => ring.case?.code === 'DEMO-01')).toBe(true);
    expect(kinds(app, 'case-1', 'rang').filter((body) => 'phase' in body && body.phase === 'pourWithin')).toEqual([]);
    app.disk.facts.set('case-1', whole);
    await app.pass(3 * SECOND);
    await until(app, () => kinds(app, 'case-1', 'rang').some((body) => 'phase' in body && body.phase === 'pourWithin'));
    expect(kinds(app, 'case-1', 'rang')).toContainEqual(expect.objectContaining({ phase: 'pourWithin', late: false }));
    const told = app.speech.spoken.filter(({ text }) => text.startsWith('DEMO-01, upper impression'));
    expect(told).toHaveLength(1);
  });

  it('one touch acknowledges all of them, each on its own record', async () => {
    const app = await (await twoPatients()).reload(31 * MINUTE);
    app.runtime.openCase('case-2');
    await until(app, () => model(app).ringing.length === 2 && model(app).caseId === 'case-2');
    app.runtime.silence();
    await until(app, () => model(app).ringing.length === 0);
    expect(kinds(app, 'case-1', 'alarmSeen')).toContainEqual(expect.objectContaining({ phase: 'pourWithin' }));
    expect(kinds(app, 'case-2', 'alarmSeen')).toContainEqual(expect.objectContaining({ phase: 'working' }));
    expect(model(app).trouble).toBe('');
  });

  it('how long tells of both, the other one by the code of its case', async () => {
    const app = await twoPatients();
    app.runtime.setSpeechMayLeave(true);
    app.runtime.setEar(true);
    for (let i = 0; i < 20 && model(app).ear.state !== 'listening'; i += 1) await app.pass(100);
    expect(app.speech.say('how long')).toBe(true);
    // Read aloud sentence by sentence.
    for (let i = 0; i < 20; i += 1) await app.pass(500);
    const told = app.speech.spoken.map(({ text }) => text).slice(-2);
    expect(told[0]).toMatch(/^upper impression: mixing, .* left, load the tray in .* seconds\.$/);
    expect(told[1]).toMatch(/^DEMO-01, upper impression: pour within, .* left\.?$/);
  });

  it('going back to the first and saying that it is poured ends its clock; the second is followed then', async () => {
    const app = await twoPatients();
    app.runtime.openCase('case-1');
    await until(app, () => model(app).summary?.caseCode === 'DEMO-01' && model(app).clocks.length === 2);
    expect(named(app)).toEqual([
      ['open', 'upper impression', 'pourWithin'],
      ['TWO-02', 'upper impression', 'mix'],
    ]);
    app.runtime.press('taken:upper-primary');
    await until(app, () => model(app).clocks.length === 1);
    expect(named(app)[0]).toMatchObject(['TWO-02', 'upper impression', expect.any(String)]);
  });

  it('after a reload both are followed from the list of cases, before anybody opens one', async () => {
    const app = await twoPatients();
    const next = await app.reload(2 * SECOND);
    await until(next, () => model(next).clocks.length === 2);
    expect(model(next).place).toBe('cases');
    expect(new Set(model(next).clocks.map((row) => row.case?.code))).toEqual(new Set(['DEMO-01', 'TWO-02']));
    expect(model(next).step).toBeUndefined();
    const late = await next.reload(31 * MINUTE);
    await until(late, () => model(late).ringing.length === 2);
    expect(model(late).place).toBe('cases');
    late.runtime.silence();
    await until(late, () => model(late).ringing.length === 0);
  });

  it('a closed case is followed as well', async () => {
    const app = await twoPatients();
    app.runtime.openCase('case-1');
    await until(app, () => model(app).summary?.caseCode === 'DEMO-01');
    for (const intent of [`goto:${visit1.steps.at(-1)!.id}`, 'sign:KV', 'reason:not-possible'])
      app.runtime.press(intent);
    await app.pass();
    const last = model(app).step?.mode;
    expect(last).toBe('closed');
    app.runtime.openCase('case-2');
    await until(app, () => model(app).summary?.caseCode === 'TWO-02' && model(app).clocks.length === 2);
    expect(model(app).cases.find((row) => row.id === 'case-1')?.closed).toBe(true);
  });
});

describe('what rings', () => {
  it('is silent once it is done, without a word of having been seen', async () => {
    const app = await demoOpen();
    app.runtime.armSound();
    await app.pass();
    app.runtime.press('goto:upper-impression');
    await app.pass();
    app.runtime.press('material:alginate-regular');
    app.runtime.press('start');
    await app.pass(61 * SECOND);
    expect(model(app).ringing.map((ring) => ring.phase)).toEqual(['mix']);
    expect(app.time.heard.at(-1)?.what).not.toBe('silence');
    app.runtime.press('seated');
    await app.pass();
    expect(model(app).ringing).toEqual([]);
    expect(app.time.heard.some(({ what }) => what === 'silence')).toBe(true);
  });
});

describe('two windows with two patients', { timeout: 20_000 }, () => {
  it('the ring of a case that another window writes is written once, by that window', async () => {
    const browser = fakeBrowser();
    const before = await demoOpen({ windows: browser.open() });
    await impressionOut(before);
    const one = await before.reload(29 * MINUTE);
    one.runtime.openCase('case-1');
    await until(one, () => model(one).caseId === 'case-1');
    const time = createFakeTime(one.time.now());
    const two = await fakeApp({ windows: browser.open(), disk: one.disk, time });
    await until(two, () => model(two).clocks.length === 1);
    for (const app of [one, two]) await app.pass(MINUTE + SECOND);
    await until(two, () => model(two).ringing.length === 1);
    await one.pass();
    const rings = kinds(one, 'case-1', 'rang').filter((body) => 'phase' in body && body.phase === 'pourWithin');
    expect(rings).toHaveLength(1);
    two.runtime.silence();
    await two.pass();
    expect(model(two).trouble).toMatch(/DEMO-01 is being written in another window/);
  });
});
