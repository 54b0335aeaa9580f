/** Walking the first visit in a real browser, as an assistant would: look at the title, do what it asks, see that it happened. */
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import type { Step } from '../../src/domain/protocol/types.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';

/** Made-up speech in place of the browser's own, reached as `window.rimwiseFakeSpeech`. */
export async function fakeSpeechScript(options: object = {}): Promise<string> {
  const fake = fileURLToPath(new URL('../../src/voice/fake.ts', import.meta.url));
  const bundled = await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, minify: false, lib: { entry: fake, formats: ['iife'], name: 'rimwiseFake' } },
  });
  const outputs = Array.isArray(bundled) ? bundled : [bundled];
  const code = outputs.flatMap((o) => ('output' in o ? o.output : [])).find((o) => o.type === 'chunk')?.code ?? '';
  return `${code}\nwindow.rimwiseFakeSpeech = rimwiseFake.installFakeSpeech(window, ${JSON.stringify(options)});`;
}

interface SpeechWindow {
  readonly rimwiseFakeSpeech: {
    say(text: string): boolean;
    readonly listening: boolean;
    readonly spoken: readonly { text: string }[];
  };
}

/** The same words again within a second are taken for an echo of the recogniser; people do not answer that fast either. */
const ECHO_MS = 1200;
const lastOn = new WeakMap<Page, { readonly text: string; readonly at: number }>();

/** Speaks once the ear is open, as people wait for it. */
export async function say(page: Page, text: string): Promise<void> {
  const last = lastOn.get(page);
  if (text === last?.text) await page.waitForTimeout(Math.max(0, last.at + ECHO_MS - Date.now()));
  // While something is still being kept, the app has yet to say so, and the ear shuts for that.
  await page.waitForFunction(
    () =>
      (window as unknown as SpeechWindow).rimwiseFakeSpeech.listening &&
      document.querySelector('.save-keeping') === null,
    undefined,
    { timeout: 20_000 },
  );
  await page.evaluate((words) => (window as unknown as SpeechWindow).rimwiseFakeSpeech.say(words), text);
  lastOn.set(page, { text, at: Date.now() });
}

export const title = (page: Page) => page.locator('h1.step-title').innerText();

export async function openDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: /try the demo case/i }).click();
  await page.locator('h1.step-title').waitFor();
}

/** The step that stands on screen; titles are unique but for the two syringe steps, which are of one kind. */
export async function stepNow(page: Page): Promise<Step> {
  const shown = await title(page);
  const step = visit1.steps.find((s) => s.title === shown);
  if (step === undefined) throw new Error(`no step is called “${shown}”`);
  return step;
}

export async function untilTitleChanges(page: Page, from: string): Promise<void> {
  await page.waitForFunction((old) => document.querySelector('h1.step-title')?.textContent !== old, from, {
    timeout: 10_000,
  });
}

/** A value in the middle of what is expected of a reading, as it would be typed. */
export function plausible(reading: string): string {
  const def = readingDefs.find((d) => d.id === reading);
  if (def === undefined) throw new Error(`no reading is called ${reading}`);
  return String(Math.round((def.expected[0] + def.expected[1]) / 200));
}

export const least = (reading: string) => readingDefs.find((d) => d.id === reading)?.repeat?.least ?? 1;

/** How one way in (keys, voice) does what a step asks for. */
export interface Way {
  next(): Promise<void>;
  answer(step: Extract<Step, { kind: 'check' | 'decision' }>): Promise<void>;
  /** Gives the number and agrees to it. */
  reading(step: Extract<Step, { kind: 'reading' }>): Promise<void>;
  clock(step: Extract<Step, { kind: 'clock' }>): Promise<void>;
  sign(step: Extract<Step, { kind: 'signoff' }>): Promise<void>;
}

/** Does every step until the one with this id stands. */
export async function walkTo(page: Page, way: Way, id: string): Promise<void> {
  for (let i = 0; i < 140; i += 1) {
    const step = await stepNow(page);
    if (step.id === id) return;
    const before = await title(page);
    if (step.kind === 'check' || step.kind === 'decision') await way.answer(step);
    else if (step.kind === 'reading' && step.optional !== true) await way.reading(step);
    else if (step.kind === 'clock') await way.clock(step);
    else await way.next();
    await untilTitleChanges(page, before);
  }
  throw new Error(`the visit never came to ${id}`);
}

const closedMarks = /visit closed|lab sheet/i;

/** Does every step until the visit is closed; answers how many steps it took. */
export async function walk(page: Page, way: Way): Promise<string[]> {
  const seen: string[] = [];
  for (let i = 0; i < 140; i += 1) {
    const step = await stepNow(page);
    seen.push(step.id);
    const before = await title(page);
    if (step.kind === 'inform') await way.next();
    else if (step.kind === 'check' || step.kind === 'decision') await way.answer(step);
    else if (step.kind === 'reading' && step.optional === true) await way.next();
    else if (step.kind === 'reading') await way.reading(step);
    else if (step.kind === 'clock') await way.clock(step);
    else {
      await way.sign(step);
      if (step.closesVisit === true) return seen;
    }
    await untilTitleChanges(page, before);
  }
  throw new Error('the visit did not come to its end');
}

export const isClosed = async (page: Page) => closedMarks.test(await page.locator('body').innerText());
