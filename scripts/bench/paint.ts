/**
 * From the touch on a case in the list to its first painted screen, in a real browser on the built app: a case of 2,000
 * entries against one of 20, both put on the disk by the app's own store. Median of several fresh pages; nothing is asserted.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type BrowserContext } from 'playwright-core';
import { build } from 'vite';
import { findBrowser, thisMachine } from '../lib/browser.mjs';
import { serve } from '../lib/serve.mjs';
import { parseRecording, runReplay } from '../../src/app/replay.ts';
import { appVersion } from '../../src/app/version.ts';
import type { Fact, FactBody } from '../../src/domain/case/facts.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import type { CaseRow } from '../../src/storage/types.ts';

const RUNS = 9;
const SIZES = [20, 2_000] as const;
const FLAGS = [
  '--no-sandbox --disable-gpu --disable-quic --no-first-run',
  '--disable-background-networking --disable-component-update --disable-sync',
].flatMap((line) => line.split(' '));

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const idOf = (size: number) => `bench-${size}`;
const codeOf = (size: number) => `BENCH-${String(size).padStart(6, '0')}`;

/** A recorded first visit without its end. */
function visit(): readonly Fact[] {
  const parsed = parseRecording(readFileSync(here('../recorded/clean.jsonl'), 'utf8'));
  if (!parsed.ok) throw new Error(parsed.text);
  const replayed = runReplay(parsed.recording, { readings: readingDefs, practice: defaultPractice, appVersion });
  if ('failed' in replayed) throw new Error(replayed.failed);
  return replayed.facts.filter(({ body }) => body.kind !== 'visitClosed' && body.kind !== 'signed');
}

/** Three remarks and a reading in turn, as a long visit goes on. */
function more(i: number): FactBody {
  if (i % 4 !== 3) return { kind: 'note', step: 'rest-height', text: `remark ${i}`, source: 'keypad' };
  const value = 7100 + (i % 5) * 10;
  return {
    kind: 'reading',
    step: 'rest-height',
    reading: 'rest-height',
    value,
    unit: 'mm',
    heard: { source: 'keypad', text: String(value / 100), certainty: 'sure', keptBy: 'yes' },
    outOfTurn: false,
  };
}

function caseOf(size: number, walked: readonly Fact[]): { facts: readonly Fact[]; row: CaseRow } {
  const [first] = walked;
  if (first === undefined) throw new Error('nothing was recorded');
  const facts = Array.from({ length: size }, (_, i): Fact => {
    const fact = walked[i];
    const at = first.at + i * 1000;
    const body = fact?.body ?? more(i);
    const named: FactBody = body.kind === 'caseOpened' ? { ...body, code: codeOf(size) } : body;
    return { ...(fact ?? walked.at(-1)!), caseId: idOf(size), seq: i + 1, act: fact?.act ?? i + 1, at, body: named };
  });
  const lastAt = facts.at(-1)!.at;
  const row = { id: idOf(size), code: codeOf(size), demo: false, openedAt: first.at, lastAt, visit: 1, closed: false };
  return { facts, row: { ...row, lastSeq: size } };
}

/** The app's store by itself, to be called in the page. */
async function storeScript(): Promise<string> {
  const bundled = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      lib: { entry: here('../../src/storage/idb-store.ts'), formats: ['iife'], name: 'rimwiseStore' },
    },
  });
  const outputs = Array.isArray(bundled) ? bundled : [bundled];
  return outputs.flatMap((one) => ('output' in one ? one.output : [])).find((one) => one.type === 'chunk')?.code ?? '';
}

interface Seeding {
  readonly rimwiseStore: {
    createIdbStore(): { append(facts: unknown, row: unknown): Promise<{ ok: boolean; why?: string }>; close(): void };
  };
}

async function seed(context: BrowserContext, address: string): Promise<void> {
  const page = await context.newPage();
  // A page of the same address without the app, so that nothing else holds the store.
  await page.goto(`${address}icon.svg`);
  await page.evaluate(await storeScript());
  const walked = visit();
  for (const size of SIZES) {
    const { facts, row } = caseOf(size, walked);
    const kept = await page.evaluate(
      async (given) => {
        const store = (globalThis as unknown as Seeding).rimwiseStore.createIdbStore();
        const result = await store.append(given.facts, given.row);
        store.close();
        return result;
      },
      { facts, row },
    );
    if (!kept.ok) throw new Error(kept.why ?? 'the case could not be kept');
  }
  await page.close();
}

/** Run in the page, as text: milliseconds from the touch to the frame after the step's title stands there. */
const touched = (code: string): string => `new Promise((resolve) => {
  const row = [...document.querySelectorAll('button')].find((one) => one.textContent.includes('${code}'));
  const from = performance.now();
  const look = () => {
    if (document.querySelector('h1.step-title') === null) requestAnimationFrame(look);
    else requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now() - from)));
  };
  row.click();
  look();
})`;

/** One fresh page: the list, a touch on the case, and the frame after its step stands there. */
async function once(context: BrowserContext, address: string, size: number): Promise<number> {
  const page = await context.newPage();
  await page.goto(address);
  await page.getByRole('button', { name: codeOf(size) }).waitFor();
  const ms = await page.evaluate<number>(touched(codeOf(size)));
  await page.close();
  return ms;
}

const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

async function measured(folder: string, executablePath: string): Promise<void> {
  const served = await serve(folder, 0);
  if (!served.ok) throw new Error(served.why);
  const browser = await chromium.launch({ executablePath, args: FLAGS });
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    await seed(context, served.address);
    // Once unmeasured: the second copy of what was put there is made, and the scripts are in the browser's cache.
    for (const size of SIZES) await once(context, served.address, size);
    const found = new Map<number, number[]>(SIZES.map((size) => [size, []]));
    for (let run = 0; run < RUNS; run += 1)
      for (const size of SIZES) found.get(size)!.push(await once(context, served.address, size));
    const [few, many] = SIZES.map((size) => median(found.get(size)!));
    for (const size of SIZES) {
      const all = found.get(size)!;
      console.log(
        `a case of ${size} entries: first painted ${median(all).toFixed(0)} ms after the touch (p50 of ${all.length}, ${Math.min(...all).toFixed(0)} to ${Math.max(...all).toFixed(0)})`,
      );
    }
    console.log(`ratio ${(many! / few!).toFixed(2)} : 1`);
  } finally {
    await browser.close();
    await served.close();
  }
}

export default async function measure(): Promise<void> {
  const browser = findBrowser(thisMachine());
  if (!browser.ok) {
    console.log(`Not measured: ${browser.why}`);
    return;
  }
  const folder = mkdtempSync(join(tmpdir(), 'rimwise-paint-'));
  try {
    await build({
      configFile: here('../../vite.config.ts'),
      logLevel: 'silent',
      build: { outDir: folder, emptyOutDir: true },
    });
    await measured(folder, browser.path);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
