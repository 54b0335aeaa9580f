import type { Fact, FactBody } from '../../src/domain/case/facts.ts';
import type { CaseRow, StorageHost } from '../../src/storage/types.ts';

export function fact(seq: number, body: FactBody = { kind: 'held' }, caseId = 'case-a'): Fact {
  return { v: 1, caseId, seq, at: 1_800_000_000_000 + seq, act: seq, protocol: 'visit-1@1', app: 'test', body };
}

export function note(seq: number, text: string, caseId = 'case-a'): Fact {
  return fact(seq, { kind: 'note', step: 'notes', text, source: 'voice' }, caseId);
}

export function facts(from: number, to: number, caseId = 'case-a'): Fact[] {
  return Array.from({ length: to - from + 1 }, (_, index) => note(from + index, `remark ${from + index}`, caseId));
}

export function row(lastSeq: number, id = 'case-a'): CaseRow {
  const openedAt = 1_800_000_000_000;
  return { id, code: 'K-17', demo: false, openedAt, lastAt: openedAt + lastSeq, visit: 1, closed: false, lastSeq };
}

/** Timers that go off when told to. */
export interface ManualTimers {
  setTimeout: StorageHost['setTimeout'];
  clearTimeout: StorageHost['clearTimeout'];
  /** Lets `ms` pass and runs what falls due, in order. */
  pass(ms: number): Promise<void>;
  pending(): number;
}

export function manualTimers(): ManualTimers {
  const timers = new Map<number, { due: number; run: () => void }>();
  let now = 0;
  let id = 0;
  return {
    setTimeout: (run, ms) => {
      id += 1;
      timers.set(id, { due: now + ms, run });
      return id;
    },
    clearTimeout: (which) => void timers.delete(which as number),
    async pass(ms) {
      const until = now + ms;
      for (;;) {
        const [next] = [...timers].filter(([, timer]) => timer.due <= until).sort((a, b) => a[1].due - b[1].due);
        if (!next) break;
        timers.delete(next[0]);
        now = next[1].due;
        next[1].run();
        await settle();
      }
      now = until;
      await settle();
    },
    pending: () => timers.size,
  };
}

/** Lets everything that waits only for promises come to rest. */
export async function settle(): Promise<void> {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
}
