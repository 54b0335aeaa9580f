import { describe, expect, it } from 'vitest';
import { DISINFECTION, dentureSoak, disinfectionCheck, labRelease } from '../../../src/domain/measure/disinfection.ts';
import { mixPlan, mixRatio, ratioCheck, roomSetting, temperatureCheck } from '../../../src/domain/measure/mixing.ts';
import { ELASTOMERS, elastomerCheck, lastingDent } from '../../../src/domain/measure/standards.ts';
import { POUR_WINDOWS, materialPhases, pourState, pourWindow } from '../../../src/domain/measure/windows.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';

const LEAFLET = { powderG: 23, waterMl: 50 };
const alginate = defaultPractice.materials[0]!;
const MINUTE = 60_000;

describe('mixing', () => {
  it('plans a stiff mix: the powder of the leaflet, less water, and says how much thicker', () => {
    const plan = mixPlan({ leaflet: LEAFLET, portions: 2, lessWater: 0.1 });
    if (!plan.ok) throw new Error(plan.text);
    expect(plan.value).toMatchObject({ powderG: 46, waterMl: 90 });
    expect(plan.value.off).toBeCloseTo(1 / 0.9 - 1, 12);
    expect(plan.value.text).toContain('11 % thicker');
  });

  it('keeps to the leaflet unless told otherwise', () => {
    expect(mixPlan({ leaflet: LEAFLET })).toMatchObject({ value: { ...LEAFLET, off: 0 } });
  });

  it('warns from just over 5 % either way', () => {
    const warn = (powderG: number) => {
      const check = ratioCheck({ powderG, waterMl: 50 }, LEAFLET);
      return check.ok && check.value.warn;
    };
    expect([24.15, 24.16, 21.85, 21.84].map(warn)).toEqual([false, true, false, true]);
  });

  it('says which way, in words', () => {
    const thin = ratioCheck({ powderG: 20, waterMl: 50 }, LEAFLET);
    expect(thin.ok && thin.value.text).toContain('thinner');
  });

  it('puts the sign right: colder is slower', () => {
    const cold = temperatureCheck(16, 21);
    if (!cold.ok) throw new Error(cold.text);
    expect(cold.value.text).toContain('slower');
    expect(cold.value.shiftS[0]).toBeGreaterThan(0);
    const warm = temperatureCheck(26, 21);
    if (!warm.ok) throw new Error(warm.text);
    expect(warm.value.text).toContain('faster');
    expect(warm.value.shiftS[1]).toBeLessThan(0);
    expect(warm.value.shiftS[0]).toBeLessThan(warm.value.shiftS[1]);
  });

  it('marks the regression outside the temperatures that were studied', () => {
    const at = (degrees: number) => {
      const found = roomSetting('regular', degrees);
      return found.ok && found.inputs.some((input) => input.includes('outside'));
    };
    expect([22.9, 23, 31, 31.1].map(at)).toEqual([true, false, false, true]);
  });

  it.each([
    [mixRatio({ powderG: 23, waterMl: 0 }), 'outOfRange'],
    [mixRatio({ powderG: -1, waterMl: 50 }), 'negative'],
    [ratioCheck(LEAFLET, { powderG: NaN, waterMl: 50 }), 'notANumber'],
    [mixPlan({ leaflet: LEAFLET, lessWater: 0.6 }), 'outOfRange'],
    [mixPlan({ leaflet: LEAFLET, portions: 0 }), 'outOfRange'],
    [roomSetting('slow' as 'fast', 23), 'unknown'],
    [roomSetting('fast', 60), 'outOfRange'],
    [temperatureCheck(80, 21), 'outOfRange'],
  ] as const)('refuses (%#)', (result, reason) => {
    expect(result).toMatchObject({ ok: false, reason });
  });
});

describe('phases of a material', () => {
  it('run on without a gap from mixing to removal, and from removal to the latest pour', () => {
    for (const material of defaultPractice.materials) {
      const found = materialPhases(material);
      if (!found.ok) throw new Error(`${material.id}: ${found.text}`);
      const [mix, working, inMouth, from, within] = found.value;
      expect(working!.startS).toBe(mix!.endS);
      expect(inMouth!.startS).toBe(working!.endS);
      expect(inMouth!.endS).toBe(material.removeS);
      expect(within!.startS).toBe(from!.endS);
      expect(found.value.map((p) => p.countedFrom)).toEqual(['mix', 'mix', 'mix', 'removal', 'removal']);
    }
  });

  it('says when the figures are generic', () => {
    const words = (generic: boolean) => {
      const found = materialPhases({ ...alginate, generic });
      return found.ok ? found.inputs[1] : '';
    };
    expect(words(true)).toContain('generic');
    expect(words(false)).toContain('leaflet');
  });

  it.each([
    [{ mixS: 120, workingS: 120 }, 'inconsistent'],
    [{ workingS: 270 }, 'inconsistent'],
    [{ pourFromMin: 30 }, 'inconsistent'],
    [{ mixS: 0 }, 'outOfRange'],
    [{ removeS: NaN }, 'notANumber'],
    [{ pourWithinMin: -1 }, 'negative'],
  ] as const)('refuses %j as %s', (change, reason) => {
    expect(materialPhases({ ...alginate, ...change })).toMatchObject({ ok: false, reason });
  });

  it('never warns before mixing has ended', () => {
    const found = materialPhases({ ...alginate, mixS: 50, workingS: 60 });
    expect(found.ok && found.value[1]!.warnS).toBe(50);
  });
});

describe('time to pour', () => {
  const at = (minutes: number, pourFromMin = 0) => {
    const found = pourState({ removedAt: 0, now: minutes * MINUTE, pourFromMin, pourWithinMin: 30 });
    return found.ok ? found.value.state : found.reason;
  };

  it('waits, pours, hurries, and is over, with the last instant still in time', () => {
    expect([0, 9, 10, 24, 25, 30, 30.001].map((m) => at(m, 10))).toEqual([
      'wait',
      'wait',
      'pour',
      'pour',
      'soon',
      'soon',
      'expired',
    ]);
  });

  it('never says how the cast will be, only what to do', () => {
    const found = pourState({ removedAt: 0, now: 40 * MINUTE, pourFromMin: 0, pourWithinMin: 30 });
    expect(found.ok && found.value.text).toBe('The time to pour has passed: take again, or note the risk.');
    expect(found.ok && found.value.leftMs).toBe(-10 * MINUTE);
  });

  it('refuses a clock that runs backwards and limits in the wrong order', () => {
    expect(at(-1)).toBe('inconsistent');
    expect(at(1, 30)).toBe('inconsistent');
  });

  it('every published window opens before it closes', () => {
    for (const [name, window] of Object.entries(POUR_WINDOWS)) {
      expect(window.fromMin, name).toBeLessThan(window.withinMin);
      expect(pourWindow(name).ok).toBe(true);
    }
    expect(pourWindow('constructor')).toMatchObject({ ok: false, reason: 'unknown' });
  });
});

describe('disinfection', () => {
  const check = (agent: 'hypochlorite' | 'iodophor', minutes: number, labelMinutes = 10) =>
    disinfectionCheck({ materialClass: 'alginate', agent, minutes, labelMinutes });

  it('wants the label’s time and no more than the material bears, ends included', () => {
    const verdicts = [9.9, 10, 10.1].map((minutes) => {
      const found = check('iodophor', minutes);
      return found.ok ? found.value.verdict : found.reason;
    });
    expect(verdicts).toEqual(['tooShort', 'fits', 'tooLong']);
  });

  it.each([
    [disinfectionCheck({ materialClass: 'cheese', agent: 'iodophor', minutes: 1, labelMinutes: 1 }), 'unknown'],
    [
      disinfectionCheck({ materialClass: 'alginate', agent: 'soap' as 'iodophor', minutes: 1, labelMinutes: 1 }),
      'unknown',
    ],
    [check('iodophor', -1), 'negative'],
    [check('iodophor', 10, 0), 'outOfRange'],
    [labRelease({ minutes: NaN }), 'notANumber'],
    [dentureSoak('beer' as 'water', 5), 'unknown'],
    [dentureSoak('water', -5), 'negative'],
  ] as const)('refuses (%#)', (result, reason) => {
    expect(result).toMatchObject({ ok: false, reason });
  });

  it('lets nothing go to the lab with a field left blank', () => {
    const full = { agent: 'iodophor', concentration: '1:213', minutes: 10, byWhom: 'AB' };
    expect(labRelease(full)).toMatchObject({ value: { release: true, missing: [] } });
    for (const field of Object.keys(full)) {
      expect(labRelease({ ...full, [field]: null })).toMatchObject({ value: { release: false, missing: [field] } });
    }
    expect(labRelease({ ...full, byWhom: '  ' })).toMatchObject({ value: { release: false, missing: ['byWhom'] } });
  });

  it('every material bears at least one agent', () => {
    for (const window of Object.values(DISINFECTION)) expect(window.agents.length).toBeGreaterThan(0);
  });

  it('soaks in water as long as one likes', () => {
    expect(dentureSoak('water', 600)).toMatchObject({ value: { warn: false } });
  });
});

describe('standards', () => {
  it('judges only what the report holds', () => {
    expect(elastomerCheck({ type: 'putty', detailUm: 75 })).toMatchObject({ value: { pass: true } });
    expect(elastomerCheck({ type: 'heavy', detailUm: 75 })).toMatchObject({
      value: { pass: false, fails: ['detail'] },
    });
    expect(elastomerCheck({ type: 'light', strainPercent: 20.1 })).toMatchObject({ value: { pass: false } });
    expect(elastomerCheck({ type: 'light' })).toMatchObject({ ok: false, reason: 'empty' });
    expect(elastomerCheck({ type: 'gel' as 'light', detailUm: 1 })).toMatchObject({ ok: false, reason: 'unknown' });
    expect(elastomerCheck({ type: 'light', detailUm: -1 })).toMatchObject({ ok: false, reason: 'negative' });
  });

  it('orders the types by number', () => {
    expect(Object.values(ELASTOMERS).map((limits) => limits.type)).toEqual([0, 1, 2, 3]);
  });

  it('leaves no dent where recovery is complete', () => {
    expect(lastingDent(100, 20, 8)).toMatchObject({ value: 0 });
    expect(lastingDent(101, 20, 8)).toMatchObject({ ok: false, reason: 'outOfRange' });
  });
});
