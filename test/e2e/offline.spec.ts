/** The app without a network, and a newer version of it: on a server of this file's own, which can be shut and changed. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { dictate } from '../../scripts/crash/dictate.ts';
import { dist } from '../../scripts/lib/build.mjs';
import { contentSecurityPolicy, serve, type Serving } from '../../scripts/lib/serve.mjs';
import { openDemo, title } from './drive.ts';
import { inBrowser } from './harness.ts';

const chair = inBrowser();
let folder = '';
let served: Serving;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'rimwise-offline-'));
  cpSync(dist, folder, { recursive: true });
  const serving = await serve(folder, 0);
  if (!serving.ok) throw new Error(serving.why);
  served = serving;
});
afterEach(async () => {
  await served.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Until everything is fetched and the page is served by its worker. */
async function installed(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (navigator.serviceWorker.controller === null) await new Promise((resolve) => setTimeout(resolve, 20));
  });
}

async function work(page: Page, ms: number): Promise<void> {
  const stop = { now: false };
  const working = dictate(page, stop);
  await page.waitForTimeout(ms);
  stop.now = true;
  await working;
  await page.locator('.save-kept').waitFor();
}

/** A build that differs from the one before in its page alone. */
function newVersion(): void {
  const page = join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('<body>', '<body data-version="2">'));
  const worker = join(folder, 'sw.js');
  const before = readFileSync(worker, 'utf8');
  const after = before.replace(/(url:"index\.html",revision:")[0-9a-f]+/, '$1222222');
  if (after === before) throw new Error('the worker does not name the page');
  writeFileSync(worker, after);
}

const version = (page: Page) => page.evaluate(() => document.body.dataset['version'] ?? '1');
const offer = { name: /take the new version/i };
const toCases = async (page: Page) => {
  await page.getByRole('button', { name: /^more/i }).click();
  await page.getByRole('button', { name: /^cases|all cases|case list/i }).click();
  await page.locator('main.cases').waitFor();
};

describe('without a network', () => {
  it('after one visit to the page, a reload works and the case goes on; nothing was asked of anybody else', async () => {
    const { page, context } = await chair.open();
    const asked: string[] = [];
    context.on('request', (request) => asked.push(request.url()));
    await page.goto(served.address);
    await openDemo(page);
    await installed(page);
    await work(page, 1500);
    const standing = await title(page);
    await served.close();
    await page.reload();
    await page.getByRole('button', { name: /DEMO-01/ }).click();
    await page.locator('h1.step-title').waitFor();
    expect(await title(page)).toBe(standing);
    await work(page, 2500);
    expect(await title(page)).not.toBe(standing);
    // The page that was open before belongs to the server of all specs.
    const own = [served.address, inject('address')].flatMap((address) => [address, `blob:${address}`]);
    const foreign = asked.filter((url) => !own.some((address) => url.startsWith(address)));
    expect(foreign).toEqual([]);
    expect(asked.length).toBeGreaterThan(10);
  }, 60_000);

  it('a language never used before is there as well', async () => {
    const { page } = await chair.open();
    await page.goto(served.address);
    await installed(page);
    await served.close();
    const kept = await page.evaluate(async () => {
      const names = await caches.keys();
      const all = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
      return all.flat().map((request) => new URL(request.url).pathname);
    });
    const wanted = readFileSync(join(folder, 'sw.js'), 'utf8').match(/assets\/[^"]+\.js/g) ?? [];
    expect(wanted.length).toBeGreaterThan(5);
    for (const path of wanted) expect(kept).toContain(`/${path}`);
    const answers = await page.evaluate(
      (paths) => Promise.all(paths.map(async (p) => (await fetch(p)).status)),
      wanted,
    );
    expect([...new Set(answers)]).toEqual([200]);
  }, 60_000);

  it('it can be installed: name, start, pictures that exist', async () => {
    const { page } = await chair.open();
    await page.goto(served.address);
    const session = await page.context().newCDPSession(page);
    const { errors, data = '' } = await session.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    const manifest = JSON.parse(data) as { name: string; display: string; icons: { src: string; sizes: string }[] };
    expect(manifest).toMatchObject({ name: 'Rimwise', display: 'standalone' });
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
    // A window that keeps nothing cannot install anything; that is the only hindrance.
    expect(installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito']);
    for (const { src } of manifest.icons) {
      expect((await page.request.get(served.address + src)).headers()['content-type']).toMatch(/^image\//);
    }
  }, 60_000);

  it('the page may still load nothing from elsewhere and run nothing inline', async () => {
    const { page } = await chair.open();
    const answer = await page.goto(served.address);
    expect(answer?.headers()['content-security-policy']).toBe(contentSecurityPolicy);
    await installed(page);
    const again = await page.reload();
    expect(again?.fromServiceWorker()).toBe(true);
    expect(again?.headers()['content-security-policy']).toBe(contentSecurityPolicy);
    expect(contentSecurityPolicy).toContain("script-src 'self' 'wasm-unsafe-eval';");
    expect(contentSecurityPolicy.replace("'wasm-unsafe-eval'", '')).not.toMatch(/unsafe|\*|https?:/);
    // In a later turn: what the test itself runs is let off the policy.
    const ran = await page.evaluate(
      () =>
        new Promise<string[]>((resolve) => {
          setTimeout(() => {
            const seen: string[] = [];
            const attempt = (name: string, run: () => unknown) => {
              try {
                run();
                seen.push(name);
              } catch {
                // Refused by the policy.
              }
            };
            // oxlint-disable-next-line typescript/no-implied-eval -- the very thing the policy must refuse
            attempt('text as script', () => new Function('return 1')());
            attempt('WebAssembly', () => new WebAssembly.Module(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0])));
            resolve(seen);
          }, 10);
        }),
    );
    expect(ran).toEqual(['WebAssembly']);
  }, 60_000);
});

describe('a newer version', () => {
  it('never comes over a visit: it is offered at the list of cases, and taken there', async () => {
    const { page } = await chair.open();
    await page.goto(served.address);
    await installed(page);
    await openDemo(page);
    newVersion();
    await page.evaluate(async () => {
      (window as unknown as { same: boolean }).same = true;
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
      while (registration.waiting === null) await new Promise((resolve) => setTimeout(resolve, 20));
    });
    await work(page, 1000);
    expect(await page.getByRole('button', offer).count()).toBe(0);
    expect(await page.evaluate(() => 'same' in window)).toBe(true);
    await toCases(page);
    await page.getByRole('button', offer).click();
    await page.waitForFunction(() => document.body.dataset['version'] === '2');
    await page.getByRole('button', { name: /DEMO-01/ }).click();
    await page.locator('h1.step-title').waitFor();
  }, 60_000);

  it('is not taken while another window is in the middle of a case', async () => {
    const { page, context } = await chair.open();
    await page.goto(served.address);
    await installed(page);
    const other = await context.newPage();
    await other.goto(served.address);
    await openDemo(other);
    newVersion();
    await page.reload();
    await page.getByRole('button', offer).click();
    await page.getByText(/a case is open in another window/i).waitFor();
    expect([await version(page), await version(other)]).toEqual(['1', '1']);
    await other.close();
    await page.getByRole('button', offer).click();
    await page.waitForFunction(() => document.body.dataset['version'] === '2');
  }, 60_000);
});
