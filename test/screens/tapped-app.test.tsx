// @vitest-environment happy-dom
/** A tapped point and a touched place, through the real runtime to the disk: the same entries as typed and spoken ones. */
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { App } from '../../src/screens/App.tsx';
import { fetchDecided } from '../../src/screens/decided/Lazy.tsx';
import { demoOpen, type FakeApp } from '../helpers/app.ts';

(globalThis as { IS_REACT_ACT_ENVIRONMENT?: boolean }).IS_REACT_ACT_ENVIRONMENT = true;

const model = (app: FakeApp) => app.runtime.model.getState();
let root: Root | undefined;

beforeAll(async () => {
  await Promise.all([
    fetchDecided(),
    import('../../src/app/visit-kit.ts'),
    import('../../src/domain/protocol/index.ts'),
  ]);
});
afterEach(() => act(() => root?.unmount()));

async function press(app: FakeApp, ...intents: string[]): Promise<void> {
  for (const intent of intents) {
    app.runtime.press(intent);
    await app.pass(100);
  }
}

/** What is fetched on the way comes when it comes: waited for, never counted on. */
async function until(app: FakeApp, what: string, there: () => boolean): Promise<void> {
  const end = Date.now() + 20_000;
  while (!there()) {
    if (Date.now() > end) throw new Error(`never came: ${what}`);
    await app.pass(50);
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
}

/** Visits closed one after the other until this one is open. */
async function visitOpen(visit: number): Promise<FakeApp> {
  const app = await demoOpen();
  await until(app, 'the first step', () => model(app).step !== undefined);
  for (let next = 2; next <= visit; next += 1) {
    await press(app, 'goto:signoff-clinician', 'sign:KV', 'reason:not-possible');
    await until(app, `the end of visit ${next - 1}`, () => model(app).step?.mode === 'closed');
    app.runtime.openVisit({ visit: next, clinician: 'KV', assistant: 'BR' });
    const open = () => model(app).summary?.visit === next && model(app).step?.mode !== 'closed';
    await until(app, `visit ${next}`, open);
  }
  return app;
}

function show(app: FakeApp): HTMLElement {
  const page = document.createElement('div');
  document.body.append(page);
  root = createRoot(page);
  const draw = () => act(() => root?.render(<App model={model(app)} actions={app.runtime} />));
  draw();
  app.runtime.model.subscribe(draw);
  return page;
}

async function click(app: FakeApp, target: Element, more: MouseEventInit = {}): Promise<void> {
  act(() => {
    target.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail: 1, ...more }));
  });
  await act(() => app.pass(500));
}

function named(page: HTMLElement, name: string): HTMLButtonElement {
  const found = [...page.querySelectorAll('button')].find(
    (one) => (one.getAttribute('aria-label') ?? one.textContent ?? '').trim() === name,
  );
  if (found === undefined) throw new Error(`no target named ${name}`);
  return found;
}

describe('through the runtime', () => {
  it('a tapped point is kept as two readings, as if typed, and the next point is asked for', async () => {
    const app = await visitOpen(2);
    await press(app, 'goto:centric-method', 'answer:tracing', 'goto:tracing-1-x');
    const page = show(app);
    const paper = page.querySelector('.sheet-tap')!;
    paper.getBoundingClientRect = () => ({ left: 0, top: 0, width: 600, height: 600 }) as DOMRect;
    // 100 of 600 across is 10 mm of 60, 400 down leaves 200: 20 mm up.
    await click(app, paper, { clientX: 100, clientY: 400 });
    await click(app, named(page, 'Keep both'));
    const rows = model(app).summary?.readings.filter((row) => row.visit === 'visit 2') ?? [];
    expect(
      rows.map(({ reading, step, value, source, text, keptBy }) => [reading, step, value, source, text, keptBy]),
    ).toEqual([
      ['tracing-1-x', 'tracing-1-x', 1000, 'keypad', '10', 'yes'],
      ['tracing-1-y', 'tracing-1-y', 2000, 'keypad', '20', 'yes'],
    ]);
    expect(model(app).summary?.tracing?.apexes).toMatchObject([{ n: 1, xMm: 10, yMm: 20 }]);
    expect(model(app).step?.step.id).toBe('tracing-2-sharp');

    await press(app, 'answer:sharp');
    app.runtime.type('10.4');
    await press(app, 'yes');
    app.runtime.type('20');
    await press(app, 'yes');
    expect(model(app).summary?.tracing?.scatter?.largestPairMm).toBeCloseTo(0.4, 9);
  });

  it('one undo takes back the number upwards alone', async () => {
    const app = await visitOpen(2);
    await press(app, 'goto:centric-method', 'answer:tracing', 'goto:tracing-1-x');
    const page = show(app);
    const paper = page.querySelector('.sheet-tap')!;
    paper.getBoundingClientRect = () => ({ left: 0, top: 0, width: 600, height: 600 }) as DOMRect;
    await click(app, paper, { clientX: 100, clientY: 400 });
    await click(app, named(page, 'Keep both'));
    await act(async () => {
      app.runtime.key('Backspace');
      await app.pass(200);
    });
    const live =
      model(app).summary?.readings.filter((row) => row.struck === undefined && row.visit === 'visit 2') ?? [];
    expect(live.map((row) => row.reading)).toEqual(['tracing-1-x']);
  });

  it('a touched region is the answer that the spoken one is', async () => {
    const app = await visitOpen(5);
    await press(app, 'goto:sore-1', 'answer:lower');
    const page = show(app);
    await click(app, named(page, '9, Ridge crest'));
    expect(model(app).summary?.sore).toMatchObject([{ jaw: 'lower', region: 'lower-ridge', label: 'Ridge crest' }]);
    expect(model(app).step?.step.id).toBe('sore-1-kind');
  });
});
