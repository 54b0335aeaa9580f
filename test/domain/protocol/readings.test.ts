import { describe, expect, it } from 'vitest';
import { protocols } from '../../../src/domain/protocol/index.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import type { Language } from '../../../src/domain/protocol/types.ts';

const LANGUAGES: readonly Language[] = ['en', 'de', 'es', 'fr'];
/** Called out of turn most often: two ways of saying each. */
const COMMON = ['upper-width', 'lower-width', 'rest-height', 'closed-height', 'old-height', 'record-height'];

describe.each(readingDefs.map((def) => [def.id, def] as const))('reading %s', (_id, def) => {
  it('has a unit, a source, and an expected range inside the plausible one', () => {
    expect(def.unit.length).toBeGreaterThan(0);
    expect(def.source.length).toBeGreaterThan(20);
    const [low, high] = def.plausible;
    const [usualLow, usualHigh] = def.expected;
    expect([low, usualLow, usualHigh, high].every(Number.isSafeInteger)).toBe(true);
    expect(low).toBeGreaterThanOrEqual(0);
    expect(usualLow).toBeGreaterThanOrEqual(low);
    expect(usualHigh).toBeLessThanOrEqual(high);
    expect(usualLow).toBeLessThan(usualHigh);
  });

  it('answers to a name in four languages, lower case and without digits', () => {
    for (const language of LANGUAGES) {
      const names = def.names[language] ?? [];
      expect(names.length).toBeGreaterThanOrEqual(COMMON.includes(def.id) ? 2 : 1);
      for (const name of names) {
        expect(name).toBe(name.trim().toLowerCase());
        expect(name).not.toMatch(/\d/);
      }
    }
  });

  it('is asked for in at least one visit, or may be called at any time', () => {
    const asked = protocols.some((protocol) =>
      protocol.steps.some((step) => step.kind === 'reading' && step.reading === def.id),
    );
    expect(asked || def.anytime === true).toBe(true);
  });
});

it('shares no id and no spoken name between two readings', () => {
  const ids = readingDefs.map((def) => def.id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const language of LANGUAGES) {
    const names = readingDefs.flatMap((def) => def.names[language] ?? []);
    const twice = names.filter((name, index) => names.indexOf(name) !== index);
    expect(twice).toEqual([]);
  }
});

it('takes rest three times and closed twice, each compared only between one set of marks', () => {
  const repeat = (id: string) => readingDefs.find((def) => def.id === id)?.repeat;
  expect(repeat('rest-height')).toEqual({ least: 3, withinSet: true });
  expect(repeat('closed-height')).toEqual({ least: 2, withinSet: true });
});
