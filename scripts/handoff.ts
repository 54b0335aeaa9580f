/**
 * npm run -s handoff -- FILE --sheet|--pdf|--case|--fhir OUT: what leaves the app, without a screen. FILE is a case file,
 * a saved record, or the JSON lines of `replay --facts`. Times of making are those of the last entry, so that the same
 * input gives the same output.
 */
import { writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { makeCaseFile, makeFhir, makePdf, type HandoffHost, type MadeFile } from '../src/app/handoff.ts';
import type { OpenCase } from '../src/app/open-case.ts';
import { openStored } from '../src/app/visit-kit.ts';
import type { Outcome } from '../src/handoff/case-file.types.ts';
import { sheetText } from '../src/handoff/sheet-text.ts';
import { isTimeZone } from '../src/handoff/sheet-times.ts';
import { argsOf, cli, type Cli } from './lib/cli.ts';
import { factsIn, type Taken } from './lib/handoff-input.ts';

const command = cli(
  'handoff',
  'usage: npm run -s handoff -- FILE --sheet|--pdf|--case|--fhir OUT [--paper a4|letter] [--tz ZONE] [--writer NAME] [--passphrase FILE]',
);
const fail: Cli['fail'] = command.fail;
const { read, usage } = command;

function write(out: string, content: string | Uint8Array): void {
  if (out === '-') {
    process.stdout.write(content);
    return;
  }
  try {
    writeFileSync(out, content);
  } catch {
    fail(`cannot write ${out}`);
  }
}

const { values, positionals } = argsOf(command, {
  sheet: { type: 'string' },
  pdf: { type: 'string' },
  case: { type: 'string' },
  fhir: { type: 'string' },
  paper: { type: 'string', default: 'a4' },
  tz: { type: 'string', default: 'UTC' },
  writer: { type: 'string', default: 'chair-1' },
  passphrase: { type: 'string' },
});
const paper =
  ({ a4: 'A4', letter: 'LETTER' } as const)[values.paper] ?? fail(`unknown paper ${values.paper}: a4 or letter`);
const [file] = positionals;
const wanted = [values.sheet, values.pdf, values.case, values.fhir].some((out) => out !== undefined);
if (file === undefined || positionals.length > 1 || !wanted) fail(usage);
if (!isTimeZone(values.tz)) fail(`unknown time zone ${values.tz}`);

async function opened({ facts }: Taken, now: number): Promise<OpenCase> {
  const stored = await openStored(facts[0]?.caseId ?? '', facts, { now: () => now });
  return stored.ok ? stored.open : fail(`${file}: ${stored.text}`);
}

const passphrase = values.passphrase === undefined ? undefined : read(values.passphrase).split(/\r?\n/)[0];
const taken = await factsIn(read(file), passphrase);
if (!taken.ok) fail(`${file}: ${taken.text}`);
const now = taken.value.facts.at(-1)?.at ?? 0;
const open = await opened(taken.value, now);
const host: HandoffHost = {
  now: () => now,
  writer: values.writer,
  timeZone: values.tz,
  read: (url) => readFile(url),
};

const bytes = (made: Outcome<MadeFile>): MadeFile => (made.ok ? made.value : fail(`${file}: ${made.text}`));

if (values.case !== undefined) write(values.case, bytes(await makeCaseFile(open, host, passphrase)).bytes);
if (values.sheet !== undefined) {
  const { summary } = open.parts(now);
  const { digest } = bytes(await makeCaseFile(open, host));
  if (summary !== undefined) write(values.sheet, sheetText(summary, { timeZone: values.tz, digest }));
}
const pdf =
  values.pdf === undefined && values.fhir === undefined ? undefined : bytes(await makePdf(open, paper, host)).bytes;
if (values.pdf !== undefined && pdf !== undefined) write(values.pdf, pdf);
if (values.fhir !== undefined) write(values.fhir, bytes(await makeFhir(open, host, pdf)).bytes);
