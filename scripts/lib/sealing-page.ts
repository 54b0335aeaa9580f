/** Runs in a page: what entries cost with and without a passphrase, on the browser's own disk. */
import type { Fact } from '../../src/domain/case/facts.ts';
import { browserDigest } from '../../src/storage/chain.ts';
import { createIdbStore } from '../../src/storage/idb-store.ts';
import { createSealedStore } from '../../src/storage/keys.ts';
import { createPairedStore } from '../../src/storage/paired-store.ts';
import type { CaseRow, FactStore } from '../../src/storage/types.ts';

export interface SealingCost {
  /** Milliseconds for each append, in order. */
  readonly appends: readonly number[];
  /** Milliseconds to read the case they are in. */
  readonly load: number;
  /** Milliseconds to read the list of cases for the first time. */
  readonly list: number;
  /** Milliseconds to unlock; 0 without a passphrase. */
  readonly unlock: number;
}

const AT = 1_800_000_000_000;

function fact(caseId: string, seq: number): Fact {
  const heard = { source: 'keypad', text: '62.5', certainty: 'sure', keptBy: 'yes' } as const;
  const body = {
    kind: 'reading',
    step: 'rest',
    reading: 'rest-height',
    value: 6250,
    unit: 'mm',
    heard,
    outOfTurn: false,
  };
  const head = { v: 1, caseId, seq, at: AT + seq, act: seq, protocol: 'visit-1@1', app: 'bench' } as const;
  return { ...head, body } as Fact;
}

function row(id: string, lastSeq: number): CaseRow {
  return { id, code: `BENCH-${id}`, demo: false, openedAt: AT, lastAt: AT + lastSeq, visit: 1, closed: false, lastSeq };
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await work();
  return performance.now() - from;
}

async function append(store: FactStore, entries: number): Promise<number[]> {
  const times: number[] = [];
  for (let seq = 1; seq <= entries; seq += 1)
    times.push(await timed(() => store.append([fact('one', seq)], row('one', seq))));
  return times;
}

export interface SealingWish {
  readonly name: string;
  readonly entries: number;
  readonly cases: number;
  /** Without one, entries lie in clear. */
  readonly passphrase?: string;
}

export async function measure({ name, entries, cases, passphrase }: SealingWish): Promise<SealingCost> {
  const database = createIdbStore({ name });
  const paired = createPairedStore({ database, digest: browserDigest(), newId: () => name });
  const { store, keys } = createSealedStore(paired);
  if (passphrase !== undefined) {
    await keys.turnOn(passphrase);
    await keys.finish();
  }
  const appends = await append(store, entries);
  for (let n = 1; n < cases; n += 1) await store.append([fact(`case-${n}`, 1)], row(`case-${n}`, 1));
  keys.lock();
  const wish = { lock: 'passphrase', secret: passphrase ?? '' } as const;
  const unlock = passphrase === undefined ? 0 : await timed(() => keys.unlock(wish));
  const list = await timed(() => store.listCases());
  const load = await timed(() => store.load('one'));
  store.close();
  return { appends, load, list, unlock };
}
