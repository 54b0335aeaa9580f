/** Promise: whatever number a visit asks for has a range, a unit, a name to call it by, and a place in what comes out. */
import { describe, expect, it } from 'vitest';
import { formatHundredths } from '../../src/domain/measure/length.ts';
import { protocols } from '../../src/domain/protocol/index.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { stepOf } from '../../src/domain/protocol/path.ts';
import type { Language, Step } from '../../src/domain/protocol/types.ts';
import { summaryJson } from '../../src/handoff/summary-json.ts';
import { bench, type Bench } from '../helpers/visit.ts';

const LANGUAGES: readonly Language[] = ['en', 'de', 'es', 'fr'];

const rows = protocols.flatMap((protocol) =>
  protocol.steps.flatMap((step) =>
    step.kind === 'reading' ? [{ name: `${protocol.id}: ${step.reading}`, protocol, step }] : [],
  ),
);

/** Straight to a step; a question that hides it is gone to and answered first. */
function leadTo(b: Bench, step: Step): void {
  if (step.onlyIf !== undefined) {
    const { step: asked, answer } = step.onlyIf;
    leadTo(b, stepOf(b.session.context().protocol, asked)!);
    b.press(`answer:${answer}`);
    if (b.session.context().asking !== undefined) b.press('reason:clinical-judgement');
  }
  b.press(`goto:${step.id}`);
}

describe.each(rows)('$name', ({ protocol, step }) => {
  const def = readingDefs.find((one) => one.id === step.reading);

  it('has a range, a unit and a name in four languages', () => {
    expect(def?.plausible[0]).toBeLessThan(def?.plausible[1] ?? 0);
    expect(def?.expected[0]).toBeLessThan(def?.expected[1] ?? 0);
    expect(def?.unit).toMatch(/\S/);
    for (const language of LANGUAGES) expect(def?.names[language]?.[0]).toMatch(/\S/);
  });

  it('typed at its step, stands in the summary with label, unit and value', () => {
    const b = bench({ protocol, readings: readingDefs, practice: defaultPractice });
    leadTo(b, step);
    expect(b.step()).toBe(step.id);
    const value = def!.expected[0];
    b.type(formatHundredths(value));
    b.press('yes');
    const row = b.summary().readings.find((one) => one.reading === step.reading);
    expect(row).toMatchObject({ step: step.id, label: def?.label, unit: def?.unit, value, outOfTurn: false });
    expect(summaryJson(b.summary()).readings.find((one) => one.reading === step.reading)?.value).toBe(value / 100);
    if (def?.repeat?.withinSet === true) expect(b.summary().sets.map((set) => set.reading)).toContain(step.reading);
  });
});

it('covers every reading that any visit asks for', () => {
  const asked = new Set(rows.map(({ step }) => step.reading));
  const known = readingDefs.filter((def) => def.anytime !== true).map((def) => def.id);
  expect(known.filter((id) => !asked.has(id))).toEqual([]);
  expect(rows.length).toBeGreaterThanOrEqual(asked.size);
});
