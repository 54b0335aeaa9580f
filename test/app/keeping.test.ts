/** The list of cases while entries are kept: thousands of cases are not read again for one entry. */
import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { ListResult } from '../../src/storage/types.ts';
import { demoOpen, fakeApp, type FakeApp } from '../helpers/app.ts';
import { fakeBrowser } from '../helpers/windows.ts';

/** What runs a visit is fetched with the first case; here it is to be there at once. */
beforeAll(async () => {
  await import('../../src/app/visit-kit.ts');
});

const lastSeq = (app: FakeApp) => app.runtime.model.getState().cases.find(({ id }) => id === 'case-1')?.lastSeq;
const onDisk = (app: FakeApp) => app.disk.facts.get('case-1')?.length;

/** A list whose reading ends when it is told to. */
function slowList(app: FakeApp) {
  const waiting: (() => void)[] = [];
  const read = app.store.listCases.bind(app.store);
  const spy = vi.spyOn(app.store, 'listCases').mockImplementation(async (): Promise<ListResult> => {
    const found = await read();
    await new Promise<void>((go) => waiting.push(go));
    return found;
  });
  return { spy, go: () => waiting.splice(0).forEach((one) => one()) };
}

describe('the list of cases', () => {
  it('is not read again for an entry; its row is what was written, and the newest stands first', async () => {
    const first = await demoOpen();
    first.runtime.newCase({ code: 'K-2', clinician: 'KV', assistant: 'BR', demo: false });
    await first.pass(1000);
    expect(first.runtime.model.getState().cases.map(({ id }) => id)).toEqual(['case-2', 'case-1']);
    first.runtime.openCase('case-1');
    await first.pass(1000);
    const spy = vi.spyOn(first.store, 'listCases');
    for (const text of ['one', 'two', 'three']) {
      first.runtime.note(text);
      await first.pass(1000);
    }
    expect(spy).not.toHaveBeenCalled();
    expect(lastSeq(first)).toBe(onDisk(first));
    const { cases } = first.runtime.model.getState();
    expect(cases.map(({ id }) => id)).toEqual(['case-1', 'case-2']);
    const again = await first.reload();
    await again.pass();
    expect(again.runtime.model.getState().cases).toEqual(cases);
  });

  it('holds what is not on the disk yet too', async () => {
    const app = await demoOpen();
    await app.pass();
    app.store.trouble = 'full';
    app.runtime.note('only here');
    await app.pass();
    expect(app.runtime.model.getState().save.state).toBe('memory');
    expect(lastSeq(app)).toBe((onDisk(app) ?? 0) + 1);
  });

  it('that was being read when an entry was kept does not take its row back', async () => {
    const app = await demoOpen();
    await app.pass();
    const { go } = slowList(app);
    app.runtime.go('cases');
    await app.pass();
    app.runtime.go('visit');
    app.runtime.note('meanwhile');
    await app.pass();
    expect(lastSeq(app)).toBe(onDisk(app));
    go();
    await app.pass();
    expect(lastSeq(app)).toBe(onDisk(app));
  });

  it('is read once more, not a hundred times, when another window writes a hundred entries meanwhile', async () => {
    const browser = fakeBrowser();
    const windows = browser.open();
    const one = await demoOpen({ windows });
    await one.pass();
    const two = await fakeApp({ windows: browser.open(), disk: one.disk });
    await two.pass();
    const { spy, go } = slowList(two);
    for (let i = 0; i < 100; i += 1) windows.postMessage({ kind: 'written', caseId: 'case-1', lastSeq: i });
    await two.pass();
    one.runtime.note('the last of them');
    await one.pass();
    windows.postMessage({ kind: 'written', caseId: 'case-1', lastSeq: onDisk(one) });
    go();
    await two.pass();
    go();
    await two.pass();
    expect(spy).toHaveBeenCalledTimes(2);
    expect(lastSeq(two)).toBe(onDisk(one));
  });
});
