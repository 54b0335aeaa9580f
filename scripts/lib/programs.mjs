/** The programs some tests ask about what the app made: found, installed where the package manager can be asked, or named. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { canAskApt } from './browser.mjs';
import { run } from './run.mjs';

/** Program → the Debian package it comes in. */
export const programs = Object.freeze({
  pdftotext: 'poppler-utils',
  qpdf: 'qpdf',
  zbarimg: 'zbar-tools',
});

/**
 * Packages whose program is in none of the folders.
 * @param {readonly string[]} folders
 * @param {(path: string) => boolean} exists
 * @returns {string[]}
 */
export function missingPackages(folders, exists) {
  return Object.entries(programs)
    .filter(([program]) => !folders.some((folder) => exists(join(folder, program))))
    .map(([, name]) => name);
}

const missingHere = () => missingPackages((process.env['PATH'] ?? '').split(':'), existsSync);

/**
 * @returns {Promise<{ ok: boolean, why: string }>} `why` says what is there, or what to install
 */
export async function ensurePrograms() {
  const missing = missingHere();
  if (missing.length === 0) return { ok: true, why: Object.values(programs).join(', ') };
  const how = `Install ${missing.join(', ')}: the tests of the printed sheet read it with them.`;
  if (!canAskApt()) return { ok: false, why: how };
  console.log(`Installing with apt-get, for they are missing: ${missing.join(', ')} …`);
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  const updated = await run('apt-get', ['update', '-q'], { env });
  const installed = await run('apt-get', ['install', '-y', '-q', '--no-install-recommends', ...missing], { env });
  if (installed.code === 0 && missingHere().length === 0) return { ok: true, why: `installed ${missing.join(', ')}` };
  const said = `${updated.output}\n${installed.output}`.trim().split('\n').slice(-8).join('\n');
  return { ok: false, why: `apt-get could not install ${missing.join(', ')}:\n${said}\n${how}` };
}
