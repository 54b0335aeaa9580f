import { browserDigest } from './chain.ts';
import { browserHost } from './host.ts';
import { createIdbStore } from './idb-store.ts';
import { browserJournal } from './journal.ts';
import type { Keys } from './keys.types.ts';
import { createSealedStore } from './keys.ts';
import { createPairedStore } from './paired-store.ts';
import { scrubDatabase } from './scrub.ts';
import { createSentinel } from './sentinel.ts';
import type { FactStore } from './types.ts';

/** Both copies as this browser has them: the database, the journal where there can be one, the chain where it can hash. */
export function createDeviceStore(newId: () => string): { store: FactStore; keys: Keys } {
  const host = browserHost();
  const paired = createPairedStore({
    database: createIdbStore({ host }),
    journal: browserJournal(host),
    digest: browserDigest(),
    sentinel: createSentinel(() => globalThis.localStorage),
    scrub: () => scrubDatabase(host),
    newId,
  });
  return createSealedStore(paired);
}
