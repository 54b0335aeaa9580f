/**
 * `npm run test:longday -- [--rate N] [--hours N]`: a day of eight hours at the chair in one window that is never reloaded,
 * in a real browser in which time runs so many times as fast. Visits are dictated to made-up speech whose recogniser ends
 * itself about every minute, two and one an hour in turn, each with its clocks; one patient's impression waits while the
 * next sits in the chair. Each hour ends at the list of cases, where the browser throws away what nothing holds and counts
 * the rest. After the last hour time runs at its true speed again, and one more clock has to ring.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import { chromium, type Page } from 'playwright-core';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { fakeSpeechScript } from '../../test/e2e/drive.ts';
import { findBrowser, thisMachine } from '../lib/browser.mjs';
import { npm } from '../lib/run.mjs';
import { serve } from '../lib/serve.mjs';
import { dictateTo, endClocks, newCase, toList, touch } from './dictate.ts';
import { fastTimeScript, realAt, simulated, type TimePlan } from './fast-time.ts';
import { alarmLines, broken, heldLine, HOUR_MS, table, type Day, type Look } from './judge.ts';
import { clockOff, RESTLESS_EAR, rungs, watch } from './measure.ts';

/** True speed at first, until the page stands and its sound is armed. */
const SETTLE_MS = 5000;
/** The last clock runs fast for so long yet: 26 of the 45 s or more that mixing takes. */
const STILL_FAST_MS = 200;
const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';

interface Hours {
  readonly hours: number;
  readonly plan: TimePlan;
}

/** Two and one in turn: twelve in eight hours. */
const visitsIn = (hour: number): number => 2 - (hour % 2);
const visitsOf = (hours: number): number =>
  Array.from({ length: hours }, (_, hour) => visitsIn(hour)).reduce((sum, one) => sum + one, 0);

const passed = (plan: TimePlan): number => simulated(plan, Date.now()) - plan.from;
const untilPassed = (plan: TimePlan, at: number): Promise<unknown> =>
  wait(Math.max(0, realAt(plan, plan.from + at) - Date.now()));

/** The impressions of an hour's patients wait while the next one sits there; before the hour is over they are poured. */
async function oneHour(page: Page, hour: number, { plan }: Hours): Promise<void> {
  for (let visit = 0; visit < visitsIn(hour); visit += 1) {
    await newCase(page);
    await dictateTo(page);
    await toList(page);
  }
  await untilPassed(plan, (hour + 0.9) * HOUR_MS);
  await endClocks(page);
  await untilPassed(plan, (hour + 0.98) * HOUR_MS);
}

/** Started just before time runs at its true speed, so that its first alarm rings after; answers when that was. */
async function lastClock(page: Page): Promise<number> {
  await newCase(page);
  await dictateTo(page, visit1.steps.find(({ id }) => id === 'upper-impression')?.title);
  await touch(page, '.materials button');
  await page.locator('.clock-body [aria-pressed="true"]').waitFor();
  const until = await page.evaluate((ms) => {
    const start = [...document.querySelectorAll<HTMLButtonElement>('.clock-side button')];
    start.find((one) => one.textContent.includes('Start mixing'))?.click();
    return (window as unknown as { rimwiseTrueSpeed(ms: number): number }).rimwiseTrueSpeed(ms);
  }, STILL_FAST_MS);
  await page.locator('.ringing').waitFor({ timeout: 70_000 });
  await page.locator('.save-kept').waitFor();
  return until;
}

async function dayOn(page: Page, day: Hours): Promise<Day> {
  const { plan, hours } = day;
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  const watching = await watch(page);
  await touch(page, 'button', 'sound');
  await untilPassed(plan, 0);
  const looks: Look[] = [];
  let visits = 0;
  for (let hour = 0; hour < hours; hour += 1) {
    await oneHour(page, hour, day);
    visits += visitsIn(hour);
    looks.push(await watching.look({ at: passed(plan), visits }, hour === 0 || hour === hours - 1));
    console.log(`hour ${hour + 1}: ${visits} visits, ${Math.round((looks.at(-1)?.heapBytes ?? 0) / 1000)} kB`);
  }
  const until = await lastClock(page);
  const clockOffMs = await clockOff(page);
  return { looks, rungs: await rungs(page, { ...plan, until }), clockOffMs, visits, troubles };
}

/** The worker that rings is given the same time: it takes no script from the page. */
async function built(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'rimwise-longday-'));
  const { code, output } = await npm(['run', '-s', 'build', '--', '--outDir', folder], {
    env: { NODE_ENV: 'production' },
  });
  if (code !== 0) throw new Error(output);
  return folder;
}

function quicken(folder: string, plan: TimePlan): void {
  const assets = join(folder, 'assets');
  const worker = readdirSync(assets).find((name) => /^alarm-worker-.*\.js$/.test(name));
  if (worker === undefined) throw new Error('the build has no worker that rings');
  const file = join(assets, worker);
  writeFileSync(file, fastTimeScript(plan) + readFileSync(file, 'utf8'));
}

async function run(hours: number, rate: number): Promise<boolean> {
  const browser = findBrowser(thisMachine());
  if (!browser.ok) throw new Error(browser.why);
  const began = Date.now();
  const folder = await built();
  const speech = await fakeSpeechScript({ onDevice: ['en-GB', 'en-US'], msPerCharacter: 60 });
  const served = await serve(folder, 0);
  if (!served.ok) throw new Error(served.why);
  const chair = await chromium.launch({ executablePath: browser.path, headless: true, args: FLAGS.split(' ') });
  try {
    const from = Date.now() + SETTLE_MS;
    const plan: TimePlan = { from, until: Infinity, rate };
    quicken(folder, plan);
    const context = await chair.newContext({
      viewport: { width: 1280, height: 800 },
      locale: 'en-GB',
      serviceWorkers: 'block',
    });
    await context.addInitScript({ content: `${fastTimeScript(plan)}\n${speech}\n${RESTLESS_EAR}` });
    const page = await context.newPage();
    await page.goto(served.address);
    await page.locator('main.cases').waitFor();
    const day = await dayOn(page, { hours, plan });
    const wrong = broken(day, { hours, visits: visitsOf(hours) });
    console.log(`\n${table(day)}\n${heldLine(day)}\n${alarmLines(day)}`);
    for (const text of wrong) console.log(`broken: ${text}`);
    const took = Math.round((Date.now() - began) / 1000);
    console.log(`${hours} hours at ${rate} times the speed, ${day.visits} visits; ${took} s`);
    return wrong.length === 0;
  } finally {
    await chair.close();
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

const { values } = parseArgs({
  options: { hours: { type: 'string', default: '8' }, rate: { type: 'string', default: '130' } },
});
process.exitCode = (await run(Number(values.hours), Number(values.rate))) ? 0 : 1;
