/** What is held against the record after a crash: nothing acknowledged is missing, nothing old has changed, all stands where it stood. */
import { setTimeout as wait } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { foldCase } from '../../src/domain/case/fold.ts';
import { parseFacts } from '../../src/domain/case/parse.ts';
import { stepOf } from '../../src/domain/protocol/path.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { clockRows } from '../../src/domain/summary/clocks.ts';
import { dueNext } from '../../src/domain/summary/planned.ts';
import { timeLeft } from '../../src/screens/format.ts';
import { browserDigest, soundLength, stableText } from '../../src/storage/chain.ts';
import { inClear, type Opener } from './passphrase.ts';

/** What has been seen of a case so far. */
export interface Known {
  /** Number of the last entry that was acknowledged. */
  acknowledged: number;
  /** Entries as read after the last crash. */
  entries: readonly string[];
}

export interface Checked {
  /** Acknowledged since the crash before. */
  readonly acknowledged: number;
  readonly lost: number;
  /** Clocks on the screen compared with the record. */
  readonly clocks: number;
  /** One sentence for each thing that is not as it should be. */
  readonly wrong: readonly string[];
}

type Stored = Record<string, unknown[]>;

/** All entries as they lie in the database, by case. */
export function readStored(page: Page): Promise<Stored> {
  return page.evaluate(
    () =>
      new Promise<Stored>((resolve, reject) => {
        const request = indexedDB.open('rimwise');
        request.onerror = () => reject(new Error('the database does not open'));
        request.onsuccess = () => {
          const all = request.result.transaction('facts').objectStore('facts').getAll();
          all.onsuccess = () => {
            const cases: Stored = {};
            for (const entry of all.result as { caseId: string }[]) (cases[entry.caseId] ??= []).push(entry);
            request.result.close();
            resolve(cases);
          };
        };
      }),
  );
}

interface Lying {
  /** As it lies there, and as facts. */
  readonly stored: readonly unknown[];
  readonly facts: readonly unknown[];
}

async function checkCase(caseId: string, known: Known, { stored, facts }: Lying): Promise<Omit<Checked, 'clocks'>> {
  // Read once: what the app acknowledges while this looks is the business of the next look.
  const due = known.acknowledged;
  const wrong: string[] = [];
  const sound = Math.min(await soundLength(stored, browserDigest()), facts.length);
  const whole = facts.findIndex((fact, index) => (fact as { seq?: unknown }).seq !== index + 1);
  const have = Math.min(sound, whole === -1 ? facts.length : whole);
  if (have < facts.length) wrong.push(`${caseId}: the entries are sound only up to ${have} of ${facts.length}`);
  const texts = facts.map(stableText);
  const changed = known.entries.findIndex((text, index) => texts[index] !== text);
  if (changed !== -1) wrong.push(`${caseId}: entry ${changed + 1} is not as it was`);
  const parsed = parseFacts(facts);
  if (!parsed.ok) wrong.push(`${caseId}: entry ${parsed.at} cannot be read`);
  const acknowledged = Math.max(0, due - known.entries.length);
  const lost = Math.max(0, due - have);
  known.entries = texts;
  return { acknowledged, lost, wrong };
}

const seconds = (text: string): number => {
  const [minutes = 0, rest = 0] = text
    .replace(/[^0-9:]/g, '')
    .split(':')
    .map(Number);
  return minutes * 60 + rest;
};

/** Times on the screen against what the record says at the same moment; a second either way is the drawing's. */
async function checkClocks(page: Page, facts: readonly unknown[]): Promise<{ clocks: number; wrong: string[] }> {
  const parsed = parseFacts(facts);
  if (!parsed.ok) return { clocks: 0, wrong: [] };
  // The strip is drawn anew once a second.
  await wait(1100);
  const seen = await page.evaluate(() => ({
    now: Date.now(),
    // Clocks of other cases stand there too, each with the code of its case.
    chips: [...document.querySelectorAll('.chip:not(:has(.chip-case))')].map((chip) => ({
      name: chip.querySelector('.chip-name strong')?.textContent ?? '',
      time: chip.querySelector('.chip-time')?.textContent ?? '',
    })),
  }));
  const view = foldCase('', parsed.facts);
  // What is due changes from one second to the next; the screen may still show the second before.
  const wanted = [0, 1500].flatMap((ago) => dueNext(clockRows(view, visit1, seen.now - ago), seen.now - ago));
  const wrong = seen.chips.flatMap(({ name, time }) => {
    const due = wanted.filter(({ row }) => row.label === name).map(({ at }) => at);
    const near = due.some((at) => Math.abs(seconds(timeLeft(at, seen.now).text) - seconds(time)) <= 2);
    return near ? [] : [`the clock ${name} shows ${time}, the record says otherwise`];
  });
  return { clocks: seen.chips.length, wrong };
}

/** The step on the screen against the step at which the record says the visit stands. */
async function checkStanding(page: Page, facts: readonly unknown[]): Promise<string[]> {
  const parsed = parseFacts(facts);
  if (!parsed.ok) return [];
  const view = foldCase('', parsed.facts);
  if (view.closed !== undefined) return [];
  const id = view.step === '' ? (visit1.steps[0]?.id ?? '') : view.step;
  const wanted = stepOf(visit1, id)?.title;
  const shown = await page.locator('h1.step-title').innerText();
  return shown === wanted ? [] : [`the screen stands at “${shown}”, the record at “${wanted}”`];
}

/** Every case that was ever acknowledged against what lies in the database. */
export async function checkAll(
  known: ReadonlyMap<string, Known>,
  stored: Stored,
  open: Opener = inClear,
): Promise<Checked> {
  let sum: Checked = { acknowledged: 0, lost: 0, clocks: 0, wrong: [] };
  for (const [caseId, one] of known) {
    const { acknowledged, lost, wrong } = await checkCase(caseId, one, {
      stored: stored[caseId] ?? [],
      facts: await open(stored[caseId] ?? []),
    });
    sum = {
      ...sum,
      acknowledged: sum.acknowledged + acknowledged,
      lost: sum.lost + lost,
      wrong: [...sum.wrong, ...wrong],
    };
  }
  return sum;
}

/** The open case on the screen against its record. */
export async function checkScreen(page: Page, facts: readonly unknown[]): Promise<Pick<Checked, 'clocks' | 'wrong'>> {
  const standing = await checkStanding(page, facts);
  const { clocks, wrong } = await checkClocks(page, facts);
  return { clocks, wrong: [...standing, ...wrong] };
}
