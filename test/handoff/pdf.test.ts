// @vitest-environment node
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { Summary } from '../../src/domain/summary/types.ts';
import { sheetPdf, type Paper } from '../../src/handoff/pdf.ts';
import { digestCode } from '../../src/handoff/code-path.ts';
import { sheetModel } from '../../src/handoff/sheet-model.ts';
import { sheetTimes } from '../../src/handoff/sheet-times.ts';
import { DIGEST, recorded, recordedHandovers } from './cases.ts';
import { DAY, oneOfEverything } from './fixture.ts';
import { run, scratch } from './tools.ts';

const font = (name: string) => readFileSync(new URL(`../../src/handoff/fonts/${name}`, import.meta.url));
const fonts = { regular: font('sheet-regular.ttf'), bold: font('sheet-bold.ttf') };
const make = (summary: Summary, paper: Paper) =>
  sheetPdf(sheetModel(summary, sheetTimes('UTC'), DIGEST), { paper, fonts, madeAt: DAY });

// Programs of other makers are started: give them time on a busy machine.
vi.setConfig({ testTimeout: 30_000, hookTimeout: 30_000 });

const files = scratch();
afterAll(() => files.remove());

const isTooth = ({ id }: { readonly id: string }) => id.startsWith('teeth-');
const words = (text: string) => text.replaceAll(/[ \t]+/g, ' ').replaceAll(/\n\s*\n/g, '\n');
const textOf = (file: string) => run('pdftotext', ['-layout', '-enc', 'UTF-8', file, '-']);
const infoOf = (file: string) =>
  Object.fromEntries(
    [...run('pdfinfo', [file]).matchAll(/^([^:\n]+):\s+(.*)$/gm)].map(([, key, value]) => [key, value]),
  );

const PAPERS = [
  ['A4', '595.28 x 841.89 pts (A4)'],
  ['LETTER', '612 x 792 pts (letter)'],
] as const;

describe.each(PAPERS)('the sheet on %s', (paper, size) => {
  let file = '';
  beforeAll(async () => {
    file = files.put(`${paper}.pdf`, await make(oneOfEverything, paper));
  });

  it('reads, word for word, as it did', async () => {
    await expect(words(textOf(file))).toMatchFileSnapshot(`golden/sheet-${paper}.txt`);
  });

  it('is whole, tagged, titled, in English, two pages of this size', () => {
    expect(run('qpdf', ['--check', file])).toContain('No syntax or stream encoding errors');
    expect(infoOf(file)).toMatchObject({
      Title: 'Lab sheet: case DEMO-9',
      Tagged: 'yes',
      Pages: '2',
      'Page size': size,
    });
    expect(run('qpdf', ['--json=1', '--json-key=objects', file])).toContain('"/Lang": "en-GB"');
  });

  it('embeds its fonts and can be searched', () => {
    const rows = run('pdffonts', [file]).trim().split('\n').slice(2);
    expect(rows).toHaveLength(2);
    for (const row of rows) expect(row.trim().split(/\s+/).slice(-5, -2)).toEqual(['yes', 'yes', 'yes']);
  });

  it('carries the digest as a QR code that a reader of another maker reads', () => {
    run('pdftoppm', ['-f', '2', '-l', '2', '-r', '150', '-gray', '-png', file, `${files.folder}/${paper}`]);
    const seen = run('zbarimg', ['-q', '--raw', `${files.folder}/${paper}-2.png`]);
    expect(seen.trim()).toBe(digestCode(DIGEST));
    expect(textOf(file)).toContain(DIGEST);
  });
});

describe('the structure tree', () => {
  let struct = '';
  beforeAll(async () => {
    struct = run('pdfinfo', ['-struct-text', files.put('tree.pdf', await make(oneOfEverything, 'A4'))]);
  });
  const count = (tag: string) => struct.split('\n').filter((line) => new RegExp(`^\\s*${tag}\\b`).test(line)).length;

  it('has one title and a heading for every section', () => {
    expect(count('H1')).toBe(1);
    const sections = sheetModel(oneOfEverything, sheetTimes('UTC')).sections.map((section) => section.title);
    for (const title of [...sections, 'Case digest'])
      expect(struct).toMatch(new RegExp(`H2 \\(block\\)\\s+"${title}"`));
    expect(count('H2')).toBe(sections.length + 1);
  });

  it('has every table with its rows, column heads and cells', () => {
    const tables = sheetModel(oneOfEverything, sheetTimes('UTC'))
      .sections.flatMap((section) => section.blocks)
      .flatMap((block) => (block.kind === 'table' ? [block] : []));
    expect(tables.length).toBeGreaterThan(4);
    expect(count('Table')).toBe(tables.length);
    expect(count('TR')).toBe(tables.reduce((sum, table) => sum + table.rows.length + 1, 0));
    expect(count('TH')).toBe(tables.reduce((sum, table) => sum + table.columns.length, 0));
    expect(count('TD')).toBe(tables.reduce((sum, table) => sum + table.columns.length * table.rows.length, 0));
  });

  it('has every drawing with its sentence', () => {
    const bytes = run('qpdf', ['--json=1', '--json-key=objects', `${files.folder}/tree.pdf`]);
    const alts = sheetModel(oneOfEverything, sheetTimes('UTC'))
      .sections.flatMap((section) => section.blocks)
      .flatMap((block) => (block.kind === 'drawings' ? block.drawings.map((one) => one.alt) : []));
    expect(alts).toHaveLength(3);
    for (const alt of [...alts, 'QR code of the case digest']) expect(bytes).toContain(JSON.stringify(alt));
  });
});

describe.each(['clean', 'troubled'] as const)('the recorded visit "%s"', (name) => {
  it.each(['A4', 'LETTER'] as const)('takes one or two pages of %s, and loses no reading', async (paper) => {
    const { summary } = recorded(name);
    const file = files.put(`${name}-${paper}.pdf`, await make(summary, paper));
    expect(Number(infoOf(file)['Pages'])).toBeLessThanOrEqual(2);
    const text = textOf(file).replaceAll(/\s+/g, ' ');
    for (const row of summary.readings) expect(text).toContain(row.label);
    const heard = summary.readings.filter((row) => row.source === 'voice');
    for (const row of heard) expect(text.replaceAll(' ', '')).toContain(`voice“${row.text.replaceAll(' ', '')}”`);
    for (const line of summary.labWork) expect(text).toContain(line.text);
  });
});

describe.each(recordedHandovers())('the hand-over after $summary.visitName of a recorded case', ({ summary }) => {
  it.each(['A4', 'LETTER'] as const)('takes one or two pages of %s', async (paper) => {
    const file = files.put(`visit-${summary.visit}-${paper}.pdf`, await make(summary, paper));
    expect(Number(infoOf(file)['Pages'])).toBeLessThanOrEqual(2);
    const text = textOf(file).replaceAll(/\s+/g, ' ');
    for (const line of summary.labWork) expect(text).toContain(line.text);
    for (const { label, text: value } of summary.teeth === undefined ? [] : summary.computed.filter(isTooth))
      expect(text).toContain(`${label}: ${value}.`);
  });
});

it('the heights of five visits stand side by side, none written into the next', async () => {
  const earlier = [1, 2, 3, 4].map((visit) => ({ ...oneOfEverything.earlier[0]!, visit: `visit ${visit}` }));
  const summary = { ...oneOfEverything, earlier, visitName: 'visit 5' };
  const boxes = run('pdftotext', ['-bbox', files.put('five.pdf', await make(summary, 'A4')), '-']);
  const seen = [...boxes.matchAll(/xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" [^>]*>([^<]*)</g)].map(
    ([, from, top, to, word]) => ({ from: Number(from), top: Number(top), to: Number(to), word }),
  );
  const next = (i: number, by: number) => seen[i + by]?.word ?? '';
  // The name of a column stands below it, from the left edge of its bar.
  const named = seen.filter(({ word }, i) => word === 'visit' && /^[1-5]$/.test(next(i, 1)));
  const bars = named.filter(({ top }) => named.filter((other) => other.top === top).length === 5);
  expect(bars).toHaveLength(5);
  const labels = seen.flatMap((one, i) =>
    one.word === 'closed,' && next(i, 1) === 'mean' ? [{ from: one.from, to: seen[i + 2]!.to }] : [],
  );
  expect(labels).toHaveLength(5);
  for (const [i, { from, to }] of labels.entries()) {
    expect(from).toBeGreaterThan(bars[i]!.from);
    // A line of height sticks out of its bar by three points.
    expect(to).toBeLessThan((bars[i + 1]?.from ?? 561) - 3);
  }
});

describe('when there is much to say', () => {
  it('the sheet takes more pages rather than leaving anything out', async () => {
    const notes = Array.from({ length: 150 }, (_, i) => ({
      at: DAY,
      step: 'a',
      text: `remark ${i}, ${'long '.repeat(40)}`,
      source: 'keypad',
      struck: false,
    }));
    const file = files.put('many.pdf', await make({ ...oneOfEverything, notes }, 'A4'));
    expect(Number(infoOf(file)['Pages'])).toBeGreaterThan(2);
    const text = textOf(file).replaceAll(/\s+/g, ' ');
    for (let i = 0; i < 150; i += 1) expect(text).toContain(`“remark ${i}, `);
  });

  it('a cell longer than a page is cut in plain sight', async () => {
    const [first] = oneOfEverything.readings;
    const readings = [{ ...first!, text: 'word '.repeat(800) }];
    const file = files.put('cell.pdf', await make({ ...oneOfEverything, readings }, 'A4'));
    expect(textOf(file).replaceAll(/\s+/g, ' ')).toMatch(/\[cut; \d+ more letters in the case file\]/);
  });
});

it('the same sheet, paper and time give the same bytes', async () => {
  const [a, b] = [await make(oneOfEverything, 'A4'), await make(oneOfEverything, 'A4')];
  expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true);
});

it('a title with angle brackets leaves the metadata whole', async () => {
  const file = files.put('odd.pdf', await make({ ...oneOfEverything, caseCode: 'A<b>&"' }, 'A4'));
  expect(run('qpdf', ['--check', file])).toContain('No syntax or stream encoding errors');
  expect(textOf(file)).toContain('case A<b>&"');
  expect(run('pdfinfo', ['-meta', file])).not.toContain('<b>');
});
