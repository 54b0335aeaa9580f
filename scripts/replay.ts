/** npm run -s replay -- FILE [--sheet] [--facts] [--tz ZONE]: a recorded visit through the same path as in the browser. */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { appVersion } from '../src/app/version.ts';
import { parseRecording, runReplay } from '../src/app/replay.ts';
import { defaultPractice } from '../src/domain/protocol/practice.ts';
import { readingDefs } from '../src/domain/protocol/readings.ts';
import { sheetText } from '../src/handoff/sheet-text.ts';
import { summaryJson } from '../src/handoff/summary-json.ts';

const USAGE = 'usage: npm run -s replay -- FILE [--sheet] [--facts] [--tz ZONE]';

function fail(message: string): never {
  process.stderr.write(`replay: ${message}\n`);
  process.exit(2);
}

function args() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        sheet: { type: 'boolean' },
        facts: { type: 'boolean' },
        log: { type: 'boolean' },
        tz: { type: 'string', default: 'UTC' },
      },
    });
  } catch (error) {
    return fail(`${(error as Error).message}\n${USAGE}`);
  }
}

function read(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return fail(`cannot read ${file}`);
  }
}

const { values, positionals } = args();
const file = positionals[0];
if (file === undefined || positionals.length > 1) fail(USAGE);
try {
  new Intl.DateTimeFormat('en', { timeZone: values.tz });
} catch {
  fail(`unknown time zone ${values.tz}`);
}
const parsed = parseRecording(read(file));
if (!parsed.ok) fail(`${file}, ${parsed.text}`);
const replayed = runReplay(parsed.recording, { readings: readingDefs, practice: defaultPractice, appVersion });
if ('failed' in replayed) fail(replayed.failed);
if (values.log) {
  for (const { t, outcome } of replayed.outcomes) {
    process.stderr.write(
      `${String(t).padStart(8)}  ${outcome.trouble === '' ? outcome.said : `! ${outcome.trouble}`}\n`,
    );
  }
}
if (values.facts) process.stdout.write(replayed.facts.map((fact) => `${JSON.stringify(fact)}\n`).join(''));
else if (values.sheet) process.stdout.write(sheetText(replayed.summary, { timeZone: values.tz }));
else process.stdout.write(`${JSON.stringify(summaryJson(replayed.summary), null, 2)}\n`);
