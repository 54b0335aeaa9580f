/** Retention and stability, visit by visit. */
import { dentureScore, retentionScore } from '../measure/review.ts';
import type { HoldRow, HoldScores, Jaw } from './decided.types.ts';
import { latestMm } from './latest.ts';
import type { ReadingRow } from './types.ts';

function scoresOf(rows: readonly ReadingRow[], jaw: Jaw): HoldScores | undefined {
  const [retention, stability] = [latestMm(rows, `retention-${jaw}`), latestMm(rows, `stability-${jaw}`)];
  return retention === undefined || stability === undefined ? undefined : { retention, stability };
}

function holdOf(visit: string, rows: readonly ReadingRow[]): readonly HoldRow[] {
  const [upper, lower] = [scoresOf(rows, 'upper'), scoresOf(rows, 'lower')];
  const one = upper ?? lower;
  if (one === undefined) return [];
  const both = upper !== undefined && lower !== undefined;
  const found = both ? retentionScore(upper, lower) : dentureScore(one);
  if (!found.ok) return [];
  const { sum, band, version } = found.value;
  return [
    {
      visit,
      ...(upper === undefined ? {} : { upper }),
      ...(lower === undefined ? {} : { lower }),
      version,
      sum,
      most: both ? 10 : 5,
      ...(band === undefined ? {} : { band }),
    },
  ];
}

/**
 * One row for each visit in which both scores of a denture were read, oldest first: 0 to 10 for a pair, with its band;
 * 0 to 5 for one denture alone. Scores that are no whole numbers make no row. Source: retention-score.
 */
export function holdRows(all: readonly ReadingRow[]): readonly HoldRow[] {
  const visits = [...new Set(all.map((row) => row.visit))];
  return visits.flatMap((visit) =>
    holdOf(
      visit,
      all.filter((row) => row.visit === visit),
    ),
  );
}
