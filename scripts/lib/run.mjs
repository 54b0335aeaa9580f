/** Starts other programs and hands back what they printed. */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const projectRoot = fileURLToPath(new URL('../../', import.meta.url));

/**
 * @typedef {object} Ran
 * @property {number} code exit code; 127 when the program could not be started, 1 when it was ended by a signal
 * @property {string} output everything it printed, on both channels, in order
 */

/**
 * Runs a program to its end and never throws: a program that is not there is an exit code too.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ show?: boolean, env?: Record<string, string> }} [how] `show` prints as it goes, for long work a person waits for
 * @returns {Promise<Ran>}
 */
export function run(command, args, how = {}) {
  return new Promise((done) => {
    const child = spawn(command, [...args], {
      cwd: projectRoot,
      env: { ...process.env, ...how.env },
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32' && command === 'npm',
    });
    let output = '';
    /** @param {Buffer} chunk */
    const take = (chunk) => {
      output += chunk.toString('utf8');
      if (how.show === true) process.stdout.write(chunk);
    };
    child.stdout.on('data', take);
    child.stderr.on('data', take);
    child.on('error', (error) => done({ code: 127, output: output + error.message }));
    child.on('close', (code) => done({ code: code ?? 1, output }));
  });
}

/**
 * npm, the same one that started us if there is one.
 * @param {readonly string[]} args
 * @param {{ show?: boolean, env?: Record<string, string> }} [how]
 * @returns {Promise<Ran>}
 */
export function npm(args, how = {}) {
  const own = process.env['npm_execpath'];
  if (own !== undefined && /npm-cli\.c?js$/.test(own)) return run(process.execPath, [own, ...args], how);
  return run('npm', args, how);
}
