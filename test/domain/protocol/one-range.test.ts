/** One range for one quantity: what the visits ask and what the reference has come from one place, or the difference is written down. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RANGES } from '../../../src/domain/measure/ranges.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { projectRoot } from '../../helpers/source-tree.ts';

const defOf = (id: string) => readingDefs.find((def) => def.id === id)!;
const note = readFileSync(`${projectRoot}docs/decisions/0012-one-range.md`, 'utf8');

/** Reading of the visits → the same quantity in the reference. */
const SAME: readonly (readonly [reading: string, range: string])[] = [
  ['face-width', 'bizygomatic'],
  ['interalar-width', 'interalar'],
  ['rest-height', 'rest-height'],
  ['closed-height', 'closed-height'],
  ['old-height', 'closed-height'],
  ['face-height', 'face-height'],
  ['canine-lines', 'six-anteriors'],
];

/** Differ on purpose. */
const APART: readonly (readonly [reading: string, range: string])[] = [
  ['upper-width', 'upper-width'],
  ['lower-width', 'lower-width'],
];

describe('ranges', () => {
  it.each(SAME)('%s is the very range of %s', (reading, range) => {
    expect(defOf(reading).plausible).toBe(RANGES[range]!.plausible);
    expect(defOf(reading).expected).toBe(RANGES[range]!.usual);
  });

  it.each(APART)('%s differs from %s, and why is written down with both', (reading, range) => {
    const figures = ([low, high]: readonly [number, number]) => `${low / 100}–${high / 100}`;
    const { plausible, expected } = defOf(reading);
    expect(plausible).not.toEqual(RANGES[range]!.plausible);
    for (const words of [plausible, expected, RANGES[range]!.plausible, RANGES[range]!.usual].map(figures))
      expect(note).toContain(words);
    expect(note).toContain(`\`${reading}\``);
  });

  it('no other quantity stands in both under one name', () => {
    const listed = new Set([...SAME, ...APART].map(([reading]) => reading));
    expect(readingDefs.filter((def) => RANGES[def.id] !== undefined && !listed.has(def.id))).toEqual([]);
  });
});
