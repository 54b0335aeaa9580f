/** The ear in a real browser, on made-up speech: consent, a microphone denied, its own words not heard, talk that must not count. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fakeSpeechScript, openDemo, say, title, walkTo } from './drive.ts';
import { inBrowser } from './harness.ts';
import { byKeys } from './ways.ts';

const chair = inBrowser();

interface Fake {
  say(text: string): boolean;
  murmur(text: string): boolean;
  readonly listening: boolean;
  readonly sessions: readonly { readonly onDevice: boolean; readonly tag: string }[];
  readonly spoken: readonly { readonly text: string; readonly lang: string }[];
  readonly conditions: { microphone: string };
}
type WithFake = { readonly rimwiseFakeSpeech: Fake };

const ear = (page: Page) => page.locator('button.ear');
const shows = (page: Page, words: RegExp) => ear(page).filter({ hasText: words }).waitFor({ timeout: 20_000 });
const sessions = (page: Page) => page.evaluate(() => (window as unknown as WithFake).rimwiseFakeSpeech.sessions.length);
const listening = (page: Page) => page.evaluate(() => (window as unknown as WithFake).rimwiseFakeSpeech.listening);

async function agree(page: Page): Promise<void> {
  await ear(page).click();
  await shows(page, /consent wanted/i);
  await ear(page).click();
  await page.getByRole('button', { name: /yes, it may be sent/i }).click();
}

const toUpperWidth = (page: Page) => walkTo(page, byKeys(page), 'upper-width');

async function setting(page: Page, press: (page: Page) => Promise<void>): Promise<void> {
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByRole('heading', { name: 'Settings' }).waitFor();
  await press(page);
  await page.getByRole('button', { name: 'Back to the visit' }).click();
  await page.locator('h1.step-title').waitFor();
}

describe('consent', () => {
  it('is asked for before anything is sent, can be refused, given, and taken back', async () => {
    const { page, troubles, axe } = await chair.open({ beforeScript: await fakeSpeechScript() });
    await openDemo(page);
    await ear(page).click();
    await shows(page, /consent wanted/i);
    expect(await sessions(page)).toBe(0);
    await ear(page).click();
    await page.getByText(/may speech be sent off this device/i).waitFor();
    expect(await axe()).toEqual([]);
    await page.getByRole('button', { name: /no, stay on this device/i }).click();
    expect(await sessions(page)).toBe(0);
    await page.keyboard.press('1');
    await ear(page).click();
    await page.getByRole('button', { name: /yes, it may be sent/i }).click();
    await shows(page, /listening/i);
    expect(await sessions(page)).toBe(1);
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('button', { name: /take back/i }).click();
    await shows(page, /ear off/i);
    expect(await listening(page)).toBe(false);
    expect(troubles()).toEqual([]);
  });
});

describe('a microphone that is denied', () => {
  it('is named on screen; the visit goes on by keys, and one touch tries again', async () => {
    const { page, troubles } = await chair.open({ beforeScript: await fakeSpeechScript({ microphone: 'denied' }) });
    await openDemo(page);
    await agree(page);
    await shows(page, /cannot listen.*microphone/is);
    const before = await title(page);
    await page.keyboard.press('1');
    await page.waitForFunction((old) => document.querySelector('h1.step-title')?.textContent !== old, before);
    await page.evaluate(() => {
      (window as unknown as WithFake).rimwiseFakeSpeech.conditions.microphone = 'granted';
    });
    await ear(page).click();
    await shows(page, /listening/i);
    expect(troubles()).toEqual([]);
  });
});

describe('while the app speaks', () => {
  it('the ear is shut and says so, and hears nothing of what the loudspeaker says', async () => {
    const beforeScript = await fakeSpeechScript({ onDevice: ['en-US', 'en-GB'], echo: true, msPerCharacter: 40 });
    const { page, troubles } = await chair.open({ beforeScript });
    await openDemo(page);
    await toUpperWidth(page);
    await ear(page).click();
    await shows(page, /listening/i);
    await say(page, 'fifty-eight point five');
    await shows(page, /speaking, ear shut/i);
    expect(await listening(page)).toBe(false);
    await shows(page, /yes or a no/i);
    expect(await page.locator('.confirm-number').innerText()).toContain('58.5');
    await say(page, 'yes');
    await page.locator('.confirm-number').waitFor({ state: 'detached' });
    const spoken = await page.evaluate(() =>
      (window as unknown as WithFake).rimwiseFakeSpeech.spoken.map(({ text }) => text),
    );
    expect(spoken.some((text) => text.includes('fifty-eight point five'))).toBe(true);
    expect(troubles()).toEqual([]);
  });
});

describe('talk that must not move the visit', () => {
  it('push-to-talk: the key opens the ear, its release closes it, and the last words count', async () => {
    const { page, troubles } = await chair.open({ beforeScript: await fakeSpeechScript({ onDevice: ['en-GB'] }) });
    await openDemo(page);
    await setting(page, (p) => p.getByRole('button', { name: /only while held/i }).click());
    await shows(page, /shut for now.*F8/is);
    const before = await title(page);
    await page.keyboard.down('F8');
    await shows(page, /listening/i);
    await page.evaluate(() => (window as unknown as WithFake).rimwiseFakeSpeech.murmur('yes'));
    await page.keyboard.up('F8');
    await page.waitForFunction((old) => document.querySelector('h1.step-title')?.textContent !== old, before);
    await shows(page, /shut for now/i);
    expect(await listening(page)).toBe(false);
    expect(troubles()).toEqual([]);
  });

  it('only at readings: shut at a question, open at a number', async () => {
    const { page } = await chair.open({ beforeScript: await fakeSpeechScript({ onDevice: ['en-GB'] }) });
    await openDemo(page);
    await setting(page, (p) => p.getByRole('button', { name: /only at readings/i }).click());
    await ear(page).click();
    await shows(page, /shut for now.*number/is);
    expect(await sessions(page)).toBe(0);
    await toUpperWidth(page);
    await shows(page, /listening/i);
  });

  it('an address word: without it nothing moves', async () => {
    const { page } = await chair.open({ beforeScript: await fakeSpeechScript({ onDevice: ['en-GB'] }) });
    await openDemo(page);
    await setting(page, async (p) => {
      await p.getByLabel(/one short word/i).fill('rim');
      await p.getByRole('button', { name: 'Use it' }).click();
      await p.getByText(/commands begin with “rim”/i).waitFor();
    });
    await ear(page).click();
    const before = await title(page);
    await say(page, 'yes');
    await page.waitForTimeout(300);
    expect(await title(page)).toBe(before);
    await say(page, 'rim yes');
    await page.waitForFunction((old) => document.querySelector('h1.step-title')?.textContent !== old, before);
  });
});

describe('settings', () => {
  it.each(['wide', 'narrow'] as const)(
    'are large, plain, reachable by keyboard and kept, on a %s screen',
    async (size) => {
      const profile = chair.newProfile();
      const beforeScript = await fakeSpeechScript({ install: 'throws' });
      const { page, troubles, axe, close } = await chair.open({ size, beforeScript, profile });
      await page.getByRole('button', { name: 'Settings' }).click();
      await page.getByRole('heading', { name: 'Settings' }).waitFor();
      await page.getByRole('button', { name: /fetch english/i }).click();
      await page.getByText(/did not fetch english/i).waitFor();
      expect(await axe()).toEqual([]);
      const small = await page.evaluate(() =>
        [...document.querySelectorAll('button, input')]
          .filter((one) => one.getBoundingClientRect().height < 72 || one.getBoundingClientRect().width < 72)
          .map((one) => one.textContent),
      );
      expect(small).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(
        0,
      );
      await page.getByRole('button', { name: 'Back to the cases' }).focus();
      await page.keyboard.press('Tab');
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      const chosen = page.locator('.setting-language [aria-pressed="true"]');
      await chosen.filter({ hasText: 'Deutsch' }).waitFor();
      expect(troubles()).toEqual([]);
      await close();
      const again = await chair.open({ size, beforeScript, profile });
      await again.page.getByRole('button', { name: 'Settings' }).click();
      await again.page.locator('.setting-language [aria-pressed="true"]').filter({ hasText: 'Deutsch' }).waitFor();
    },
  );
});
