/** The last day of a lot, and that it is said when a lot past it is chosen and flagged when it is mixed. */
import { describe, expect, it } from 'vitest';
import { localDay } from '../../../src/app/dates.ts';
import { parseRecording, runReplay } from '../../../src/app/replay.ts';
import { foldCase } from '../../../src/domain/case/fold.ts';
import { parseFacts } from '../../../src/domain/case/parse.ts';
import { isExpired } from '../../../src/domain/protocol/lots.ts';
import { cautionsIn, withOwnCautions, withOwnRanges } from '../../../src/domain/protocol/own.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';
import { clockRows } from '../../../src/domain/summary/clocks.ts';
import { summarise } from '../../../src/domain/summary/summarise.ts';
import type { Material } from '../../../src/domain/protocol/types.ts';
import { bench, small, START } from '../../helpers/visit.ts';
import { softMaterial } from '../../helpers/small-visit.ts';

const HOUR = 3_600_000;
const at = (text: string) => Date.parse(text);

describe('a lot', () => {
  it.each([
    ['2026-03-02', '2026-03-02', false],
    ['2026-03-01', '2026-03-02', true],
    ['2024-02-29', '2024-03-01', true],
    ['2026-02-28', '2026-03-01', true],
    ['2027-01-01', '2026-12-31', false],
    ['soon', '2026-12-31', false],
    ['2026-03-02', 'today', false],
  ])('with last day %s, on %s: out of date %s', (expires, today, expected) => {
    expect(isExpired({ expires }, today)).toBe(expected);
  });

  it('without a day is never called out of date', () => {
    expect(isExpired({}, '2099-01-01')).toBe(false);
  });
});

function dipped(material: Material, day?: (at: number) => string) {
  const b = bench({ ...small, practice: { ...small.practice, materials: [material] } }, undefined, day);
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

describe('the last day of a lot is a day of the practice, not of universal time', () => {
  const flagged = (b: ReturnType<typeof bench>) => b.summary().flags.some((one) => one.id.startsWith('expired:'));
  const in30 = (zone: string) => (moment: number) => localDay(moment + 15.5 * HOUR, zone);

  it.each([
    // START is 08:00 in universal time; fifteen and a half hours later it is 23:30 there.
    ['UTC', '2026-03-02', false],
    ['UTC', '2026-03-01', true],
    // 18:30 in New York: the same day.
    ['America/New_York', '2026-03-02', false],
    // Half past twelve in Auckland, of the next day.
    ['Pacific/Auckland', '2026-03-02', true],
    ['Pacific/Auckland', '2026-03-03', false],
  ])('in %s a lot to be used until %s: out of date %s', (zone, expires, expected) => {
    const { b, chosen } = dipped({ ...softMaterial, lot: 'A 12', expires }, in30(zone));
    expect([chosen.trouble !== '', flagged(b)]).toEqual([expected, expected]);
  });

  it('at 23:30 in New York the lot of that day is still in date, though it is the next day in universal time', () => {
    const late = at('2026-03-02T04:30:00Z');
    expect(localDay(late, 'America/New_York')).toBe('2026-03-01');
    expect(localDay(late, 'UTC')).toBe('2026-03-02');
    const { b, chosen } = dipped({ ...softMaterial, lot: 'A 12', expires: '2026-03-01' }, () =>
      localDay(late, 'America/New_York'),
    );
    expect([chosen.trouble, flagged(b)]).toEqual(['', false]);
  });

  it('the day is on record, so that the sheet says the same wherever it is read', () => {
    const { b } = dipped({ ...softMaterial, lot: 'A 12', expires: '2026-03-02' }, () => '2026-03-03');
    expect(b.facts.find((fact) => fact.body.kind === 'clockStarted')?.body).toMatchObject({ day: '2026-03-03' });
    expect(parseFacts(JSON.parse(JSON.stringify(b.facts)) as unknown[]).ok).toBe(true);
    const elsewhere = foldCase('c1', b.facts);
    expect(clockRows(elsewhere, small.protocol, b.at).map((row) => row.day)).toEqual(['2026-03-03']);
  });

  it('a record from before days were written is judged by the universal day, as it was then', () => {
    const { b } = dipped({ ...softMaterial, lot: 'A 12', expires: '2026-03-01' }, () => '2026-02-28');
    const old = b.facts.map((fact) => {
      const { day: _day, ...body } = fact.body as { day?: string };
      return { ...fact, body } as typeof fact;
    });
    const around = { ...small, now: b.at };
    expect(summarise(foldCase('c1', b.facts), around).flags.some((one) => one.id.startsWith('expired:'))).toBe(false);
    expect(summarise(foldCase('c1', old), around).flags.some((one) => one.id.startsWith('expired:'))).toBe(true);
  });

  it('a recording takes the day from the zone its start is written in', () => {
    const started = (startedAt: string) => {
      const head = { replay: 1, case: 'T-1', clinician: 'KV', assistant: 'BR', startedAt };
      const lines = [
        { t: 0, source: 'touch', press: 'goto:upper-impression' },
        { t: 1, source: 'touch', press: 'material:alginate-regular' },
        { t: 2, source: 'touch', press: 'start' },
      ];
      const parsed = parseRecording([head, ...lines].map((line) => JSON.stringify(line)).join('\n'));
      if (!parsed.ok) throw new Error(parsed.text);
      const deps = { readings: readingDefs, practice: defaultPractice, appVersion: 'test' };
      const played = runReplay(parsed.recording, deps);
      if ('failed' in played) throw new Error(played.failed);
      return played.facts.find((fact) => fact.body.kind === 'clockStarted')?.body;
    };
    expect(started('2026-03-01T23:30:00-05:00')).toMatchObject({ day: '2026-03-01' });
    expect(started('2026-03-03T00:30:00+01:00')).toMatchObject({ day: '2026-03-03' });
    expect(started('2026-03-02T23:59:00Z')).toMatchObject({ day: '2026-03-02' });
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
