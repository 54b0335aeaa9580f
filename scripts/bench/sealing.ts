/** What a passphrase costs in a real browser: appending, opening a case, reading the list, unlocking. Nothing is asserted. */
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { findBrowser, thisMachine } from '../lib/browser.mjs';
import { serve } from '../lib/serve.mjs';
import type { SealingCost, SealingWish } from '../lib/sealing-page.ts';

const ENTRIES = 400;
const CASES = 2000;

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

async function pageScript(): Promise<string> {
  const bundled = await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, lib: { entry: here('../lib/sealing-page.ts'), formats: ['iife'], name: 'rimwiseSealing' } },
  });
  const outputs = Array.isArray(bundled) ? bundled : [bundled];
  return outputs.flatMap((one) => ('output' in one ? one.output : [])).find((one) => one.type === 'chunk')?.code ?? '';
}

interface Measuring {
  readonly rimwiseSealing: { measure(wish: SealingWish): Promise<SealingCost> };
}

const asked = (page: Page, wish: SealingWish): Promise<SealingCost> =>
  page.evaluate((given) => (globalThis as unknown as Measuring).rimwiseSealing.measure(given), wish);

const sorted = (values: readonly number[]) => values.toSorted((a, b) => a - b);
const at = (values: readonly number[], share: number) => sorted(values)[Math.floor(values.length * share)] ?? 0;
const ms = (value: number) => `${value.toFixed(2)} ms`;

function line(name: string, { appends, load, list, unlock }: SealingCost): string {
  const times = `${ms(at(appends, 0.5))} at the median, ${ms(at(appends, 0.95))} for the slowest twentieth`;
  const opened = unlock === 0 ? '' : `; unlocking ${ms(unlock)}`;
  return `${name}: an entry ${times}; a case of ${ENTRIES} ${ms(load)}; a list of ${CASES} cases ${ms(list)}${opened}`;
}

async function measured(page: Page): Promise<void> {
  const wish = { entries: ENTRIES, cases: CASES };
  // Once unmeasured: the browser's disk and its compiler are warm for both then.
  await asked(page, { ...wish, name: 'warm', cases: 1 });
  const plain = await asked(page, { ...wish, name: 'plain' });
  const sealed = await asked(page, { ...wish, name: 'sealed', passphrase: 'seven grey herons' });
  console.log(line('in clear', plain));
  console.log(line('sealed', sealed));
  console.log(`an entry sealed : in clear = ${(at(sealed.appends, 0.5) / at(plain.appends, 0.5)).toFixed(2)}`);
}

export default async function measureSealing(): Promise<void> {
  const found = findBrowser(thisMachine());
  if (!found.ok) return console.log(`not measured: ${found.why}`);
  const served = await serve(here('../../src/'), 0);
  if (!served.ok) return console.log(`not measured: ${served.why}`);
  const browser = await chromium.launch({ executablePath: found.path, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const page = await browser.newPage();
    await page.goto(`${served.address}public/icon.svg`);
    await page.evaluate(await pageScript());
    await measured(page);
  } finally {
    await browser.close();
    await served.close();
  }
}
