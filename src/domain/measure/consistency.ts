/** Cheap checks of readings against each other: they catch a number filed under the wrong name. Hundredths in. */
import { badReading } from './check.ts';
import { formatHundredths, type Hundredths } from './length.ts';
import { known, refuse, type Measured } from './result.ts';

export interface TogetherReadings {
  readonly rest?: Hundredths;
  readonly closed?: Hundredths;
  readonly padLeft?: Hundredths;
  readonly padRight?: Hundredths;
  readonly interalar?: Hundredths;
  readonly intercommissural?: Hundredths;
  readonly bizygomatic?: Hundredths;
  readonly innerCanthal?: Hundredths;
  readonly interpupillary?: Hundredths;
}

export interface Clash {
  readonly id: string;
  /** The readings to look at again. */
  readonly between: readonly (keyof TogetherReadings)[];
  readonly text: string;
}

interface Rule {
  readonly id: string;
  readonly between: readonly [keyof TogetherReadings, keyof TogetherReadings];
  readonly holds: (a: Hundredths, b: Hundredths) => boolean;
  readonly text: string;
}

const RULES: readonly Rule[] = [
  {
    id: 'closed-above-rest',
    between: ['closed', 'rest'],
    holds: (a, b) => a <= b,
    text: 'the closed height cannot exceed the rest height',
  },
  {
    id: 'pads-apart',
    between: ['padLeft', 'padRight'],
    holds: (a, b) => Math.abs(a - b) <= 400,
    text: 'left and right pad seldom differ by more than 4 mm',
  },
  {
    id: 'nose-mouth',
    between: ['interalar', 'intercommissural'],
    holds: (a, b) => a < b,
    text: 'the nose is narrower than the mouth',
  },
  {
    id: 'mouth-face',
    between: ['intercommissural', 'bizygomatic'],
    holds: (a, b) => a < b,
    text: 'the mouth is narrower than the face',
  },
  {
    id: 'nose-face',
    between: ['interalar', 'bizygomatic'],
    holds: (a, b) => a < b,
    text: 'the nose is narrower than the face',
  },
  {
    id: 'canthi-pupils',
    between: ['innerCanthal', 'interpupillary'],
    holds: (a, b) => a < b,
    text: 'the inner corners lie closer than the pupils',
  },
  {
    id: 'nose-mouth-ratio',
    between: ['interalar', 'intercommissural'],
    holds: (a, b) => a >= 0.55 * b && a <= 0.95 * b,
    text: 'the nose is 0.55 to 0.95 of the mouth’s width',
  },
];

/**
 * Readings that contradict each other, each with the rule it breaks; pairs of which one is missing are not judged, so an
 * empty list is no proof. Refuses no reading at all and what is no reading. Source: consistency.
 */
export function clashes(readings: TogetherReadings): Measured<readonly Clash[]> {
  const given = Object.entries(readings).filter(([, value]) => value !== undefined);
  if (given.length === 0) return refuse('empty', 'No readings to compare.');
  const bad = given.map(([name, value]) => badReading(value, name)).find((b) => b !== undefined);
  if (bad !== undefined) return bad;
  const value = RULES.flatMap(({ id, between, holds, text }): Clash[] => {
    const [a, b] = [readings[between[0]], readings[between[1]]];
    if (a === undefined || b === undefined || holds(a, b)) return [];
    return [
      { id, between, text: `${between[0]} ${formatHundredths(a)}, ${between[1]} ${formatHundredths(b)} mm: ${text}.` },
    ];
  });
  return known({ value, inputs: given.map(([name, v]) => `${name} ${formatHundredths(v)} mm`), source: 'consistency' });
}
