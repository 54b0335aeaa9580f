/** Are the packages there that the lock file names? If not, they are installed from it. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { npm, projectRoot } from './run.mjs';

/** @typedef {{ packages?: Record<string, { version?: string, optional?: boolean, devOptional?: boolean }> }} Lock */

/**
 * Why the packages have to be installed, as a sentence; empty when they are as the lock file says. Contents are compared,
 * not dates: every install writes the two files in another order. Optional packages differ from machine to machine.
 * @param {Lock} wanted package-lock.json
 * @param {Lock | undefined} present node_modules/.package-lock.json
 * @returns {string}
 */
export function installTrouble(wanted, present) {
  if (present === undefined) return 'The packages are not installed yet.';
  for (const [path, { version, optional, devOptional }] of Object.entries(wanted.packages ?? {})) {
    if (path === '' || optional === true || devOptional === true) continue;
    const there = present.packages?.[path]?.version;
    const name = path.replace(/^.*node_modules\//, '');
    if (there === undefined) return `The package ${name} is missing.`;
    if (there !== version) return `The package ${name} is ${there}, but ${version} is wanted.`;
  }
  return '';
}

/** @param {string} path @returns {Lock | undefined} */
function readLock(path) {
  if (!existsSync(path)) return undefined;
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return undefined;
  }
}

/**
 * Installs what is missing. Development packages are always wanted: the build tool is one of them.
 * @returns {Promise<{ ok: boolean, why: string }>} `why` tells what was done, or what failed
 */
export async function ensureInstalled() {
  const wanted = readLock(join(projectRoot, 'package-lock.json'));
  if (wanted === undefined) return { ok: false, why: 'package-lock.json is missing or damaged.' };
  const hidden = () => readLock(join(projectRoot, 'node_modules', '.package-lock.json'));
  const trouble = installTrouble(wanted, hidden());
  if (trouble === '') return { ok: true, why: 'as the lock file says' };
  console.log(`${trouble} Installing, this can take a minute …`);
  const { code, output } = await npm(['ci', '--include=dev', '--no-audit', '--no-fund']);
  const left = code === 0 ? installTrouble(wanted, hidden()) : output.trim();
  if (left === '') return { ok: true, why: 'installed' };
  return { ok: false, why: `npm ci did not succeed (is the network there?):\n${left}` };
}
