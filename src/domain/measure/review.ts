/** Scores and dates of reviews after a denture is delivered. */
import { addDays, addYears, parseDay, printDay } from './calendar.ts';
import { badWithin, firstBad } from './check.ts';
import { known, refuse, type Measured } from './result.ts';

export interface JawScore {
  /** 0 none, 1 minimum, 2 moderate, 3 good. */
  readonly retention: number;
  /** 0 none, 1 some, 2 sufficient. */
  readonly stability: number;
}

/** Two versions are in use; the name is kept with every score. */
export type ScoreVersion = 'both jaws summed, 0 to 10' | 'each denture alone, 0 to 5';

export interface RetentionScore {
  readonly version: ScoreVersion;
  readonly sum: number;
  /** Under 6 poor, 6 to 8 fair, over 8 good; only for both jaws summed. */
  readonly band?: 'poor' | 'fair' | 'good';
}

function badScore({ retention, stability }: JawScore, jaw: string) {
  const bad = firstBad(
    badWithin(retention, `${jaw} retention`, [0, 3]),
    badWithin(stability, `${jaw} stability`, [0, 2]),
  );
  if (bad !== undefined) return bad;
  const whole = Number.isInteger(retention) && Number.isInteger(stability);
  return whole ? undefined : refuse('offGrid', `${jaw}: scores are whole numbers.`);
}

/**
 * Retention and stability of a pair of dentures, summed 0 to 10 with its band. Whole scores; refuses anything outside
 * 0–3 and 0–2. All figures from memory. Source: retention-score.
 */
export function retentionScore(upper: JawScore, lower: JawScore): Measured<RetentionScore> {
  const bad = firstBad(badScore(upper, 'Upper'), badScore(lower, 'Lower'));
  if (bad !== undefined) return bad;
  const sum = upper.retention + upper.stability + lower.retention + lower.stability;
  const band = sum < 6 ? 'poor' : sum <= 8 ? 'fair' : 'good';
  const inputs = [`upper ${upper.retention} + ${upper.stability}`, `lower ${lower.retention} + ${lower.stability}`];
  return known({ value: { version: 'both jaws summed, 0 to 10', sum, band }, inputs, source: 'retention-score' });
}

/** One denture alone, 0 to 5, without a band: none was found. Refuses as retentionScore does. Source: retention-score. */
export function dentureScore(denture: JawScore): Measured<RetentionScore> {
  const bad = badScore(denture, 'Denture');
  if (bad !== undefined) return bad;
  const sum = denture.retention + denture.stability;
  const inputs = [`${denture.retention} + ${denture.stability}`];
  return known({ value: { version: 'each denture alone, 0 to 5', sum }, inputs, source: 'retention-score' });
}

export interface ReviewDates {
  /** 24 to 48 hours. */
  readonly first: readonly [string, string];
  readonly week: string;
  readonly fourWeeks: string;
  readonly year: string;
}

/**
 * Review days after delivery: 1 to 2 days, 1 week, 4 weeks, a year. "YYYY-MM-DD" in and out; weekends and holidays are
 * the practice's to move. Refuses what is no day of the calendar. Source: review-days.
 */
export function reviewDates(delivered: string): Measured<ReviewDates> {
  const day = parseDay(delivered);
  if (day === undefined) return refuse('unknown', `“${delivered}” is no day; a day looks like 2026-03-02.`);
  const after = (days: number) => printDay(addDays(day, days));
  const value = {
    first: [after(1), after(2)],
    week: after(7),
    fourWeeks: after(28),
    year: printDay(addYears(day, 1)),
  } as const;
  return known({ value, inputs: [`delivered ${delivered}`], source: 'review-days' });
}
