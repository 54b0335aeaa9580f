import { describe, expect, it } from 'vitest';
import { printedTolerance } from './check.ts';
import { contradictions } from './contradictions.ts';

describe('what is listed as a contradiction really is one', () => {
  it.each(contradictions.map((entry) => [entry.about, entry] as const))('%s', (_, { printed, other }) => {
    const value = other();
    const figure = printedTolerance(printed);
    if (typeof value === 'string' || figure === undefined) {
      expect(value).not.toBe(printed);
      return;
    }
    expect(Number.isFinite(value)).toBe(true);
    expect(Math.abs(value - figure.value)).toBeGreaterThan(figure.within - 1e-9);
  });
});
