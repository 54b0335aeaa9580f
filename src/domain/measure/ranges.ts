/** Plausible and expected ranges of readings, as data a practice can override. Whole hundredths of a millimetre. */
import { badReading } from './check.ts';
import { formatHundredths, type Hundredths } from './length.ts';
import { known, refuse, type Measured } from './result.ts';
import type { SourceStatus } from './sources.ts';

export interface ReadingRange {
  readonly label: string;
  /** Outside: keep, but warn. */
  readonly usual: readonly [Hundredths, Hundredths];
  /** Outside: ask again before keeping. */
  readonly plausible: readonly [Hundredths, Hundredths];
  /** What was published, and how far it was seen. The limits themselves are our choice. */
  readonly published: string;
  readonly status: SourceStatus;
}

const mm = (low: number, high: number) => [low * 100, high * 100] as const;

const table = {
  bizygomatic: {
    label: 'Face width between the cheekbones',
    usual: mm(117, 161),
    plausible: mm(95, 185),
    published: 'Men 142.6 ± 6.2, women 133.8 ± 5.6 mm (army survey 2012, microdata computed).',
    status: 'text seen',
  },
  interalar: {
    label: 'Nose width',
    usual: mm(25, 50),
    plausible: mm(18, 65),
    published: '36.38 ± 3.81 mm (Iran); means 35.2 (US), 40.6 (Pakistan).',
    status: 'text seen',
  },
  intercommissural: {
    label: 'Mouth width, relaxed',
    usual: mm(38, 66),
    plausible: mm(30, 80),
    published: 'Men 51.1 ± 4.2, women 48.0 ± 4.0 mm (respirator survey 2003).',
    status: 'from memory',
  },
  'inner-canthal': {
    label: 'Between the inner corners of the eyes',
    usual: mm(22, 42),
    plausible: mm(18, 50),
    published: '28.7 ± 1.7 and 27.9 ± 2.1 mm; 35.62 ± 2.22 mm (Pakistan).',
    status: 'text seen',
  },
  interpupillary: {
    label: 'Between the pupils',
    usual: mm(51, 74),
    plausible: mm(40, 90),
    published: 'Men 64.0 ± 3.4, women 61.7 ± 3.6 mm (army survey 2012, microdata computed).',
    status: 'text seen',
  },
  'rest-height': {
    label: 'Nose to chin at rest',
    usual: mm(55, 85),
    plausible: mm(40, 110),
    published: 'Means 67.90 mm without, 70.33 mm with both dentures (52 people); no spread.',
    status: 'text seen',
  },
  'closed-height': {
    label: 'Nose to chin, closed',
    usual: mm(50, 83),
    plausible: mm(35, 108),
    published: 'Rest height less 2 to 4 mm.',
    status: 'derived',
  },
  'subnasale-chin': {
    label: 'Base of nose to chin',
    usual: mm(50, 88),
    plausible: mm(35, 105),
    published: '76.4 ± 3.6 and 69.5 ± 4.8 mm (one table, population not shown).',
    status: 'text seen',
  },
  'upper-width': {
    label: 'Upper ridge width',
    usual: mm(45, 80),
    plausible: mm(35, 95),
    published: 'None for ridges without teeth; 64.12 mm between second molars (50 dentate) as an upper guide.',
    status: 'our choice',
  },
  'lower-width': {
    label: 'Lower ridge width at the pads',
    usual: mm(45, 80),
    plausible: mm(35, 95),
    published: 'None found.',
    status: 'our choice',
  },
  'pad-length': {
    label: 'Length of the retromolar pad',
    usual: mm(4, 16),
    plausible: mm(2, 25),
    published: '11.20 ± 2.51 mm (81 people); 8.91 ± 1.80 mm (150 without teeth).',
    status: 'text seen',
  },
  'six-anteriors': {
    label: 'Six upper front teeth',
    usual: mm(38, 56),
    plausible: mm(30, 65),
    published: '46.02 ± 2.8 and 48.23 ± 2.07 mm.',
    status: 'text seen',
  },
  'central-width': {
    label: 'Width of a central incisor',
    usual: [720, 1040] as const,
    plausible: mm(6, 12),
    published: '8.87 ± 0.5 and 8.68 ± 0.4 mm.',
    status: 'text seen',
  },
  'face-height': {
    label: 'Hairline to chin',
    usual: mm(150, 220),
    plausible: mm(120, 260),
    published: '180 to 190 mm typical.',
    status: 'from memory',
  },
} satisfies Readonly<Record<string, ReadingRange>>;

export type RangeId = keyof typeof table;

/** Adults. Limits are ±3 SD of published means where a spread was published, otherwise from common practice. Source: plausible-ranges. */
export const RANGES: Readonly<Record<string, ReadingRange>> = table;

/**
 * The range of a quantity as a visit asks for it: outside `plausible` asked again, outside `expected` kept and flagged.
 * Hundredths of a millimetre. Source: plausible-ranges.
 */
export function visitRange(id: RangeId): {
  readonly plausible: readonly [Hundredths, Hundredths];
  readonly expected: readonly [Hundredths, Hundredths];
} {
  const { plausible, usual } = table[id];
  return { plausible, expected: usual };
}

export type RangeOverrides = Readonly<Record<string, Partial<Pick<ReadingRange, 'usual' | 'plausible'>>>>;

export interface RangeCheck {
  readonly verdict: 'usual' | 'unusual' | 'implausible';
  readonly usual: readonly [Hundredths, Hundredths];
  readonly plausible: readonly [Hundredths, Hundredths];
  readonly text: string;
}

const within = (value: number, [low, high]: readonly [number, number]) => value >= low && value <= high;
const words = ([low, high]: readonly [number, number]) => `${formatHundredths(low)} to ${formatHundredths(high)} mm`;

/**
 * One reading against its range, both ends included; a practice's own limits win. Hundredths in. Refuses an unknown
 * reading, what is no reading, and limits in the wrong order or a usual range outside the plausible one.
 * Source: plausible-ranges.
 */
export function checkRange(id: string, value: Hundredths, overrides: RangeOverrides = {}): Measured<RangeCheck> {
  const standard = Object.hasOwn(RANGES, id) ? RANGES[id] : undefined;
  if (standard === undefined)
    return refuse('unknown', `No range is known for “${id}”; known: ${Object.keys(RANGES).join(', ')}.`);
  const bad = badReading(value, standard.label);
  if (bad !== undefined) return bad;
  const own = Object.hasOwn(overrides, id) ? overrides[id] : undefined;
  const { usual, plausible } = { ...standard, ...own };
  const nested = usual[0] <= usual[1] && within(usual[0], plausible) && within(usual[1], plausible);
  if (!nested) return refuse('inconsistent', `${standard.label}: the usual range must lie inside the plausible one.`);
  const verdict = !within(value, plausible) ? 'implausible' : within(value, usual) ? 'usual' : 'unusual';
  const text = {
    usual: `${standard.label} ${formatHundredths(value)} mm lies in the usual range.`,
    unusual: `${standard.label} ${formatHundredths(value)} mm; ${words(usual)} is usual.`,
    implausible: `${standard.label} ${formatHundredths(value)} mm; ${words(plausible)} is plausible. Measure again.`,
  }[verdict];
  const inputs = [
    `${id} ${formatHundredths(value)} mm`,
    own === undefined ? 'standard limits' : 'limits of the practice',
  ];
  return known({ value: { verdict, usual, plausible, text }, inputs, source: 'plausible-ranges' });
}
