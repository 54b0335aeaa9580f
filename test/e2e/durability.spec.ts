/** A sample of `npm run test:crash`, and the two copies in a real browser. */
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { randomFrom } from '../../scripts/crash/random.ts';
import { dictate } from '../../scripts/crash/dictate.ts';
import { runLives } from '../../scripts/crash/lives.ts';
import { readStored } from '../../scripts/crash/check.ts';
import { browserDigest, soundLength } from '../../src/storage/chain.ts';
import { openDemo, title, untilTitleChanges } from './drive.ts';
import { inBrowser } from './harness.ts';
import { crash, secondWindow } from './two-windows.ts';

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
    const standing = await title(page);
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
    expect(await title(page)).toBe(standing);
    expect(await readStored(page)).toEqual(before);
  }, 60_000);
});

describe('a case open in two windows', () => {
  const elsewhere = /^being written in another window/i;
  const takeOver = { name: /take over here/i };

  it('is followed live, taken over, and freed when the window that writes it dies; nothing is lost or doubled', async () => {
    const { page: one, context } = await chair.open();
    await openDemo(one);
    const two = await secondWindow(context);
    await two.getByRole('button', { name: /DEMO-01/ }).click();
    await two.getByText(elsewhere).waitFor();
    const work = async (page: Page, ms: number) => {
      const stop = { now: false };
      const working = dictate(page, stop);
      await page.waitForTimeout(ms);
      stop.now = true;
      await working;
      await page.locator('.save-kept').waitFor();
    };
    await work(one, 1500);
    await two.waitForFunction(
      (shown) => document.querySelector('h1.step-title')?.textContent === shown,
      await title(one),
    );

    const before = Object.values(await readStored(two))[0]!.length;
    await two.keyboard.press('Enter');
    await two
      .getByText(/take it over here to go on/i)
      .first()
      .waitFor();
    expect(Object.values(await readStored(two))[0]).toHaveLength(before);

    await two.getByRole('button', takeOver).click();
    await one.getByText(elsewhere).waitFor();
    await two.getByText(elsewhere).waitFor({ state: 'detached' });
    await work(two, 1500);
    const there = await title(two);
    await crash(two);
    await one.getByText(elsewhere).waitFor({ state: 'detached' });
    expect(await title(one)).toBe(there);
    await work(one, 1000);

    const [entries = []] = Object.values(await readStored(one));
    expect(entries.length).toBeGreaterThan(before);
    expect(entries.map((entry) => (entry as { seq: number }).seq)).toEqual(entries.map((_, index) => index + 1));
    expect(await soundLength(entries, browserDigest())).toBe(entries.length);
  }, 60_000);

  it('is let go of by a window that goes to another page, and taken up again when it comes back', async () => {
    const { page: one, context } = await chair.open();
    await openDemo(one);
    await one.goto('about:blank');
    const two = await secondWindow(context);
    await two.getByRole('button', { name: /DEMO-01/ }).click();
    await two.locator('h1.step-title').waitFor();
    expect(await two.getByText(elsewhere).count()).toBe(0);
    await one.goBack();
    await two.close();
    await one.bringToFront();
    const again = one.locator('h1.step-title').or(one.getByRole('button', { name: /DEMO-01/ }));
    await again.first().waitFor();
    if ((await one.locator('h1.step-title').count()) === 0) await one.getByRole('button', { name: /DEMO-01/ }).click();
    const before = await title(one);
    await one.keyboard.press('Enter');
    await untilTitleChanges(one, before);
  }, 60_000);
});
