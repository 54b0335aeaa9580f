/** A sample of `npm run test:crash`, and the two copies in a real browser. */
import { describe, expect, inject, it } from 'vitest';
import { randomFrom } from '../../scripts/crash/random.ts';
import { dictate } from '../../scripts/crash/dictate.ts';
import { runLives } from '../../scripts/crash/lives.ts';
import { readStored } from '../../scripts/crash/check.ts';
import { openDemo } from './drive.ts';
import { inBrowser } from './harness.ts';

const chair = inBrowser();

describe('what was called kept', () => {
  it('is there after the browser was killed in the middle of a visit, five times', async () => {
    const totals = await runLives({
      kills: 5,
      browserPath: inject('browserPath'),
      address: inject('address'),
      random: randomFrom(7),
    });
    expect(totals).toMatchObject({ kills: 5, lost: 0, wrong: [] });
    expect(totals.acknowledged).toBeGreaterThan(20);
  }, 120_000);

  it('is there after the browser had thrown its database away, and that is said', async () => {
    const { page } = await chair.open();
    await openDemo(page);
    const stop = { now: false };
    const working = dictate(page, stop);
    await page.waitForTimeout(3000);
    stop.now = true;
    await working;
    await page.locator('.save-kept').waitFor();
    const title = await page.locator('h1.step-title').innerText();
    const before = await readStored(page);
    expect(Object.values(before)[0]!.length).toBeGreaterThan(10);
    // A page of the same address that does not run the app holds no connection open.
    await page.goto(`${inject('address')}icon.svg`);
    await page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const request = indexedDB.deleteDatabase('rimwise');
          request.onsuccess = () => resolve();
          request.onerror = request.onblocked = () => reject(new Error('not deleted'));
        }),
    );
    await page.goto(inject('address'));
    await page.getByText(/restored from the second copy/i).waitFor();
    await page.getByRole('button', { name: /DEMO-01/ }).click();
    await page.locator('h1.step-title').waitFor();
    expect(await page.locator('h1.step-title').innerText()).toBe(title);
    expect(await readStored(page)).toEqual(before);
  }, 60_000);
});
