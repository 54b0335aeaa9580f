/** What the drawings of the sheet show, and the same in a sentence for whoever does not see them. */
import { formatHundredths } from '../domain/measure/length.ts';
import type { SetRow, Summary, VerticalDimension } from '../domain/summary/types.ts';
import type { Block, HeightColumn, HeightsDrawing, RulerDrawing } from './sheet-model.types.ts';
import { mm, tenths } from './sheet-parts.ts';

type Drawn = Extract<Block, { kind: 'drawings' }>['drawings'][number];

function ruler(set: SetRow): Drawn {
  const values = set.values.map((value) => value / 100);
  const suspects = new Set(set.suspects.map((one) => one.seq));
  const drawing: RulerDrawing = {
    kind: 'ruler',
    title: `${set.label}, ${set.markSet}`,
    from: Math.floor(Math.min(...values)) - 1,
    to: Math.ceil(Math.max(...values)) + 1,
    marks: values.map((value, i) => ({ mm: value, suspect: suspects.has(set.seqs[i] ?? 0) })),
    ...(set.medianMm === undefined ? {} : { medianMm: set.medianMm }),
  };
  const spread = set.rangeMm === undefined ? '' : `, spread ${mm(set.rangeMm)} mm`;
  const median = set.medianMm === undefined ? '' : `; median ${mm(set.medianMm)} mm${spread}`;
  const apart = set.suspects.length === 0 ? '' : `; ${set.suspects.length} marked as standing apart`;
  const alt = `Readings on a ruler. ${drawing.title}: ${set.values.map(formatHundredths).join(', ')} mm${median}${apart}.`;
  return { drawing, alt };
}

/** Height of a set as it enters the subtraction: its mean; where there is no mean, the median. */
const heightOf = (set: SetRow | undefined): number | undefined => set?.meanMm ?? set?.medianMm;

function column(label: string, vertical: VerticalDimension): HeightColumn | undefined {
  const all: readonly (readonly [string, number | undefined])[] = [
    ['rest, mean', heightOf(vertical.rest)],
    ['closed, mean', heightOf(vertical.closed)],
    ['record', vertical.record?.medianMm],
    // Without a record nothing is made at that height: on the sheet it would read like an order.
    ['to make', vertical.lab === undefined ? undefined : vertical.targetHeightMm],
  ];
  const lines = all.flatMap(([name, value]) => (value === undefined ? [] : [{ name, mm: value }]));
  if (lines.length === 0) return undefined;
  const { restSpaceMm: spaceMm, uncertaintyMm } = vertical;
  return {
    label,
    lines,
    ...(spaceMm === undefined ? {} : { spaceMm }),
    ...(uncertaintyMm === undefined ? {} : { uncertaintyMm }),
  };
}

/** "2.9 ± 0.9 mm", or '' where there is no space to speak of. */
export function spaceText({ spaceMm, uncertaintyMm }: HeightColumn): string {
  if (spaceMm === undefined) return '';
  return `${tenths(spaceMm)}${uncertaintyMm === undefined ? '' : ` ± ${tenths(uncertaintyMm)}`} mm`;
}

function heights(summary: Summary): Drawn | undefined {
  const all = [...summary.earlier, { visit: summary.visitName, vertical: summary.vertical }];
  const columns = all.flatMap((one) => column(one.visit, one.vertical) ?? []);
  if (columns.length === 0) return undefined;
  const drawing: HeightsDrawing = { kind: 'heights', title: 'Heights, each within its own marks', columns };
  const sentences = columns.map((one) => {
    const space = one.spaceMm === undefined ? '' : `; space between rest and closed ${spaceText(one)}`;
    return `${one.label}: ${one.lines.map((line) => `${line.name} ${tenths(line.mm)} mm`).join(', ')}${space}`;
  });
  return { drawing, alt: `Heights as a stack. ${sentences.join('. ')}.` };
}

/** A ruler for each repeated reading of two or more, and the stack of heights. */
export function drawingBlocks(summary: Summary): Block[] {
  const rulers = summary.sets.filter((set) => set.n > 1).map(ruler);
  const stack = heights(summary);
  const drawings = [...rulers, ...(stack === undefined ? [] : [stack])];
  return drawings.length === 0 ? [] : [{ kind: 'drawings', drawings }];
}
