/** Whole visits for the tests of what leaves the app: recorded ones, walked through the same path as in the browser. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseRecording, runReplay, runReplays } from '../../src/app/replay.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import type { Summary } from '../../src/domain/summary/types.ts';

export interface Recorded {
  readonly summary: Summary;
  readonly facts: readonly Fact[];
}

/** A path, not an address: in a made-up page addresses are the page's own. */
const RECORDED = join(dirname(fileURLToPath(import.meta.url)), '../../scripts/recorded');

const deps = { readings: readingDefs, practice: defaultPractice, appVersion: '0.1.0' };

function recordingIn(file: string) {
  const parsed = parseRecording(readFileSync(join(RECORDED, file), 'utf8'));
  if (!parsed.ok) throw new Error(parsed.text);
  return parsed.recording;
}

/** A recorded visit by name: `clean`, or `troubled` with mishearings, a retake, an outlier and a late seating. */
export function recorded(name: 'clean' | 'troubled'): Recorded {
  const replayed = runReplay(recordingIn(`${name}.jsonl`), deps);
  if ('failed' in replayed) throw new Error(replayed.failed);
  return replayed;
}

/** The visits after which work is handed to the laboratory, of one recorded case: the first, the second, the third. */
export function recordedHandovers(): readonly Recorded[] {
  const recordings = [1, 2, 3].map((visit) => recordingIn(`five/visit-${visit}.jsonl`));
  const replayed = runReplays(recordings, deps);
  if ('failed' in replayed) throw new Error(replayed.failed);
  return replayed;
}

export const DIGEST = 'ab'.repeat(32);
