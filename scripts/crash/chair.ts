/** A browser of our own that can be killed like a power cut kills it: all its processes at once, without a goodbye. */
import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { chromium, type Browser, type Page } from 'playwright-core';

const FLAGS = [
  '--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking',
  '--disable-component-update --disable-sync --remote-debugging-port=0 --window-size=1280,800',
].flatMap((line) => line.split(' '));

export interface Chair {
  readonly page: Page;
  /** SIGKILL to the whole process group; resolves when none of its processes is left. */
  kill(): Promise<void>;
}

export interface ChairOptions {
  readonly browserPath: string;
  readonly profile: string;
  readonly address: string;
  /** Told of every entry the app has acknowledged: case and number. */
  readonly onKept: (caseId: string, lastSeq: number) => void;
}

async function until<T>(what: string, look: () => T | undefined): Promise<T> {
  for (let turn = 0; turn < 600; turn += 1) {
    const found = look();
    if (found !== undefined) return found;
    await wait(25);
  }
  throw new Error(`${what} did not come`);
}

/** Processes that were started with this profile, whatever group they put themselves into. */
function processesOf(profile: string): number[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .filter((name) => {
      try {
        return readFileSync(`/proc/${name}/cmdline`, 'utf8').includes(`--user-data-dir=${profile}`);
      } catch {
        return false;
      }
    })
    .map(Number);
}

function sigkill(id: number): void {
  try {
    process.kill(id, 'SIGKILL');
  } catch {
    // already gone
  }
}

/** The group at once, so that the instant is the one that was drawn; then whoever left the group. */
function killAll({ pid }: ChildProcess, profile: string): void {
  if (pid !== undefined) sigkill(-pid);
  for (const id of processesOf(profile)) sigkill(id);
}

/** Listens where the other windows of the app listen, from before the app's first script on. */
function listenForKept(): void {
  const news = new BroadcastChannel('rimwise');
  news.onmessage = ({ data }: MessageEvent<{ kind: string; caseId: string; lastSeq: number }>) => {
    if (data.kind !== 'written') return;
    (window as unknown as { rimwiseKept(id: string, last: number): void }).rimwiseKept(data.caseId, data.lastSeq);
  };
}

async function connect(profile: string): Promise<Browser> {
  const file = join(profile, 'DevToolsActivePort');
  const port = await until('the browser', () => {
    const line = existsSync(file) ? readFileSync(file, 'utf8').split('\n')[0] : undefined;
    return line === '' ? undefined : line;
  });
  return chromium.connectOverCDP(`http://127.0.0.1:${port}`);
}

/** Starts the browser on a profile and opens the app in it. */
export async function openChair({ browserPath, profile, address, onKept }: ChairOptions): Promise<Chair> {
  rmSync(join(profile, 'DevToolsActivePort'), { force: true });
  const started = spawn(browserPath, [...FLAGS, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: 'ignore',
  });
  const browser = await connect(profile);
  const context = browser.contexts()[0];
  if (context === undefined) throw new Error('the browser has no window');
  await context.exposeBinding('rimwiseKept', (_source, id: string, last: number) => onKept(id, last));
  await context.addInitScript(listenForKept);
  const page = context.pages()[0] ?? (await context.newPage());
  page.setDefaultTimeout(10_000);
  await page.goto(address);
  const kill = async (): Promise<void> => {
    killAll(started, profile);
    await until('the end of the browser', () => (processesOf(profile).length === 0 ? true : undefined));
    await browser.close().catch(() => undefined);
  };
  return { page, kill };
}
