/**
 * An assistant who never tires: looks at what the screen asks for and does it by key, from wherever the visit stands.
 * Goes on until told to stop or until the browser is gone.
 */
import { setTimeout as wait } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { least, plausible } from '../../test/e2e/drive.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';

export interface Look {
  readonly title: string;
  readonly confirm: boolean;
  readonly keypad: boolean;
  readonly chosen: boolean;
  readonly clockRuns: boolean;
  /** Readings of the step kept so far. */
  readonly kept: number;
  readonly closed: boolean;
  readonly text: string;
}

/** What stands on the screen now. */
export function look(page: Page): Promise<Look> {
  // No named function inside: what is sent to the page must stand alone.
  return page.evaluate(() => ({
    title: document.querySelector('h1.step-title')?.textContent ?? '',
    confirm: document.querySelector('.confirm-number') !== null,
    keypad: document.querySelector('.keypad') !== null,
    chosen: document.querySelector('.clock-body [aria-pressed="true"]') !== null,
    kept:
      document.querySelectorAll('.kept-one').length || (document.querySelector('.kept-count .icon') === null ? 0 : 1),
    clockRuns: document.querySelector('.clock-face') !== null,
    closed: document.querySelector('main.summary, main.cases') !== null,
    text: document.body.innerText,
  }));
}

/** Keys for one act at the step that stands there. */
function keysFor(seen: Look, turn: number): readonly string[] {
  if (seen.confirm || seen.keypad) return ['Enter'];
  const step = visit1.steps.find((one) => one.title === seen.title);
  if (/why is|reason/i.test(seen.text) && turn % 3 === 2) return ['1'];
  if (step?.kind === 'reading') {
    const enough = seen.kept >= least(step.reading) || (step.optional === true && turn % 2 === 1);
    return enough ? ['PageDown'] : [...plausible(step.reading), 'Enter'];
  }
  if (step?.kind === 'clock') return clockKeys(seen, turn);
  if (step?.kind === 'inform') return ['PageDown'];
  return turn % 2 === 0 ? ['Enter'] : ['1'];
}

function clockKeys(seen: Look, turn: number): readonly string[] {
  if (seen.clockRuns) return turn % 2 === 0 ? ['Enter'] : ['PageDown'];
  return seen.chosen ? ['Enter'] : ['1'];
}

/** Until the list of cases has been read, and mended where it had to be. */
export async function listRead(page: Page): Promise<void> {
  const row = page.locator('main.cases .case-list button');
  await row.or(page.getByText('None yet.')).first().waitFor();
}

/** Opens the case that is under way, or a new one when there is none left to go on with. */
export async function takeUp(page: Page): Promise<void> {
  await listRead(page);
  const open = page.locator('.case-list button').filter({ hasNotText: /closed/ });
  // What rings may stand above the row: it is pressed where it is.
  if ((await open.count()) > 0) await open.first().dispatchEvent('click');
  else await page.getByRole('button', { name: /try the demo case/i }).click();
  await page.locator('h1.step-title, main.summary').first().waitFor();
}

async function oneAct(page: Page, turn: number): Promise<void> {
  const seen = await look(page);
  if (seen.closed) {
    await page.reload();
    return takeUp(page);
  }
  for (const key of keysFor(seen, turn)) await page.keyboard.press(key);
}

/** Acts until `stop` says so; errors after that are the browser's death and are expected. */
export async function dictate(page: Page, stop: { now: boolean }): Promise<void> {
  try {
    for (let turn = 0; !stop.now; turn += 1) {
      await oneAct(page, turn);
      await wait(15);
    }
  } catch (error) {
    if (!stop.now) throw error;
  }
}
