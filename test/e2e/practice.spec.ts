/** The practice's own things in a real browser: entered by touch and by keyboard, refused with why, there again in a new page. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openDemo, walkTo } from './drive.ts';
import { inBrowser } from './harness.ts';
import { byKeys } from './ways.ts';

const chair = inBrowser();
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

async function toPractice(page: Page): Promise<void> {
  await page.getByText('None yet.').waitFor();
  await press(page, 'Settings');
  await press(page, /practice/i);
  await page.getByRole('heading', { name: 'Materials' }).waitFor();
}

/** Nothing runs over the edge, and every target is large enough for a knuckle. */
async function fits(page: Page): Promise<void> {
  const { overflow, small } = await page.evaluate(() => ({
    overflow: document.documentElement.scrollWidth - window.innerWidth,
    small: [...document.querySelectorAll('button')]
      .filter((one) => one.getBoundingClientRect().height > 0 && one.getBoundingClientRect().height < 72)
      .map((one) => one.textContent),
  }));
  expect(overflow).toBeLessThanOrEqual(0);
  expect(small).toEqual([]);
}

/** A new case by somebody on the list and somebody who is not. */
async function beginCase(page: Page): Promise<void> {
  await press(page, 'New case');
  await page.getByRole('textbox', { name: 'Case code' }).fill('K-77');
  await press(page, 'Clinician LM');
  await page.getByRole('textbox', { name: 'Assistant' }).fill('BR');
  await press(page, 'Begin visit 1');
  await page.locator('h1.step-title').waitFor();
}

describe('the practice', () => {
  it('a material by keyboard alone, a range refused and then kept, a person; all there in a new page', async () => {
    const profile = chair.newProfile();
    const { page, axe, pictures, troubles, close } = await chair.open({ profile });
    await toPractice(page);
    await page.getByRole('button', { name: 'Add a material' }).focus();
    await page.keyboard.press('Enter');
    await page.getByLabel('Name').focus();
    await page.keyboard.type('Our own putty');
    await page.getByRole('button', { name: 'Kind: Silicone putty' }).focus();
    await page.keyboard.press('Enter');
    const fields = [
      ['Mixing ends', '40'],
      ['Working time ends', '30'],
      ['Remove from the mouth', '300'],
      ['Pour not before', '0'],
      ['Pour within', '600'],
      ['Lot', 'C 3'],
      ['Last day of use', '2031-06-30'],
    ] as const;
    for (const [label, text] of fields) {
      await page.getByLabel(label).focus();
      await page.keyboard.type(text);
    }
    await page.keyboard.press('Enter');
    await page.getByText('Working time ends before mixing does.').waitFor();
    expect(await axe()).toEqual([]);
    await fits(page);
    await pictures('practice-material');
    await page.getByLabel('Working time ends').focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('90');
    await page.keyboard.press('Enter');
    await page.getByText('Our own putty').waitFor();

    await press(page, /^Show ranges/);
    await press(page, 'Change Upper ridge width');
    await page.getByLabel('Plausible to').fill('301');
    await press(page, 'Keep');
    await page.getByText('The instrument reads 0 to 300 mm.').waitFor();
    await page.getByLabel('Plausible to').fill('80');
    await press(page, 'Keep');
    await page.getByText('the practice’s own').waitFor();

    await press(page, 'Add a person');
    await page.getByRole('textbox', { name: 'Initials' }).fill('LM');
    await press(page, 'Role: clinician');
    await press(page, 'Keep');
    await page.getByText('LM, clinician').waitFor();
    await pictures('practice-lists');
    await close();

    const again = await chair.open({ profile });
    await toPractice(again.page);
    await again.page.getByText('Our own putty').waitFor();
    await again.page.getByText('lot C 3, last day of use 2031-06-30').waitFor();
    await again.page.getByText('LM, clinician').waitFor();
    expect([...troubles(), ...again.troubles()]).toEqual([]);

    await press(again.page, 'Back to the settings');
    await press(again.page, /cases/i);
    await beginCase(again.page);
    expect(await again.page.locator('body').innerText()).toContain('K-77');
    await again.close();
  }, 60_000);

  it('a number that waited when the page went away is named in the next, and the keypad says why a sign is not taken', async () => {
    const profile = chair.newProfile();
    const { page, close } = await chair.open({ profile });
    await openDemo(page);
    await walkTo(page, byKeys(page), 'upper-width');
    await page.keyboard.type('62.555');
    await page.getByText('at most two decimals can be kept').waitFor();
    await page.keyboard.press('Enter');
    await page.locator('.confirm-number').waitFor();
    await close();
    const again = await chair.open({ profile });
    await press(again.page, /DEMO-01/);
    const said = again.page.locator('.said-not');
    await said.waitFor();
    expect(await said.innerText()).toContain('Not kept: upper ridge width 62.55 mm, which waited for its yes.');
    await again.pictures('waited');
    await again.close();
  }, 60_000);
});
