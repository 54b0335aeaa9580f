/** What handing over costs: PDF, bundle, case file, import of 10,000 facts. Prints what it measured here and now. */
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { gzipSync } from 'node:zlib';
import {
  arriving,
  makeCaseFile,
  makeFhir,
  makePdf,
  readCaseFile,
  type HandoffHost,
  type MadeFile,
} from '../../src/app/handoff.ts';
import { parseRecording, runReplay } from '../../src/app/replay.ts';
import { appVersion } from '../../src/app/version.ts';
import { openStored } from '../../src/app/visit-kit.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import type { Outcome } from '../../src/handoff/case-file.types.ts';
import { arrivalOf } from '../../src/handoff/case-import.ts';
import { caseText } from '../../src/handoff/chain.ts';

const RUNS = 7;

function good<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.text);
  return outcome.value;
}

function visit(): readonly Fact[] {
  const text = readFileSync(new URL('../recorded/troubled.jsonl', import.meta.url), 'utf8');
  const parsed = parseRecording(text);
  if (!parsed.ok) throw new Error(parsed.text);
  const replayed = runReplay(parsed.recording, { readings: readingDefs, practice: defaultPractice, appVersion });
  if ('failed' in replayed) throw new Error(replayed.failed);
  return replayed.facts;
}

async function timed<T>(name: string, work: () => Promise<T>, runs = RUNS): Promise<T> {
  const times: number[] = [];
  let last: T | undefined;
  for (let i = 0; i < runs; i += 1) {
    const from = performance.now();
    last = await work();
    times.push(performance.now() - from);
  }
  const [first = 0] = times;
  const median = times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
  console.log(
    `${name.padEnd(44)} first ${first.toFixed(0).padStart(6)} ms   median ${median.toFixed(0).padStart(6)} ms   (${runs} runs)`,
  );
  return last as T;
}

const size = (name: string, bytes: Uint8Array) =>
  console.log(`${name.padEnd(44)} ${bytes.length} bytes, ${gzipSync(bytes, { level: 9 }).length} packed`);

/** Facts of a visit, then readings up to the number wanted. */
function many(facts: readonly Fact[], count: number): readonly Fact[] {
  const model = facts.find((fact) => fact.body.kind === 'reading');
  if (model === undefined) throw new Error('the recorded visit holds no reading');
  const more = Array.from({ length: count - facts.length }, (_, i): Fact => {
    const seq = facts.length + i + 1;
    return { ...model, seq, act: seq, at: model.at + seq * 1000 };
  });
  return [...facts, ...more];
}

async function oneVisit(facts: readonly Fact[]): Promise<void> {
  const now = facts.at(-1)?.at ?? 0;
  const opened = await openStored('replay', facts, { now: () => now });
  if (!opened.ok) throw new Error(opened.text);
  const { open } = opened;
  const host: HandoffHost = { now: () => now, writer: 'chair-1', timeZone: 'UTC', read: (url) => readFile(url) };
  console.log(`one recorded visit, ${facts.length} facts`);
  const show = (name: string, made: Outcome<MadeFile>) => size(name, good(made).bytes);
  show('PDF, A4', await timed('PDF, A4', () => makePdf(open, 'A4', host)));
  show('PDF, Letter', await timed('PDF, Letter', () => makePdf(open, 'LETTER', host)));
  show('FHIR bundle without PDF', await timed('FHIR bundle', () => makeFhir(open, host)));
  const pdf = good(await makePdf(open, 'A4', host)).bytes;
  show('FHIR bundle with its PDF', await timed('FHIR bundle, PDF given', () => makeFhir(open, host, pdf)));
  const file = await timed('case file', () => makeCaseFile(open, host));
  show('case file', file);
  const sealed = await timed('case file under a passphrase', () => makeCaseFile(open, host, 'seven wet gloves'));
  const text = new TextDecoder().decode(good(sealed).bytes);
  await timed('opening it', () => readCaseFile(text, 'seven wet gloves'));
}

/** All that taking a file in does but writing to the disk: read, verified, merged, folded, a session running on it. */
async function takenIn(text: string, here: readonly Fact[]): Promise<void> {
  const file = good(await readCaseFile(text));
  const { facts } = good(await arriving(here, file, 'chair-1'));
  const opened = await openStored(file.caseId, [...here, ...facts], { now: () => 0 });
  if (!opened.ok) throw new Error(opened.text);
}

async function tenThousand(facts: readonly Fact[]): Promise<void> {
  const all = many(facts, 10_000);
  console.log('10,000 facts');
  const file = good(await timed('case file', () => toCaseFile(all, 'chair-1'), 3));
  const text = caseText(file);
  size('case file', new TextEncoder().encode(text));
  const read = good(await timed('read and verified', () => readCaseFile(text), 3));
  await timed('import into an empty record', () => arrivalOf([], read, 'lab-1'), 3);
  await timed('import into a record that has half of them', () => arrivalOf(all.slice(0, 5000), read, 'chair-1'), 3);
  await timed('from the text to a case that can be worked on', () => takenIn(text, all.slice(0, 5000)), 3);
}

export default async function measure(): Promise<void> {
  const facts = visit();
  await oneVisit(facts);
  await tenThousand(facts);
}
