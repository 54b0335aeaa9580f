/**
 * `npm run test:crash -- [--kills N] [--seed N] [--locked | --during sealing | --during change]`: a visit is dictated in a real browser, the browser is killed at random
 * instants, and each time everything the app had called kept must be there, the visit must stand where it stood and the
 * clocks must be right. Prints what was acknowledged and what was lost.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { findBrowser, thisMachine } from '../lib/browser.mjs';
import { dist, ensureBuilt } from '../lib/build.mjs';
import { serve } from '../lib/serve.mjs';
import { runLives, type LivesOptions, type Totals } from './lives.ts';
import { randomFrom } from './random.ts';
import { killWhileChanging, killWhileSealing, type TurnTotals } from './turns.ts';

function line({ kills, acknowledged, lost, clocks, mended, wrong }: Totals): string {
  return `${kills} kills: ${acknowledged} entries acknowledged, ${lost} lost; ${clocks} clocks compared, ${mended} starts mended a copy, ${wrong.length} wrong`;
}

interface Wish {
  readonly kills: number;
  readonly seed: number;
  /** What is going on when the browser is killed. */
  readonly work: (options: LivesOptions) => Promise<Totals | TurnTotals>;
}

function turns(so: Totals | TurnTotals): string {
  return 'before' in so ? `; ${so.before} before it counted, ${so.after} after` : '';
}

async function run({ kills, seed, work }: Wish): Promise<boolean> {
  const browser = findBrowser(thisMachine());
  const built = browser.ok ? await ensureBuilt() : browser;
  if (!browser.ok || !built.ok) throw new Error(browser.ok ? built.why : browser.why);
  // A copy, so that a build that runs meanwhile cannot pull the files away.
  const folder = mkdtempSync(join(tmpdir(), 'rimwise-crash-app-'));
  cpSync(dist, folder, { recursive: true });
  const served = await serve(folder, 0);
  if (!served.ok) throw new Error(served.why);
  const began = performance.now();
  let told = 0;
  const onLife = (life: number, so: Totals): void => {
    for (const text of so.wrong.slice(told)) console.log(text);
    told = so.wrong.length;
    if (life % 10 === 0) console.log(`${line(so)}${turns(so)}`);
  };
  try {
    const totals = await work({
      kills,
      browserPath: browser.path,
      address: served.address,
      random: randomFrom(seed),
      onLife,
    });
    for (const text of totals.wrong.slice(told)) console.log(text);
    console.log(`${line(totals)}${turns(totals)}; seed ${seed}, ${Math.round((performance.now() - began) / 1000)} s`);
    return totals.lost === 0 && totals.wrong.length === 0;
  } finally {
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

const { values } = parseArgs({
  options: {
    kills: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    locked: { type: 'boolean', default: false },
    during: { type: 'string', default: '' },
  },
});

function workFor(during: string, locked: boolean): Wish['work'] {
  if (during === 'sealing') return killWhileSealing;
  if (during === 'change') return killWhileChanging;
  if (during !== '') throw new Error(`--during is "sealing" or "change", not "${during}"`);
  return locked ? (options) => runLives({ ...options, passphrase: 'seven grey herons' }) : runLives;
}

const work = workFor(values.during, values.locked);
process.exitCode = (await run({ kills: Number(values.kills), seed: Number(values.seed), work })) ? 0 : 1;
