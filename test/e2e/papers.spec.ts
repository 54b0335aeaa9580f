/** What leaves the app: a PDF and a case file, made in the browser and handed over as downloads. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openDemo } from './drive.ts';
import { inBrowser } from './harness.ts';

const chair = inBrowser();

describe('the lab sheet', () => {
  it.each([
    ['PDF, A4', /^lab-sheet-DEMO-01-visit-1\.pdf$/, /^%PDF-1\./],
    ['FHIR file, with the PDF inside', /^fhir-DEMO-01-visit-1\.json$/, /"resourceType": "Bundle"/],
  ])('leaves as “%s”, made on this device alone', async (button, name, begins) => {
    const { page, troubles, foreignRequests } = await chair.open();
    await openDemo(page);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'More' }).click();
    await page
      .getByRole('button', { name: /lab sheet/i })
      .first()
      .click();
    const waiting = page.waitForEvent('download', { timeout: 30_000 });
    await page.getByRole('button', { name: button }).click();
    const download = await waiting;
    expect(download.suggestedFilename()).toMatch(name);
    const head = readFileSync(await download.path())
      .subarray(0, 300)
      .toString('latin1');
    expect(head).toMatch(begins);
    await page.getByText(/File made/).waitFor();
    expect(troubles()).toEqual([]);
    expect(foreignRequests()).toEqual([]);
  });
});
