/** Killed while the passphrase is set or changed: every entry acknowledged before must be there, and one passphrase opens it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { isSealed } from '../../src/storage/sealing.ts';
import { openChair, type Chair } from './chair.ts';
import { checkAll, readStored, type Known } from './check.ts';
import { dictate, listRead, takeUp } from './dictate.ts';
import type { LivesOptions, Totals } from './lives.ts';
import {
  askForChange,
  askForPassphrase,
  inClear,
  isLocked,
  openerFor,
  seal,
  setPassphrase,
  unlock,
} from './passphrase.ts';

/** Which instant of it was hit, by what was found afterwards. */
export interface TurnTotals extends Totals {
  /** Before anything of it counted: in clear, or still the old passphrase. */
  readonly before: number;
  /** After it counted. */
  readonly after: number;
}

const FIRST = 'seven grey herons';
const DICTATE_MS = 1200;

interface Site {
  readonly options: LivesOptions;
  readonly profile: string;
  readonly known: Map<string, Known>;
}

function open({ options, profile, known }: Site): Promise<Chair> {
  const { browserPath, address } = options;
  const onKept = (id: string, lastSeq: number): void => {
    const one = known.get(id) ?? { acknowledged: 0, entries: [] };
    one.acknowledged = Math.max(one.acknowledged, lastSeq);
    known.set(id, one);
  };
  return openChair({ browserPath, address, profile, onKept });
}

async function work(chair: Chair): Promise<void> {
  await takeUp(chair.page);
  const stop = { now: false };
  const working = dictate(chair.page, stop);
  await wait(DICTATE_MS);
  stop.now = true;
  await working;
  await chair.page.locator('.save-kept').waitFor();
}

async function toSettings({ page }: Chair): Promise<void> {
  await page.reload();
  if (await isLocked(page)) return;
  await listRead(page);
  await page.getByRole('button', { name: 'Settings' }).first().click();
}

/** Everything acknowledged, held against what lies there. */
async function compare(site: Site, { page }: Chair, secret: string | undefined) {
  await listRead(page);
  const opener = secret === undefined ? inClear : await openerFor(page, secret);
  return checkAll(site.known, await readStored(page), opener);
}

/** What was begun is finished after unlocking: then nothing lies in clear any more. */
async function leftInClear({ page }: Chair): Promise<readonly string[]> {
  let left = -1;
  for (let turn = 0; turn < 60 && left !== 0; turn += 1) {
    await wait(250);
    left = Object.values(await readStored(page))
      .flat()
      .filter((entry) => !isSealed(entry)).length;
  }
  return left === 0 ? [] : [`${left} entries lie in clear after unlocking`];
}

function added(so: TurnTotals, more: Awaited<ReturnType<typeof compare>>, took: boolean): TurnTotals {
  return {
    ...so,
    kills: so.kills + 1,
    acknowledged: so.acknowledged + more.acknowledged,
    lost: so.lost + more.lost,
    wrong: [...so.wrong, ...more.wrong.map((text) => `after kill ${so.kills + 1}: ${text}`)],
    before: so.before + (took ? 0 : 1),
    after: so.after + (took ? 1 : 0),
  };
}

async function within<T>(site: Site, act: (chair: Chair) => Promise<T>): Promise<T> {
  const chair = await open(site);
  try {
    return await act(chair);
  } finally {
    await chair.kill();
  }
}

const NOTHING: TurnTotals = {
  kills: 0,
  acknowledged: 0,
  lost: 0,
  clocks: 0,
  mended: 0,
  wrong: [],
  before: 0,
  after: 0,
};

function newSite(options: LivesOptions): Site {
  return { options, profile: mkdtempSync(join(tmpdir(), 'rimwise-crash-')), known: new Map() };
}

const removed = ({ profile }: Site): void => rmSync(profile, { recursive: true, force: true, maxRetries: 5 });

/** Killed while what is there is being sealed, each time on a fresh profile. */
export async function killWhileSealing(options: LivesOptions): Promise<TurnTotals> {
  let so = NOTHING;
  for (let life = 1; life <= options.kills; life += 1) {
    const site = newSite(options);
    try {
      await within(site, async (chair) => {
        await work(chair);
        await toSettings(chair);
        await askForPassphrase(chair.page, FIRST);
        await seal(chair.page);
        await wait(options.random() * 6000);
      });
      so = await within(site, async (chair) => {
        const took = await isLocked(chair.page);
        if (took && !(await unlock(chair.page, FIRST))) throw new Error('the passphrase does not open the record');
        const clear = took ? await leftInClear(chair) : [];
        const found = await compare(site, chair, took ? FIRST : undefined);
        return added(so, { ...found, wrong: [...found.wrong, ...clear] }, took);
      });
    } finally {
      removed(site);
    }
    options.onLife?.(life, so);
  }
  return so;
}

/** Killed while the passphrase is being changed, again and again on one profile. */
export async function killWhileChanging(options: LivesOptions): Promise<TurnTotals> {
  const site = newSite(options);
  let so = NOTHING;
  let now = FIRST;
  try {
    await within(site, async (chair) => {
      await listRead(chair.page);
      await setPassphrase(chair.page, now);
      await work(chair);
    });
    for (let life = 1; life <= options.kills; life += 1) {
      const next = `passphrase number ${life}`;
      await within(site, async (chair) => {
        if (!(await unlock(chair.page, now))) throw new Error('the passphrase does not open the record');
        await work(chair);
        await chair.page.keyboard.press('Escape');
        await chair.page.getByRole('button', { name: /^More/ }).first().click();
        await chair.page.getByRole('button', { name: 'Settings' }).first().click();
        await askForChange(chair.page, now, next);
        await chair.page.getByRole('button', { name: 'Change it' }).click();
        await wait(options.random() * 2500);
      });
      so = await within(site, async (chair) => {
        await isLocked(chair.page);
        const took = await unlock(chair.page, next);
        if (!took && !(await unlock(chair.page, now))) throw new Error('neither passphrase opens the record');
        if (took) now = next;
        return added(so, await compare(site, chair, now), took);
      });
      options.onLife?.(life, so);
    }
    return so;
  } finally {
    removed(site);
  }
}
