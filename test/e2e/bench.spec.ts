/** Clinic to laboratory and back, with files alone: two people, two browsers, nothing between them. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { Fact } from '../../src/domain/case/facts.ts';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import { caseText } from '../../src/handoff/chain.ts';
import { recorded } from '../handoff/cases.ts';
import { good } from '../handoff/tamper.ts';
import { inBrowser } from './harness.ts';

const chair = inBrowser();
const PASSPHRASE = 'seven wet gloves';

/** A first visit that ended a minute ago, its impressions not poured yet. */
async function visitJustClosed(): Promise<Buffer> {
  const { facts } = recorded('clean');
  const shift = Date.now() - 60_000 - (facts.at(-1)?.at ?? 0);
  const waiting = facts.map((fact): Fact => {
    const { body } = fact;
    const seen = body.kind === 'takenOver' ? { kind: 'alarmSeen', clock: body.clock, phase: 'mix' } : body;
    return { ...fact, at: fact.at + shift, body: seen as Fact['body'] };
  });
  return Buffer.from(caseText(good(await toCaseFile(waiting, 'chair-1'))));
}

async function takeIn(page: Page, buffer: Buffer): Promise<void> {
  await page
    .getByLabel('Case file', { exact: true })
    .setInputFiles({ name: 'case.json', mimeType: 'application/json', buffer });
}

/** What the page hands over when `work` is done. */
async function download(page: Page, work: () => Promise<void>): Promise<Buffer> {
  const waiting = page.waitForEvent('download');
  await work();
  return readFileSync(await (await waiting).path());
}

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

/** What a reader of QR codes sees on the screen. */
async function scanned(page: Page): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'rimwise-code-'));
  try {
    const path = join(folder, 'sheet.png');
    await page.locator('.sheet-code svg').screenshot({ path });
    return execFileSync('zbarimg', ['-q', '--raw', path], { encoding: 'utf8' }).trim();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The file as the clinic hands it over: under a passphrase, its digest on the sheet as text and code. */
async function handedOver(page: Page): Promise<Buffer> {
  await takeIn(page, await visitJustClosed());
  await page
    .getByText(/^New case DEMO-C: \d+ entries\.$/)
    .last()
    .waitFor();
  await press(page, /DEMO-C/);
  await press(page, 'Lab sheet');
  const digest = await page.locator('.sheet-code code').innerText();
  expect(digest).toMatch(/^[0-9a-f]{64}$/);
  expect(await scanned(page)).toBe(`urn:sha256:${digest}`);
  await press(page, 'Case file');
  await page.getByRole('textbox', { name: /^Passphrase/ }).fill(PASSPHRASE);
  await page.getByLabel('The same again').fill('seven dry gloves');
  await press(page, 'Save under the passphrase');
  await page.getByText('The two are not the same.').waitFor();
  await page.getByLabel('The same again').fill(PASSPHRASE);
  return download(page, () => press(page, 'Save under the passphrase'));
}

const left = (page: Page) => page.locator('.bench-wait .bench-digits').first().innerText();

/** The laboratory opens it, works, asks and sends it back. */
async function worked(page: Page, sealed: Buffer): Promise<Buffer> {
  await press(page, 'Settings');
  await press(page, /In the laboratory/);
  await press(page, 'Back to the cases');
  await takeIn(page, sealed);
  await page.getByRole('textbox', { name: /^Passphrase/ }).fill(PASSPHRASE);
  await press(page, 'Open the file');
  await page.getByRole('heading', { name: /At the bench: DEMO-C/ }).waitFor();
  const size = await page
    .locator('.bench-digits')
    .first()
    .evaluate((node) => getComputedStyle(node).fontSize);
  expect(Number.parseFloat(size)).toBeGreaterThanOrEqual(60);
  const before = await left(page);
  await expect.poll(() => left(page), { timeout: 5000 }).not.toBe(before);
  await page.getByLabel('Your initials').fill('MT');
  await press(page, /^Done: Trim the casts/);
  await page.getByText(/^Done, MT/).waitFor();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.bench-done').count()).toBe(2);
  const waits = await page.locator('.bench-wait').count();
  await press(page, /^Taken over: Pour/);
  await expect.poll(() => page.locator('.bench-wait').count()).toBe(waits - 1);
  await press(page, 'Ask the clinic');
  await page.getByLabel('Question to the clinic').fill('Which rim first?');
  await press(page, 'Send the question');
  await press(page, 'Close');
  await press(page, 'Work returned');
  await page.locator('.bench-ask textarea').fill('trays and rims');
  await page.locator('.bench-ask').getByRole('button', { name: 'Work returned' }).click();
  return download(page, () => press(page, 'Save without a passphrase'));
}

it('goes to the laboratory and comes back, seen before the next visit and at its first step', async () => {
  const clinic = await chair.open({ profile: chair.newProfile() });
  const lab = await chair.open({ profile: chair.newProfile() });
  const back = await worked(lab.page, await handedOver(clinic.page));
  expect(await lab.axe()).toEqual([]);
  await lab.pictures('bench');
  await press(lab.page, 'Lab sheet');
  await lab.page.locator('.sheet-code').waitFor();
  // A number stands 34 px high beside its line; the next one begins below it.
  const lines = await lab.page.locator('.sheet .work li').evaluateAll((all) => all.map((one) => one.clientHeight));
  expect(Math.min(...lines)).toBeGreaterThanOrEqual(34);
  const { page } = clinic;
  await press(page, 'Summary');
  await takeIn(page, back);
  await page
    .getByText(/5 new entries, \d+ already here/)
    .last()
    .waitFor();
  const news = await page.locator('.from-lab').innerText();
  expect(news).toContain('Which rim first?');
  expect(news).toMatch(/Work returned by MT.*trays and rims/s);
  expect(await page.locator('.case-line').innerText()).toMatch(/2 lines done.*1 question open/is);
  await press(page, /Open visit 2/);
  await page.locator('.lab-bar').getByText('Which rim first?').waitFor();
  await clinic.pictures('visit-2-with-question');
  await page.locator('.lab-bar').getByRole('button', { name: 'Answer' }).click();
  await page.getByLabel(/^Answer as/).fill('The upper one.');
  await page.keyboard.press('Enter');
  await page.locator('.lab-answer').getByText('The upper one.').waitFor();
  expect([...clinic.troubles(), ...lab.troubles()]).toEqual([]);
  expect([...clinic.foreignRequests(), ...lab.foreignRequests()]).toEqual([]);
});
