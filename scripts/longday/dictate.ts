/** An assistant who dictates all day: says what the screen asks for, waits for what rings, and pours what waits. */
import { setTimeout as wait } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import type { Step } from '../../src/domain/protocol/types.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { speakNumber } from '../../src/interpret/index.ts';
import { least } from '../../test/e2e/drive.ts';

/** Made-up speech as the page has it. */
interface Ear {
  readonly rimwiseFakeSpeech: { say(text: string): boolean; readonly listening: boolean };
}

interface Look {
  readonly title: string;
  readonly confirm: boolean;
  readonly kept: number;
  readonly rings: boolean;
  readonly bathOver: boolean;
  readonly asksWhy: boolean;
  readonly chosen: boolean;
  readonly earOff: boolean;
  readonly hears: boolean;
  /** The clock of this step was started. */
  readonly runs: boolean;
  /** Its phase, by its class; '' once it has ended. */
  readonly phase: string;
  readonly outOffered: boolean;
  readonly seatOffered: boolean;
  readonly closed: boolean;
}

/** Real milliseconds between two looks, and between two acts. */
const LOOK_MS = 10;
const ACT_MS = 30;
/** So many looks without a new step are too many. */
const PATIENCE = 2500;

function look(page: Page): Promise<Look> {
  // No named function inside: what is sent to the page must stand alone.
  return page.evaluate(() => ({
    title: document.querySelector('h1.step-title')?.textContent ?? '',
    confirm: document.querySelector('.confirm-number') !== null,
    kept:
      document.querySelectorAll('.kept-one').length || (document.querySelector('.kept-count .icon') === null ? 0 : 1),
    rings: document.querySelector('.ringing') !== null,
    bathOver: document.querySelector('.clocks button[aria-label^="Done: "]') !== null,
    asksWhy: document.querySelector('[aria-label="Reasons"]') !== null,
    chosen: document.querySelector('.clock-body [aria-pressed="true"]') !== null,
    earOff: /off/i.test(document.querySelector('button.ear')?.textContent ?? ''),
    hears: (window as unknown as Ear).rimwiseFakeSpeech.listening && document.querySelector('.save-keeping') === null,
    runs: document.querySelector('.clock-face') !== null,
    phase: document.querySelector('.big-time')?.className ?? '',
    seatOffered: /Seated/.test(document.querySelector('.clock-targets')?.textContent ?? ''),
    outOffered: /^(Out|Done)/.test(document.querySelector('.clock-targets')?.textContent ?? ''),
    closed: document.querySelector('.body.closed, main.summary') !== null,
  }));
}

const say = (page: Page, text: string) =>
  page.evaluate((words) => (window as unknown as Ear).rimwiseFakeSpeech.say(words), text);

/** Touches the first target that matches, wherever it stands; false when there is none. */
export function touch(page: Page, selector: string, words = ''): Promise<boolean> {
  return page.evaluate(
    ([where, what]) => {
      const all = [...document.querySelectorAll<HTMLButtonElement>(where ?? '')];
      const found = all.find((one) => `${one.ariaLabel ?? ''} ${one.textContent ?? ''}`.includes(what ?? ''));
      found?.click();
      return found !== undefined;
    },
    [selector, words],
  );
}

/** The number in the middle of what is expected, in words. */
function numberFor(reading: string): string {
  const def = readingDefs.find(({ id }) => id === reading);
  if (def === undefined) throw new Error(`no reading is called ${reading}`);
  return speakNumber(Math.round((def.expected[0] + def.expected[1]) / 200) * 100, 'en');
}

function answerFor(step: Extract<Step, { kind: 'check' | 'decision' }>): string {
  const good = step.answers.find(({ tone }) => tone === 'good') ?? step.answers[0];
  if (good === undefined) throw new Error(`nothing can be answered at ${step.id}`);
  return good.id === 'yes' || good.id === 'no' ? good.id : (good.words.en?.[0] ?? good.label);
}

/** What is said at a clock; nothing while it has to run. A bath is left alone, and rings later. */
function clockWords(seen: Look, step: Extract<Step, { kind: 'clock' }>): string | undefined {
  if (!seen.runs) return seen.chosen ? 'start' : undefined;
  if (step.flow === 'timed') return 'next';
  if (seen.seatOffered) return seen.phase.includes('phase-working') ? 'seated' : undefined;
  if (seen.outOffered) return seen.phase.includes('big-time-over') ? 'out' : undefined;
  return 'next';
}

function wordsFor(seen: Look): string | undefined {
  if (seen.confirm) return 'yes';
  const step = visit1.steps.find(({ title }) => title === seen.title);
  if (step === undefined || step.kind === 'inform') return 'next';
  if (step.kind === 'check' || step.kind === 'decision') return answerFor(step);
  if (step.kind === 'clock') return clockWords(seen, step);
  if (step.kind !== 'reading') return 'yes';
  return step.optional === true || seen.kept >= least(step.reading) ? 'next' : numberFor(step.reading);
}

/** By hand, what is not said: an alarm is seen, a bath is ended, a material or a reason chosen, the ear opened. */
async function byHand(page: Page, seen: Look): Promise<boolean> {
  if (seen.rings) return touch(page, '.ringing button', 'Seen');
  if (seen.bathOver) return touch(page, '.clocks button[aria-label^="Done: "]');
  if (seen.asksWhy) return touch(page, '[aria-label="Reasons"] button');
  if (seen.earOff) return touch(page, 'button.ear');
  const step = visit1.steps.find(({ title }) => title === seen.title);
  if (step?.kind !== 'clock' || seen.runs || seen.chosen) return false;
  // The fast set where there is one: of two alginates it is the second.
  const fast = await touch(page, '.materials button', 'fast set');
  return fast || touch(page, '.materials button');
}

async function oneAct(page: Page, seen: Look): Promise<void> {
  if (await byHand(page, seen)) return wait(ACT_MS);
  const words = seen.hears ? wordsFor(seen) : undefined;
  if (words === undefined) return wait(LOOK_MS);
  await say(page, words);
  await wait(ACT_MS);
}

/** Acts until the visit is closed, or until this step stands on the screen. */
export async function dictateTo(page: Page, title?: string): Promise<void> {
  let [last, looks] = ['', 0];
  for (;;) {
    const seen = await look(page);
    if (seen.closed && !seen.rings) return;
    if (title !== undefined && seen.title === title) return;
    looks = seen.title === last ? looks + 1 : 0;
    last = seen.title;
    if (looks > PATIENCE) throw new Error(`the visit does not go on from “${last}”: ${JSON.stringify(seen)}`);
    await oneAct(page, seen);
  }
}

export async function toList(page: Page): Promise<void> {
  for (let turn = 0; turn < 200; turn += 1) {
    if (await page.evaluate(() => document.querySelector('main.cases') !== null)) return;
    // A summary leads back to its visit, which is closed, and that to the list.
    const ways = ['All cases', 'Back to the visit'];
    for (const way of ways) if (await touch(page, 'main button', way)) break;
    await wait(ACT_MS);
  }
  throw new Error(`no way to the list of cases: ${await page.evaluate(() => document.body.innerText)}`);
}

export async function newCase(page: Page): Promise<void> {
  await touch(page, '.begin button', 'Try the demo case');
  await page.locator('h1.step-title').waitFor();
}

type Place = 'rings' | 'waits' | 'list' | 'list with clocks' | 'elsewhere';

function place(page: Page): Promise<Place> {
  return page.evaluate((): Place => {
    if (document.querySelector('.ringing') !== null) return 'rings';
    if (document.querySelector('.waiting') !== null) return 'waits';
    if (document.querySelector('main.cases') === null) return 'elsewhere';
    return document.querySelector('.case-list .case-clock') === null ? 'list' : 'list with clocks';
  });
}

/** Case by case everything that still runs is ended: poured, or out of its bath once that is over. Ends at the list. */
export async function endClocks(page: Page): Promise<void> {
  for (let turn = 0; turn < PATIENCE; turn += 1) {
    const at = await place(page);
    if (at === 'list') return;
    if (at === 'rings') await touch(page, '.ringing button', 'Seen');
    else if (at === 'waits') await touch(page, '.waiting button');
    else if (at === 'elsewhere') await toList(page);
    else await touch(page, '.case-list button:has(.case-clock)');
    await wait(ACT_MS);
  }
  throw new Error(`clocks cannot be ended: ${await page.evaluate(() => document.body.innerText)}`);
}
