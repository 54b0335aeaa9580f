import { expect, it } from 'vitest';
import {
  chapterOf,
  protocolFor,
  readingDef,
  stepIndex,
  stepsOfChapter,
  visibleSteps,
} from '../../../src/domain/protocol/index.ts';
import {
  isShown,
  nextStep,
  previousStep,
  retakeSteps,
  stepOf,
  stepOfReading,
} from '../../../src/domain/protocol/path.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';

it('walks back the way it came, hidden steps left out both ways', () => {
  const answers = { arches: 'both', finding: 'no', 'old-dentures': 'no' };
  const forward: string[] = [];
  for (let step = visit1.steps[0]; step !== undefined; step = nextStep(visit1, step.id, answers)) forward.push(step.id);
  const back: string[] = [];
  for (let step = visit1.steps.at(-1); step !== undefined; step = previousStep(visit1, step.id, answers))
    back.push(step.id);
  expect(forward).toEqual(back.toReversed());
  expect(forward).toEqual(visibleSteps(visit1, answers).map((step) => step.id));
  expect(forward).not.toContain('finding-size');
});

it('hides by notIf and by onlyIf, and notIf wins', () => {
  const step = stepOf(visit1, 'upper-tray-adapt')!;
  expect(isShown(step, {})).toBe(false);
  expect(isShown(step, { 'upper-tray': 'adapt' })).toBe(true);
  expect(isShown(step, { 'upper-tray': 'adapt', arches: 'lower-only' })).toBe(false);
});

it('gives up exactly the part of the chapter that is taken again', () => {
  expect(retakeSteps(visit1, 'upper-mix', 'upper-keep')).toEqual([
    'upper-mix',
    'upper-ready',
    'upper-syringe',
    'upper-impression',
    'upper-surface',
    'upper-borders',
    'upper-rear',
    'upper-through',
    'upper-keep',
  ]);
});

it('answers plainly when an id is unknown', () => {
  expect(protocolFor('visit-1', 1)).toBe(visit1);
  expect(protocolFor('visit-1', 999)).toBeUndefined();
  expect(readingDef('no-such')).toBeUndefined();
  expect(stepIndex(visit1, 'no-such')).toBe(-1);
  expect(chapterOf(visit1, 'no-such')).toBeUndefined();
  expect(stepsOfChapter(visit1, 99)).toEqual([]);
  expect(chapterOf(visit1, 'marks')?.title).toBe('Marks');
  expect(stepOfReading(visit1, 'rest-height')?.id).toBe('rest-height');
});
