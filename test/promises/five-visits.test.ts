/** A whole case of five visits, recorded, walked again without a browser, and its summary worked out by hand. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseRecording, runReplays, type Recording, type Replayed } from '../../src/app/replay.ts';
import { parseFacts } from '../../src/domain/case/parse.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { projectRoot } from '../helpers/source-tree.ts';

const files = [1, 2, 3, 4, 5].map((visit) => `scripts/recorded/five/visit-${visit}.jsonl`);
const deps = { readings: readingDefs, practice: defaultPractice, appVersion: 'test' };

function recordingOf(file: string): Recording {
  const parsed = parseRecording(readFileSync(projectRoot + file, 'utf8'));
  if (!parsed.ok) throw new Error(parsed.text);
  return parsed.recording;
}

const recordings = files.map(recordingOf);

function played(list: readonly Recording[] = recordings): readonly Replayed[] {
  const result = runReplays(list, deps);
  if ('failed' in result) throw new Error(result.failed);
  return result;
}

const cli = (...args: readonly string[]) =>
  spawnSync('npx', ['tsx', 'scripts/replay.ts', ...args], { cwd: projectRoot, encoding: 'utf8' });

describe('a case of five visits, replayed', () => {
  const visits = played();
  const last = visits.at(-1)!.summary;

  it('understands every line, closes every visit, and its facts can be stored', () => {
    for (const { outcomes, summary } of visits) {
      expect(outcomes.filter((step) => step.outcome.trouble !== '')).toEqual([]);
      expect(summary.closedAt).toBeDefined();
      expect(summary.open).toEqual([]);
    }
    const facts = visits.at(-1)!.facts;
    expect(facts.map((fact) => fact.seq)).toEqual(facts.map((_, i) => i + 1));
    expect(parseFacts(JSON.parse(JSON.stringify(facts)) as unknown[])).toMatchObject({ ok: true });
  });

  it('ends with the review, seen by its own clinician, with the sore place and the scores', () => {
    expect(last).toMatchObject({ caseCode: 'DEMO-5', visitName: 'visit 5', clinician: 'KV', protocol: 'visit-5@1' });
    expect(visits.map(({ summary }) => summary.clinician)).toEqual(['KV', 'KV', 'LM', 'KV', 'KV']);
    const value = (reading: string) => last.readings.find((row) => row.reading === reading)?.value;
    // A spot of 4 mm for one week; retention upper 3, lower 1; stability 2 and 2. In hundredths.
    expect(['sore-1-size', 'sore-1-weeks', 'retention-upper', 'retention-lower', 'stability-lower'].map(value)).toEqual(
      [400, 100, 300, 100, 200],
    );
    expect(last.answers.filter((row) => row.step === 'sore-1-cause').map((row) => row.answer)).toHaveLength(1);
    expect(last.notes.map((note) => note.text)).toEqual(['rubs on the lower right side when eating']);
  });

  it('has the rest space of the last visit as worked out by hand', () => {
    // Rest 71, 71.5, 71: sum 213.5, mean 71.1667, median 71. Closed 68.5, 68: mean 68.25.
    // Space 71.1667 − 68.25 = 2.9167 mm: within 2 to 4, usual. Target height: median 71 − 3 = 68 mm.
    const { vertical } = last;
    expect(vertical.rest).toMatchObject({ n: 3, medianMm: 71 });
    expect(vertical.rest?.meanMm).toBeCloseTo(213.5 / 3, 9);
    expect(vertical.closed).toMatchObject({ n: 2, meanMm: 68.25 });
    expect(vertical.restSpaceMm).toBeCloseTo(2.9167, 4);
    expect(vertical).toMatchObject({ verdict: 'usual', targetHeightMm: 68 });
    // Pooled variance: rest squares about the mean 0.0278 + 0.1111 + 0.0278 = 0.1667; closed 0.0625 + 0.0625 = 0.125;
    // (0.1667 + 0.125) / 3 degrees of freedom = 0.09722. Standard error √(0.09722 × (1/3 + 1/2)) = 0.28464 mm.
    // Student's t at 97.5 % for 3 degrees: 3.182 (table). Half width 0.28464 × 3.182 = 0.9057 mm.
    expect(vertical.uncertaintyMm).toBeCloseTo(0.9057, 3);
  });

  it('has the heights of the earlier visits beside them, each within its own marks', () => {
    // Visit 1: rest 70, 70.5, 71 → 70.5; closed 67, 67.5, 68 → 67.5; space 3.0.
    // Visit 2: rest 71, 71.5, 72 → 71.5; closed 68.5, 69, 69.5 → 69.0; space 2.5.
    // Visit 3: rest 70.5, 71, 71.5 → 71.0; closed 68, 68 → 68.0; space 3.0.
    // Visit 4: rest 71, 71, 71 → 71.0; closed 68.5, 68.5 → 68.5; space 2.5.
    const rows = last.earlier.map(({ visit, vertical: v }) => [visit, v.rest?.meanMm, v.closed?.meanMm, v.restSpaceMm]);
    expect(rows).toEqual([
      ['visit 1', 70.5, 67.5, 3],
      ['visit 2', 71.5, 69, 2.5],
      ['visit 3', 71, 68, 3],
      ['visit 4', 71, 68.5, 2.5],
    ]);
    expect(last.earlier.map(({ vertical }) => vertical.markSet)).toEqual(
      [1, 2, 3, 4].map((visit) => `visit ${visit}, marks 1`),
    );
  });

  it('has tracings, tooth sizes, scores, review days and sore places as worked out by hand', () => {
    const [, second, third, fourth, fifth] = visits.map(({ summary }) => summary);
    const text = (summary: typeof second, id: string) => summary?.computed.find((row) => row.id === id)?.text;
    // Points (10, 20) (10.5, 20) (10, 20): mean 30.5 / 3 = 10.1667 across, 20 up; circle 10.5 − 10.1667 = 0.3333;
    // furthest two 0.5, accepted up to 0.5.
    const { scatter } = second!.tracing!;
    expect([scatter?.xMm.toFixed(4), scatter?.yMm, scatter?.radiusMm.toFixed(4)]).toEqual(['10.1667', 20, '0.3333']);
    expect(scatter).toMatchObject({ verdict: 'accept' });
    // Face 132: six 132 / 3.36 = 39.29 and 132 / 3.3 = 40; nose 34 × 1.31 = 44.54; marks on the rim 38. 38 to 44.54.
    const six = third!.teeth!.find((row) => row.id === 'six');
    expect([six?.lowMm.toFixed(2), six?.highMm.toFixed(2), six?.judge]).toEqual(['38.00', '44.54', true]);
    expect(text(third, 'teeth-central')).toBe('8.3 mm by one rule');
    expect(fourth?.teeth).toBeUndefined();
    // Visit 2: space 71.5 − 69 = 2.5, wanted 3: the chin 0.5 mm up. Visit 4: pin 0.5 up, incisors 0.5 × 4 / 6 = 0.333.
    expect(second?.change).toMatchObject({ from: 'closed', chinMm: -0.5 });
    expect(fourth?.change).toMatchObject({ from: 'ground', pinMm: [0.5, 0.5] });
    expect(fourth?.change?.incisalMm[0]).toBeCloseTo(1 / 3, 9);
    // Speaking space as read: visit 2 2.5, visit 3 2, visit 4 1.5, visit 5 2 mm.
    expect([second, third, fourth, fifth].map((s) => text(s, 'speaking-space')?.slice(0, 6))).toEqual([
      '2.5 mm',
      '2.0 mm',
      '1.5 mm',
      '2.0 mm',
    ]);
    // 3 + 2 + 2 + 2 = 9; 3 + 2 + 1 + 2 = 8.
    expect(fifth?.hold?.map((row) => [row.visit, row.sum, row.band])).toEqual([
      ['visit 4', 9, 'good'],
      ['visit 5', 8, 'fair'],
    ]);
    // Handed over on 23 March 2026; the review of 25 March is the first one. 23 + 7 = 30 March, + 28 = 20 April.
    expect(fifth?.reviews?.rows.map((row) => [row.from, row.state])).toEqual([
      ['2026-03-24', 'seen'],
      ['2026-03-30', 'later'],
      ['2026-04-20', 'later'],
      ['2027-03-23', 'later'],
    ]);
    expect(fifth?.sore?.map((area) => [area.visit, area.what, area.region, area.current])).toEqual([
      ['visit 4', 'relieved', 'upper-rear', false],
      ['visit 5', 'sore', 'lower-mylohyoid-right', true],
    ]);
  });

  it('keeps the impression of visit 2 that was taken again, both attempts on record', () => {
    const upper = visits[1]!.summary.clocks.filter((clock) => clock.clock === 'upper-final');
    expect(upper.map((clock) => [clock.attempt, clock.struck])).toEqual([
      [1, true],
      [2, false],
    ]);
    // Rest 70.5 less the space of 3 is 67.5, and the record stood at 67.5: nothing to change at the pin.
    expect(visits[0]!.summary.vertical.lab).toMatchObject({ chinMm: 0, text: 'Leave the pin as it is.' });
  });

  it('gives the same facts when the case is walked a second time', () => {
    expect(played().at(-1)!.facts).toEqual(visits.at(-1)!.facts);
  });
});

describe('what may not follow is refused', () => {
  const [one, two, three] = recordings as [Recording, Recording, Recording];
  const header = (change: Partial<Recording['header']>): Recording => ({
    ...two,
    header: { ...two.header, ...change },
  });

  it.each([
    ['a visit too many', [one, three], 'visit 3 cannot be opened: visit 2 comes next'],
    ['the same visit again', [one, one], 'visit 1 cannot be opened: visit 2 comes next'],
    ['after an open visit', [{ ...one, lines: one.lines.slice(0, 5) }, two], 'the visit before it was not closed'],
    ['another case', [one, header({ case: 'OTHER' })], 'the case is OTHER'],
    ['an earlier day', [one, header({ startedAt: '2026-03-01T08:00:00Z' })], 'starts before the visit before it ended'],
  ])('%s', (_name, list, why) => {
    const result = runReplays(list, deps);
    expect(result).toMatchObject({ recording: 1 });
    expect('failed' in result && result.failed).toContain(why);
  });

  it('on the command line with the file and its line; all five print an array with --all', { timeout: 60_000 }, () => {
    const refused = cli(files[0]!, files[2]!);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain(`${files[2]!}, line 1: visit 3 cannot be opened`);
    const all = cli('--all', ...files);
    const summaries = JSON.parse(all.stdout) as { visit: number; earlier: unknown[] }[];
    expect(summaries.map((summary) => [summary.visit, summary.earlier.length])).toEqual([
      [1, 0],
      [2, 1],
      [3, 2],
      [4, 3],
      [5, 4],
    ]);
  });
});
