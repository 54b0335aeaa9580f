/** Runs in the browser: the app's own store on the browser's own disk, driven without a screen. */
import type { Fact } from '../../../src/domain/case/facts.ts';
import { createDeviceStore } from '../../../src/storage/device-store.ts';
import { createFactLog } from '../../../src/storage/fact-log.ts';
import type { CaseRow } from '../../../src/storage/types.ts';

const START = 1_790_000_000_000;

function factOf(caseId: string, seq: number): Fact {
  const text = `remark ${seq}, about as long as what is said of a step`;
  const body = { kind: 'note', step: 'complaint', text, source: 'voice' } as const;
  return { v: 1, caseId, seq, at: START + seq * 1000, act: seq, protocol: 'visit-1@1', app: 'bench', body };
}

const rowOf = (id: string, lastSeq: number): CaseRow => ({
  id,
  code: id,
  demo: false,
  openedAt: START,
  lastAt: START + lastSeq * 1000,
  visit: 1,
  closed: false,
  lastSeq,
  ticks: false,
});

const open = () => createFactLog({ storage: createDeviceStore(() => crypto.randomUUID()).store });

/** Milliseconds of each of `count` appends to one case, until both copies have it. */
async function appends(count: number): Promise<readonly number[]> {
  const log = open();
  await log.cases();
  const costs: number[] = [];
  for (let seq = 1; seq <= count; seq += 1) {
    const start = performance.now();
    // One after the other, as they come.
    // oxlint-disable-next-line no-await-in-loop
    const written = await log.append([factOf('K-long', seq)], rowOf('K-long', seq));
    if (!written.ok) throw new Error(written.why);
    costs.push(performance.now() - start);
  }
  return costs;
}

/** `count` cases of one entry each. */
async function fill(count: number): Promise<void> {
  const log = open();
  const names = Array.from({ length: count }, (_, i) => `K-${String(i).padStart(5, '0')}`);
  for (const id of names) {
    // oxlint-disable-next-line no-await-in-loop
    const written = await log.append([factOf(id, 1)], rowOf(id, 1));
    if (!written.ok) throw new Error(written.why);
  }
}

Object.assign(globalThis, { bench: { appends, fill } });
