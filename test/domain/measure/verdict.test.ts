import { describe, expect, it } from 'vitest';
import {
  basesNote,
  facialMeasure,
  oldDentureChange,
  spaceChange,
  speakingSpace,
} from '../../../src/domain/measure/crosschecks.ts';
import { combinedHeight, nextReading, type HeightEvidence } from '../../../src/domain/measure/verdict.ts';

const TIGHT = { rest: [7050, 7100, 7000], closed: [6750, 6750, 6750] };
const verdictOf = (evidence: HeightEvidence) => {
  const result = combinedHeight(evidence);
  return result.ok ? result.value.verdict : result.reason;
};

describe('combinedHeight', () => {
  it('fits when a well-read rest space lies inside the usual band', () => {
    const result = combinedHeight(TIGHT);
    if (!result.ok) throw new Error(result.text);
    expect(result.value).toMatchObject({ verdict: 'fits', spaceMm: 3, notYet: ['facial', 'speaking', 'oldDentures'] });
    expect(result.value.reasons[0]).toMatchObject({ check: 'restSpace', leaning: 'neither', weight: 'strong' });
  });

  it('is undecided when the same space was read once only: it could be 1 or 5', () => {
    expect(verdictOf({ rest: [7050], closed: [6750] })).toBe('undecided');
  });

  it.each([
    ['a clearly small space', { rest: [7000, 7000, 7000], closed: [6950, 6950, 6950] }, 'closedLarge'],
    ['a clearly large space', { rest: [7000, 7000, 7000], closed: [6200, 6200, 6200] }, 'closedSmall'],
    ['closed above rest', { rest: [7000], closed: [7100] }, 'impossible'],
    [
      'contact at “s” with an unclear space',
      { rest: [7000], closed: [6830], speaking: { closed: 0, atS: 0 } },
      'closedLarge',
    ],
    ['one weak leaning alone', { ...TIGHT, facial: { pupilToLip: 6000, noseBaseToChin: 6500 } }, 'undecided'],
    [
      'two weak leanings the same way',
      { ...TIGHT, facial: { pupilToLip: 6000, noseBaseToChin: 6500 }, speaking: { closed: 0, atS: 50 } },
      'closedLarge',
    ],
    [
      'leanings in opposite directions',
      { ...TIGHT, facial: { pupilToLip: 6000, noseBaseToChin: 6500 }, speaking: { closed: 0, atS: 400 } },
      'conflicting',
    ],
    ['old dentures far lower', { ...TIGHT, oldDentures: { present: 6000, planned: 6750 } }, 'closedLarge'],
    ['old dentures a little lower', { ...TIGHT, oldDentures: { present: 6500, planned: 6750 } }, 'fits'],
  ] as const)('%s: %s', (_, evidence, verdict) => {
    expect(verdictOf(evidence)).toBe(verdict);
  });

  it('carries the number behind every reason', () => {
    const result = combinedHeight({
      ...TIGHT,
      facial: { pupilToLip: 6000, noseBaseToChin: 6500 },
      speaking: { closed: 0, atS: 150 },
      oldDentures: { present: 6500, planned: 6750, wear: 100 },
    });
    if (!result.ok) throw new Error(result.text);
    const texts = result.value.reasons.map((reason) => reason.text);
    expect(texts).toHaveLength(4);
    expect(texts.join(' ')).toMatch(/3\.0 ± 0\.8.*5\.0 mm above.*1\.5 mm at.*1\.5 mm higher/);
    expect(result.value.notYet).toEqual([]);
  });

  it.each([
    [{ rest: [], closed: [7000] }, 'empty'],
    [{ ...TIGHT, facial: { pupilToLip: NaN, noseBaseToChin: 6500 } }, 'notANumber'],
    [{ ...TIGHT, speaking: { closed: 200, atS: 100 } }, 'inconsistent'],
    [{ ...TIGHT, oldDentures: { present: -1, planned: 6750 } }, 'negative'],
  ] as const)('refuses %j as %s', (evidence, reason) => {
    expect(combinedHeight(evidence)).toMatchObject({ ok: false, reason });
  });
});

describe('nextReading', () => {
  it('asks for the set that was read less often, and says what it would bring', () => {
    const next = nextReading([7000, 7050, 7100], [6700]);
    if (!next.ok) throw new Error(next.text);
    expect(next.value.read).toBe('closed');
    expect(next.value.thenMm).toBeCloseTo(next.value.nowMm * Math.sqrt((1 / 3 + 1 / 2) / (1 / 3 + 1)), 9);
    expect(nextReading([7000], [6700, 6700])).toMatchObject({ value: { read: 'rest' } });
  });
});

describe('cross-checks', () => {
  it.each([
    [6000, 6300, 'neither'],
    [6000, 6301, 'closedLarge'],
    [6300, 6000, 'neither'],
    [6301, 6000, 'closedSmall'],
  ] as const)('facial measure %s against %s leans to %s', (lip, chin, leaning) => {
    expect(facialMeasure(lip, chin)).toMatchObject({ value: { leaning } });
  });

  it.each([
    [0, 'contact', 'closedLarge', true],
    [50, 'narrow', 'closedLarge', true],
    [100, 'usual', 'neither', true],
    [200, 'usual', 'neither', true],
    [201, 'wide', 'closedSmall', true],
    [568, 'wide', 'closedSmall', false],
  ] as const)('speaking space %s: %s', (atS, verdict, leaning, withinWearers) => {
    expect(speakingSpace(0, atS)).toMatchObject({ value: { verdict, leaning, withinWearers } });
  });

  it.each([
    [6500, 6900, 0, 'within'],
    [6500, 7000, 0, 'atLimit'],
    [6500, 7001, 0, 'beyond'],
    [6500, 7001, 200, 'within'],
    [6500, 5999, 0, 'beyond'],
  ] as const)('old dentures %s, planned %s, wear %s: %s', (present, planned, wear, verdict) => {
    expect(oldDentureChange(present, planned, wear)).toMatchObject({ value: { verdict } });
  });

  it('compares visits by difference only: other marks, the same change', () => {
    const first = { rest: [7000, 7000, 7000], closed: [6700, 6700, 6700] };
    const second = { rest: [7500, 7500, 7500], closed: [7100, 7100, 7100] };
    const change = spaceChange(first, second);
    expect(change).toMatchObject({ ok: true, value: { fromMm: 3, toMm: 4, changeMm: 1, beyondScatter: true } });
    expect(spaceChange(first, { rest: [7500], closed: [7100] })).toMatchObject({ value: { beyondScatter: false } });
    expect(spaceChange(first, { rest: [], closed: [7100] })).toMatchObject({ ok: false, reason: 'empty' });
  });

  it('tells which mixtures of bases shorten the rest height', () => {
    expect(basesNote('both', 'both')).toMatchObject({ value: { mixed: false, largerByMm: null } });
    expect(basesNote('none', 'both')).toMatchObject({ value: { mixed: true, largerByMm: [2, 2.5] } });
    expect(basesNote('both', 'upper')).toMatchObject({ value: { mixed: true, largerByMm: null } });
    expect(basesNote('some', 'both')).toMatchObject({ ok: false, reason: 'unknown' });
  });
});
