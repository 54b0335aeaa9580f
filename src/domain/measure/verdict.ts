/** All that speaks for and against a closed height, side by side, and which reading would narrow it most. */
import { facialMeasure, oldDentureChange, speakingSpace, type Leaning } from './crosschecks.ts';
import type { Hundredths } from './length.ts';
import { known, type Measured, type Refused } from './result.ts';
import type { SourceId } from './sources.ts';
import { restSpace, type RestSpace } from './vertical.ts';

export interface HeightEvidence {
  readonly rest: readonly Hundredths[];
  readonly closed: readonly Hundredths[];
  readonly facial?: { readonly pupilToLip: Hundredths; readonly noseBaseToChin: Hundredths };
  readonly speaking?: { readonly closed: Hundredths; readonly atS: Hundredths };
  readonly oldDentures?: { readonly present: Hundredths; readonly planned: Hundredths; readonly wear?: Hundredths };
}

export interface Reason {
  readonly check: 'restSpace' | 'facial' | 'speaking' | 'oldDentures';
  readonly leaning: Leaning;
  /** Weak: its own uncertainty reaches back into what is usual. */
  readonly weight: 'strong' | 'weak';
  readonly text: string;
  readonly source: SourceId;
}

export interface NextReading {
  readonly read: 'rest' | 'closed';
  /** 95 % half width of the rest space now, and expected after one more such reading, millimetres. */
  readonly nowMm: number;
  readonly thenMm: number;
}

export type HeightVerdict = 'fits' | 'closedLarge' | 'closedSmall' | 'conflicting' | 'undecided' | 'impossible';

export interface CombinedHeight {
  readonly verdict: HeightVerdict;
  readonly spaceMm: number;
  readonly reasons: readonly Reason[];
  readonly next: NextReading;
  /** Cross-checks not yet made. */
  readonly notYet: readonly Reason['check'][];
}

const USUAL = { lowMm: 2, highMm: 4 } as const;

const LEANS: Readonly<Record<RestSpace['verdict'], Leaning>> = {
  usual: 'neither',
  small: 'closedLarge',
  large: 'closedSmall',
  impossible: 'closedLarge',
};

function spaceReason(space: RestSpace, halfWidth: number): Reason {
  const { spaceMm, verdict } = space;
  const clear = spaceMm + halfWidth < USUAL.lowMm || spaceMm - halfWidth > USUAL.highMm;
  const inside = spaceMm - halfWidth >= USUAL.lowMm && spaceMm + halfWidth <= USUAL.highMm;
  const text = `Rest space ${spaceMm.toFixed(1)} ± ${halfWidth.toFixed(1)} mm; 2 to 4 mm is usual.`;
  const weight = clear || inside ? 'strong' : 'weak';
  return { check: 'restSpace', leaning: LEANS[verdict], weight, text, source: 'rest-space-bands' };
}

function facialReason({ facial }: HeightEvidence): Reason | Refused | undefined {
  if (facial === undefined) return undefined;
  const found = facialMeasure(facial.pupilToLip, facial.noseBaseToChin);
  if (!found.ok) return found;
  const { differenceMm, leaning } = found.value;
  const text = `Nose base to chin ${Math.abs(differenceMm).toFixed(1)} mm ${differenceMm < 0 ? 'below' : 'above'} pupil line to lips; 3 mm is let pass.`;
  return { check: 'facial', leaning, weight: 'weak', text, source: 'facial-measure' };
}

function speakingReason({ speaking }: HeightEvidence): Reason | Refused | undefined {
  if (speaking === undefined) return undefined;
  const found = speakingSpace(speaking.closed, speaking.atS);
  if (!found.ok) return found;
  const { spaceMm, leaning, verdict, withinWearers } = found.value;
  const weight = verdict === 'contact' || !withinWearers ? 'strong' : 'weak';
  const text =
    verdict === 'contact'
      ? 'Teeth or rims touch at “s”.'
      : `Speaking space ${spaceMm.toFixed(1)} mm at “s”; 1 to 2 mm is usual.`;
  return { check: 'speaking', leaning, weight, text, source: 'speaking-space' };
}

function oldReason({ oldDentures }: HeightEvidence): Reason | Refused | undefined {
  if (oldDentures === undefined) return undefined;
  const found = oldDentureChange(oldDentures.present, oldDentures.planned, oldDentures.wear);
  if (!found.ok) return found;
  const { changeMm, verdict } = found.value;
  const leaning = verdict === 'within' ? 'neither' : changeMm > 0 ? 'closedLarge' : 'closedSmall';
  const text = `${Math.abs(changeMm).toFixed(1)} mm ${changeMm < 0 ? 'lower' : 'higher'} than the present dentures; 4 to 5 mm at once is the usual limit.`;
  return {
    check: 'oldDentures',
    leaning,
    weight: verdict === 'beyond' ? 'strong' : 'weak',
    text,
    source: 'old-denture-change',
  };
}

function decide(space: RestSpace, reasons: readonly Reason[]): HeightVerdict {
  if (space.verdict === 'impossible') return 'impossible';
  const against = reasons.filter((reason) => reason.leaning !== 'neither');
  const sides = new Set(against.map((reason) => reason.leaning));
  if (sides.size === 2) return 'conflicting';
  const [side] = sides;
  if (side === undefined) return reasons.some((r) => r.weight === 'strong') ? 'fits' : 'undecided';
  if (side === 'neither') return 'undecided';
  const strong = against.some((reason) => reason.weight === 'strong');
  return strong || against.length > 1 ? side : 'undecided';
}

/**
 * The one more reading, rest or closed, that would narrow the rest space most: the smaller set, as each mean's share of
 * the variance is s²/n. Expected half width with the same scatter. Source: rest-space-spread.
 */
export function nextReading(rest: readonly Hundredths[], closed: readonly Hundredths[]): Measured<NextReading> {
  const now = restSpace(rest, closed);
  if (!now.ok) return now;
  const share = (n1: number, n2: number) => Math.sqrt(1 / n1 + 1 / n2);
  const [n1, n2] = [rest.length, closed.length];
  const then = { rest: share(n1 + 1, n2) / share(n1, n2), closed: share(n1, n2 + 1) / share(n1, n2) };
  const read = then.rest <= then.closed ? 'rest' : 'closed';
  const nowMm = now.uncertainty ?? 0;
  const value: NextReading = { read, nowMm, thenMm: nowMm * then[read] };
  return known({ value, inputs: now.inputs, source: 'rest-space-spread' });
}

const isRefused = (found: Reason | Refused): found is Refused => 'ok' in found;

/**
 * One verdict on the closed height from rest space and cross-checks, with every reason and its weight, and what to
 * measure next. "fits" only when nothing leans and at least one reason is strong; opposite leanings are "conflicting", a
 * single weak leaning "undecided". The clinician decides. Hundredths in. Refuses what any of its checks refuses.
 * Sources: rest-space-bands, facial-measure, speaking-space, old-denture-change.
 */
export function combinedHeight(evidence: HeightEvidence): Measured<CombinedHeight> {
  const space = restSpace(evidence.rest, evidence.closed);
  if (!space.ok) return space;
  const next = nextReading(evidence.rest, evidence.closed);
  if (!next.ok) return next;
  const found = [facialReason(evidence), speakingReason(evidence), oldReason(evidence)].filter((r) => r !== undefined);
  const refused = found.find(isRefused);
  if (refused !== undefined) return refused;
  const checks = found.filter((reason): reason is Reason => !isRefused(reason));
  const reasons = [spaceReason(space.value, space.uncertainty ?? 0), ...checks];
  const all: readonly Reason['check'][] = ['facial', 'speaking', 'oldDentures'];
  const notYet = all.filter((check) => !reasons.some((reason) => reason.check === check));
  const value = {
    verdict: decide(space.value, reasons),
    spaceMm: space.value.spaceMm,
    reasons,
    next: next.value,
    notYet,
  };
  const inputs = [...space.inputs, ...checks.map((reason) => reason.check)];
  return known({ value, inputs, source: 'rest-space-bands', uncertainty: space.uncertainty });
}
