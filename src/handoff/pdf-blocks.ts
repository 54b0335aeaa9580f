/** Blocks of the sheet set on paper: lists, numbered orders, tables, drawings. */
import { legible } from './glyphs.ts';
import { drawHeights, drawRuler } from './pdf-drawings.ts';
import { figure, heading, keepTogether, left, paragraph, plain, strong, width, type Page } from './pdf-page.ts';
import type { Block, Drawing, NumberedLine, Section } from './sheet-model.types.ts';

/** A cell is never taller than a page: longer text is cut in plain sight, and stands whole in the case file. */
const CELL_LETTERS = 600;

function cellText(text: string): string {
  const letters = [...legible(text)];
  if (letters.length <= CELL_LETTERS) return letters.join('');
  return `${letters.slice(0, CELL_LETTERS).join('')} … [cut; ${letters.length - CELL_LETTERS} more letters in the case file]`;
}

/** Many lines, short but for a few: what is longer than half the page breaks within its column. */
function spread(items: readonly string[]): boolean {
  const letters = items.map((item) => item.length);
  if (items.length <= 8 || Math.max(...letters) >= 180) return false;
  return Math.max(...letters) < 90 || letters.reduce((sum, one) => sum + one, 0) < 60 * items.length;
}

function bullets(page: Page, items: readonly string[], column: { x: number; width: number }): void {
  for (const item of items) {
    const tag = { ...column, tag: 'LBody' };
    const list = page.doc.struct('LI');
    page.root.add(list);
    paragraph({ ...page, root: list }, `• ${item}`, tag);
    list.end();
  }
}

const GAP = 14;

function heightInTwo({ doc, size }: Page, items: readonly string[]): number {
  plain(doc, size);
  const room = (width(doc) - GAP) / 2;
  const cut = Math.ceil(items.length / 2);
  const tall = (some: readonly string[]) =>
    some.reduce((sum, item) => sum + doc.heightOfString(legible(`• ${item}`), { width: room }), 0);
  return Math.max(tall(items.slice(0, cut)), tall(items.slice(cut)));
}

/** Long lists of short lines stand in two columns, read down the first and then the second. */
function listed(page: Page, items: readonly string[]): void {
  const { doc } = page;
  const list = doc.struct('L');
  page.root.add(list);
  const into = { ...page, root: list };
  if (!spread(items)) bullets(into, items, { x: left(doc), width: width(doc) });
  else {
    const half = { x: left(doc), width: (width(doc) - GAP) / 2 };
    const cut = Math.ceil(items.length / 2);
    keepTogether(doc, heightInTwo(page, items));
    const top = doc.y;
    bullets(into, items.slice(0, cut), half);
    const low = doc.y;
    doc.y = top;
    bullets(into, items.slice(cut), { x: half.x + half.width + GAP, width: half.width });
    doc.y = Math.max(low, doc.y);
  }
  list.end();
}

function numbered(page: Page, items: readonly NumberedLine[]): void {
  const { doc, size } = page;
  const list = doc.struct('L');
  page.root.add(list);
  for (const [i, { text, detail }] of items.entries()) {
    const item = doc.struct('LI');
    list.add(item);
    const into = { ...page, root: item };
    const whole = `${i + 1}. ${text}`;
    keepTogether(doc, size * 2.6);
    strong(doc, size);
    paragraph(into, whole, { tag: 'LBody' });
    plain(doc, size);
    if (detail !== undefined) paragraph(into, detail, { x: left(doc) + 14, width: width(doc) - 14, tag: 'LBody' });
    item.end();
  }
  list.end();
}

function table(page: Page, { columns, shares, rows: data, caption }: Extract<Block, { kind: 'table' }>): void {
  const { doc, root, size } = page;
  const small = size * 0.9;
  keepTogether(doc, small * 9);
  plain(doc, small);
  const head = columns.map((text) => ({
    text: legible(text),
    type: 'TH' as const,
    scope: 'Column' as const,
    font: { src: 'bold', size: small },
  }));
  const rows = data.map(({ cells, struck }) =>
    cells.map((text, i) => ({
      text: cellText(text),
      // The last cell says in words that and why it is struck, and stays readable.
      ...(struck === true && i < cells.length - 1 ? { textOptions: { strike: true } } : {}),
    })),
  );
  // The library's types do not know these two yet.
  const tags = { structParent: root, title: legible(caption) };
  doc.table({
    ...tags,
    columnStyles: shares.map((share) => share * width(doc)),
    rowStyles: (row) => ({ border: { top: 0, left: 0, right: 0, bottom: row === 0 ? 0.8 : 0.3 } }),
    defaultStyle: { padding: { top: 1.4, bottom: 1, left: 0, right: 5 } },
    data: [head, ...rows],
  });
  doc.x = left(doc);
  doc.y += size * 0.4;
  plain(doc, size);
}

interface Placed {
  readonly drawing: Drawing;
  readonly alt: string;
  /** In places, of which a row has three or four. */
  readonly places: number;
}

interface Row {
  readonly placed: readonly Placed[];
  readonly places: 3 | 4;
}

/** A stack takes as much as it has columns. */
const placesOf = ({ drawing }: { readonly drawing: Drawing }) =>
  drawing.kind === 'heights' ? Math.min(3, drawing.columns.length) : 1;

/** Drawings in rows of three places; in one row of four where that spares a second row. */
function rowsOf(drawings: readonly { drawing: Drawing; alt: string }[]): Row[] {
  const places = drawings.reduce((sum, one) => sum + placesOf(one), 0) === 4 ? 4 : 3;
  const rows: Placed[][] = [[]];
  let used = 0;
  for (const one of drawings) {
    const takes = placesOf(one);
    if (used + takes > places) {
      rows.push([]);
      used = 0;
    }
    rows.at(-1)?.push({ ...one, places: takes });
    used += takes;
  }
  return rows.filter((row) => row.length > 0).map((placed) => ({ placed, places }));
}

function drawingRow(page: Page, { placed: row, places: all }: Row): void {
  const { doc, size } = page;
  const height = row.some(({ drawing }) => drawing.kind === 'heights') ? size * 13 : size * 7.5;
  doc.y += size * 0.5;
  keepTogether(doc, height);
  const top = doc.y;
  const place = width(doc) / all;
  let x = left(doc);
  for (const { drawing, alt, places } of row) {
    const box = { x, y: top, width: place * places - 12, height };
    const draw = () => (drawing.kind === 'ruler' ? drawRuler(doc, drawing, box) : drawHeights(doc, drawing, box));
    figure(page, alt, { box, draw });
    x += place * places;
  }
  plain(doc, size);
  doc.x = left(doc);
  doc.y = top + height;
}

function block(page: Page, one: Block): void {
  if (one.kind === 'lines') {
    if (one.lines.length === 1) paragraph(page, one.lines[0] ?? '');
    else listed(page, one.lines);
  } else if (one.kind === 'numbered') numbered(page, one.lines);
  else if (one.kind === 'table') table(page, one);
  else for (const row of rowsOf(one.drawings)) drawingRow(page, row);
}

/** What must stand below a heading on the same page. */
function least(page: Page, first: Block | undefined): number {
  const items = first?.kind === 'lines' && spread(first.lines) ? heightInTwo(page, first.lines) : 0;
  return Math.min(Math.max(items, page.size * 3), 300);
}

/** One section with its heading. */
export function section(page: Page, { title, blocks }: Section): void {
  const sect = page.doc.struct('Sect');
  page.root.add(sect);
  const into = { ...page, root: sect };
  heading(into, title, least(page, blocks[0]));
  for (const one of blocks) block(into, one);
  sect.end();
}
