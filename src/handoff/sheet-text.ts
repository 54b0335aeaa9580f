/** The lab sheet as plain text. */
import type { Summary } from '../domain/summary/types.ts';
import { sheetModel } from './sheet-model.ts';
import type { Block, SheetModel } from './sheet-model.types.ts';
import { sheetTimes } from './sheet-times.ts';

export interface SheetOptions {
  /** IANA name; times on the sheet are in this zone. */
  readonly timeZone: string;
  /** SHA-256 of the case, lower-case hex. */
  readonly digest?: string;
}

const rule = (title: string) => ['', title.toUpperCase(), '-'.repeat(title.length)];

function tableText({ columns, rows }: Extract<Block, { kind: 'table' }>): string[] {
  const all = [columns, ...rows.map((row) => row.cells)];
  const widths = columns.map((_, i) => Math.max(...all.map((cells) => (cells[i] ?? '').length)));
  return all.map((cells) =>
    cells
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

function blockText(block: Block): string[] {
  if (block.kind === 'lines') return block.lines.map((line) => (line === 'none' ? line : `* ${line}`));
  if (block.kind === 'table') return [`${block.caption}:`, ...tableText(block)];
  if (block.kind === 'drawings') return block.drawings.map(({ alt }) => alt);
  return block.lines.map(({ text, detail }, i) => `${i + 1}. ${text}${detail === undefined ? '' : `\n   ${detail}`}`);
}

/** A sheet as lines joined by "\n", ending in one newline. */
export function modelText(sheet: SheetModel): string {
  const out = [
    `${sheet.title.toUpperCase()}${sheet.mark === '' ? '' : ` (${sheet.mark})`}`,
    ...sheet.head.map(({ label, value }) => `${label}: ${value}`),
    ...sheet.sections.flatMap((section) => [...rule(section.title), ...section.blocks.flatMap(blockText)]),
    '',
    ...sheet.foot,
    ...(sheet.digest === undefined ? [] : [`Case digest (SHA-256): ${sheet.digest}`]),
  ];
  return `${out.join('\n')}\n`;
}

/** The whole sheet of a summary as text. */
export function sheetText(summary: Summary, { timeZone, digest }: SheetOptions): string {
  return modelText(sheetModel(summary, sheetTimes(timeZone), digest));
}
