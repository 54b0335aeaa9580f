// @vitest-environment happy-dom
/** Words made to do harm, typed, pasted and said: kept and shown as text, never run, or refused in words. */
import { beforeAll, expect, it, vi } from 'vitest';
import { parseFacts } from '../../src/domain/case/parse.ts';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import { escaped } from '../../src/handoff/narrative.ts';
import { legible } from '../../src/handoff/glyphs.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { demoOpen, fakeApp, type FakeApp } from '../helpers/app.ts';
import { mount } from '../screens/mount.tsx';

vi.setConfig({ testTimeout: 30_000 });

beforeAll(async () => {
  await import('../../src/app/visit-kit.ts');
});

const model = (app: FakeApp) => app.runtime.model.getState();
const stored = (app: FakeApp) => (app.disk.facts.get('case-1') ?? []) as Fact[];
const notes = (app: FakeApp) => stored(app).flatMap(({ body }) => (body.kind === 'note' ? [body.text] : []));

const MARKUP = [
  '<img src=x onerror="globalThis.hit=1">',
  '</p><script>globalThis.hit=1</script>',
  '"><svg onload=globalThis.hit=1>',
  'javascript:globalThis.hit=1',
  '{{constructor.constructor("globalThis.hit=1")()}}',
  '__proto__',
];

it.each(MARKUP)('%j is kept and shown as text on every screen, on paper and in the narrative', async (text) => {
  const app = await demoOpen();
  app.runtime.note(text);
  await app.pass();
  expect(notes(app)).toEqual([text]);
  expect(parseFacts(stored(app)).ok).toBe(true);
  for (const place of ['summary', 'record', 'labSheet', 'cases', 'visit'] as const) {
    app.runtime.go(place);
    await app.pass();
    const screen = mount(model(app));
    expect(screen.page.querySelectorAll('img, script, [onerror], [onload], [href^="javascript"]')).toHaveLength(0);
    if (place === 'record') expect(screen.page.textContent).toContain(text);
    screen.close();
  }
  expect((globalThis as { hit?: number }).hit).toBeUndefined();
  expect(legible(text)).toBe(text);
  expect(escaped(text)).not.toMatch(/[<>"]/);
});

it.each([
  ['NUL', 'a\u0000b'],
  ['half a letter', 'a\ud800b'],
  ['a mark that turns the reading direction', 'a\u202eb'],
  ['a letter of no width', 'a\u200bb'],
])('a remark with %s is kept without it, can be read back and handed over', async (_name, text) => {
  const app = await demoOpen();
  app.runtime.note(text);
  await app.pass();
  expect(notes(app)).toEqual(['ab']);
  expect(parseFacts(stored(app)).ok).toBe(true);
  expect(await toCaseFile(stored(app), 'chair-1')).toMatchObject({ ok: true });
});

it.each([4001, 10e6])(
  'a remark of %i letters is refused in words, and the case can still be opened',
  async (length) => {
    const app = await demoOpen();
    const before = stored(app).length;
    app.runtime.note('x'.repeat(length));
    await app.pass();
    expect(model(app).trouble).toContain('longer than 4000 letters');
    expect(stored(app)).toHaveLength(before);
    expect(parseFacts(stored(app)).ok).toBe(true);
  },
);

it.each(['type', 'press', 'key'] as const)('ten million letters by %s move nothing', async (way) => {
  const app = await demoOpen();
  const before = stored(app).length;
  app.runtime[way]('9'.repeat(10e6));
  await app.pass();
  expect(model(app).trouble).toContain('longer than 4000 letters');
  expect(stored(app)).toHaveLength(before);
});

it.each(['__proto__', 'constructor', 'goto:__proto__', 'material:constructor', 'answer:__proto__', 'correct:NaN'])(
  'a touch meaning %j moves nothing and reaches nothing',
  async (intent) => {
    const app = await demoOpen();
    const { step } = model(app);
    app.runtime.press(intent);
    await app.pass();
    expect(model(app).step?.step.id).toBe(step?.step.id);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  },
);

it('a case is not begun with a code that could not be read back or seen', async () => {
  const app = await fakeApp();
  for (const code of ['x'.repeat(201), 'a\u202eb', 'a\ud800'])
    app.runtime.newCase({ code, clinician: 'KV', assistant: 'BR', demo: false });
  await app.pass();
  expect(model(app).trouble).toContain('at most 200 letters');
  expect(app.disk.rows.size).toBe(0);
});
