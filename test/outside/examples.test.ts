/** Worked examples and published figures, row by row; docs/outside-checks.md is written from the same tables. */
import { describe, expect, it } from 'vitest';
import { sources } from '../../src/domain/measure/sources.ts';
import { printedTolerance, verdictOf, type Row } from './check.ts';
import { tables } from './tables.ts';

describe.each(tables.map((table) => [table.title, table] as const))('%s', (_, table) => {
  it.each(table.rows.map((row) => [row.what, row] as const))('%s', (what, row) => {
    expect(verdictOf(row), what).toBe('');
    expect(sources).toHaveProperty(row.source);
  });
});

it('no title is used twice', () => {
  expect(new Set(tables.map((table) => table.title)).size).toBe(tables.length);
});

describe('a row that does not hold is found', () => {
  const row = (expected: number | string, actual: unknown): Row => ({
    what: '',
    expected,
    source: 'pdi',
    status: 'derived',
    run: () => actual,
  });

  it.each([
    row('2.491', 2.492),
    row('−1.671', 1.671),
    row(2.5, 2.500001),
    row('usual', 'small'),
    row('true', false),
    row('0.00', NaN),
    row(0, undefined),
    row('3.00', '2.99'),
  ])('%j', (broken) => {
    expect(verdictOf(broken)).toMatch(/^expected/);
  });

  it('reads the tolerance off the last printed digit', () => {
    expect(printedTolerance('2.491')).toEqual({ value: 2.491, within: 0.0005 + 1e-9 });
    expect(printedTolerance('−3')).toEqual({ value: -3, within: 0.5 + 1e-9 });
    expect(printedTolerance('usual')).toBeUndefined();
  });
});
