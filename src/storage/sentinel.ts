/**
 * A note outside the database of how much it should hold: its name and the number of entries of all cases together. It
 * holds nothing of any case. A database that is new, or shorter than the note says, has lost something.
 */
export interface Mark {
  readonly dbId: string;
  readonly total: number;
}

export interface Sentinel {
  read(): Mark | undefined;
  write(mark: Mark): void;
}

const KEY = 'rimwise-sentinel';

function parse(text: string | null): Mark | undefined {
  try {
    const raw = JSON.parse(text ?? 'null') as unknown;
    if (typeof raw !== 'object' || raw === null) return undefined;
    const { dbId, total } = raw as { dbId?: unknown; total?: unknown };
    return typeof dbId === 'string' && Number.isSafeInteger(total) ? { dbId, total: Number(total) } : undefined;
  } catch {
    return undefined;
  }
}

/** In local storage; a browser that refuses it has no sentinel, and nothing else changes. */
export function createSentinel(storage: () => Pick<Storage, 'getItem' | 'setItem'>): Sentinel {
  return {
    read: () => {
      try {
        return parse(storage().getItem(KEY));
      } catch {
        return undefined;
      }
    },
    write: ({ dbId, total }) => {
      try {
        storage().setItem(KEY, JSON.stringify({ dbId, total }));
      } catch {
        // refused: the copies themselves are compared all the same
      }
    },
  };
}
