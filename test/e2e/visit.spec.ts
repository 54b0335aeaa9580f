/** The first visit, end to end, in a real browser. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { loadLanguage } from '../../src/interpret/index.ts';
import { fakeSpeechScript, openDemo, say, stepNow, title, untilTitleChanges, walk, walkTo } from './drive.ts';
import { inBrowser } from './harness.ts';
import { byKeys, byVoice } from './ways.ts';

const chair = inBrowser();

const spokenOn = (page: Page) =>
  page.evaluate(() =>
    (
      window as unknown as { rimwiseFakeSpeech: { spoken: { text: string; lang: string }[] } }
    ).rimwiseFakeSpeech.spoken.map(({ text, lang }) => ({ text, lang })),
  );

async function dictatedInEnglish() {
  const beforeScript = await fakeSpeechScript({ onDevice: ['en-US', 'en-GB', 'en'], msPerCharacter: 5 });
  const { page, troubles } = await chair.open({ beforeScript });
  await openDemo(page);
  await page.getByRole('button', { name: /ear off/i }).click();
  const steps = await walk(page, byVoice(page));
  await page.getByText(/why is it signed all the same/i).waitFor();
  await say(page, 'not possible');
  await page.getByText(/visit 1 is closed/i).waitFor();
  return { steps, spoken: await spokenOn(page), troubles: troubles() };
}

async function dictatedInGerman() {
  await loadLanguage('de');
  const beforeScript = await fakeSpeechScript({ onDevice: ['de-DE', 'de'], msPerCharacter: 5 });
  const { page, troubles } = await chair.open({ beforeScript });
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByRole('button', { name: /Deutsch/ }).click();
  await page.getByRole('button', { name: /cases/i }).first().click();
  await openDemo(page);
  await page.getByRole('button', { name: /ear off/i }).click();
  const steps = await walk(page, byVoice(page, 'de'));
  await page.getByText(/why is it signed all the same/i).waitFor();
  await page.keyboard.press('1');
  await page.getByText(/visit 1 is closed/i).waitFor();
  return { steps, spoken: await spokenOn(page), troubles: troubles() };
}

describe('the first visit', () => {
  it('goes from sign-in to the lab sheet by keyboard and pedal alone', async () => {
    const { page, troubles, axe, foreignRequests } = await chair.open();
    await openDemo(page);
    const steps = await walk(page, byKeys(page));
    expect(steps.length).toBeGreaterThan(60);
    expect(steps).toContain('upper-impression');
    // Removed at once and not disinfected: the app asks why it is signed all the same.
    await page.getByText(/why is it signed all the same/i).waitFor();
    await page.keyboard.press('1');
    await page.getByRole('button', { name: 'Lab sheet' }).click();
    await page
      .getByRole('heading', { name: /lab sheet/i })
      .first()
      .waitFor();
    const sheet = await page.locator('body').innerText();
    expect(sheet).toContain('DEMO-01');
    expect(sheet).toMatch(/Pour the upper impression/);
    expect(sheet).toMatch(/removed before the set time/);
    expect(await axe()).toEqual([]);
    expect(troubles()).toEqual([]);
    expect(foreignRequests()).toEqual([]);
  }, 180_000);

  // Two chairs at once: each spends most of its time waiting for what is read back to end.
  it('goes the same way by voice, read back and agreed to number by number, in English and dictated in German', async () => {
    const both = await Promise.all([dictatedInEnglish(), dictatedInGerman()]);
    for (const { steps, troubles } of both) {
      expect(steps.length).toBeGreaterThan(60);
      expect(troubles).toEqual([]);
    }
    const [english, german] = both;
    expect(english.spoken.some(({ text }) => text.includes('fifty-eight'))).toBe(true);
    const inGerman = german.spoken.filter(({ lang }) => lang.startsWith('de'));
    expect(inGerman.some(({ text }) => text.includes('achtundfünfzig'))).toBe(true);
  }, 400_000);

  it('stands where it stood after a reload in the middle of a clock, and the clock has gone on', async () => {
    const { page } = await chair.open();
    await openDemo(page);
    const way = byKeys(page);
    for (let i = 0; i < 90; i += 1) {
      const step = await stepNow(page);
      if (step.kind === 'clock') break;
      const before = await title(page);
      if (step.kind === 'inform' || (step.kind === 'reading' && step.optional === true)) await way.next();
      else if (step.kind === 'check' || step.kind === 'decision') await way.answer(step);
      else if (step.kind === 'reading') await way.reading(step);
      await untilTitleChanges(page, before);
    }
    const standing = await title(page);
    await page.keyboard.press('1');
    await page.keyboard.press('Enter');
    await page
      .getByRole('button', { name: /seated/i })
      .first()
      .waitFor();
    await page.getByText(/kept/i).first().waitFor();
    await page.waitForTimeout(3000);
    await page.reload();
    await page.getByRole('button', { name: /DEMO-01/ }).click();
    await page.locator('h1.step-title').waitFor();
    expect(await title(page)).toBe(standing);
    await page
      .getByRole('button', { name: /seated/i })
      .first()
      .waitFor();
    const strip = await page.locator('body').innerText();
    const left = /(\d+):(\d\d)/.exec(strip);
    expect(left).not.toBeNull();
    const facts = await page.evaluate(
      () =>
        new Promise<{ at: number }[]>((resolve, reject) => {
          const open = indexedDB.open('rimwise');
          open.onerror = () => reject(new Error('no database'));
          open.onsuccess = () => {
            const all = open.result.transaction('facts').objectStore('facts').getAll();
            all.onsuccess = () =>
              resolve(
                (all.result as { at: number; body: { kind: string } }[]).filter((f) => f.body.kind === 'clockStarted'),
              );
          };
        }),
    );
    expect(facts).toHaveLength(1);
    expect(Date.now() - facts[0]!.at).toBeGreaterThan(3000);
  }, 120_000);

  it.each(['wide', 'narrow'] as const)(
    'has no accessibility trouble and nothing cut off on a %s screen, at every kind of step',
    async (size) => {
      const { page, axe, pictures } = await chair.open({ size });
      await openDemo(page);
      const way = byKeys(page);
      const looked = new Set<string>();
      for (let i = 0; i < 70; i += 1) {
        const step = await stepNow(page);
        if (!looked.has(step.kind)) {
          looked.add(step.kind);
          expect(await axe(), step.id).toEqual([]);
          const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
          expect(overflow, step.id).toBeLessThanOrEqual(0);
          await pictures(`visit-${step.kind}`);
        }
        if (step.kind === 'clock') break;
        const before = await title(page);
        if (step.kind === 'reading' && step.optional !== true) await way.reading(step);
        else if (step.kind === 'check' || step.kind === 'decision') await way.answer(step);
        else await way.next();
        await untilTitleChanges(page, before);
      }
      expect([...looked].sort()).toEqual(['check', 'clock', 'decision', 'inform', 'reading']);
    },
    120_000,
  );

  it.each(['wide', 'narrow'] as const)(
    'shows a number that stands apart, its flag, the record and the sheet on a %s screen',
    async (size) => {
      const { page, axe, pictures, troubles } = await chair.open({ size });
      await openDemo(page);
      await walkTo(page, byKeys(page), 'rest-height');
      const look = async (name: string) => {
        expect(await axe(), name).toEqual([]);
        const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        expect(overflow, name).toBeLessThanOrEqual(0);
        await pictures(name);
      };
      await look('rest-before');
      for (const mm of ['70.5', '74.5', '70']) {
        await page.keyboard.type(mm);
        if (mm === '74.5') await look('keypad');
        await page.keyboard.press('Enter');
        await page.locator('.confirm-number').waitFor();
        if (mm === '74.5') {
          await look('confirm');
          // Doubtful: moving on does not keep it.
          await page.keyboard.press('PageDown');
          await page.locator('.confirm-number').waitFor();
        }
        // The same key at once would be taken for a bounce: look first.
        await page.waitForTimeout(400);
        await page.keyboard.press('Enter');
        await page.locator('.confirm-number').waitFor({ state: 'detached' });
      }
      await page.getByText('stands apart').first().waitFor();
      await look('rest-after');
      await page.getByRole('button', { name: 'Answer' }).first().click();
      await page
        .getByText(/74\.5 stands apart/)
        .first()
        .waitFor();
      await look('flags');
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'More' }).click();
      await look('more');
      await page
        .getByRole('button', { name: /record/i })
        .first()
        .click();
      await page
        .getByRole('heading', { name: /record/i })
        .first()
        .waitFor();
      await look('record');
      await page
        .getByRole('button', { name: /correct/i })
        .first()
        .click();
      await page
        .getByText(/correcting/i)
        .first()
        .waitFor();
      await look('correcting');
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'More' }).click();
      await page
        .getByRole('button', { name: /summary/i })
        .first()
        .click();
      await page.getByRole('heading').first().waitFor();
      await look('summary');
      await page
        .getByRole('button', { name: /lab sheet/i })
        .first()
        .click();
      await page
        .getByRole('heading', { name: /lab sheet/i })
        .first()
        .waitFor();
      await look('lab-sheet');
      expect(troubles()).toEqual([]);
    },
    120_000,
  );
});
