/** Types and limits of the impression-material standards, as vocabulary and for comparing a test report. */
import { badAmount, badWithin, firstBad } from './check.ts';
import { known, refuse, type Measured } from './result.ts';

export type ElastomerType = 'putty' | 'heavy' | 'medium' | 'light';

export interface ElastomerLimits {
  /** Type number in ISO 4823. */
  readonly type: 0 | 1 | 2 | 3;
  /** Diameter of the consistency disc, millimetres; an open end is null. */
  readonly discMm: readonly [number | null, number | null];
  /** Finest line reproduced, micrometres. */
  readonly detailUm: number;
  /** Least elastic recovery, per cent. */
  readonly recoveryPercent: number;
  /** Strain in compression, per cent. */
  readonly strainPercent: readonly [number, number];
  /** Largest linear change in 24 h, per cent. */
  readonly changePercent: number;
}

const COMMON = { recoveryPercent: 96.5, changePercent: 1.5 } as const;

/** ISO 4823, second-hand. It sets no working time: the maker's own statement must be met. Source: iso-4823. */
export const ELASTOMERS: Readonly<Record<ElastomerType, ElastomerLimits>> = {
  putty: { ...COMMON, type: 0, discMm: [null, 35], detailUm: 75, strainPercent: [0.8, 20] },
  heavy: { ...COMMON, type: 1, discMm: [null, 35], detailUm: 50, strainPercent: [0.8, 20] },
  medium: { ...COMMON, type: 2, discMm: [31, 41], detailUm: 20, strainPercent: [2, 20] },
  light: { ...COMMON, type: 3, discMm: [36, null], detailUm: 20, strainPercent: [2, 20] },
};

/** ISO 21563:2021 for alginate, second-hand. Source: iso-21563. */
export const ALGINATE_LIMITS = { detailUm: 50, recoveryPercent: 95, tearNPerMm: 0.38 } as const;

export interface TestReport {
  readonly type: ElastomerType;
  readonly detailUm?: number;
  readonly recoveryPercent?: number;
  readonly strainPercent?: number;
  readonly changePercent?: number;
}

export interface StandardCheck {
  readonly pass: boolean;
  readonly fails: readonly string[];
}

/**
 * A material's test figures against ISO 4823. Micrometres and per cent; figures not given are not judged. Refuses an
 * unknown type, a report without figures and what is no number. Source: iso-4823.
 */
export function elastomerCheck(report: TestReport): Measured<StandardCheck> {
  const limits = Object.hasOwn(ELASTOMERS, report.type) ? ELASTOMERS[report.type] : undefined;
  if (limits === undefined)
    return refuse('unknown', `“${report.type}” is no type; known: ${Object.keys(ELASTOMERS).join(', ')}.`);
  const { type: _, ...figures } = report;
  const given = Object.entries(figures).filter(([, value]) => value !== undefined);
  if (given.length === 0) return refuse('empty', 'The report holds no figure.');
  const bad = given.map(([name, value]) => badAmount(value, name)).find((b) => b !== undefined);
  if (bad !== undefined) return bad;
  const { detailUm = 0, recoveryPercent = 100, strainPercent, changePercent = 0 } = report;
  const [least, most] = limits.strainPercent;
  const strainOff = strainPercent !== undefined && (strainPercent < least || strainPercent > most);
  const fails = [
    ...(detailUm > limits.detailUm ? ['detail'] : []),
    ...(recoveryPercent < limits.recoveryPercent ? ['elastic recovery'] : []),
    ...(strainOff ? ['strain in compression'] : []),
    ...(changePercent > limits.changePercent ? ['linear change'] : []),
  ];
  const inputs = [report.type, ...given.map(([name, value]) => `${name} ${value}`)];
  return known({ value: { pass: fails.length === 0, fails }, inputs, source: 'iso-4823' });
}

/** What a linear change of `percent` means over a span, millimetres. Source: derived from iso-4823's limit. */
export function changeOverSpan(percent: number, spanMm: number): Measured<number> {
  const bad = firstBad(badWithin(percent, 'Per cent', [0, 100]), badAmount(spanMm, 'Span'));
  if (bad !== undefined) return bad;
  return known({ value: (percent / 100) * spanMm, inputs: [`${percent} %`, `${spanMm} mm`], source: 'limit-size' });
}

/** What is left of a deformation after removal: (1 − recovery) · strain · thickness, millimetres. Source: derived. */
export function lastingDent(recoveryPercent: number, strainPercent: number, thicknessMm: number): Measured<number> {
  const bad = firstBad(
    badWithin(recoveryPercent, 'Recovery', [0, 100]),
    badWithin(strainPercent, 'Strain', [0, 100]),
    badAmount(thicknessMm, 'Thickness'),
  );
  if (bad !== undefined) return bad;
  const value = (1 - recoveryPercent / 100) * (strainPercent / 100) * thicknessMm;
  const inputs = [`recovery ${recoveryPercent} %`, `strain ${strainPercent} %`, `thickness ${thicknessMm} mm`];
  return known({ value, inputs, source: 'limit-size' });
}
