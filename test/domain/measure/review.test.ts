import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, addYears, parseDay, printDay } from '../../../src/domain/measure/calendar.ts';
import { clashes } from '../../../src/domain/measure/consistency.ts';
import { RANGES, checkRange } from '../../../src/domain/measure/ranges.ts';
import { REFERRAL_TEXTS, referral, type Finding } from '../../../src/domain/measure/referral.ts';
import { dentureScore, retentionScore, reviewDates } from '../../../src/domain/measure/review.ts';
import { boneLoss, palatalForm, ridgeForm, ridgeRecord } from '../../../src/domain/measure/ridge.ts';

describe('ranges', () => {
  it('lets a practice put in its own limits', () => {
    const own = { bizygomatic: { usual: [12000, 14000] as const } };
    expect(checkRange('bizygomatic', 14500, own)).toMatchObject({ value: { verdict: 'unusual' } });
    expect(checkRange('bizygomatic', 14500)).toMatchObject({ value: { verdict: 'usual' } });
    expect(checkRange('interalar', 3600, own)).toMatchObject({ value: { verdict: 'usual' } });
  });

  it.each(Object.keys(RANGES))('%s: both ends belong to the range', (id) => {
    const { usual, plausible } = RANGES[id]!;
    const verdict = (value: number) => {
      const found = checkRange(id, value);
      return found.ok ? found.value.verdict : found.reason;
    };
    expect(usual.map(verdict)).toEqual(['usual', 'usual']);
    expect([usual[0] - 1, usual[1] + 1].map(verdict)).toEqual(['unusual', 'unusual']);
    expect(plausible.map(verdict)).toEqual(['unusual', 'unusual']);
    expect([plausible[0] - 1, plausible[1] + 1].map(verdict)).toEqual(['implausible', 'implausible']);
  });

  it.each([
    ['shoe-size', 42, {}, 'unknown'],
    ['toString', 42, {}, 'unknown'],
    ['interalar', NaN, {}, 'notANumber'],
    ['interalar', 3600, { interalar: { usual: [5000, 2500] } }, 'inconsistent'],
    ['interalar', 3600, { interalar: { usual: [100, 5000] } }, 'inconsistent'],
  ] as const)('refuses %s %s %j as %s', (id, value, own, reason) => {
    expect(checkRange(id, value, own)).toMatchObject({ ok: false, reason });
  });
});

describe('readings that contradict each other', () => {
  const ids = (readings: Parameters<typeof clashes>[0]) => {
    const found = clashes(readings);
    return found.ok ? found.value.map((clash) => clash.id) : found.reason;
  };

  it.each([
    [{ rest: 7000, closed: 7000 }, []],
    [{ rest: 7000, closed: 7001 }, ['closed-above-rest']],
    [{ padLeft: 500, padRight: 900 }, []],
    [{ padLeft: 901, padRight: 500 }, ['pads-apart']],
    [{ interalar: 5100, intercommissural: 5000 }, ['nose-mouth', 'nose-mouth-ratio']],
    [{ interalar: 2700, intercommissural: 5000 }, ['nose-mouth-ratio']],
    [{ intercommissural: 5000, bizygomatic: 5000 }, ['mouth-face']],
    [{ interalar: 14000, bizygomatic: 13600 }, ['nose-face']],
    [{ innerCanthal: 6400, interpupillary: 6400 }, ['canthi-pupils']],
    [{ interalar: 3600, intercommissural: 5000, bizygomatic: 13600 }, []],
    [{}, 'empty'],
    [{ rest: NaN }, 'notANumber'],
  ] as const)('%j: %j', (readings, expected) => {
    expect(ids(readings)).toEqual(expected);
  });
});

describe('calendar', () => {
  it('agrees with the proleptic calendar of the language over two centuries', () => {
    fc.assert(
      fc.property(fc.integer({ min: -25_000, max: 50_000 }), fc.integer({ min: 0, max: 800 }), (start, days) => {
        const text = (n: number) => new Date(n * 86_400_000).toISOString().slice(0, 10);
        const day = parseDay(text(start));
        expect(day).toBeDefined();
        expect(printDay(addDays(day!, days))).toBe(text(start + days));
      }),
    );
  });

  it.each([
    '2026-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '26-03-02',
    '2026-3-2',
    '',
    '1899-01-01',
    '2100-02-29',
  ])('there is no day “%s”', (text) => {
    expect(parseDay(text)).toBeUndefined();
    expect(reviewDates(text)).toMatchObject({ ok: false, reason: 'unknown' });
  });

  it('a leap day comes back as the last of February', () => {
    expect(printDay(addYears(parseDay('2028-02-29')!, 1))).toBe('2029-02-28');
    expect(printDay(addYears(parseDay('2028-02-29')!, 4))).toBe('2032-02-29');
  });
});

describe('scores', () => {
  const jaw = (retention: number, stability: number) => ({ retention, stability });

  it('names its version, because two are in use', () => {
    expect(retentionScore(jaw(3, 2), jaw(3, 2))).toMatchObject({
      value: { version: 'both jaws summed, 0 to 10', sum: 10, band: 'good' },
    });
    expect(dentureScore(jaw(3, 2))).toMatchObject({ value: { version: 'each denture alone, 0 to 5', sum: 5 } });
  });

  it('bands: under 6 poor, 6 to 8 fair, over 8 good', () => {
    const band = (a: number, b: number, c: number, d: number) => {
      const found = retentionScore(jaw(a, b), jaw(c, d));
      return found.ok ? found.value.band : found.reason;
    };
    expect([band(3, 2, 0, 0), band(3, 2, 1, 0), band(3, 2, 3, 0), band(3, 2, 3, 1)]).toEqual([
      'poor',
      'fair',
      'fair',
      'good',
    ]);
  });

  it.each([
    [jaw(4, 0), 'outOfRange'],
    [jaw(0, 3), 'outOfRange'],
    [jaw(1.5, 0), 'offGrid'],
    [jaw(NaN, 0), 'notANumber'],
    [jaw(-1, 0), 'outOfRange'],
  ] as const)('refuses %j as %s', (score, reason) => {
    expect(retentionScore(score, jaw(1, 1))).toMatchObject({ ok: false, reason });
    expect(dentureScore(score)).toMatchObject({ ok: false, reason });
  });
});

describe('referral', () => {
  const action = (finding: Finding) => {
    const found = referral(finding);
    return found.ok ? found.value.action : found.reason;
  };

  it.each(['redPatch', 'redWhitePatch', 'mouthLump', 'neckLump', 'numbness'] as const)(
    '%s is referred at any age',
    (kind) => {
      for (const days of [0, 1, 20, 400]) expect(action({ kind, days })).toBe('refer');
      expect(action({ kind, days: 1, causeRemoved: true })).toBe('refer');
    },
  );

  it.each([
    [{ days: 21, causeRemoved: true }, 'review'],
    [{ days: 21.1, causeRemoved: true }, 'refer'],
    [{ days: 5 }, 'decide'],
    [{}, 'decide'],
    [{ days: 20, causeRemoved: true, daysSinceRemoved: 14 }, 'review'],
    [{ days: 20, causeRemoved: true, daysSinceRemoved: 15 }, 'refer'],
    [{ days: NaN }, 'notANumber'],
    [{ days: -1 }, 'negative'],
  ] as const)('an ulcer %j: %s', (rest, expected) => {
    expect(action({ kind: 'ulcer', ...rest })).toBe(expected);
  });

  it('uses the practice’s own words', () => {
    expect(referral({ kind: 'redPatch' }, { refer: 'Call the clinic.' })).toMatchObject({
      value: { text: 'Call the clinic.' },
    });
  });

  it('has no answer that lets a finding pass, and no word that calls one harmless', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('ulcer', 'redPatch', 'redWhitePatch', 'mouthLump', 'neckLump', 'numbness', 'other'),
        fc.nat(1000),
        fc.boolean(),
        (kind, days, causeRemoved) => {
          expect(['refer', 'review', 'decide']).toContain(action({ kind, days, causeRemoved }));
        },
      ),
    );
    for (const text of Object.values(REFERRAL_TEXTS)) {
      expect(text).not.toMatch(/benign|harmless|normal|safe|no concern|nothing to worry/i);
    }
  });

  it('refuses a kind it does not know', () => {
    expect(action({ kind: 'toothache' as 'other' })).toBe('unknown');
  });
});

describe('ridges', () => {
  it('keeps four sites apart and says which are missing', () => {
    expect(ridgeRecord({ upperFront: 'IV', lowerRear: 'VI' })).toMatchObject({
      value: { sites: { upperFront: 'IV', lowerRear: 'VI' }, missing: ['upperRear', 'lowerFront'] },
    });
  });

  it.each([
    [ridgeRecord({}), 'empty'],
    [ridgeRecord({ middle: 'IV' } as object), 'unknown'],
    [ridgeRecord({ upperFront: 'VII' as 'VI' }), 'unknown'],
    [ridgeForm({ shape: 'rounded', wide: false }), 'inconsistent'],
    [ridgeForm({ shape: 'flat', high: true }), 'inconsistent'],
    [ridgeForm({ shape: 'square' as 'flat' }), 'unknown'],
    [boneLoss({ foramenMm: 10, presentMm: 31 }), 'inconsistent'],
    [boneLoss({ foramenMm: 0, presentMm: 0 }), 'outOfRange'],
    [palatalForm(91), 'outOfRange'],
  ] as const)('refuses (%#)', (result, reason) => {
    expect(result).toMatchObject({ ok: false, reason });
  });

  it.each([
    [10, 20, 'I'],
    [10, 19.9, 'II'],
    [10, 10, 'II'],
    [10, 9.9, 'III'],
    [10, 30, 'I'],
  ] as const)('foramen %s, present %s: class %s', (foramenMm, presentMm, cls) => {
    expect(boneLoss({ foramenMm, presentMm })).toMatchObject({ value: { class: cls } });
  });
});
