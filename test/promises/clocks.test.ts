/** Promises about clocks: they are facts, and nothing that happens to the page changes them. */
import { beforeAll, describe, expect, it } from 'vitest';
import { atRestHeight, bench } from '../helpers/visit.ts';
import { demoOpen, type FakeApp } from '../helpers/app.ts';

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const model = (app: FakeApp) => app.runtime.model.getState();

beforeAll(async () => {
  await import('../../src/app/visit-kit.ts');
});

function atDip() {
  const b = bench();
  for (const intent of ['next', 'answer:yes']) b.press(intent);
  b.type('58');
  b.press('yes');
  b.press('material:soft-1');
  return b;
}

describe('a clock', () => {
  it('counts every phase from the start of mixing', () => {
    const b = atDip();
    b.press('start');
    const start = b.at;
    b.wait(60 * SECOND);
    b.press('seated');
    const phases = b.summary().clocks[0]!.phases;
    expect(phases.map((p) => [p.id, p.dueAt - start, p.state])).toEqual([
      ['mix', 45 * SECOND, 'done'],
      ['working', 120 * SECOND, 'done'],
      ['inMouth', 240 * SECOND, 'running'],
      ['pourWithin', expect.any(Number), 'waiting'],
    ]);
  });

  it('seated after the working time ended, and removed before the set time: both are findings with the time', () => {
    const b = atDip();
    b.press('start');
    b.wait(137 * SECOND);
    b.press('seated');
    b.wait(60 * SECOND);
    b.press('out');
    const clock = b.summary().clocks[0]!;
    expect(clock.findings).toEqual([
      { id: 'seatedLate', byMs: 17 * SECOND },
      { id: 'removedEarly', byMs: 43 * SECOND },
    ]);
    const what = b.summary().flags.map((f) => f.what);
    expect(what.some((w) => w.includes('seated after the working time had ended, by 0:17'))).toBe(true);
    expect(what.some((w) => w.includes('removed before the set time of the leaflet, by 0:43'))).toBe(true);
  });

  it('in time leaves no finding', () => {
    const b = atDip();
    b.press('start');
    b.wait(90 * SECOND);
    b.press('seated');
    b.wait(150 * SECOND);
    b.press('out');
    expect(b.summary().clocks[0]!.findings).toEqual([]);
  });

  it('runs on after removal: to be poured within its time, until it is taken over', () => {
    const b = atDip();
    for (const [intent, wait] of [
      ['start', 90],
      ['seated', 150],
      ['out', 0],
    ] as const) {
      b.press(intent);
      b.wait(wait * SECOND);
    }
    const out = b.summary().clocks[0]!.outAt!;
    expect(b.summary().clocks[0]!.phases.at(-1)).toMatchObject({
      id: 'pourWithin',
      dueAt: out + 30 * MINUTE,
      state: 'running',
    });
    b.at = out + 31 * MINUTE;
    expect(b.summary().clocks[0]!.findings).toEqual([{ id: 'pourLate', byMs: MINUTE }]);
    b.press('taken:dip');
    b.wait(60 * MINUTE);
    expect(b.summary().clocks[0]).toMatchObject({ stopped: true, findings: [{ id: 'pourLate', byMs: MINUTE }] });
  });

  it('two run at once, each with its own phase', () => {
    const b = atRestHeight();
    const running = b
      .summary()
      .clocks.filter((c) => !c.stopped)
      .map((c) => [c.label, c.now]);
    expect(running).toEqual([
      ['dip', 'pourWithin'],
      ['Bathe it', 'disinfect'],
    ]);
  });

  it('is the same after a reload in the middle of it, however long the page was gone', async () => {
    const app = await demoOpen();
    app.runtime.press('goto:upper-impression');
    await app.pass();
    app.runtime.press('material:alginate-regular');
    app.runtime.press('start');
    await app.pass(30 * SECOND);
    const before = model(app).clocks[0]!;
    const next = await app.reload(40 * SECOND);
    next.runtime.openCase('case-1');
    await next.pass();
    const after = model(next).clocks[0]!;
    expect(after.startedAt).toBe(before.startedAt);
    expect(after.phases.map((p) => p.dueAt).slice(0, 3)).toEqual(before.phases.map((p) => p.dueAt).slice(0, 3));
    expect(after.now).toBe('working');
    expect(model(next).step?.step.id).toBe('upper-impression');
  });

  it('rings when a phase ends: sound, ringing on screen, words; and the ring is on record', async () => {
    const app = await demoOpen();
    app.runtime.armSound();
    await app.pass();
    app.runtime.press('goto:upper-impression');
    await app.pass();
    app.runtime.press('material:alginate-regular');
    app.runtime.press('start');
    for (const ms of [65, 56, 2, 2]) await app.pass(ms * SECOND);
    expect(model(app).ringing.map((r) => r.phase)).toEqual(['working']);
    expect(app.time.heard.some((h) => h.what === 'ring' || h.what === 'tone')).toBe(true);
    expect(app.speech.spoken.some((s) => s.text.includes('working time over'))).toBe(true);
    const facts = app.disk.facts.get('case-1') as { body: { kind: string; phase?: string; late?: boolean } }[];
    expect(facts.filter((f) => f.body.kind === 'rang').map((f) => [f.body.phase, f.body.late])).toEqual([
      ['mix', false],
      ['working', false],
    ]);
    app.runtime.silence();
    await app.pass();
    expect(model(app).ringing).toEqual([]);
  });

  it('that ended while the page was gone rings at once when it is back, marked late', async () => {
    const app = await demoOpen();
    app.runtime.press('goto:upper-impression');
    await app.pass();
    app.runtime.press('material:alginate-regular');
    app.runtime.press('start');
    await app.pass(10 * SECOND);
    const next = await app.reload(10 * MINUTE);
    next.runtime.openCase('case-1');
    await next.pass(500);
    const facts = next.disk.facts.get('case-1') as { body: { kind: string; late?: boolean } }[];
    const rings = facts.filter((f) => f.body.kind === 'rang');
    expect(rings.length).toBeGreaterThan(0);
    expect(rings.every((f) => f.body.late === true)).toBe(true);
    expect(next.speech.spoken.some((s) => /rang \d+ seconds late/.test(s.text))).toBe(true);
  });
});
