/** The last day of a lot, and that it is said when a lot past it is chosen and flagged when it is mixed. */
import { describe, expect, it } from 'vitest';
import { isExpired } from '../../../src/domain/protocol/lots.ts';
import { cautionsIn, withOwnCautions, withOwnRanges } from '../../../src/domain/protocol/own.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';
import type { Material } from '../../../src/domain/protocol/types.ts';
import { bench, small, START } from '../../helpers/visit.ts';
import { softMaterial } from '../../helpers/small-visit.ts';

const at = (text: string) => Date.parse(text);

describe('a lot', () => {
  it.each([
    ['2026-03-02', '2026-03-02T08:00:00Z', false],
    ['2026-03-02', '2026-03-02T23:59:59Z', false],
    ['2026-03-01', '2026-03-02T00:00:00Z', true],
    ['2024-02-29', '2024-03-01T12:00:00Z', true],
    ['2026-02-28', '2026-03-01T12:00:00Z', true],
    ['2027-01-01', '2026-12-31T12:00:00Z', false],
    ['soon', '2026-12-31T12:00:00Z', false],
  ])('with last day %s, at %s: out of date %s', (expires, now, expected) => {
    expect(isExpired({ expires }, at(now))).toBe(expected);
  });

  it('without a day is never called out of date', () => {
    expect(isExpired({}, at('2099-01-01T00:00:00Z'))).toBe(false);
  });
});

function dipped(material: Material) {
  const b = bench({ ...small, practice: { ...small.practice, materials: [material] } });
  for (const intent of ['goto:dip', `material:${material.id}`]) b.press(intent);
  const chosen = b.press(`material:${material.id}`);
  b.press('start');
  return { b, chosen };
}

describe('an expired lot', () => {
  const late = { ...softMaterial, lot: 'A 12', expires: '2026-03-01' };

  it('is said at once when it is chosen', () => {
    expect(START).toBe(at('2026-03-02T08:00:00Z'));
    expect(dipped(late).chosen.trouble).toBe('Out of date: lot A 12, last day of use 2026-03-01.');
    expect(dipped({ ...late, expires: '2026-03-02' }).chosen.trouble).toBe('');
  });

  it('is flagged once it is mixed, with lot and day, and must be answered', () => {
    const { b } = dipped(late);
    const flag = b.summary().flags.find((one) => one.id.startsWith('expired:'));
    expect(flag).toMatchObject({ level: 'disagrees' });
    expect(flag?.what).toContain('lot A 12, last day of use 2026-03-01');
    b.press(`flagKeep:${flag!.id}|notNeeded`);
    expect(b.summary().flags.find((one) => one.id === flag!.id)?.answer?.reason).toBe('Not needed');
  });

  it('stays as it was when it was mixed, however late it is looked at', () => {
    const { b } = dipped({ ...late, expires: '2026-03-02' });
    b.wait(30 * 86_400_000);
    expect(b.summary().flags.filter((one) => one.id.startsWith('expired:'))).toEqual([]);
  });
});

describe("the practice's own words and ranges", () => {
  it('are laid over the protocol, and change nothing else', () => {
    const key = Object.keys(cautionsIn(visit1)).find((name) => name.includes(':'))!;
    const own = withOwnCautions(visit1, { cautions: { [key]: 'In our own words.' } });
    expect(cautionsIn(own)).toEqual({ ...cautionsIn(visit1), [key]: 'In our own words.' });
    expect(own.steps.map((step) => step.id)).toEqual(visit1.steps.map((step) => step.id));
    expect(withOwnCautions(visit1, {})).toBe(visit1);
  });

  it('ranges replace those of the reading, and say whose they are', () => {
    const ranges = { 'upper-width': { plausible: [3500, 8000], expected: [4600, 6900] } } as const;
    const def = withOwnRanges(readingDefs, { ranges }).find((one) => one.id === 'upper-width');
    expect(def).toMatchObject({ plausible: [3500, 8000], expected: [4600, 6900], unit: 'mm' });
    expect(def?.source).toContain("practice's own");
    expect(withOwnRanges(readingDefs, {})).toBe(readingDefs);
  });
});
