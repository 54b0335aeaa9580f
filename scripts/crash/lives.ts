/** Many lives of one browser profile: dictate, be killed at a random instant, come back, count what is left. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { openChair, type Chair } from './chair.ts';
import { checkAll, checkScreen, readStored, type Checked, type Known } from './check.ts';
import { dictate, listRead, takeUp } from './dictate.ts';
import { inClear, isLocked, openerFor, setPassphrase, unlock, type Opener } from './passphrase.ts';

export interface LivesOptions {
  readonly kills: number;
  readonly browserPath: string;
  readonly address: string;
  /** 0 ≤ r < 1. */
  readonly random: () => number;
  /** The record lies under this passphrase from the first life on. */
  readonly passphrase?: string;
  readonly onLife?: (life: number, so: Totals) => void;
}

export interface Totals {
  readonly kills: number;
  readonly acknowledged: number;
  readonly lost: number;
  readonly clocks: number;
  /** Times a copy had to be mended at start. */
  readonly mended: number;
  readonly wrong: readonly string[];
}

const SHORTEST_MS = 100;
const LONGEST_MS = 2500;

interface Run {
  readonly options: LivesOptions;
  readonly profile: string;
  readonly known: Map<string, Known>;
  totals: Totals;
  opener: Opener | undefined;
}

function knownOf(run: Run, caseId: string): Known {
  const known = run.known.get(caseId) ?? { acknowledged: 0, entries: [] };
  run.known.set(caseId, known);
  return known;
}

function open(run: Run): Promise<Chair> {
  const onKept = (caseId: string, lastSeq: number): void => {
    const known = knownOf(run, caseId);
    known.acknowledged = Math.max(known.acknowledged, lastSeq);
  };
  const { browserPath, address } = run.options;
  return openChair({ browserPath, address, profile: run.profile, onKept });
}

function add(run: Run, more: Partial<Checked>, mended: boolean): void {
  const { totals } = run;
  run.totals = {
    ...totals,
    acknowledged: totals.acknowledged + (more.acknowledged ?? 0),
    lost: totals.lost + (more.lost ?? 0),
    clocks: totals.clocks + (more.clocks ?? 0),
    mended: totals.mended + (mended ? 1 : 0),
    wrong: [...totals.wrong, ...(more.wrong ?? []).map((text) => `after kill ${totals.kills}: ${text}`)],
  };
}

/** Gives the passphrase, or sets it at the first start; then the entries can be read here too. */
async function throughTheLock(run: Run, { page }: Chair): Promise<Opener> {
  const { passphrase } = run.options;
  if (passphrase === undefined) return inClear;
  if (!(await isLocked(page))) await setPassphrase(page, passphrase);
  else if (!(await unlock(page, passphrase))) throw new Error('the passphrase does not open the record any more');
  run.opener ??= await openerFor(page, passphrase);
  return run.opener;
}

/** Comes back after a crash: the app has compared its copies once the list of cases stands. */
async function comeBack(run: Run, chair: Chair): Promise<void> {
  const opener = await throughTheLock(run, chair);
  await listRead(chair.page);
  const mended = (await chair.page.locator('main.cases').innerText()).includes('second copy on this device');
  // Before a case is opened: what rings then is written then.
  const all = await checkAll(run.known, await readStored(chair.page), opener);
  await takeUp(chair.page);
  const facts: Record<string, readonly unknown[]> = {};
  for (const [id, entries] of Object.entries(await readStored(chair.page))) facts[id] = await opener(entries);
  const standing = [...run.known.keys()].find((id) => id === latest(facts));
  const screen =
    standing === undefined ? { clocks: 0, wrong: [] } : await checkScreen(chair.page, facts[standing] ?? []);
  add(run, { ...all, clocks: screen.clocks, wrong: [...all.wrong, ...screen.wrong] }, mended);
}

/** The case that was written last is the first one in the list, and the one that is opened. */
function latest(stored: Record<string, readonly unknown[]>): string | undefined {
  const at = (id: string): number => Number((stored[id]?.at(-1) as { at?: unknown } | undefined)?.at ?? 0);
  return Object.keys(stored).sort((a, b) => at(b) - at(a))[0];
}

async function oneLife(run: Run): Promise<void> {
  const chair = await open(run);
  const stop = { now: false };
  try {
    await comeBack(run, chair);
    const working = dictate(chair.page, stop);
    working.catch(() => undefined);
    await wait(SHORTEST_MS + run.options.random() * (LONGEST_MS - SHORTEST_MS));
    stop.now = true;
    await chair.kill();
    await working;
  } finally {
    stop.now = true;
    await chair.kill();
  }
  run.totals = { ...run.totals, kills: run.totals.kills + 1 };
}

async function lastLook(run: Run): Promise<void> {
  const chair = await open(run);
  try {
    await comeBack(run, chair);
  } finally {
    await chair.kill();
  }
}

export async function runLives(options: LivesOptions): Promise<Totals> {
  const profile = mkdtempSync(join(tmpdir(), 'rimwise-crash-'));
  const totals: Totals = { kills: 0, acknowledged: 0, lost: 0, clocks: 0, mended: 0, wrong: [] };
  const run: Run = { options, profile, known: new Map(), totals, opener: undefined };
  try {
    for (let life = 1; life <= options.kills; life += 1) {
      await oneLife(run);
      options.onLife?.(life, run.totals);
    }
    await lastLook(run);
    return run.totals;
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}
