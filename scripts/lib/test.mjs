/** What `npm test` does, after the version of Node is known to be good enough. */
import { parseArgs } from 'node:util';
import { ensureBrowser } from './browser.mjs';
import { ensureInstalled } from './installed.mjs';
import { ensurePrograms } from './programs.mjs';
import { choose } from './stages.mjs';

const usage = `Usage: npm test -- [--fast] [--only STAGE,STAGE]
  --fast  without build, end-to-end tests and size
  --only  just these stages`;

/**
 * @param {readonly string[]} args
 * @returns {import('./stages.mjs').Choice}
 */
function chosenBy(args) {
  try {
    const { values } = parseArgs({ args: [...args], options: { fast: { type: 'boolean' }, only: { type: 'string' } } });
    return choose({ fast: values.fast === true, only: values.only });
  } catch (error) {
    return { ok: false, why: `${error instanceof Error ? error.message : String(error)}\n${usage}` };
  }
}

/**
 * Does one piece of work and prints its line: name, time, result.
 * @template {{ ok: boolean }} T
 * @param {string} name
 * @param {() => Promise<T>} work
 * @param {(result: T) => { says: string, output: string }} tell
 * @returns {Promise<T>}
 */
async function line(name, work, tell) {
  const began = performance.now();
  const result = await work();
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  const { says, output } = tell(result);
  console.log(`${result.ok ? ' ok ' : 'FAIL'}  ${name.padEnd(8)} ${seconds.padStart(6)} s  ${says}`);
  if (!result.ok && output.trim() !== '') console.log(`\n${output.trim()}\n`);
  return result;
}

/** @param {{ ok: boolean, why: string } | { ok: true, path: string }} done */
function prepared(done) {
  if ('path' in done) return { says: done.path, output: '' };
  return { says: done.ok ? done.why : 'failed', output: done.ok ? '' : done.why };
}

/** @returns {Promise<import('./stages.mjs').Result>} */
async function withoutBrowser() {
  return { ok: false, says: 'failed: there is no browser to run them in', output: '' };
}

/**
 * Runs the stages one after the other, all of them even when one fails, and adds up. A stage that is no test counts
 * nothing when it is well and one failure when it is not, so that the last line never looks better than the exit code.
 * @param {readonly import('./stages.mjs').Stage[]} chosen
 */
async function runAll(chosen) {
  const total = { passed: 0, failed: 0 };
  /** @type {Record<string, string>} */
  const env = process.stdout.isTTY ? {} : { NO_COLOR: '1', FORCE_COLOR: '0' };
  // What is missing here fails in the tests that need it, each naming its package.
  if (chosen.some((stage) => stage.name === 'unit')) await line('programs', ensurePrograms, prepared);
  if (chosen.some((stage) => stage.name === 'e2e')) {
    const browser = await line('browser', ensureBrowser, prepared);
    if (browser.ok) env['RIMWISE_BROWSER'] = browser.path;
  }
  for (const stage of chosen) {
    const blind = stage.name === 'e2e' && env['RIMWISE_BROWSER'] === undefined;
    const { ok, count } = await line(stage.name, blind ? withoutBrowser : () => stage.run(env), (result) => result);
    total.passed += count?.passed ?? 0;
    total.failed += ok ? 0 : Math.max(1, count?.failed ?? 0);
  }
  return total;
}

/**
 * @param {readonly string[]} args
 * @returns {Promise<number>} exit code
 */
export async function test(args) {
  const choice = chosenBy(args);
  if (!choice.ok) {
    console.error(choice.why);
    return 2;
  }
  const installed = await line('packages', ensureInstalled, prepared);
  const total = installed.ok ? await runAll(choice.chosen) : { passed: 0, failed: 1 };
  console.log(`\n${total.passed} passed, ${total.failed} failed`);
  return total.failed === 0 ? 0 : 1;
}
