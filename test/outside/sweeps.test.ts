/** Random cases against a second way of working them out. The tolerance stands in the table and in docs/outside-checks.md. */
import { describe, expect, it } from 'vitest';
import { dixonSweeps } from './dixon.ts';
import { sweeps } from './sweeps.ts';

describe('random cases agree with another way of working them out', () => {
  it.each([...sweeps, ...dixonSweeps].map((sweep) => [sweep.what, sweep] as const))(
    '%s',
    { timeout: 60_000 },
    (_, sweep) => {
      const worst = sweep.worst(sweep.cases);
      expect(worst).toBeGreaterThanOrEqual(0);
      expect(worst).toBeLessThanOrEqual(sweep.tolerance);
    },
  );
});
