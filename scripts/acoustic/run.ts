/**
 * A real ear in the tests: synthetic voices and noises, heard by a recogniser with the app's own grammar, and understood by
 * the app's own interpreter.
 *   npm run test:acoustic [-- --full]    the held-out voices; --full hears more of everything
 *   npm run test:acoustic -- --tune      the tuning voices: learns calibration.json anew
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { format } from 'prettier';
import { projectRoot } from '../lib/run.mjs';
import { calibrate } from './calibrate.ts';
import { judge } from './judge.ts';
import type { Judged } from './judge.ts';
import { listen } from './listen.ts';
import type { Calibration } from './opinion.ts';
import { promises } from './promises.ts';
import { scenesOf } from './scenes.ts';
import type { Counts } from './scenes.ts';
import { commandsTable, curveTable, nothingTable, readingsTable } from './tables.ts';
import { ensureTools } from './tools.ts';
import type { Tools } from './tools.ts';

const SAMPLE: Counts = { readings: 48, commands: 13, talk: 16, noise: 10 };
const FULL: Counts = { readings: 240, commands: 104, talk: 80, noise: 60 };
const TUNING: Counts = { readings: 240, commands: 52, talk: 80, noise: 40 };

const CALIBRATION = join(projectRoot, 'scripts', 'acoustic', 'calibration.json');
const FOLDER = join(projectRoot, '.cache', 'acoustic');
const THRESHOLDS = [0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95];

const stored = (): Calibration => JSON.parse(readFileSync(CALIBRATION, 'utf8')) as Calibration;

function print(judged: readonly Judged[]): void {
  const of = (...kinds: readonly string[]): readonly Judged[] => judged.filter((j) => kinds.includes(j.scene.kind));
  const quiet = of('reading').filter((j) => j.level === 'clean' || j.level === 20);
  console.log(readingsTable(of('reading')), '\n');
  console.log(commandsTable(of('command')), '\n');
  console.log(nothingTable(of('talk', 'noise')), '\n');
  console.log('Readings, clean and 20 dB, were the threshold of confidence another:');
  console.log(curveTable(quiet, THRESHOLDS), '\n');
}

async function tune(tools: Tools): Promise<number> {
  const heard = await listen(scenesOf('tuning', TUNING), tools);
  const calibration = calibrate(heard);
  writeFileSync(CALIBRATION, await format(JSON.stringify(calibration), { parser: 'json', printWidth: 120 }));
  console.log('What was learnt from, so these figures flatter:\n');
  print(heard.map((h) => judge(h, calibration)));
  return 0;
}

async function tell(tools: Tools, counts: Counts): Promise<number> {
  const calibration = stored();
  const began = performance.now();
  const heard = await listen(scenesOf('held-out', counts), tools);
  const seconds = ((performance.now() - began) / 1000).toFixed(0);
  console.log(`${heard.length} hearings of the held-out voices in ${seconds} s; synthetic voices, not people.\n`);
  const judged = heard.map((h) => judge(h, calibration));
  print(judged);
  const kept = promises(judged);
  for (const { ok, says } of kept) console.log(`${ok ? ' ok ' : 'FAIL'}  ${says}`);
  const failed = kept.filter(({ ok }) => !ok).length;
  console.log(`\n${kept.length - failed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}

const USAGE = 'usage: npm run test:acoustic [-- --full | --tune]';

async function main(args: readonly string[]): Promise<number> {
  const { values } = parseArgs({ args: [...args], options: { full: { type: 'boolean' }, tune: { type: 'boolean' } } });
  const found = await ensureTools(FOLDER);
  if (!found.ok) {
    console.error(found.why);
    return 1;
  }
  if (values.tune === true) return tune(found.tools);
  return tell(found.tools, values.full === true ? FULL : SAMPLE);
}

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof Error ? error.message : error, `\n${USAGE}`);
  process.exitCode = 1;
}
