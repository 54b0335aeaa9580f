/**
 * From words to the voice that answers: the built app in a real browser slowed down four times, with made-up speech.
 * Measured from the moment the recogniser hands over its result: until the number stands on screen, until it begins to be
 * read back; and from a "yes" until what was kept (and by then is stored) begins to be said.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { speakNumber } from '../../src/interpret/index.ts';
import { fakeSpeechScript, openDemo, walkTo } from '../../test/e2e/drive.ts';
import { byKeys } from '../../test/e2e/ways.ts';
import { findBrowser, thisMachine } from '../lib/browser.mjs';
import { npm } from '../lib/run.mjs';
import { serve } from '../lib/serve.mjs';

const READINGS = 60;
const SLOWER = 4;
const STEP = 'upper-width';
const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';

interface Times {
  /** Moments at which the loudspeaker was asked to speak, and a number waiting for its yes appeared on screen. */
  readonly spoken: number[];
  readonly shown: number[];
}
interface Watched {
  readonly rimwiseTimes: Times;
  readonly rimwiseFakeSpeech: { say(text: string): boolean; readonly listening: boolean };
}

/** Runs in the page, after the made-up speech is in place. */
const WATCH = `
  const times = (window.rimwiseTimes = { spoken: [], shown: [] });
  const synthesis = window.speechSynthesis;
  const speak = synthesis.speak.bind(synthesis);
  synthesis.speak = (utterance) => {
    if (utterance.text !== '') times.spoken.push(performance.now());
    speak(utterance);
  };
  let was = false;
  new MutationObserver(() => {
    const is = document.querySelector('.confirm-number') !== null;
    if (is && !was) times.shown.push(performance.now());
    was = is;
  }).observe(document, { subtree: true, childList: true });
`;

/** Says something once the app listens and everything is kept; answers when it was handed over and what followed. */
async function say(page: Page, text: string): Promise<{ readonly spoken: number; readonly shown: number }> {
  await page.waitForFunction(
    () =>
      (window as unknown as Watched).rimwiseFakeSpeech.listening && document.querySelector('.save-keeping') === null,
  );
  const began = await page.evaluate((words) => {
    const { rimwiseTimes, rimwiseFakeSpeech } = window as unknown as Watched;
    rimwiseTimes.spoken.length = rimwiseTimes.shown.length = 0;
    const at = performance.now();
    return rimwiseFakeSpeech.say(words) ? at : Number.NaN;
  }, text);
  await page.waitForFunction(() => (window as unknown as Watched).rimwiseTimes.spoken.length > 0);
  const { spoken, shown } = await page.evaluate(() => (window as unknown as Watched).rimwiseTimes);
  return { spoken: (spoken[0] ?? Number.NaN) - began, shown: (shown[0] ?? Number.NaN) - began };
}

function print(name: string, times: readonly number[]): void {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number): string => {
    const time = sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
    return `${time.toFixed(1).padStart(7)} ms`;
  };
  console.log(`${name.padEnd(34)} p50 ${at(0.5)}   p95 ${at(0.95)}   max ${at(1)}   (${times.length})`);
}

async function measureIn(page: Page): Promise<void> {
  await openDemo(page);
  await walkTo(page, byKeys(page), STEP);
  await page.locator('button.ear').click();
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  const shown: number[] = [];
  const readBack: number[] = [];
  const kept: number[] = [];
  for (let i = 0; i < READINGS; i += 1) {
    const number = await say(page, speakNumber(5500 + ((i * 37) % 100) * 10, 'en'));
    shown.push(number.shown);
    readBack.push(number.spoken);
    kept.push((await say(page, 'yes')).spoken);
    await say(page, 'undo');
  }
  print('number heard → on screen', shown);
  print('number heard → reading back begins', readBack);
  print('yes heard → kept, and said so', kept);
}

export default async function measure(): Promise<void> {
  const browser = findBrowser(thisMachine());
  if (!browser.ok) return console.log(browser.why);
  const folder = mkdtempSync(join(tmpdir(), 'bench-app-'));
  const { code, output } = await npm(['run', '-s', 'build', '--', '--outDir', folder], {
    env: { NODE_ENV: 'production' },
  });
  if (code !== 0) return console.log(output);
  const served = await serve(folder, 0);
  if (!served.ok) return console.log(served.why);
  const chair = await chromium.launch({ executablePath: browser.path, headless: true, args: FLAGS.split(' ') });
  try {
    const context = await chair.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
    await context.addInitScript({
      content: `${await fakeSpeechScript({ onDevice: ['en-GB', 'en-US'], msPerCharacter: 1 })}\n${WATCH}`,
    });
    const page = await context.newPage();
    await page.goto(served.address);
    console.log(`${READINGS} readings, processor slowed ${SLOWER} times`);
    await measureIn(page);
  } finally {
    await chair.close();
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
