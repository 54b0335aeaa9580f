/** Is the built app as new as its sources? If not, it is built. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { npm, projectRoot } from './run.mjs';

const sources = ['src', 'machines', 'package.json', 'package-lock.json', 'vite.config.ts', 'tsconfig.json'];

export const dist = join(projectRoot, 'dist');

/**
 * The latest change in a file, or in a folder and all below it. Folders count themselves, for a deleted file changes
 * nothing but its folder.
 * @param {string} path
 * @returns {number} epoch milliseconds; 0 when there is nothing
 */
export function changedAt(path) {
  if (!existsSync(path)) return 0;
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  const inside = readdirSync(path).map((name) => changedAt(join(path, name)));
  return Math.max(stat.mtimeMs, ...inside);
}

/**
 * @param {string} root
 * @returns {boolean}
 */
export function isStale(root) {
  const built = changedAt(join(root, 'dist', 'index.html'));
  return sources.some((name) => changedAt(join(root, name)) >= built);
}

/**
 * Builds the app. Always for production, whatever the surroundings say: under a test runner the libraries' development
 * halves would be built in, and the tests would look at another app than the one people get.
 * @returns {Promise<import('./run.mjs').Ran>}
 */
export function build() {
  return npm(['run', '-s', 'build'], { env: { NODE_ENV: 'production' } });
}

/**
 * @returns {Promise<{ ok: boolean, why: string }>}
 */
export async function ensureBuilt() {
  if (!isStale(projectRoot)) return { ok: true, why: 'as new as its sources' };
  console.log('Building the app …');
  const { code, output } = await build();
  return code === 0 ? { ok: true, why: 'built' } : { ok: false, why: output.trim() };
}
