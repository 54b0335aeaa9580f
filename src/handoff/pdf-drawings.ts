/** The sheet's drawings in lines and greys that survive a copier: readings on a ruler, heights as a stack, the QR code. */
import { codeModules } from './code-path.ts';
import { legible } from './glyphs.ts';
import type { Box, Doc } from './pdf-page.ts';
import { spaceText } from './sheet-drawings.ts';
import type { HeightColumn, HeightsDrawing, RulerDrawing } from './sheet-model.types.ts';
import { mm, tenths } from './sheet-parts.ts';

const LABEL = 6.8;
/** Room beside the bar of a column: the lead and the longest label, "closed, mean 100.0". */
const COLUMN_WORDS = 86;

interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly align?: 'left' | 'center';
}

/** One line of small text; centred on `x`, or beginning there. Never breaks, never moves on. */
function label(doc: Doc, { text, x, y, align = 'center' }: Label): void {
  const shown = legible(text);
  const from = align === 'center' ? x - doc.widthOfString(shown) / 2 : x;
  doc.text(shown, from, y, { lineBreak: false });
}

function title(doc: Doc, text: string, box: Box): number {
  doc.font('bold').fontSize(LABEL).fillColor('black');
  const shown = legible(text);
  const height = doc.heightOfString(shown, { width: box.width });
  doc.text(shown, box.x, box.y, { width: box.width });
  doc.font('regular').fontSize(LABEL);
  return box.y + height + 3;
}

const line = (doc: Doc, [x1, y1, x2, y2]: readonly [number, number, number, number]) =>
  doc.moveTo(x1, y1).lineTo(x2, y2).stroke();

function scaleMarks(doc: Doc, { from, to }: RulerDrawing, at: { x: (mm: number) => number; y: number }): void {
  const step = to - from <= 10 ? 1 : Math.ceil((to - from) / 10);
  for (let value = from; value <= to; value += 1) {
    const named = (value - from) % step === 0;
    doc.lineWidth(0.6);
    line(doc, [at.x(value), at.y, at.x(value), at.y + (named ? 5 : 3)]);
    if (named) label(doc, { text: String(value), x: at.x(value), y: at.y + 6 });
  }
}

/** Dots above a millimetre scale, equal ones on top of each other; what stands apart is hollow; a tall line is the median. */
export function drawRuler(doc: Doc, drawing: RulerDrawing, box: Box): void {
  doc.save().strokeColor('black');
  const top = title(doc, drawing.title, box);
  const y = box.y + box.height - 18;
  const [x1, x2] = [box.x + 8, box.x + box.width - 8];
  const x = (value: number) => x1 + ((value - drawing.from) / (drawing.to - drawing.from)) * (x2 - x1);
  doc.lineWidth(1);
  line(doc, [x1, y, x2, y]);
  scaleMarks(doc, drawing, { x, y });
  const piled = new Map<number, number>();
  const most = Math.max(1, ...drawing.marks.map((m) => drawing.marks.filter((o) => o.mm === m.mm).length));
  const apart = Math.min(6.5, (y - top - 12) / most);
  for (const mark of drawing.marks) {
    const pile = piled.get(mark.mm) ?? 0;
    piled.set(mark.mm, pile + 1);
    doc.circle(x(mark.mm), y - 4 - pile * apart, Math.min(2.4, apart * 0.42)).lineWidth(0.8);
    if (mark.suspect) doc.fillAndStroke('white', 'black');
    else doc.fillAndStroke('black', 'black');
  }
  if (drawing.medianMm !== undefined) {
    doc.lineWidth(0.8);
    line(doc, [x(drawing.medianMm), y, x(drawing.medianMm), top + 9]);
    doc.fillColor('black');
    label(doc, { text: `median ${mm(drawing.medianMm)}`, x: x(drawing.medianMm), y: top });
  }
  doc.restore();
}

/** Positions from top to bottom, moved down where two would touch. */
function apartBy(positions: readonly number[], apart: number): readonly number[] {
  const order = positions.map((_, i) => i).toSorted((a, b) => (positions[a] ?? 0) - (positions[b] ?? 0));
  const out = [...positions];
  let last = -Infinity;
  for (const i of order) {
    last = Math.max(positions[i] ?? 0, last + apart);
    out[i] = last;
  }
  return out;
}

interface ColumnAt extends Box {
  /** Millimetres to page. */
  at(mm: number): number;
  readonly floor: number;
}

function drawColumn(doc: Doc, column: HeightColumn, place: ColumnAt): void {
  const bar = Math.max(12, Math.min(46, place.width * 0.28, place.width - COLUMN_WORDS));
  const { x, floor, at } = place;
  const values = column.lines.map((one) => one.mm);
  const top = at(Math.min(...values));
  doc
    .lineWidth(0.6)
    .rect(x, top, bar, floor - top)
    .fillAndStroke('#dddddd', 'black');
  const rest = column.lines.find((one) => one.name.startsWith('rest'))?.mm;
  const closed = column.lines.find((one) => one.name.startsWith('closed'))?.mm;
  if (rest !== undefined && closed !== undefined && rest > closed)
    doc.rect(x, at(rest), bar, at(closed) - at(rest)).fillAndStroke('white', 'black');
  // The foot of the column is cut off: the scale does not begin at nought.
  doc.lineWidth(0.8).moveTo(x - 3, floor - 3);
  for (const i of [1, 2, 3, 4]) doc.lineTo(x - 3 + ((bar + 6) * i) / 4, floor - (i % 2 === 0 ? 3 : 8));
  doc.stroke();
  const labels = apartBy(
    column.lines.map((one) => at(one.mm)),
    LABEL + 1.6,
  );
  doc.fillColor('black');
  for (const [i, { name, mm: value }] of column.lines.entries()) {
    doc.lineWidth(1);
    line(doc, [x - 3, at(value), x + bar + 3, at(value)]);
    doc.lineWidth(0.4);
    line(doc, [x + bar + 3, at(value), x + bar + 10, labels[i] ?? 0]);
    label(doc, {
      text: `${name} ${tenths(value)}`,
      x: x + bar + 12,
      y: (labels[i] ?? 0) - LABEL * 0.55,
      align: 'left',
    });
  }
  const space = spaceText(column);
  label(doc, { text: column.label, x, y: floor + 3, align: 'left' });
  if (space !== '') label(doc, { text: `space ${space}`, x, y: floor + 4 + LABEL, align: 'left' });
}

/** One column a visit, cut off at the foot; rest over closed, with the space between left white. */
export function drawHeights(doc: Doc, drawing: HeightsDrawing, box: Box): void {
  doc.save().strokeColor('black').fillColor('black');
  const top = title(doc, drawing.title, box) + 4;
  const values = drawing.columns.flatMap((column) => column.lines.map((one) => one.mm));
  const [low, high] = [Math.min(...values) - 4, Math.max(...values) + 0.5];
  const floor = box.y + box.height - 22;
  const at = (value: number) => floor - ((value - low) / (high - low)) * (floor - top);
  const each = box.width / drawing.columns.length;
  for (const [i, column] of drawing.columns.entries())
    drawColumn(doc, column, { ...box, x: box.x + 4 + i * each, width: each, at, floor });
  doc.restore();
}

/** The digest as a QR code, black on white, without its quiet zone: the caller leaves that free. */
export function drawCode(doc: Doc, digest: string, box: Box): void {
  const code = codeModules(digest);
  const unit = box.width / code.size;
  doc.save().fillColor('black');
  for (let y = 0; y < code.size; y += 1)
    for (let x = 0; x < code.size; x += 1)
      if (code.dark(x, y)) doc.rect(box.x + x * unit, box.y + y * unit, unit + 0.05, unit + 0.05);
  doc.fill().restore();
}
