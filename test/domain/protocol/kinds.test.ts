/** The words for kinds of material, and what an instrument can show. */
import { describe, expect, it } from 'vitest';
import { protocols } from '../../../src/domain/protocol/index.ts';
import { instrumentOf } from '../../../src/domain/protocol/instruments.ts';
import { kindLabel, MATERIAL_KINDS } from '../../../src/domain/protocol/kinds.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';

const offered = new Set(
  protocols.flatMap((protocol) =>
    protocol.steps.flatMap((step) => (step.kind === 'clock' && step.flow === 'impression' ? step.materials : [])),
  ),
);

describe('kinds of material', () => {
  it('are exactly those that a visit offers, and the starting practice has one of each', () => {
    expect(MATERIAL_KINDS.map((kind) => kind.id).toSorted()).toEqual([...offered].toSorted());
    expect(new Set(defaultPractice.materials.map((material) => material.class))).toEqual(offered);
  });

  it('have a word each; a class of the practice’s own stays as it is', () => {
    expect(new Set(MATERIAL_KINDS.map((kind) => kind.label)).size).toBe(MATERIAL_KINDS.length);
    expect(kindLabel('polyether')).toBe('Polyether');
    expect(kindLabel('wax')).toBe('wax');
  });
});

describe('what an instrument can show', () => {
  it.each(readingDefs.map((def) => [def.id, def] as const))('%s: its ranges can be read', (_id, def) => {
    const [low, high] = instrumentOf(def);
    expect(def.plausible[0]).toBeGreaterThanOrEqual(low);
    expect(def.plausible[1]).toBeLessThanOrEqual(high);
  });

  it('a score ends where its scale does', () => {
    expect(instrumentOf({ unit: 'points', plausible: [0, 300] })).toEqual([0, 300]);
  });
});
