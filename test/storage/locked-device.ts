/** A device whose record may be under a passphrase. Making a key is cheap here: what is tested is not how slow it is. */
import { createSealedStore } from '../../src/storage/keys.ts';
import type { Keys } from '../../src/storage/keys.types.ts';
import type { FactStore } from '../../src/storage/types.ts';
import { openPaired, type Device } from './two-copies.ts';

export const CHEAP = { memoryKiB: 8192, passes: 1, lanes: 1 } as const;
export const PASSPHRASE = 'seven grey herons';

export interface Page {
  readonly store: FactStore;
  readonly keys: Keys;
}

export function openLocked(device: Device, without: { journal?: true } = {}): Page {
  return createSealedStore(openPaired(device, without), CHEAP);
}

/** A page on which the passphrase has been given. */
export async function openUnlocked(device: Device, secret: string = PASSPHRASE): Promise<Page> {
  const page = openLocked(device);
  await page.keys.unlock({ lock: 'passphrase', secret });
  return page;
}

/** A page on a device where a passphrase was set and everything was sealed; the code with it. */
export async function turnedOn(device: Device, passphrase: string = PASSPHRASE): Promise<Page & { code: string }> {
  const page = openLocked(device);
  await page.keys.look();
  const on = await page.keys.turnOn(passphrase);
  if (!on.ok) throw new Error(on.why);
  if (!(await page.keys.finish())) throw new Error('not everything was sealed');
  return { ...page, code: on.code };
}

/** Everything a device holds, as one text. */
export async function onDisk(device: Device): Promise<string> {
  const name = 'rimwise';
  const db = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = device.indexedDB.open(name);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error(name));
  });
  const texts: string[] = [];
  for (const store of db.objectStoreNames) {
    const all = db.transaction(store).objectStore(store).getAll();
    await new Promise((resolve) => {
      all.onsuccess = resolve;
    });
    texts.push(JSON.stringify(all.result));
  }
  db.close();
  return `${texts.join('\n')}\n${new TextDecoder().decode(device.journal.bytes)}\n${JSON.stringify(device.mark)}`;
}
