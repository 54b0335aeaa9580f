import { describe, expect, it } from 'vitest';
import { invariants } from './invariants.ts';

describe('what must hold for every case', () => {
  it.each(invariants.map((invariant) => [invariant.what, invariant] as const))('%s', (_, invariant) => {
    expect(invariant.check).not.toThrow();
  });
});
