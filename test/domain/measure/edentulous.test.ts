import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boneClass, edentulousClass, type ClassInput } from '../../../src/domain/measure/edentulous.ts';

const EASY: ClassInput = { boneMm: 23, relation: 'I', maxilla: 'A', muscle: 'A' };
const classOf = (input: ClassInput) => {
  const result = edentulousClass(input);
  return result.ok ? result.value.class : result.reason;
};

describe('edentulousClass', () => {
  it('is class I, decided by everything, when nothing is difficult', () => {
    const result = edentulousClass(EASY);
    expect(result).toMatchObject({ ok: true, value: { class: 'I', complete: true, missing: [] } });
    if (result.ok) expect(result.value.decidedBy).toHaveLength(4);
  });

  it('says "incomplete, at least" while a main criterion is missing', () => {
    const result = edentulousClass({ boneMm: 13 });
    if (!result.ok) throw new Error(result.text);
    expect(result.value.complete).toBe(false);
    expect(result.value.text).toBe(
      'Incomplete, at least class III, decided by bone height; missing: jaw relation, upper ridge, muscle attachment.',
    );
  });

  it.each([
    [{ interarchMm: 21 }, 'I'],
    [{ interarchMm: 20 }, 'III'],
    [{ interarchMm: 18 }, 'III'],
    [{ interarchMm: 17.9 }, 'IV'],
    [{ tmd: true }, 'III'],
    [{ tmd: false }, 'I'],
    [{ surgery: 'minor' }, 'III'],
    [{ surgery: 'major' }, 'IV'],
    [{ psychosocial: 'minor' }, 'II'],
    [{ psychosocial: 'moderate' }, 'III'],
    [{ psychosocial: 'major' }, 'IV'],
    [{ systemic: 'mild' }, 'II'],
    [{ systemic: 'moderate' }, 'III'],
    [{ systemic: 'severe' }, 'IV'],
    [{ tongue: 'large' }, 'III'],
    [{ tongue: 'hyperactive' }, 'IV'],
    [{ gag: 'hyperactive' }, 'III'],
    [{ gag: 'medicated' }, 'IV'],
    [{ paraesthesia: true }, 'IV'],
    [{ defect: true }, 'IV'],
    [{ ataxia: true }, 'IV'],
    [{ refractory: true }, 'IV'],
    [{ relation: 'III' }, 'III'],
    [{ maxilla: 'C' }, 'III'],
    [{ maxilla: 'D' }, 'IV'],
    [{ muscle: 'C' }, 'III'],
    [{ muscle: 'E' }, 'IV'],
  ] as const)('%j alone makes an easy case class %s', (extra, expected) => {
    expect(classOf({ ...EASY, ...extra })).toBe(expected);
  });

  it('states whether the radiograph was corrected', () => {
    const note = (boneCorrected?: boolean) => {
      const result = edentulousClass({ ...EASY, ...(boneCorrected === undefined ? {} : { boneCorrected }) });
      return result.ok ? result.inputs.at(-1) : '';
    };
    expect(note()).toContain('not said');
    expect(note(true)).toContain('corrected for');
    expect(note(false)).toContain('NOT');
  });

  it.each([
    [{}, 'missing'],
    [{ boneMm: NaN }, 'notANumber'],
    [{ boneMm: -1 }, 'negative'],
    [{ interarchMm: Infinity }, 'notANumber'],
    [{ maxilla: 'F' as 'A' }, 'unknown'],
    [{ muscle: 'toString' as 'A' }, 'unknown'],
  ] as const)('refuses %j as %s', (input, reason) => {
    expect(edentulousClass(input)).toMatchObject({ ok: false, reason });
  });

  it('never gets easier when something is added', () => {
    const order = ['I', 'II', 'III', 'IV'];
    const letters = fc.record(
      {
        boneMm: fc.double({ min: 0, max: 40, noNaN: true }),
        relation: fc.constantFrom('I', 'II', 'III'),
        maxilla: fc.constantFrom('A', 'B', 'C', 'D'),
        muscle: fc.constantFrom('A', 'B', 'C', 'D', 'E'),
        tmd: fc.boolean(),
        gag: fc.constantFrom('usual', 'hyperactive', 'medicated'),
      },
      { requiredKeys: ['boneMm'] },
    );
    fc.assert(
      fc.property(letters, fc.constantFrom('tmd', 'ataxia', 'defect'), (input, extra) => {
        const before = classOf(input);
        const after = classOf({ ...(input as ClassInput), [extra]: true });
        expect(order.indexOf(after)).toBeGreaterThanOrEqual(order.indexOf(before));
      }),
    );
  });
});

describe('boneClass', () => {
  it('counts a height in a gap of the published bands as the more complex class', () => {
    const at = (mm: number) => {
      const result = boneClass(mm);
      return result.ok ? result.value : result.reason;
    };
    expect([21, 20.9, 16, 15.9, 11, 10.9, 10, 0].map(at)).toEqual(['I', 'II', 'II', 'III', 'III', 'IV', 'IV', 'IV']);
  });
});
