/** What rings is heard from every window that shows the case, written once, and silent everywhere once it is seen. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readStored } from '../../scripts/crash/check.ts';
import { openDemo, walkTo } from './drive.ts';
import { inBrowser } from './harness.ts';
import { secondWindow } from './two-windows.ts';
import { byKeys } from './ways.ts';

const chair = inBrowser();

interface Loudspeaker {
  /** Whether an alarm sounds now: a tone that repeats, begun and not ended. */
  rimwiseSounds(): boolean;
  /** Moves the wall clock on, as if the device had slept. */
  rimwiseSleep(ms: number): void;
}

/** Runs in the page before the app: listens at the loudspeaker, and lets the wall clock be moved. */
function listenAtTheLoudspeaker(): void {
  const tones: { node: AudioBufferSourceNode; from: number; until: number }[] = [];
  const { start, stop } = AudioBufferSourceNode.prototype;
  AudioBufferSourceNode.prototype.start = function (this: AudioBufferSourceNode, from = 0) {
    tones.push({ node: this, from, until: Infinity });
    start.call(this, from);
  };
  AudioBufferSourceNode.prototype.stop = function (this: AudioBufferSourceNode, until = 0) {
    for (const tone of tones) if (tone.node === this) tone.until = until;
    stop.call(this, until);
  };
  let slept = 0;
  const { now } = Date;
  Date.now = () => now() + slept;
  Object.assign(window, {
    rimwiseSounds: () =>
      tones.some(({ node, from, until }) => {
        const at = node.context.currentTime;
        return node.loop && from <= at && at < until;
      }),
    rimwiseSleep: (ms: number) => {
      slept += ms;
    },
  });
}

const sounds = (page: Page) => page.evaluate(() => (window as unknown as Loudspeaker).rimwiseSounds());
const untilSounds = (page: Page, wanted: boolean) =>
  page.waitForFunction((want) => (window as unknown as Loudspeaker).rimwiseSounds() === want, wanted, {
    timeout: 10_000,
    // A window behind another one draws nothing; it is asked by the clock.
    polling: 200,
  });

describe('an alarm', () => {
  it('is heard from both windows of a case, is written once, and is silent in both once it is seen in one', async () => {
    const { page: one, context } = await chair.open({ before: listenAtTheLoudspeaker });
    await openDemo(one);
    await walkTo(one, byKeys(one), 'upper-impression');
    const two = await secondWindow(context);
    await two.getByRole('button', { name: /DEMO-01/ }).click();
    await two.getByText(/^being written in another window/i).waitFor();
    await one.bringToFront();
    await one.keyboard.press('1');
    await one.keyboard.press('Enter');
    await two.locator('.clock-face').waitFor();
    expect(await Promise.all([one, two].map((page) => sounds(page)))).toEqual([false, false]);

    // Mixing ends a minute after the start: nearly all of it is slept through.
    for (const page of [one, two]) await page.evaluate(() => (window as unknown as Loudspeaker).rimwiseSleep(57_000));
    await Promise.all([one, two].map((page) => untilSounds(page, true)));
    for (const page of [one, two]) expect(await page.locator('.ringing').innerText()).toMatch(/mixing over/i);

    await one.getByRole('button', { name: /^seen/i }).click();
    await Promise.all([one, two].map((page) => untilSounds(page, false)));
    await two.locator('.ringing').waitFor({ state: 'detached' });
    await one.locator('.save-kept').waitFor();
    const [entries = []] = Object.values(await readStored(one));
    const kinds = entries.map((entry) => (entry as { body: { kind: string; phase?: string } }).body);
    expect(kinds.filter(({ kind, phase }) => kind === 'rang' && phase === 'mix')).toHaveLength(1);
    expect(kinds.filter(({ kind }) => kind === 'alarmSeen')).toHaveLength(1);
  }, 90_000);
});
