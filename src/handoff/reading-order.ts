/**
 * The order in which entries of several writers are read: each chain in its own order, nothing before what it refers to,
 * the opening of the case first; between chains the earlier wall clock, then the writer's name. The same set of entries
 * gives the same order on every machine.
 */
import { chainsOf } from './chain.ts';
import type { Entry, Ref } from './case-file.types.ts';
import { refsOf } from './refs.ts';

const opens = (entry: Entry) => (entry.fact.body['kind'] === 'caseOpened' ? 0 : 1);

const earlier = (a: Entry, b: Entry) =>
  opens(a) - opens(b) || a.at - b.at || (a.writer < b.writer ? -1 : a.writer > b.writer ? 1 : 0);

export type ReadingOrder =
  | { readonly ok: true; readonly order: readonly Entry[] }
  /** The earliest entry that can never be read: it refers to what is not there, or round in a ring. */
  | { readonly ok: false; readonly stuck: Entry };

/** Entries as they are to be read; each writer's numbers must be whole, from 1 on. */
export function readingOrder(entries: readonly Entry[]): ReadingOrder {
  const chains = [...chainsOf(entries).values()];
  const next = chains.map(() => 0);
  const placed = new Map<string, number>();
  const isPlaced = (self: Entry) => (ref: Ref) =>
    (ref.writer === self.writer && ref.n === self.n) || ref.n <= (placed.get(ref.writer) ?? 0);
  const order: Entry[] = [];
  while (order.length < entries.length) {
    let best: { readonly entry: Entry; readonly chain: number } | undefined;
    for (const [chain, all] of chains.entries()) {
      const entry = all[next[chain] ?? 0];
      if (entry === undefined || !refsOf(entry.fact.act, entry.fact.body).every(isPlaced(entry))) continue;
      if (best === undefined || earlier(entry, best.entry) < 0) best = { entry, chain };
    }
    if (best === undefined) {
      const stuck = chains.flatMap((all, i) => all[next[i] ?? 0] ?? []).toSorted(earlier);
      return { ok: false, stuck: stuck[0]! };
    }
    order.push(best.entry);
    next[best.chain] = (next[best.chain] ?? 0) + 1;
    placed.set(best.entry.writer, best.entry.n);
  }
  return { ok: true, order };
}
