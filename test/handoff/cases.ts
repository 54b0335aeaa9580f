/** Whole visits for the tests of what leaves the app: recorded ones, walked through the same path as in the browser. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseRecording, runReplay } from '../../src/app/replay.ts';
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

/** A recorded visit by name: `clean`, or `troubled` with mishearings, a retake, an outlier and a late seating. */
export function recorded(name: 'clean' | 'troubled'): Recorded {
  const text = readFileSync(join(RECORDED, `${name}.jsonl`), 'utf8');
  const parsed = parseRecording(text);
  if (!parsed.ok) throw new Error(parsed.text);
  const replayed = runReplay(parsed.recording, deps);
  if ('failed' in replayed) throw new Error(replayed.failed);
  return replayed;
}

export const DIGEST = 'ab'.repeat(32);
