/** The ways in, each doing by itself everything a visit asks for. */
import type { Page } from 'playwright-core';
import type { Language } from '../../src/domain/protocol/types.ts';
import { commandWords, speakNumber } from '../../src/interpret/index.ts';
import type { CommandId } from '../../src/interpret/types.ts';
import { least, plausible, say, type Way } from './drive.ts';

const waitKept = (page: Page, n: number) =>
  page.waitForFunction(
    ({ many }) =>
      (document.querySelectorAll('.kept-one').length || (document.querySelector('.kept-count') ? 1 : 0)) >= many,
    { many: n },
    { timeout: 10_000 },
  );

/** Two pedals, Enter and digits; no touch at all. */
export function byKeys(page: Page): Way {
  // The same key at once on the next step is taken for a bounce; a person looks first.
  let last = { name: '', at: 0 };
  const key = async (name: string) => {
    if (name === last.name) await page.waitForTimeout(Math.max(0, last.at + 380 - Date.now()));
    await page.keyboard.press(name);
    last = { name, at: Date.now() };
  };
  const number = async (text: string) => {
    await page.keyboard.type(text);
    await page
      .getByRole('group', { name: /keypad/i })
      .or(page.locator('.keypad'))
      .first()
      .waitFor();
    await key('Enter');
    await page.locator('.confirm-number').waitFor();
    await key('Enter');
    await page.locator('.confirm-number').waitFor({ state: 'detached' });
  };
  // Two keys for the same thing, turn about: nobody has to wait out a bounce.
  const turnAbout = (one: string, other: string) => key(last.name === one ? other : one);
  return {
    next: () => turnAbout('PageDown', 'ArrowRight'),
    answer: async (step) => {
      const good = step.answers.findIndex((answer) => answer.tone === 'good' && answer.needsReason !== true);
      if (good < 0) await key('1');
      else await turnAbout('Enter', String(good + 1));
    },
    reading: async (step) => {
      for (let n = 1; n <= least(step.reading); n += 1) {
        await number(plausible(step.reading));
        if (least(step.reading) > 1) await waitKept(page, n);
      }
      if (least(step.reading) > 1) await key('PageDown');
    },
    clock: async (step) => {
      await key('1');
      await page.locator('[aria-pressed="true"], .chosen').first().waitFor();
      await key('Enter');
      await page
        .getByRole('button', { name: step.flow === 'impression' ? /seated/i : /^done|^out|ended/i })
        .first()
        .waitFor();
      if (step.flow === 'impression') {
        await key('Enter');
        await page.getByRole('button', { name: /^out/i }).first().waitFor();
        await key('Enter');
        await page.getByRole('button', { name: /^out/i }).first().waitFor({ state: 'detached' });
      }
      await key('PageDown');
    },
    sign: async () => key('Enter'),
  };
}

/** Everything by voice, but for the material, which is touched. Every other number is misheard first and put right. */
export function byVoice(page: Page, language: Language = 'en'): Way {
  const word = (command: CommandId) => commandWords(language)[command][0]!;
  const spoken = (value: number) => speakNumber(value * 100, language);
  let numbers = 0;
  const number = async (text: string) => {
    const value = Number(text);
    numbers += 1;
    if (numbers % 2 === 0) {
      await say(page, spoken(value + 1));
      await page.locator('.confirm-number').waitFor();
      await say(page, `${word('no')}, ${spoken(value)}`);
      await page.locator('.digits', { hasText: text }).first().waitFor();
    } else await say(page, spoken(value));
    await page.locator('.confirm-number').waitFor();
    // Said into the moment at which the ear shuts, a word is lost; a person then says it again.
    for (let said = 0; said < 3 && (await page.locator('.confirm-number').isVisible()); said += 1) {
      await say(page, word('yes'));
      await page
        .locator('.confirm-number')
        .waitFor({ state: 'detached', timeout: 4000 })
        .catch(() => undefined);
    }
    await page.locator('.confirm-number').waitFor({ state: 'detached' });
  };
  return {
    next: () => say(page, word('next')),
    answer: async (step) => {
      const good = step.answers.find((answer) => answer.tone === 'good') ?? step.answers[0]!;
      const words = good.id === 'yes' || good.id === 'no' ? word(good.id) : (good.words[language]?.[0] ?? good.label);
      await say(page, words);
    },
    reading: async (step) => {
      for (let n = 1; n <= least(step.reading); n += 1) {
        await number(plausible(step.reading));
        if (least(step.reading) > 1) await waitKept(page, n);
      }
      if (least(step.reading) > 1) await say(page, word('next'));
    },
    clock: async (step) => {
      await page.keyboard.press('1');
      await page.locator('[aria-pressed="true"], .chosen').first().waitFor();
      await say(page, word('start'));
      if (step.flow === 'impression') {
        await page
          .getByRole('button', { name: /seated/i })
          .first()
          .waitFor();
        await say(page, word('seated'));
        await page.getByRole('button', { name: /^out/i }).first().waitFor();
        await say(page, word('out'));
        await page.getByRole('button', { name: /^out/i }).first().waitFor({ state: 'detached' });
      } else
        await page
          .getByRole('button', { name: /^done|^out|ended/i })
          .first()
          .waitFor();
      await say(page, word('next'));
    },
    sign: async () => say(page, word('yes')),
  };
}
