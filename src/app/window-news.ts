/** What one window tells the others: that something of a case has been kept. Numbers only, nothing of the case itself. */
import type { FactLog } from '../storage/types.ts';

export const CHANNEL = 'rimwise';

export interface Written {
  readonly kind: 'written';
  readonly caseId: string;
  /** Number of the last entry now kept. */
  readonly lastSeq: number;
}

/** The part of a BroadcastChannel that is used. */
export interface NewsPort {
  postMessage(news: Written): void;
}

export function isWritten(raw: unknown): raw is Written {
  if (typeof raw !== 'object' || raw === null) return false;
  const { kind, caseId, lastSeq } = raw as Record<string, unknown>;
  return kind === 'written' && typeof caseId === 'string' && Number.isSafeInteger(lastSeq);
}

/** The same log, telling the other windows each time that entries have been kept: never before. */
export function tellingLog(log: FactLog, port: NewsPort | undefined): FactLog {
  if (port === undefined) return log;
  return {
    open: (caseId) => log.open(caseId),
    append: async (facts, row) => {
      const result = await log.append(facts, row);
      if (result.ok) port.postMessage({ kind: 'written', caseId: row.id, lastSeq: row.lastSeq });
      return result;
    },
    flush: () => log.flush(),
    status: () => log.status(),
    subscribe: (listener) => log.subscribe(listener),
    unsaved: (caseId) => log.unsaved(caseId),
    cases: () => log.cases(),
    exportFile: (caseId, writer) => log.exportFile(caseId, writer),
    takeBack: (caseId) => log.takeBack(caseId),
    forget: () => log.forget(),
    stop: () => log.stop(),
  };
}
