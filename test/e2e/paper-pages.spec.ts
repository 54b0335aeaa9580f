/** The sheet as a browser prints it: two pages after each hand-over, on both papers, and nothing on it too small to be read. */
import type { Page } from 'playwright-core';
import { afterAll, expect, it } from 'vitest';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import { caseText } from '../../src/handoff/chain.ts';
import { recordedHandovers } from '../handoff/cases.ts';
import { good } from '../handoff/tamper.ts';
import { run, scratch } from '../handoff/tools.ts';
import { inBrowser } from './harness.ts';

const chair = inBrowser();
const files = scratch();
afterAll(() => files.remove());

async function sheetOf(page: Page, buffer: Buffer): Promise<void> {
  await page
    .getByLabel('Case file', { exact: true })
    .setInputFiles({ name: 'case.json', mimeType: 'application/json', buffer });
  await page
    .getByText(/^New case DEMO-5: \d+ entries\.$/)
    .last()
    .waitFor();
  await page
    .getByRole('button', { name: /DEMO-5/ })
    .first()
    .click();
  const more = page.getByRole('button', { name: 'More', exact: true });
  const sheet = page.getByRole('button', { name: /lab sheet/i }).first();
  await more.or(sheet).first().waitFor();
  if (!(await sheet.isVisible())) await more.click();
  await sheet.click();
  await page.locator('.sheet-code code').waitFor();
}

/** Sizes in points at which letters of the text and of the drawings stand on paper, and whether anything sticks out. */
const lettersOf = (page: Page) =>
  page.evaluate(() => {
    const shown = [...document.querySelectorAll('.sheet *')].filter(
      (one) =>
        one.getClientRects().length > 0 &&
        [...one.childNodes].some((child) => child.nodeType === 3 && child.textContent?.trim() !== ''),
    );
    const size = (one: Element) => Number.parseFloat(getComputedStyle(one).fontSize) * 0.75;
    const drawn = shown.filter((one) => one instanceof SVGTextElement);
    return {
      text: Math.min(...shown.filter((one) => !(one instanceof SVGElement)).map(size)),
      drawings: Math.min(...drawn.map((one) => size(one) * (one.getScreenCTM()?.a ?? 0))),
      cutOff: drawn
        .filter((one) => {
          const [word, drawing] = [one.getBoundingClientRect(), one.ownerSVGElement?.getBoundingClientRect()];
          return drawing === undefined || word.left < drawing.left - 1 || word.right > drawing.right + 1;
        })
        .map((one) => one.textContent),
      tooWide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    };
  });

/** Width in CSS pixels of what is printed on: paper less its margins of 11 mm. */
const PAPERS = [
  { format: 'A4', width: Math.floor(((210 - 22) / 25.4) * 96) },
  { format: 'Letter', width: Math.floor(((215.9 - 22) / 25.4) * 96) },
] as const;

it.each(recordedHandovers())('the hand-over after $summary.visitName is printed on two pages', async ({ facts }) => {
  const { page, troubles } = await chair.open();
  await sheetOf(page, Buffer.from(caseText(good(await toCaseFile(facts, 'chair-1')))));
  for (const { format, width } of PAPERS) {
    const file = files.put(`${format}.pdf`, await page.pdf({ format }));
    expect(run('pdfinfo', [file])).toMatch(/^Pages:\s+[12]$/m);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width, height: 1000 });
    const letters = await lettersOf(page);
    expect(letters.text).toBeGreaterThanOrEqual(9);
    expect(letters.drawings).toBeGreaterThanOrEqual(7);
    expect(letters.cutOff).toEqual([]);
    expect(letters.tooWide).toBeLessThanOrEqual(0);
    await page.emulateMedia({ media: null });
  }
  expect(troubles()).toEqual([]);
});
