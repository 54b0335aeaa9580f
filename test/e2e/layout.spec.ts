/** Screens with many clocks, drawn from made-up states in a real browser: nothing to be touched is cut off, all can be read. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import type { Page } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inBrowser, sizes } from './harness.ts';

const chair = inBrowser();
let server: ViteDevServer;
let address = '';
const cacheDir = mkdtempSync(join(tmpdir(), 'rimwise-preview-'));

beforeAll(async () => {
  const root = fileURLToPath(new URL('../../src/', import.meta.url));
  server = await createServer({
    root,
    cacheDir,
    configFile: false,
    logLevel: 'silent',
    plugins: [react()],
    server: { host: '127.0.0.1', port: 0, hmr: false, watch: null },
  });
  await server.listen();
  address = server.resolvedUrls?.local[0] ?? '';
});
afterAll(async () => {
  await server.close();
  rmSync(cacheDir, { recursive: true, force: true });
});

async function show(page: Page, state: string): Promise<void> {
  await page.goto(`${address}preview.html?state=${state}`);
  await page.locator('.app').waitFor();
}

/** Names of targets and fields of which a corner lies outside the window or under something else. */
const cutOff = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('button, input')].flatMap((element) => {
      const { left, right, top, bottom } = element.getBoundingClientRect();
      const inside = 4;
      const corners = [left + inside, right - inside].flatMap((x) =>
        [top + inside, bottom - inside].map((y) => [x, y]),
      );
      const covered = corners.filter(([x = 0, y = 0]) => {
        const there = document.elementFromPoint(x, y);
        // Corners are round: what lies there is the target, something in it, or its next of kin.
        return there === null || !(element.contains(there) || there.contains(element));
      });
      return covered.length === 0 ? [] : [element.textContent || element.getAttribute('aria-label') || element.tagName];
    }),
  );

/** The smallest letters drawn in what `selector` finds, in pixels of the screen. */
const letters = (page: Page, selector: string) =>
  page.evaluate((wanted) => {
    const sizesOf = [...document.querySelectorAll(wanted)]
      .filter((element) => (element.textContent ?? '').trim() !== '')
      .map((element) => {
        const scale = element instanceof SVGGraphicsElement ? (element.getScreenCTM()?.a ?? 1) : 1;
        return Number.parseFloat(getComputedStyle(element).fontSize) * scale;
      });
    return Math.min(...sizesOf);
  }, selector);

describe.each(Object.entries(sizes))('with five clocks, on a %s screen', (_name, size) => {
  it('nothing to be touched is cut off, and all can be read from two metres', async () => {
    const { page } = await chair.open();
    await page.setViewportSize(size);
    for (const state of ['reason-five', 'check-five', 'clock-five', 'clock-five-late']) {
      await show(page, state);
      expect(await page.locator('button:visible').count()).toBeGreaterThan(8);
      expect([state, await cutOff(page)]).toEqual([state, []]);
      expect(await letters(page, '.chip-name, .chip-phase, .chip-due')).toBeGreaterThanOrEqual(18);
    }
    for (const state of ['clock-five', 'clock-working']) {
      await show(page, state);
      expect(await letters(page, '.timeline text')).toBeGreaterThanOrEqual(18);
      expect(await letters(page, '.clock-face .big-phase, .clock-face .plan li:first-child')).toBeGreaterThanOrEqual(
        40,
      );
    }
  });

  it('all of them are listed at one touch, each with its words', async () => {
    const { page, axe } = await chair.open();
    await page.setViewportSize(size);
    await show(page, 'clock-five');
    await page.getByRole('button', { name: 'All 5 clocks' }).click();
    expect(await page.locator('.all-clocks li').count()).toBe(5);
    expect(await letters(page, '.all-clocks .due-what, .all-clocks time')).toBeGreaterThanOrEqual(30);
    expect(await axe()).toEqual([]);
  });
});

describe.each(Object.entries(sizes))('with twelve alarms at once, on a %s screen', (_name, size) => {
  it('the bar leaves room for the list of cases, and every row can be pressed', async () => {
    const { page } = await chair.open();
    await page.setViewportSize(size);
    await show(page, 'cases-ringing-many');
    await page.getByText('nd 9 more: K-3113').waitFor();
    const bar = await page.locator('.top').boundingBox();
    expect(bar?.height).toBeLessThan(size.height / 3);
    const rows = await page.locator('.case-list li button').all();
    expect(rows).toHaveLength(12);
    for (const one of rows) await one.click({ trial: true, timeout: 2000 });
  });
});

/** Words of which a part lies outside what holds them, and words that are broken in their middle. */
const spoilt = (page: Page, selector: string) =>
  page.evaluate((wanted) => {
    const lineOf = (node: Node, from: number) => {
      const range = document.createRange();
      range.setStart(node, from);
      range.setEnd(node, from + 1);
      return range.getBoundingClientRect().top;
    };
    const broken = (element: Element) =>
      [...element.childNodes].some((node) =>
        [...(node.nodeType === Node.TEXT_NODE ? (node.textContent ?? '') : '').matchAll(/\p{L}{2,}/gu)].some(
          ({ index, 0: word }) => lineOf(node, index) !== lineOf(node, index + word.length - 1),
        ),
      );
    const clipped = (element: Element) => {
      const { right, bottom } = element.getBoundingClientRect();
      for (let held = element.parentElement; held !== null; held = held.parentElement) {
        const edge = held.getBoundingClientRect();
        if (getComputedStyle(held).overflow !== 'visible' && (right > edge.right + 1 || bottom > edge.bottom + 1))
          return true;
      }
      return false;
    };
    return [...document.querySelectorAll(wanted)]
      .filter((element) => element.getClientRects().length > 0 && (broken(element) || clipped(element)))
      .map((element) => element.textContent);
  }, selector);

describe.each(Object.entries(sizes))('what a visit decides by, on a %s screen', (_name, size) => {
  it('no word is cut or broken, and a drawing does not give way to its caption', async () => {
    const { page } = await chair.open();
    await page.setViewportSize(size);
    const words = '.unit, .choices .target-words, .region-list li, .region-looks li, figcaption, .drawing-legend';
    for (const state of ['score-asked', 'sore-cause', 'sore-place-two-clocks', 'tooth-sizes', 'tooth-sizes-crowded']) {
      await show(page, state);
      await page.locator('.step-title').waitFor();
      if (state.startsWith('tooth')) await page.locator('.drawing-teeth').waitFor({ state: 'attached' });
      expect([state, await spoilt(page, words)]).toEqual([state, []]);
      // Regions are round: their corners lie on the surface.
      if (!state.startsWith('sore-place')) expect([state, await cutOff(page)]).toEqual([state, []]);
    }
    await show(page, 'tooth-sizes-crowded');
    const drawing = await page.locator('.drawing-teeth svg').boundingBox();
    expect(drawing?.height).toBeGreaterThan(150);
  });
});

it('what is cut off is found: the same reasons on a screen that is too low', async () => {
  const { page } = await chair.open();
  await page.setViewportSize({ width: 1280, height: 560 });
  await show(page, 'reason-five');
  expect(await cutOff(page)).not.toEqual([]);
});

it('captions and labels at a step are 18 px or more on the wide screen', async () => {
  const { page } = await chair.open();
  for (const state of [
    'reading-closed',
    'reading-rest-empty',
    'inform-trays',
    'tracing-keep',
    'tooth-sizes',
    'sore-where',
  ]) {
    await show(page, state);
    // Some drawings are fetched with the first step.
    await page.locator('.step-body .drawing svg').first().waitFor();
    const smallest = await letters(page, '.step-body svg text, .step-body figcaption');
    expect([state, smallest >= 18 ? 18 : smallest]).toEqual([state, 18]);
  }
});
