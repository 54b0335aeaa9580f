import { describe, expect, it } from 'vitest';
import { chanceOf, fit } from '../../scripts/acoustic/logistic.ts';
import { chanceFrom } from '../../scripts/acoustic/random.ts';

describe('logistic regression', () => {
  it('finds the chance back that made the data', () => {
    const chance = chanceFrom('logistic');
    const truth = (x: number, y: number): number => 1 / (1 + Math.exp(-(0.5 + 1.2 * x - 0.8 * y)));
    const rows = Array.from({ length: 4000 }, () => {
      const x = [chance.next() * 4 - 2, chance.next() * 4 - 2];
      return { x, y: chance.next() < truth(x[0] ?? 0, x[1] ?? 0) ? (1 as const) : (0 as const) };
    });
    const model = fit(rows);
    for (const [x, y] of [
      [0, 0],
      [1, -1],
      [-1, 1],
      [1.5, 1.5],
    ] as const)
      expect(Math.abs(chanceOf([x, y], model) - truth(x, y))).toBeLessThan(0.05);
  });
  it('does not divide by a number that never changes', () => {
    const model = fit([
      { x: [1], y: 1 },
      { x: [1], y: 0 },
    ]);
    expect(chanceOf([1], model)).toBeCloseTo(0.5, 6);
  });
});
