/**
 * npm run -s replay -- FILE [FILE …] [--all] [--sheet] [--facts] [--log] [--tz ZONE]: a recorded visit, or the successive
 * visits of one case, through the same path as in the browser.
 */
import { appVersion } from '../src/app/version.ts';
import { parseRecording, runReplays, type Recording, type Replayed } from '../src/app/replay.ts';
import { defaultPractice } from '../src/domain/protocol/practice.ts';
import { readingDefs } from '../src/domain/protocol/readings.ts';
import { sheetText } from '../src/handoff/sheet-text.ts';
import { isTimeZone } from '../src/handoff/sheet-times.ts';
import { summaryJson } from '../src/handoff/summary-json.ts';
import { argsOf, cli, type Cli } from './lib/cli.ts';

const command = cli(
  'replay',
  'usage: npm run -s replay -- FILE [FILE …] [--all] [--sheet] [--facts] [--log] [--tz ZONE]',
);
const fail: Cli['fail'] = command.fail;
const { read, usage } = command;

function recording(file: string): Recording {
  const parsed = parseRecording(read(file));
  return parsed.ok ? parsed.recording : fail(`${file}, ${parsed.text}`);
}

function play(files: readonly string[]): readonly Replayed[] {
  const deps = { readings: readingDefs, practice: defaultPractice, appVersion };
  const played = runReplays(files.map(recording), deps);
  return 'failed' in played ? fail(`${files[played.recording] ?? ''}, line 1: ${played.failed}`) : played;
}

function log(played: readonly Replayed[]): void {
  for (const { t, outcome } of played.flatMap((one) => one.outcomes)) {
    process.stderr.write(
      `${String(t).padStart(8)}  ${outcome.trouble === '' ? outcome.said : `! ${outcome.trouble}`}\n`,
    );
  }
}

function print(played: readonly Replayed[]): void {
  const last = played.at(-1)!;
  const shown = values.all === true ? played : [last];
  if (values.facts === true) process.stdout.write(last.facts.map((fact) => `${JSON.stringify(fact)}\n`).join(''));
  else if (values.sheet === true)
    process.stdout.write(shown.map((one) => sheetText(one.summary, { timeZone: values.tz })).join('\n'));
  else {
    const summaries = shown.map((one) => summaryJson(one.summary));
    process.stdout.write(`${JSON.stringify(values.all === true ? summaries : summaries[0], null, 2)}\n`);
  }
}

const { values, positionals } = argsOf(command, {
  all: { type: 'boolean' },
  sheet: { type: 'boolean' },
  facts: { type: 'boolean' },
  log: { type: 'boolean' },
  tz: { type: 'string', default: 'UTC' },
});
if (positionals.length === 0) fail(usage);
if (!isTimeZone(values.tz)) fail(`unknown time zone ${values.tz}`);
const played = play(positionals);
if (values.log === true) log(played);
print(played);
