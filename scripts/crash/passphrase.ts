/** The passphrase as a person gives it, and as a script that holds the record against what was acknowledged needs it. */
import type { Page } from 'playwright-core';
import { unsealed } from '../../src/storage/chain.ts';
import { isKeyring, unwrapKey } from '../../src/storage/keyring.ts';
import { openEntry } from '../../src/storage/sealing.ts';

const target = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first();
const field = (page: Page, name: RegExp) => page.getByRole('textbox', { name });

export async function fillTwice(page: Page, passphrase: string): Promise<void> {
  await field(page, /^New passphrase/).fill(passphrase);
  await field(page, /^The same again/).fill(passphrase);
}

/** At the settings: up to the touch that seals, which is left to the caller. */
export async function askForPassphrase(page: Page, passphrase: string): Promise<void> {
  await target(page, 'Set a passphrase').click();
  await fillTwice(page, passphrase);
}

export const seal = (page: Page): Promise<void> => target(page, 'Seal the record').click();

/** Until everything is sealed; gives the recovery code. */
export async function untilSealed(page: Page): Promise<string> {
  await page.locator('.recovery-code').waitFor();
  const code = (await page.locator('.recovery-code span').allInnerTexts()).join('-');
  await page.waitForFunction(() => document.querySelector('.recovery-busy')?.textContent === '');
  return code;
}

/** From the list of cases and back to it. */
export async function setPassphrase(page: Page, passphrase: string): Promise<void> {
  await target(page, 'Settings').click();
  await askForPassphrase(page, passphrase);
  await seal(page);
  await untilSealed(page);
  await target(page, 'It is written down').click();
  await target(page, /^Back to the/).click();
}

/** At the settings: up to the touch that changes it. */
export async function askForChange(page: Page, from: string, to: string): Promise<void> {
  await target(page, 'Change the passphrase').click();
  await field(page, /^Passphrase as it is now/).fill(from);
  await fillTwice(page, to);
}

/** Once it is known: until then the list of cases is being read. */
export async function isLocked(page: Page): Promise<boolean> {
  const door = field(page, /^Passphrase of the practice/);
  const list = page.locator('main.cases .case-list button').or(page.getByText('None yet.'));
  await door.or(list).first().waitFor();
  return door.isVisible();
}

/** False when it was not the passphrase. */
export async function unlock(page: Page, passphrase: string): Promise<boolean> {
  await field(page, /^Passphrase of the practice/).fill(passphrase);
  await target(page, 'Unlock').click();
  const wrong = page.getByText('That does not open the record.');
  const list = page.locator('main.cases .case-list');
  await wrong.or(list).first().waitFor();
  return list.isVisible();
}

/** Entries as they lie in the database → facts as they were written. */
export type Opener = (entries: readonly unknown[]) => Promise<readonly unknown[]>;

export const inClear: Opener = (entries) => Promise.resolve(entries.map(unsealed));

function readKeyring(page: Page): Promise<unknown> {
  return page.evaluate(
    () =>
      new Promise<unknown>((resolve) => {
        const request = indexedDB.open('rimwise');
        request.onsuccess = () => {
          const read = request.result.transaction('settings').objectStore('settings').get('keyring');
          read.onsuccess = () => {
            request.result.close();
            resolve(read.result);
          };
        };
      }),
  );
}

/** Opens entries outside the browser, by the same passphrase. */
export async function openerFor(page: Page, secret: string): Promise<Opener> {
  const ring = await readKeyring(page);
  const key = isKeyring(ring) ? await unwrapKey(ring, { lock: 'passphrase', secret }) : undefined;
  if (key === undefined) throw new Error('the record of the key does not open');
  return (entries) => Promise.all(entries.map((entry) => openEntry(key, unsealed(entry))));
}
