/** A point tapped on the millimetre sheet and a place touched on a fitting surface, in a real browser, under its real headers. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { parseRecording, runReplays, type Recording } from '../../src/app/replay.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import { caseText } from '../../src/handoff/chain.ts';
import { good } from '../handoff/tamper.ts';
import { projectRoot } from '../helpers/source-tree.ts';
import { title } from './drive.ts';
import { inBrowser } from './harness.ts';

const chair = inBrowser();

/** The recorded case as far as the line of `visit` that says `last`, as a file. */
async function caseUntil(visit: number, last: string): Promise<Buffer> {
  const recordings = Array.from({ length: visit }, (_, i): Recording => {
    const parsed = parseRecording(readFileSync(`${projectRoot}scripts/recorded/five/visit-${i + 1}.jsonl`, 'utf8'));
    if (!parsed.ok) throw new Error(parsed.text);
    return parsed.recording;
  });
  const open = recordings[visit - 1]!;
  const end = open.lines.findIndex((line) => 'text' in line && line.text === last);
  const cut = { ...open, lines: open.lines.slice(0, end + 1) };
  const played = runReplays([...recordings.slice(0, -1), cut], {
    readings: readingDefs,
    practice: defaultPractice,
    appVersion: 'test',
  });
  if ('failed' in played) throw new Error(played.failed);
  return Buffer.from(caseText(good(await toCaseFile(played.at(-1)!.facts, 'chair-1'))));
}

async function opened(page: Page, buffer: Buffer): Promise<void> {
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
  await page.locator('h1.step-title').waitFor();
}

const titled = (page: Page, text: string) => page.locator('h1.step-title', { hasText: text }).waitFor();

it('a point is tapped twice, nudged and kept; the sheet of the try-in order has it', async () => {
  const { page, troubles, axe, pictures } = await chair.open();
  await opened(page, await caseUntil(2, 'tracing'));
  await page.getByRole('button', { name: /^Next/ }).first().click();
  await page.getByRole('button', { name: 'Sharp' }).click();
  await titled(page, 'Read the first point, across');
  const paper = page.locator('.sheet-tap');
  const box = (await paper.boundingBox())!;
  // A sixth across and two thirds down of the whole sheet of 60 mm: 10 across, 20 up.
  await page.mouse.click(box.x + box.width / 6, box.y + (box.height * 2) / 3);
  await page.getByText('10.0 across').waitFor();
  // In the close-up from 4 and 14 over 12 mm: 10.5 is 6.5 / 12 across, 20 is half way up.
  const close = (await paper.boundingBox())!;
  await page.waitForTimeout(600);
  await page.mouse.click(close.x + (close.width * 6.5) / 12, close.y + close.height / 2);
  await page.getByText('10.5 across').waitFor();
  await page.getByRole('button', { name: 'Left by 0.1 mm' }).click();
  await page.getByRole('button', { name: 'Left by 0.1 mm' }).click();
  await page.keyboard.press('ArrowUp');
  await page.getByText('10.3 across').waitFor();
  await page.getByText('20.1 up').waitFor();
  await pictures('tracing-sheet');
  expect(await axe()).toEqual([]);
  await page.getByRole('button', { name: 'Keep both' }).click();
  await titled(page, 'Make the second tracing');
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('button', { name: 'Summary' }).first().click();
  await page.locator('figcaption', { hasText: 'point 1 at 10.3 across, 20.1 up' }).waitFor();
  expect(troubles()).toEqual([]);
}, 60_000);

it('a place is touched on the lower surface, its targets far enough apart for a knuckle; the map has it', async () => {
  const { page, troubles, axe, pictures } = await chair.open();
  await opened(page, await caseUntil(5, 'lower'));
  await titled(page, 'Touch or say the lower region');
  const targets = page.locator('.region .target:visible');
  const boxes = await Promise.all((await targets.all()).map(async (one) => (await one.boundingBox())!));
  expect(boxes).toHaveLength(12);
  for (const [i, a] of boxes.entries()) {
    expect(Math.min(a.width, a.height)).toBeGreaterThanOrEqual(72);
    for (const b of boxes.slice(i + 1)) {
      const apart = Math.max(Math.abs(a.x - b.x) - a.width, Math.abs(a.y - b.y) - a.height);
      expect(apart).toBeGreaterThanOrEqual(11.5);
    }
  }
  await pictures('sore-surface');
  expect(await axe()).toEqual([]);
  await page.getByRole('button', { name: /^9, Ridge crest/ }).click();
  await titled(page, 'Say what it looks like');
  expect(await title(page)).toBe('Say what it looks like');
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('button', { name: 'Summary' }).first().click();
  await page
    .getByText(/visit 5: Lower jaw, ridge crest/)
    .first()
    .waitFor();
  await page
    .getByText(/Look at the bite and a sharp edge of bone first/)
    .first()
    .waitFor();
  expect(troubles()).toEqual([]);
}, 60_000);
