import { beforeAll, describe, expect, it } from 'vitest';
import { tellingLog } from '../../src/app/window-news.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { createFactLog } from '../../src/storage/fact-log.ts';
import { createMemoryStore } from '../../src/storage/fake.ts';
import { demoOpen, fakeApp, type FakeApp } from '../helpers/app.ts';
import { fakeBrowser } from '../helpers/windows.ts';
import { facts, row } from '../storage/samples.ts';

/** What runs a visit is fetched with the first case; here it is to be there at once. */
beforeAll(async () => {
  await import('../../src/app/visit-kit.ts');
});

const step = (app: FakeApp) => app.runtime.model.getState().step?.title;
const stored = (app: FakeApp) => (app.disk.facts.get('case-1') ?? []) as Fact[];

/** Two windows of one browser with the same case open; the first one writes. */
async function twoWindows() {
  const browser = fakeBrowser();
  const one = await demoOpen({ windows: browser.open() });
  await one.pass();
  const two = await fakeApp({ windows: browser.open(), disk: one.disk });
  two.runtime.openCase('case-1');
  for (let i = 0; i < 50 && step(two) === undefined; i += 1) await two.pass();
  return { one, two };
}

describe('a case open in two windows', () => {
  it('is refused to the second in words, and nothing is written there', async () => {
    const { one, two } = await twoWindows();
    const before = stored(one).length;
    expect([one, two].map((app) => app.runtime.model.getState().writer)).toEqual(['here', 'elsewhere']);
    two.runtime.key('Enter');
    two.runtime.note('a remark');
    await two.pass();
    expect(two.runtime.model.getState().trouble).toMatch(/another window/);
    expect(stored(one)).toHaveLength(before);
  });

  it('goes on in the second where the first stood, once taken over; the first is then refused', async () => {
    const { one, two } = await twoWindows();
    one.runtime.note('from the first');
    await one.pass();
    two.runtime.key('Enter');
    expect(two.runtime.model.getState().trouble).toMatch(/another window/);
    two.runtime.takeOver();
    await two.pass();
    await one.pass();
    expect(two.runtime.model.getState().trouble).toBe('');
    expect([one, two].map((app) => app.runtime.model.getState().writer)).toEqual(['elsewhere', 'here']);
    two.runtime.note('from the second');
    await two.pass();
    one.runtime.note('too late');
    await one.pass();
    const notes = stored(one).flatMap(({ body }) => (body.kind === 'note' ? [body.text] : []));
    expect(notes).toEqual(['from the first', 'from the second']);
    expect(stored(one).map(({ seq }) => seq)).toEqual(stored(one).map((_, index) => index + 1));
  });

  it('without locks, the second to write is told what was not taken, and shows what is on the disk', async () => {
    const one = await demoOpen();
    await one.pass();
    const two = await fakeApp({ disk: one.disk });
    two.runtime.openCase('case-1');
    for (let i = 0; i < 50 && step(two) === undefined; i += 1) await two.pass();
    one.runtime.note('first');
    await one.pass();
    two.runtime.note('second');
    await two.pass();
    await two.pass();
    expect(two.runtime.model.getState().trouble).toMatch(/Not kept: 1 entry made here: note: second/);
    expect(two.runtime.model.getState().save.state).toBe('kept');
    two.runtime.note('again');
    await two.pass();
    const notes = stored(one).flatMap(({ body }) => (body.kind === 'note' ? [body.text] : []));
    expect(notes).toEqual(['first', 'again']);
  });
});

describe('other windows are told', () => {
  it('only of what has been kept', async () => {
    const told: unknown[] = [];
    const store = createMemoryStore();
    const log = tellingLog(createFactLog({ storage: store }), { postMessage: (news) => told.push(news) });
    await log.append(facts(1, 2), row(2));
    store.trouble = 'refused';
    await log.append(facts(3, 3), row(3));
    log.stop();
    expect(told).toEqual([{ kind: 'written', caseId: 'case-a', lastSeq: 2 }]);
  });
});

describe('the browser is asked not to clear the record by itself', () => {
  it('once, after the first thing kept, and its answer is shown', async () => {
    let asked = 0;
    const persistence = {
      persisted: () => Promise.resolve(false),
      persist: () => Promise.resolve((asked += 1) > 99),
    };
    const before = await fakeApp({ persistence });
    expect(before.runtime.model.getState().safety).toEqual({ persisted: 'unknown' });
    expect(asked).toBe(0);
    const app = await demoOpen({ persistence });
    app.runtime.note('a remark');
    await app.pass();
    expect(asked).toBe(1);
    expect(app.runtime.model.getState().safety).toEqual({ persisted: 'no' });
  });

  it('never when it has promised already', async () => {
    const persistence = { persisted: () => Promise.resolve(true), persist: () => Promise.reject(new Error('asked')) };
    const app = await demoOpen({ persistence });
    await app.pass();
    expect(app.runtime.model.getState().safety).toEqual({ persisted: 'yes' });
  });
});
