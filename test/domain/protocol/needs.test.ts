/** The table of what the summary lives on, held to the summary itself: take a step's entries away and see what is missing. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseRecording, runReplay } from '../../../src/app/replay.ts';
import type { Fact } from '../../../src/domain/case/facts.ts';
import { foldCase } from '../../../src/domain/case/fold.ts';
import { protocols } from '../../../src/domain/protocol/index.ts';
import { NEEDS } from '../../../src/domain/protocol/needs.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';
import { summarise } from '../../../src/domain/summary/summarise.ts';
import { projectRoot } from '../../helpers/source-tree.ts';

const deps = { readings: readingDefs, practice: defaultPractice, appVersion: 'test' };

function cleanFacts(): readonly Fact[] {
  const parsed = parseRecording(readFileSync(`${projectRoot}scripts/recorded/clean.jsonl`, 'utf8'));
  if (!parsed.ok) throw new Error(parsed.text);
  const replayed = runReplay(parsed.recording, deps);
  if ('failed' in replayed) throw new Error(replayed.failed);
  return replayed.facts;
}

const facts = cleanFacts();

/** The first visit as it would have been without the entries of one step. */
function without(step: string) {
  const kept = facts
    .filter(({ body }) => !('step' in body && body.step === step))
    .map((fact, i): Fact => ({ ...fact, seq: i + 1, act: i + 1 }));
  return summarise(foldCase('replay', kept), { protocol: visit1, ...deps, now: facts.at(-1)!.at });
}

describe('the table of needs', () => {
  it('names only readings and steps that a shipped visit has', () => {
    const steps = new Set(protocols.flatMap((protocol) => protocol.steps.map((step) => step.id)));
    const readings = new Set(
      protocols.flatMap((p) => p.steps.flatMap((s) => (s.kind === 'reading' ? [s.reading] : []))),
    );
    expect(NEEDS.flatMap((need) => need.steps).filter((id) => !steps.has(id))).toEqual([]);
    expect(NEEDS.flatMap((need) => need.readings).filter((id) => !readings.has(id))).toEqual([]);
  });

  it.each([
    ['rest-height', 'rest-height'],
    ['rest-height', 'rest-space'],
    ['closed-height', 'rest-space'],
    ['record-height', 'pin'],
    ['upper-width', 'tray-upper'],
    ['lower-width', 'tray-lower'],
  ])('without %s the summary has no %s, with it it has', (step, computed) => {
    const whole = without('nothing').computed.map((row) => row.id);
    expect(whole).toContain(computed);
    expect(without(step).computed.map((row) => row.id)).not.toContain(computed);
    const listed = NEEDS.flatMap((need) => need.readings);
    expect(listed).toContain(step);
  });

  it.each(['bone-height', 'ridge-form-upper', 'muscle', 'jaw-relation'])(
    'without %s the class is decided by less',
    (step) => {
      const row = (id: string) => without(id).computed.find((one) => one.id === 'class');
      expect(row('nothing')).toBeDefined();
      expect(JSON.stringify(row(step))).not.toBe(JSON.stringify(row('nothing')));
    },
  );

  it('a wish that is not asked for is not on the lab sheet', () => {
    const wishes = (id: string) => without(id).labWork.find((line) => line.id === 'wishes')?.detail ?? '';
    expect(wishes('wish-shade')).not.toBe(wishes('nothing'));
  });
});
