/** Finds an installed Chromium or Chrome for the tests in a real browser, and tries to install one where that is possible. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { posix, win32 } from 'node:path';
import { run } from './run.mjs';

export const howToGetOne =
  'Install Chromium or Chrome, or name the program of one in the environment variable RIMWISE_BROWSER.';

const linuxNames = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const linuxFolders = ['/usr/bin', '/usr/local/bin', '/snap/bin', '/opt/google/chrome'];
const macApps = ['Chromium.app/Contents/MacOS/Chromium', 'Google Chrome.app/Contents/MacOS/Google Chrome'];
const windowsApps = ['Google\\Chrome\\Application\\chrome.exe', 'Chromium\\Application\\chrome.exe'];

/**
 * What the machine looks like from here; tests give one of their own.
 * @typedef {object} Machine
 * @property {NodeJS.Platform} platform
 * @property {Record<string, string | undefined>} env
 * @property {(path: string) => boolean} exists
 * @property {(path: string) => boolean} works answers when asked for its version: on some systems the name is only a note
 */

/** @param {Machine} machine @returns {string[]} */
function usualPlaces({ platform, env }) {
  if (platform === 'darwin') {
    const folders = ['/Applications', posix.join(env['HOME'] ?? '/', 'Applications')];
    return folders.flatMap((folder) => macApps.map((app) => posix.join(folder, app)));
  }
  if (platform === 'win32') {
    const folders = [env['ProgramFiles'], env['ProgramFiles(x86)'], env['LOCALAPPDATA']];
    return folders.flatMap((folder) => (folder === undefined ? [] : windowsApps.map((app) => win32.join(folder, app))));
  }
  const onPath = (env['PATH'] ?? '').split(':').filter((folder) => folder.startsWith('/'));
  const folders = [...new Set([...onPath, ...linuxFolders])];
  return linuxNames.flatMap((name) => folders.map((folder) => posix.join(folder, name)));
}

/**
 * The one that is named in RIMWISE_BROWSER, else the first that works in the usual places.
 * @param {Machine} machine
 * @returns {{ ok: true, path: string } | { ok: false, why: string }}
 */
export function findBrowser(machine) {
  const named = machine.env['RIMWISE_BROWSER'];
  if (named !== undefined && named !== '') {
    if (machine.exists(named)) return { ok: true, path: named };
    return { ok: false, why: `RIMWISE_BROWSER names ${named}, but there is nothing there. ${howToGetOne}` };
  }
  const path = usualPlaces(machine).find((place) => machine.exists(place) && machine.works(place));
  return path === undefined
    ? { ok: false, why: `No Chromium or Chrome was found. ${howToGetOne}` }
    : { ok: true, path };
}

/** @param {string} path */
function tellsVersion(path) {
  // Elsewhere asking for the version opens a window; there the file itself is proof enough.
  if (process.platform !== 'linux') return true;
  try {
    return /Chrom/.test(execFileSync(path, ['--version'], { encoding: 'utf8', timeout: 20_000, stdio: 'pipe' }));
  } catch {
    return false;
  }
}

/** @returns {Machine} */
export function thisMachine() {
  return { platform: process.platform, env: process.env, exists: existsSync, works: tellsVersion };
}

/** Debian and its children, as root: there the package manager can be asked. */
export function canAskApt() {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return false;
  return /^ID(_LIKE)?=.*(debian|ubuntu)/m.test(
    existsSync('/etc/os-release') ? readFileSync('/etc/os-release', 'utf8') : '',
  );
}

/**
 * A browser that is there, or one freshly installed by the package manager, or a sentence that says what to install.
 * @returns {Promise<{ ok: true, path: string } | { ok: false, why: string }>}
 */
export async function ensureBrowser() {
  const found = findBrowser(thisMachine());
  if (found.ok || process.env['RIMWISE_BROWSER'] || !canAskApt()) return found;
  console.log('No Chromium or Chrome was found. Installing chromium with apt-get, this can take some minutes …');
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  const updated = await run('apt-get', ['update', '-q'], { env });
  const installed = await run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'], { env });
  if (installed.code === 0) return findBrowser(thisMachine());
  const said = `${updated.output}\n${installed.output}`.trim().split('\n').slice(-8).join('\n');
  return { ok: false, why: `apt-get could not install chromium:\n${said}\n${howToGetOne}` };
}
