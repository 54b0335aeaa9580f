import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseRecording, runReplays } from '../../../src/app/replay.ts';
import type { Fact, FactBody } from '../../../src/domain/case/facts.ts';
import { foldCase, lastAct } from '../../../src/domain/case/fold.ts';
import { parseFacts } from '../../../src/domain/case/parse.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';
import { carriedClocks } from '../../../src/domain/summary/clocks.ts';
import { summarise } from '../../../src/domain/summary/summarise.ts';
import { stamp } from '../../helpers/facts.ts';
import { recorded } from '../../handoff/cases.ts';

const clinic = recorded('clean').facts;
const now = (clinic.at(-1)?.at ?? 0) + 600_000;
const ORDER = clinic.find((fact) => fact.body.kind === 'visitOpened')?.seq ?? 0;

/** Written behind what the clinic wrote. */
const after = (...bodies: readonly FactBody[]): Fact[] => [
  ...clinic,
  ...stamp(bodies, clinic.length + 1, now).map((fact) => ({ ...fact, caseId: clinic[0]!.caseId })),
];
const viewOf = (facts: readonly Fact[]) => foldCase(facts[0]!.caseId, facts);
const summaryOf = (facts: readonly Fact[]) =>
  summarise(viewOf(facts), { protocol: visit1, readings: readingDefs, practice: defaultPractice, now });
const benchOf = (facts: readonly Fact[]) => {
  const { bench } = summaryOf(facts);
  if (bench === undefined) throw new Error('no bench');
  return bench;
};

const done = (line: string): FactBody => ({ kind: 'benchDone', order: ORDER, line, what: `Do: ${line}.`, by: 'MT' });
const asked: FactBody = {
  kind: 'benchQuestion',
  order: ORDER,
  line: 'border',
  what: 'Custom trays.',
  text: 'How short?',
  by: 'MT',
};
const SECOND_VISIT: FactBody = {
  kind: 'visitOpened',
  visit: 2,
  protocol: 'visit-2',
  version: 1,
  clinician: 'KV',
  assistant: 'BR',
  language: 'en',
};
const SEQ = clinic.length + 1;

describe('the order at the bench', () => {
  it('has every line of the order in its place, none ticked', () => {
    const { lines, order } = benchOf(clinic);
    expect(order).toBe(ORDER);
    expect(lines.map((line) => line.text)).toEqual(summaryOf(clinic).labWork.map((line) => line.text));
    expect(lines.some((line) => line.done !== undefined)).toBe(false);
  });

  it('gives the numbers of border and mounting, computed from the readings', () => {
    const { lines } = benchOf(clinic);
    const { vertical, readings } = summaryOf(clinic);
    const mount = lines.find((line) => line.id === 'mount')?.figures ?? [];
    expect(mount[0]).toMatchObject({ digits: vertical.record?.medianMm?.toFixed(1), unit: 'mm' });
    expect(mount[1]?.digits).toMatch(/^[+−]?\d+\.\d( to [+−]?\d+\.\d)?$/);
    const site = readings.find((row) => row.struck === undefined && row.reading.includes('sulcus'));
    const border = lines.find((line) => line.id === 'border')?.figures ?? [];
    const wanted = ((site?.value ?? 0) - defaultPractice.borderShort) / 100;
    if (site === undefined) expect(border[0]?.label).toMatch(/short of/);
    else expect(Number(border[0]?.digits)).toBe(wanted);
  });

  it('shows every live reading of the visit among its numbers, alone or in its set', () => {
    const { numbers } = benchOf(clinic);
    const { sets, readings } = summaryOf(clinic);
    const inSets = new Set(sets.flatMap((set) => set.seqs));
    const single = readings.filter((row) => row.struck === undefined && !inSets.has(row.seq));
    expect(numbers).toHaveLength(sets.length + single.length);
    expect(numbers.map((one) => one.label)).toEqual(expect.arrayContaining(single.map((row) => row.label)));
  });
});

describe('the orders of later visits', () => {
  const five = [1, 2, 3, 4, 5].map((visit) => {
    const parsed = parseRecording(readFileSync(join('scripts/recorded/five', `visit-${visit}.jsonl`), 'utf8'));
    if (!parsed.ok) throw new Error(parsed.text);
    return parsed.recording;
  });
  const played = runReplays(five, { readings: readingDefs, practice: defaultPractice, appVersion: '0' });
  if ('failed' in played) throw new Error(played.failed);

  it('show the size of every tooth with how far the rules lie apart, and the height the casts are mounted at', () => {
    const { bench, teeth = [], vertical } = played[1]!.summary;
    const setUp = bench?.lines.find((line) => line.id === 'set-up');
    expect(teeth.length).toBeGreaterThan(0);
    expect(setUp?.figures.map((one) => one.label)).toEqual(teeth.map((row) => row.label));
    for (const [i, row] of teeth.entries()) {
      expect(setUp?.figures[i]?.digits).toContain(row.lowMm.toFixed(1));
      expect(setUp?.figures[i]?.digits).toContain(row.highMm.toFixed(1));
    }
    const mount = bench?.lines.find((line) => line.id === 'mount-centric');
    expect(Number(mount?.figures[0]?.digits)).toBeCloseTo(vertical.closed?.meanMm ?? Number.NaN, 2);
  });

  it('have a line at the bench for every line of the order, at every visit', () => {
    for (const { summary } of played)
      expect(summary.bench?.lines.map((line) => line.text)).toEqual(summary.labWork.map((line) => line.text));
  });
});

describe('what the laboratory writes', () => {
  it('ticks a line, with initials and time; the tick taken back stays in the log, struck', () => {
    const ticked = after(done('trim'));
    expect(benchOf(ticked).lines.find((line) => line.id === 'trim')?.done).toEqual({
      seq: SEQ,
      act: SEQ,
      at: now + SEQ * 1000,
      by: 'MT',
    });
    expect(benchOf(ticked).doneOf).toEqual({ 'visit 1': 1 });
    const back = benchOf(after(done('trim'), { kind: 'undone', act: SEQ, what: 'x' }));
    expect(back.lines.find((line) => line.id === 'trim')?.done).toBeUndefined();
    expect(back.log).toEqual([expect.objectContaining({ text: expect.stringContaining('Do: trim.'), struck: true })]);
    expect(back.doneOf).toEqual({});
  });

  it('asks for a tick of its own where an impression was taken again', () => {
    const [pour] = benchOf(clinic).lines;
    expect(pour?.id).toMatch(/^pour:.*\/1$/);
    const clock = pour?.id.replace(/^pour:(.*)\/1$/, '$1') ?? '';
    const first = clinic.find((fact) => fact.body.kind === 'clockStarted' && fact.body.clock === clock);
    const again: FactBody[] = [
      {
        kind: 'attemptStarted',
        step: 'x',
        goto: 'x',
        steps: ['step' in first!.body ? first!.body.step : ''],
        reason: 'x',
      },
      first!.body,
      { kind: 'clockOut', clock },
    ];
    expect(benchOf(after(done(pour?.id ?? ''))).lines[0]?.done).toBeDefined();
    const lines = benchOf(after(done(pour?.id ?? ''), ...again)).lines.filter((line) => line.id.includes(clock));
    expect(lines.map((line) => [line.id, line.done])).toEqual([[`pour:${clock}/2`, undefined]]);
  });

  it('never comes under the undo of the chair, nor does what takes it back', () => {
    const chair = lastAct(viewOf(clinic));
    expect(chair).toBeDefined();
    for (const more of [done('trim'), asked, { kind: 'takenOver', clock: 'x', by: 'MT', order: ORDER } as const])
      expect(lastAct(viewOf(after(more)))).toEqual(chair);
  });

  it('is marked once the clinic has written after the tick', () => {
    const note: FactBody = { kind: 'note', step: 'a', text: 'shade darker', source: 'keypad' };
    expect(benchOf(after(note, done('trim'))).lines.find((line) => line.id === 'trim')?.outdated).toBe(false);
    expect(benchOf(after(done('trim'), note)).lines.find((line) => line.id === 'trim')?.outdated).toBe(true);
    expect(benchOf(after(done('trim'), asked)).lines.find((line) => line.id === 'trim')?.outdated).toBe(false);
  });

  it('asks, and is answered; an answer taken back leaves the question open', () => {
    const answer: FactBody = { kind: 'benchAnswer', question: SEQ, text: 'Two.', by: 'KV' };
    expect(benchOf(after(asked)).questions).toMatchObject([{ text: 'How short?', by: 'MT', visit: 'visit 1' }]);
    expect(benchOf(after(asked)).questions[0]?.answer).toBeUndefined();
    expect(benchOf(after(asked)).questions[0]?.about).toMatch(/trays/i);
    expect(benchOf(after(asked, answer)).questions[0]?.answer).toMatchObject({ text: 'Two.', by: 'KV' });
    const back = after(asked, answer, { kind: 'undone', act: SEQ + 1, what: 'x' });
    expect(benchOf(back).questions[0]?.answer).toBeUndefined();
  });

  it('is still there after the next visit was opened, under the visit it belongs to', () => {
    const back: FactBody = { kind: 'workReturned', order: ORDER, text: '', by: 'MT' };
    const bench = benchOf(after(SECOND_VISIT, done('trim'), asked, back));
    expect(bench.questions.map((one) => one.visit)).toEqual(['visit 1']);
    expect(bench.returned.map((one) => one.visit)).toEqual(['visit 1']);
    expect(bench.doneOf).toEqual({ 'visit 1': 1 });
    expect(bench.lines.some((line) => line.done !== undefined)).toBe(false);
  });

  it('ends the wait to pour of its own visit only', () => {
    const seen = (clock: string): FactBody => ({ kind: 'alarmSeen', clock, phase: 'pourWithin' });
    /** As if nobody had taken over anything yet. */
    const waiting = (facts: readonly Fact[]) =>
      facts.map((fact) =>
        fact.body.kind === 'takenOver' && fact.body.by === undefined ? { ...fact, body: seen(fact.body.clock) } : fact,
      );
    const clock = summaryOf(clinic).clocks.find((one) => one.takenAt !== undefined)?.clock ?? '';
    const row = (facts: readonly Fact[]) => summaryOf(waiting(facts)).clocks.findLast((one) => one.clock === clock);
    const taken = (order: number): FactBody => ({ kind: 'takenOver', clock, by: 'MT', order });
    expect(row(clinic)).toBeDefined();
    expect(row(clinic)?.takenAt).toBeUndefined();
    expect(row(after(taken(ORDER)))?.takenAt).toBe(now + SEQ * 1000);
    expect(row(after(taken(ORDER + 1)))?.takenAt).toBeUndefined();
    const carried = (facts: readonly Fact[]) =>
      carriedClocks(viewOf(waiting(facts)), [visit1], now).filter((one) => one.clock === clock);
    expect(carried(after(SECOND_VISIT))).toHaveLength(1);
    expect(carried(after(SECOND_VISIT, taken(ORDER)))).toEqual([]);
  });

  it('is read from the disk like every other fact, and refused when a field is wrong', () => {
    expect(parseFacts(after(done('trim'), asked))).toMatchObject({ ok: true });
    for (const body of [
      { ...done('trim'), order: 0 },
      { ...asked, by: 1 },
      { kind: 'benchAnswer', question: 1.5, text: '', by: '' },
      { kind: 'workReturned', order: 1, text: '', by: '', more: 1 },
    ])
      expect(parseFacts(after(body as FactBody))).toMatchObject({ ok: false, at: SEQ });
  });
});

describe('what is open before hand-over', () => {
  const readingStep = visit1.steps.find((step) => step.id === 'rest-height');

  it('names a measurement of which there is no reading, until there is one or a reason why not', () => {
    if (readingStep?.kind !== 'reading') throw new Error('no reading step');
    const without = clinic.filter(
      ({ body }) => !(body.kind === 'reading' && body.reading === readingStep.reading) && body.kind !== 'undone',
    );
    const renumbered = without.map((fact, i) => ({ ...fact, seq: i + 1, act: i + 1 }));
    const named = `Not measured: ${readingStep.title}`;
    const open = (facts: readonly Fact[]) => summaryOf(facts).open.filter((item) => item.startsWith(named));
    expect(open(clinic)).toEqual([]);
    expect(open(renumbered)).toHaveLength(1);
    const skipped: FactBody = { kind: 'skipped', step: readingStep.id, reason: 'not-possible' };
    const [fact] = stamp([skipped], renumbered.length + 1, now);
    expect(open([...renumbered, { ...fact!, caseId: clinic[0]!.caseId }])).toEqual([]);
  });
});
