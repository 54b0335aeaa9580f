/** The stages of `npm test`, in their order. Each is a script of package.json, so that it can be run alone as well. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { build, dist, ensureBuilt } from './build.mjs';
import { readCount } from './report.mjs';
import { npm, projectRoot } from './run.mjs';

/**
 * @typedef {object} Result
 * @property {boolean} ok
 * @property {string} says a few words for the line of this stage
 * @property {string} output shown when it failed
 * @property {import('./report.mjs').Count} [count] of a stage that runs tests
 *
 * @typedef {object} Stage
 * @property {string} name
 * @property {boolean} slow left out by --fast
 * @property {(env: Record<string, string>) => Promise<Result>} run
 */

/** @param {import('./run.mjs').Ran} ran @returns {Result} */
const plainly = ({ code, output }) => ({ ok: code === 0, says: code === 0 ? 'ok' : 'failed', output });

/** @param {string} name @returns {Stage['run']} */
function script(name) {
  return async (env) => plainly(await npm(['run', '-s', name], { env }));
}

/** @param {string} name a script that runs the test runner @returns {Stage['run']} */
function tests(name) {
  return async (env) => {
    const file = join(projectRoot, '.cache', `${name}.json`);
    rmSync(file, { force: true });
    const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${file}`];
    const { code, output } = await npm(['run', '-s', name, '--', ...reporters], { env });
    const count = readCount(file);
    if (count === undefined) return { ok: false, says: 'failed: the test runner gave no report', output };
    const skipped = count.skipped === 0 ? '' : `, ${count.skipped} skipped`;
    const ok = code === 0 && count.failed === 0;
    return { ok, says: `${count.passed} passed, ${count.failed} failed${skipped}`, output, count };
  };
}

/** @param {number} bytes */
const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

/** @returns {Promise<Result>} */
async function size() {
  const built = await ensureBuilt();
  if (!built.ok) return { ok: false, says: 'failed: there is nothing to measure', output: built.why };
  const { budgetBytes, measureBundle } = await import('./bundle.mjs');
  const { initialBytes, laterBytes, initial, later } = measureBundle(dist);
  const ok = initial.length > 0 && initialBytes <= budgetBytes;
  const figures = `${initialBytes} bytes of JavaScript at first (gzip), at most ${budgetBytes}; ${kB(laterBytes)} more later`;
  return {
    ok,
    says: ok ? figures : `failed: ${figures}`,
    output: `at first: ${initial.join(', ')}\nlater: ${later.join(', ')}`,
  };
}

/**
 * Synthetic voices, a real recogniser: what it prints of each promise is what this stage says.
 * @type {Stage['run']}
 */
async function acoustic(env) {
  const { code, output } = await npm(['run', '-s', 'test:acoustic'], { env });
  const figures = output.split('\n').flatMap((line) => /^ ok {2}(.*)/.exec(line)?.[1] ?? []);
  const ok = code === 0 && figures.length > 0;
  return { ok, says: ok ? figures.join('; ') : 'failed', output };
}

/** @type {readonly Stage[]} */
export const stages = [
  { name: 'format', slow: false, run: script('format:check') },
  { name: 'lint', slow: false, run: script('lint') },
  { name: 'types', slow: false, run: script('types') },
  { name: 'unit', slow: false, run: tests('unit') },
  { name: 'build', slow: true, run: async () => plainly(await build()) },
  { name: 'e2e', slow: true, run: tests('e2e') },
  { name: 'size', slow: true, run: size },
  { name: 'test:acoustic', slow: true, run: acoustic },
];

/**
 * @typedef {{ ok: true, chosen: readonly Stage[] } | { ok: false, why: string }} Choice
 */

/**
 * @param {{ fast: boolean, only: string | undefined }} wish `only` is one name or several with commas
 * @returns {Choice}
 */
export function choose({ fast, only }) {
  if (only === undefined) return { ok: true, chosen: stages.filter((stage) => !fast || !stage.slow) };
  const names = only.split(',').map((name) => name.trim());
  const unknown = names.find((name) => !stages.some((stage) => stage.name === name));
  if (unknown !== undefined) {
    return {
      ok: false,
      why: `There is no stage "${unknown}". There are: ${stages.map((stage) => stage.name).join(', ')}.`,
    };
  }
  return { ok: true, chosen: stages.filter((stage) => names.includes(stage.name)) };
}
