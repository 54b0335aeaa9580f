/** What `npm start` does, after the version of Node is known to be good enough. */
import { parseArgs } from 'node:util';
import { dist, ensureBuilt } from './build.mjs';
import { ensureInstalled } from './installed.mjs';
import { serve } from './serve.mjs';

const firstPort = 4173;
const tries = 20;

const usage = `Usage: npm start -- [--port NUMBER] [--no-open]
  --port NUMBER  serve on this port or not at all (otherwise ${firstPort}, or the next free one)
  --no-open      open no browser; this is what happens anyway`;

/**
 * The port that was asked for, undefined when none was, or a sentence.
 * @param {readonly string[]} args
 * @returns {{ ok: true, port: number | undefined } | { ok: false, why: string }}
 */
export function readArgs(args) {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: { port: { type: 'string' }, 'no-open': { type: 'boolean' } },
    });
    if (values.port === undefined) return { ok: true, port: undefined };
    const port = Number(values.port);
    if (/^\d+$/.test(values.port) && port >= 1 && port <= 65_535) return { ok: true, port };
    return { ok: false, why: `"${values.port}" is no port: a whole number from 1 to 65535 is wanted.\n${usage}` };
  } catch (error) {
    return { ok: false, why: `${error instanceof Error ? error.message : String(error)}\n${usage}` };
  }
}

/**
 * @param {number | undefined} asked
 * @returns {Promise<import('./serve.mjs').Serving | { ok: false, why: string }>}
 */
export async function serveSomewhere(asked, folder = dist) {
  const first = asked ?? firstPort;
  const last = asked ?? firstPort + tries;
  for (let port = first; port <= last; port += 1) {
    const served = await serve(folder, port);
    if (served.ok || served.reason !== 'taken') return served;
  }
  const where = asked === undefined ? `Ports ${first} to ${last} are` : `Port ${asked} is`;
  return { ok: false, why: `${where} taken by another program. Close it, or choose another: npm start -- --port 5000` };
}

/** Ends cleanly on Ctrl-C. */
function untilStopped() {
  return new Promise((stopped) => {
    for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => stopped(signal));
  });
}

/**
 * @param {readonly string[]} args
 * @returns {Promise<number>} exit code
 */
export async function start(args) {
  const asked = readArgs(args);
  if (!asked.ok) {
    console.error(asked.why);
    return 2;
  }
  for (const prepare of [ensureInstalled, ensureBuilt]) {
    const prepared = await prepare();
    if (!prepared.ok) {
      console.error(prepared.why);
      return 1;
    }
  }
  const served = await serveSomewhere(asked.port);
  if (!served.ok) {
    console.error(served.why);
    return 1;
  }
  if (asked.port === undefined && served.port !== firstPort) {
    console.log(
      `Port ${firstPort} is taken. Cases are kept by address: those kept at port ${firstPort} do not show here.`,
    );
  }
  console.log(`Rimwise is at ${served.address} (stop with Ctrl-C)`);
  await untilStopped();
  await served.close();
  console.log('Stopped.');
  return 0;
}
