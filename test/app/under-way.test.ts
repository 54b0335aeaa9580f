/** Which cases are looked into for running clocks, and how often. */
import { describe, expect, it } from 'vitest';
import type { CaseListRow, RunningClock } from '../../src/app/model.ts';
import type { OpenCase } from '../../src/app/open-case.ts';
import { UnderWay } from '../../src/app/under-way.ts';
import { upperWorking } from '../../src/screens/preview/clocks.ts';

const NOW = 1_000 * 86_400_000;
const row = (id: string, more: Partial<CaseListRow> = {}): CaseListRow => ({
  id,
  code: id.toUpperCase(),
  demo: false,
  openedAt: NOW,
  at: '',
  visit: 1,
  closed: false,
  lastAt: NOW,
  lastSeq: 5,
  ...more,
});

/** Cases by id, with the clocks that run of each. */
function underWay(rows: () => readonly CaseListRow[], running: Readonly<Record<string, readonly RunningClock[]>>) {
  const read: string[] = [];
  let changes = 0;
  const self = new UnderWay({
    cases: rows,
    openId: () => 'open',
    now: () => NOW,
    read: (id) => {
      read.push(id);
      const clocks = running[id];
      if (clocks === undefined) return Promise.resolve({ ok: false, text: 'cannot be read' });
      const open: Pick<OpenCase, 'running' | 'deadlines'> = {
        running: () => ({ clocks, ringing: [] }),
        deadlines: () => [],
      };
      return Promise.resolve({ ok: true, open: open as OpenCase });
    },
    briefly: () => Promise.resolve(true),
    keep: () => Promise.resolve(),
    changed: () => (changes += 1),
  });
  return { self, read, changes: () => changes };
}

describe('cases under way', () => {
  it('are those whose rows tell of a running clock, but for the open one; no other is read', async () => {
    const rows = [row('open', { ticks: true }), row('a', { ticks: true }), row('b', { ticks: false })];
    const { self, read } = underWay(() => rows, { a: [upperWorking], b: [], open: [upperWorking] });
    await self.look();
    expect(read).toEqual(['a']);
    expect(self.clocks(NOW).map((clock) => clock.case)).toEqual([{ id: 'a', code: 'A' }]);
  });

  it('are read again only when something was written to them, or when they could not be read', async () => {
    let rows = [row('a', { ticks: true }), row('quiet'), row('broken', { ticks: true })];
    const { self, read, changes } = underWay(() => rows, { a: [upperWorking], quiet: [] });
    await self.look();
    await self.look();
    expect(read.toSorted()).toEqual(['a', 'broken', 'broken', 'quiet']);
    expect(changes()).toBe(1);
    rows = [row('a', { ticks: true, lastSeq: 6 }), row('quiet', { lastSeq: 6 })];
    await self.look();
    expect(read.slice(4).toSorted()).toEqual(['a', 'quiet']);
  });

  it('of rows from before this was told, are looked for among the newest twenty of the last days', async () => {
    const old = row('old', { lastAt: NOW - 9 * 86_400_000 });
    const many = Array.from({ length: 30 }, (_, place) => row(`r${place}`));
    const { self, read } = underWay(() => [old, ...many], { r3: [upperWorking] });
    await self.look();
    expect(read).toEqual(many.slice(0, 20).map(({ id }) => id));
    expect(self.any).toBe(true);
  });

  it('are let go of when their rows tell that nothing runs any more', async () => {
    let rows = [row('a', { ticks: true })];
    const { self, changes } = underWay(() => rows, { a: [upperWorking] });
    await self.look();
    rows = [row('a', { ticks: false, lastSeq: 6 })];
    await self.look();
    expect(self.clocks(NOW)).toEqual([]);
    expect(changes()).toBe(2);
  });
});
