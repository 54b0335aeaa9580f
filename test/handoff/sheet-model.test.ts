import { describe, expect, it } from 'vitest';
import type { Summary } from '../../src/domain/summary/types.ts';
import { sheetModel } from '../../src/handoff/sheet-model.ts';
import type { Block, SheetModel } from '../../src/handoff/sheet-model.types.ts';
import { modelText, sheetText } from '../../src/handoff/sheet-text.ts';
import { isTimeZone, sheetTimes } from '../../src/handoff/sheet-times.ts';
import { DIGEST, recorded, recordedHandovers } from './cases.ts';

const utc = sheetTimes('UTC');
const troubled = recorded('troubled').summary;
const clean = recorded('clean').summary;

const blocksOf = (sheet: SheetModel, id: string): readonly Block[] =>
  sheet.sections.find((section) => section.id === id)?.blocks ?? [];
const rowsOf = (sheet: SheetModel, id: string) =>
  blocksOf(sheet, id).flatMap((block) => (block.kind === 'table' ? block.rows : []));
const cellsOf = (sheet: SheetModel, id: string) => rowsOf(sheet, id).map((row) => row.cells.join(' | '));

describe('what the bench is told', () => {
  const sheet = sheetModel(troubled, utc);
  const text = modelText(sheet);

  it('holds every line of the order, in its order', () => {
    const work = blocksOf(sheet, 'work')[0];
    expect(work?.kind === 'numbered' ? work.lines.map((line) => line.text) : []).toEqual(
      troubled.labWork.map((line) => line.text),
    );
  });

  it('says what was noted beside its question, and not a second time', () => {
    const second = modelText(sheetModel(recordedHandovers()[1]!.summary, utc));
    expect(second).toContain('Choose the shade, in words: Note 09:28: “light, a little grey”\n');
    const findings = second.slice(second.indexOf('FINDINGS, WISHES AND NOTES'));
    expect(findings).not.toMatch(/: Noted$/m);
    expect(findings.split('light, a little grey')).toHaveLength(2);
  });

  it('says by when each impression is to be poured, until it is poured', () => {
    const labWork: Summary['labWork'] = [{ id: 'a', text: 'Pour it.', at: Date.parse('2026-03-04T14:12:00Z') }];
    expect(modelText(sheetModel({ ...troubled, labWork }, utc))).toContain('1. Pour it. By 14:12.');
    const waiting = troubled.clocks.map((clock) => {
      const { takenAt: _taken, ...rest } = clock;
      return rest;
    });
    const cells = cellsOf(sheetModel({ ...troubled, clocks: waiting }, utc), 'clocks');
    expect(cells.filter((cell) => cell.includes('pour by 14:12'))).toHaveLength(1);
    expect(cellsOf(sheet, 'clocks').filter((cell) => cell.includes('poured or taken over 14:01'))).toHaveLength(2);
  });

  it('strikes what was given up, in words', () => {
    const given = rowsOf(sheet, 'clocks').filter((row) => row.struck);
    expect(given.map((row) => row.cells.at(-1))).toEqual(['given up']);
    const struck = rowsOf(sheet, 'readings').filter((row) => row.struck);
    expect(struck.map((row) => row.cells.join(' '))).toEqual([
      expect.stringContaining('74.5 mm voice “seventy-four point five”; struck: corrected 13:54'),
      expect.stringContaining('70.5 mm keypad; struck: taken back 14:06'),
    ]);
  });

  it('holds every reading, caution, note, passed-over step, flag with its answer, and signature', () => {
    for (const row of troubled.readings) expect(text).toContain(row.label);
    const live = troubled.notes.filter((note) => !note.struck);
    for (const said of [...troubled.cautions, ...live.map((note) => note.text)]) expect(text).toContain(said);
    for (const skip of troubled.skips) expect(text).toContain(`${skip.title} (${skip.reason})`);
    for (const flag of troubled.flags) expect(text).toContain(flag.what);
    expect(cellsOf(sheet, 'flags')[0]).toContain('kept 13:50: Set too early or removed early');
    expect(text).toContain('clinician KV, 14:18');
    expect(troubled.skips.length * troubled.flags.length * troubled.cautions.length * live.length).toBeGreaterThan(0);
  });

  it('says "none" where there is nothing, so that a part left out is seen', () => {
    const empty = sheetModel(
      { ...clean, labWork: [], clocks: [], readings: [], sets: [], computed: [], flags: [], cautions: [], open: [] },
      utc,
    );
    for (const id of ['work', 'clocks', 'readings', 'computed', 'flags', 'cautions', 'open'])
      expect(blocksOf(empty, id), id).toEqual([{ kind: 'lines', lines: ['none'] }]);
    expect(modelText(sheetModel({ ...clean, signed: [] }, utc))).toContain('* Not signed.');
  });

  it('carries what is open', () => {
    const open = ['Not answered: Say who pours the casts.'];
    expect(sheetText({ ...clean, open }, { timeZone: 'UTC' })).toContain(`* ${open[0]}`);
  });
});

describe('heights', () => {
  it('stay with their own marks, earlier visits too', () => {
    const text = modelText(sheetModel({ ...clean, earlier: [{ visit: 'visit 0', vertical: troubled.vertical }] }, utc));
    expect(text).toContain('Earlier, visit 0: Rest height: median 70.5 mm of 5 readings, spread 1 mm.');
    expect(text).not.toContain('Earlier, visit 0: Close');
    expect(text).toContain('Heights are distances between the marks of visit 1, marks 1 only');
    expect(text).toContain('visit 0: rest, mean 70.5 mm, record 70.5 mm, to make 67.5 mm.');
  });

  it('are drawn on a scale that holds every reading, and said in a sentence', () => {
    const drawings = blocksOf(sheetModel(clean, utc), 'heights').flatMap((b) =>
      b.kind === 'drawings' ? b.drawings : [],
    );
    expect(drawings.map(({ drawing }) => drawing.kind)).toEqual(['ruler', 'ruler', 'heights']);
    for (const { drawing } of drawings) {
      if (drawing.kind !== 'ruler') continue;
      for (const mark of drawing.marks) expect(mark.mm).toBeGreaterThan(drawing.from);
      for (const mark of drawing.marks) expect(mark.mm).toBeLessThan(drawing.to);
    }
    expect(drawings[0]?.alt).toBe(
      'Readings on a ruler. Rest height, visit 1, marks 1: 67.5, 68, 67.5 mm; median 67.5 mm, spread 0.5 mm.',
    );
  });

  it('name what stands apart', () => {
    const [set] = clean.sets;
    const suspects = [{ seq: set!.seqs[0]!, value: 6750, why: 'Digits may be swapped.', perhaps: 7650 }];
    const sheet = sheetModel({ ...clean, sets: [{ ...set!, suspects }] }, utc);
    expect(modelText(sheet)).toContain('67.5 stands apart, perhaps 76.5: Digits may be swapped.');
    expect(modelText(sheet)).toContain('1 marked as standing apart');
  });
});

describe('times', () => {
  it('are in the zone asked for, and name the day when it is another one', () => {
    const auckland = sheetText(clean, { timeZone: 'Pacific/Auckland' });
    expect(auckland).toContain('Date: 2026-03-02, 21:00');
    expect(auckland).toContain('(Pacific/Auckland)');
    const late = { ...clean, signed: [{ role: 'clinician', initials: 'KV', at: Date.parse('2026-03-03T07:05:00Z') }] };
    expect(sheetText(late, { timeZone: 'UTC' })).toContain('clinician KV, 2026-03-03 07:05');
  });

  it('an unknown zone is known as such', () => {
    expect([isTimeZone('UTC'), isTimeZone('Mars/Olympus')]).toEqual([true, false]);
  });
});

it('the digest stands at the foot when there is one', () => {
  expect(sheetText(clean, { timeZone: 'UTC', digest: DIGEST })).toContain(`Case digest (SHA-256): ${DIGEST}`);
  expect(sheetText(clean, { timeZone: 'UTC' })).not.toContain('digest');
});

it('a demo says so in its title', () => {
  expect(sheetText({ ...clean, demo: true }, { timeZone: 'UTC' })).toMatch(
    /^LAB SHEET: CASE DEMO-C \(demo, invented data\)\n/,
  );
  expect(sheetText({ ...clean, demo: false }, { timeZone: 'UTC' })).toMatch(/^LAB SHEET: CASE DEMO-C\n/);
});
