/** The numbers of one line of the order, to be shown large where the hands work. */
import { formatHundredths } from '../measure/length.ts';
import type { Practice } from '../protocol/types.ts';
import type { BenchFigure } from './bench.types.ts';
import type { LabLine, Summary } from './types.ts';

export type Ordered = Pick<Summary, 'labWork' | 'clocks' | 'readings' | 'sets' | 'vertical' | 'teeth' | 'change'>;

const MINUS = '−';
const BETWEEN = 'between the marks';

/** Millimetres that left the grid of hundredths, at most two decimals. */
export const plain = (mm: number): string => formatHundredths(Math.round(mm * 100));
const signed = (mm: number): string => `${mm > 0.049 ? '+' : mm < -0.049 ? MINUS : ''}${Math.abs(mm).toFixed(1)}`;

/** A change as a range, smaller amount first, each end with its sign. */
function changes([low, high]: readonly [number, number]): string {
  const [a, b] = Math.abs(low) <= Math.abs(high) ? [signed(low), signed(high)] : [signed(high), signed(low)];
  return a === b ? a : `${a} to ${b}`;
}

const pin = (range: readonly [number, number]): BenchFigure => ({
  label: 'Pin, change',
  digits: changes(range),
  unit: 'mm',
  more: `${MINUS} closes`,
});

const recordFigure = (medianMm: number): BenchFigure => ({
  label: 'Record made at',
  digits: medianMm.toFixed(1),
  unit: 'mm',
  more: BETWEEN,
});

/** Where the borders go, site by site, or by the practice's rule where no depth was read. */
function borderFigures({ readings }: Ordered, { borderShort }: Practice): readonly BenchFigure[] {
  const sites = readings.filter((row) => row.struck === undefined && row.reading.includes('sulcus'));
  if (sites.length === 0)
    return [{ label: 'Border short of the deepest point', digits: formatHundredths(borderShort), unit: 'mm' }];
  return sites.map((row) => ({
    label: `Border at, ${row.label.toLowerCase()}`,
    digits: formatHundredths(Math.max(0, row.value - borderShort)),
    unit: 'mm',
    more: `sulcus ${formatHundredths(row.value)} mm deep`,
  }));
}

function mountFigures({ vertical }: Ordered): readonly BenchFigure[] {
  const { record, lab, targetHeightMm } = vertical;
  if (record?.medianMm === undefined || lab === undefined) return [];
  return [
    recordFigure(record.medianMm),
    pin(lab.pinMm),
    ...(targetHeightMm === undefined
      ? []
      : [{ label: 'Height wanted', digits: targetHeightMm.toFixed(1), unit: 'mm', more: BETWEEN }]),
  ];
}

/** Mounted as closed: the pin stands, so no change of it is shown here; what is asked for on a condition stays in words. */
function closedFigures({ vertical: { closed } }: Ordered): readonly BenchFigure[] {
  if (closed?.meanMm === undefined) return [];
  return [
    { label: 'Closed height', digits: plain(closed.meanMm), unit: 'mm', more: `mean of ${closed.n}, ${BETWEEN}` },
  ];
}

function newRecordFigures({ vertical: { record }, change }: Ordered): readonly BenchFigure[] {
  return [
    ...(record?.medianMm === undefined ? [] : [recordFigure(record.medianMm)]),
    ...(change?.from === 'record' ? [pin(change.pinMm)] : []),
  ];
}

/** Sizes by all rules as a range; where they lie too far apart, that is said and not decided. */
function toothFigures({ teeth = [] }: Ordered): readonly BenchFigure[] {
  return teeth.map(({ label, lowMm, highMm, spreadMm, judge, estimates }) => ({
    label,
    digits: lowMm.toFixed(1) === highMm.toFixed(1) ? lowMm.toFixed(1) : `${lowMm.toFixed(1)} to ${highMm.toFixed(1)}`,
    unit: 'mm',
    more: `${estimates.length === 1 ? '1 rule' : `${estimates.length} rules, ${plain(spreadMm)} mm apart`}${judge ? '; the clinician judges' : ''}`,
  }));
}

const FIGURES: Readonly<Record<string, (found: Ordered, practice: Practice) => readonly BenchFigure[]>> = {
  border: borderFigures,
  mount: mountFigures,
  'mount-centric': closedFigures,
  'mount-new': newRecordFigures,
  'set-up': toothFigures,
};

/**
 * The numbers of a line, millimetres as text; none where the line has none of its own. Changes carry their sign, minus
 * closes.
 */
export function figuresOf(line: LabLine, found: Ordered, practice: Practice): readonly BenchFigure[] {
  return Object.hasOwn(FIGURES, line.id) ? (FIGURES[line.id]?.(found, practice) ?? []) : [];
}
