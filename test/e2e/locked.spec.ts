/** The passphrase in a real browser: what lies in the profile folder, what is seen while locked, and what opens it. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { askForPassphrase, fillTwice, seal, untilSealed } from '../../scripts/crash/passphrase.ts';
import { inBrowser } from './harness.ts';
import { secondWindow } from './two-windows.ts';

const chair = inBrowser();
const CODE = 'QUAGGLEWORT-7';
const NOTE = 'zibberfennel at the left';
const PASSPHRASE = 'seven grey herons';

/** Files of a folder in whose bytes one of the words stands, in either of the encodings browsers write. */
function filesWith(folder: string, words: readonly string[]): string[] {
  const wanted = words.flatMap((word) => [Buffer.from(word, 'utf8'), Buffer.from(word, 'utf16le')]);
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name), { throwIfNoEntry: false })?.isFile() === true)
    .filter((name) => {
      const bytes = readFileSync(join(folder, name));
      return wanted.some((word) => bytes.includes(word));
    });
}

const target = (page: Page, name: RegExp | string) => page.getByRole('button', { name }).first();

async function beginCase(page: Page): Promise<void> {
  await target(page, 'New case').click();
  await page.getByRole('textbox', { name: /^Case code/ }).fill(CODE);
  await page.getByRole('textbox', { name: /^Clinician/ }).fill('KV');
  await page.getByRole('textbox', { name: /^Assistant/ }).fill('BR');
  await target(page, 'Begin visit 1').click();
  await page.locator('h1.step-title').waitFor();
}

async function writeNote(page: Page): Promise<void> {
  await target(page, 'Note').click();
  await page.locator('.note-panel textarea').fill(NOTE);
  await target(page, 'Keep the note').click();
  await page.locator('.save-kept').waitFor();
}

async function sealHere(page: Page): Promise<string> {
  await target(page, /^more/i).click();
  await target(page, 'Settings').click();
  await askForPassphrase(page, PASSPHRASE);
  await seal(page);
  return untilSealed(page);
}

async function unlock(page: Page, passphrase: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Passphrase of the practice' }).fill(passphrase);
  await target(page, 'Unlock').click();
}

describe('under a passphrase', () => {
  it('nothing of a case stands in the browser’s files, whatever was there before; without one, it does', async () => {
    const profile = chair.newProfile();
    const first = await chair.open({ profile });
    await beginCase(first.page);
    await writeNote(first.page);
    await first.close();
    expect(filesWith(profile, [CODE, NOTE]).length).toBeGreaterThan(1);

    const { page, pictures, axe, close, troubles } = await chair.open({ profile });
    await target(page, new RegExp(CODE)).click();
    await page.locator('h1.step-title').waitFor();
    const code = await sealHere(page);
    await pictures('recovery-sheet');
    expect(await axe()).toEqual([]);
    await target(page, 'It is written down').click();
    await target(page, 'Lock now').click();
    await page.getByRole('textbox', { name: 'Passphrase of the practice' }).waitFor();
    await pictures('locked');
    expect(await axe()).toEqual([]);
    expect(await page.locator('body').innerText()).not.toContain(CODE);
    expect(await page.title()).toBe('Rimwise');
    await unlock(page, PASSPHRASE);
    await target(page, /back to the visit/i).click();
    await writeNote(page);
    expect(troubles()).toEqual([]);
    await close();
    expect(filesWith(profile, [CODE, NOTE, PASSPHRASE, code])).toEqual([]);

    const last = await chair.open({ profile });
    await unlock(last.page, 'not this one');
    await last.page.getByText('That does not open the record.').waitFor();
    await target(last.page, 'Use the recovery code').click();
    await last.page.getByRole('textbox', { name: /^Recovery code/ }).fill(code.toLowerCase().replaceAll('-', ' '));
    await fillTwice(last.page, 'nine brown wrens');
    await target(last.page, 'Unlock with the code').click();
    await target(last.page, new RegExp(CODE)).waitFor();
  }, 60_000);

  it('two windows are locked by the target in one of them, and each is unlocked by itself', async () => {
    const { page: one, context, troubles } = await chair.open();
    await beginCase(one);
    const two = await secondWindow(context);
    await target(two, new RegExp(CODE)).waitFor();
    await sealHere(one);
    const doors = [one, two].map((page) => page.getByRole('textbox', { name: 'Passphrase of the practice' }));
    // The other window knew of no passphrase; now it holds no key, and shows nothing.
    await doors[1]?.waitFor();
    await unlock(two, PASSPHRASE);
    await target(two, new RegExp(CODE)).waitFor();
    await target(one, 'It is written down').click();
    await target(one, 'Lock now').click();
    for (const door of doors) await door.waitFor();
    for (const page of [one, two]) expect(await page.locator('body').innerText()).not.toContain(CODE);
    await unlock(two, PASSPHRASE);
    await target(two, new RegExp(CODE)).waitFor();
    expect(await doors[0]?.isVisible()).toBe(true);
    expect(troubles()).toEqual([]);
  }, 60_000);
});
