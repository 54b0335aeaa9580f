import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { computations } from '../../../scripts/compute/all.ts';
import { shapeOf } from '../../../scripts/compute/inputs.ts';
import { runCompute } from '../../../scripts/compute/run.ts';

const root = new URL('../../../', import.meta.url);
const folder = new URL('src/domain/measure/', root);

/** Exported functions that answer with something other than a result, or are the parts the others are made of. */
const PARTS = new Set(
  `known refuse badReading badReadings badNumber badAmount badSize badWithin firstBad
   lengthFromMm toMm formatHundredths parseHundredths
   dixonCritical dixonQ modifiedZ t95 pooledSd sdOfDifference mean median slipsOf
   daysInMonth parseDay printDay addDays addYears dayOf weekdayOf shortDay visitRange
   hingePoints rotate hingeWith studySlopes allTeeth completeSet`.split(/\s+/),
);

function command(...args: string[]) {
  return spawnSync(process.execPath, ['--import', 'tsx', 'scripts/compute.ts', ...args], {
    cwd: root,
    encoding: 'utf8',
  });
}

describe('what can be called from the command line', () => {
  it('is every computation there is', async () => {
    const exported = new Set<string>();
    for (const file of readdirSync(folder)) {
      const module = (await import(new URL(file, folder).href)) as Record<string, unknown>;
      for (const [name, value] of Object.entries(module)) if (typeof value === 'function') exported.add(name);
    }
    const wanted = [...exported].filter((name) => !PARTS.has(name)).toSorted();
    expect(computations.map((one) => one.name).toSorted()).toEqual(wanted);
  });

  it('prints no figures that only binary fractions have', () => {
    const printed = runCompute(['pinChange', '{"restMm":66.4,"recordedMm":66.4,"targetSpaceMm":3}']);
    expect(printed.code).toBe(0);
    const numbers = 'out' in printed ? (printed.out.match(/-?\d+\.\d+/g) ?? []) : [];
    expect(numbers.length).toBeGreaterThan(0);
    for (const number of numbers) expect(number.replace(/^-?0?\.?0*/, '').length, number).toBeLessThanOrEqual(13);
  });

  it('says what each takes and in which unit', () => {
    for (const one of computations) {
      expect(shapeOf(one.input), one.name).toMatch(/^\{ .+: .+ \}$/);
      expect(shapeOf(one.input), one.name).not.toMatch(/: (number|string|boolean|array)\b/);
      expect(one.unit).not.toBe('');
    }
  });
});

describe('npm run compute', { timeout: 30_000 }, () => {
  it('prints value, uncertainty, unit and source as JSON', () => {
    const { status, stdout } = command('restSpace', '{"rest":[70.5,71,70],"closed":[67.5,67.5,67.5]}');
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({
      name: 'restSpace',
      value: { spaceMm: 3, verdict: 'usual' },
      unit: 'mm',
      uncertainty: expect.closeTo(0.801, 3),
      source: { id: 'glossary-rest-space', status: 'text seen' },
    });
  });

  it('says what is wrong on the error stream, prints nothing else, and ends with 2', () => {
    const { status, stdout, stderr } = command('restSpace', '{"rest":[],"closed":[67]}');
    expect([status, stdout, stderr]).toEqual([2, '', 'compute: restSpace: Rest height: no readings. (empty)\n']);
  });

  it('takes and gives millimetres where the program counts in hundredths', () => {
    const printed = runCompute(['rankTrays', '{"ridge":58.5,"clearance":5,"arch":"lower"}']);
    if (printed.code !== 0) throw new Error(printed.why);
    const { value } = JSON.parse(printed.out) as { value: readonly unknown[] };
    expect(value[0]).toMatchObject({ rank: 1, tray: { id: 'lower-72', innerWidthMm: 72 }, spareMm: 3.5 });
  });

  it('lists every computation', () => {
    const printed = runCompute(['--list']);
    for (const one of computations) expect(printed).toMatchObject({ out: expect.stringContaining(`${one.name} → `) });
  });

  it.each([
    [[], 'usage'],
    [['restSpace'], 'usage'],
    [['restSpace', '{}', 'more'], 'usage'],
    [['constructor', '{}'], 'no computation is called'],
    [['restSpace', '{'], 'not JSON'],
    [['restSpace', '[]'], 'rest'],
    [['restSpace', 'null'], 'null'],
    [['restSpace', '{"rest":[70],"closed":["67"]}'], 'closed.0'],
    [['restSpace', '{"rest":[70],"closed":[67],"more":1}'], 'more'],
    [['restSpace', '{"rest":[70],"closed":[67.123]}'], 'more than two decimals'],
    [['restSpace', '{"rest":[70],"closed":[-67]}'], 'below zero'],
    [['restSpace', '{"rest":[1e999],"closed":[67]}'], 'is no number'],
    [['suspects', '{"values":[70],"low":90,"high":40}'], 'above the high end'],
    [['setAdvice', '{"rangeMm":-1,"n":3}'], 'below zero'],
    [['edentulousClass', '{"maxilla":"F"}'], 'maxilla'],
    [['edentulousClass', '{}'], 'No criterion'],
  ] as const)('%j is refused: %s', (args, sentence) => {
    expect(runCompute(args)).toEqual({ code: 2, why: expect.stringContaining(sentence) });
  });
});
