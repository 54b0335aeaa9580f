/** A backup made in one browser and taken back in another, as after a lost device. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { inBrowser } from './harness.ts';

const chair = inBrowser();

it('a backup made here brings the case back on a device that has nothing, and then brings nothing new', async () => {
  const { page, troubles, axe } = await chair.open();
  await page.getByText('None yet.').waitFor();
  await page.getByRole('button', { name: 'New case' }).click();
  await page.getByLabel('Case code').fill('K-17');
  await page
    .getByLabel(/clinician/i)
    .last()
    .fill('KV');
  await page
    .getByLabel(/assistant/i)
    .last()
    .fill('BR');
  await page.getByRole('button', { name: 'Begin visit 1' }).click();
  await page.locator('h1.step-title').waitFor();
  // What is still being fetched would be broken off by the reload, and be told as a trouble.
  await page.waitForLoadState('networkidle');
  await page.reload();
  await page.getByText('No backup yet: 1 case in no other place.').waitFor();
  await page.getByRole('button', { name: 'Make a backup' }).click();
  expect(await axe()).toEqual([]);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Without a passphrase' }).click(),
  ]);
  await page.getByText('Last backup: today, nothing changed since.').waitFor();
  const file = await download.path();
  expect(readFileSync(file, 'utf8')).toContain('"rimwise-backup"');

  const bare = await chair.open({ size: 'narrow' });
  await bare.page.getByText('None yet.').waitFor();
  await bare.page.setInputFiles('input[aria-label="Backup file"]', file);
  await bare.page.getByText(/^1 case, whole and unchanged/).waitFor();
  await bare.pictures('backup-found');
  await bare.page.getByRole('button', { name: 'Add the case' }).click();
  await bare.page.locator('.case-list', { hasText: 'K-17' }).waitFor();
  await bare.page.setInputFiles('input[aria-label="Backup file"]', file);
  await bare.page.getByRole('button', { name: 'Add the case' }).click();
  await bare.page
    .getByText(/1 case: nothing new/)
    .first()
    .waitFor();
  expect([...troubles(), ...bare.troubles()]).toEqual([]);
});
