/** What was decided by computation, in words: the text beside the drawings, and all there is where nothing is drawn. */
import type { HeightChange, HoldRow, PointMm, ReviewRow, SoreArea, TracingView } from './decided.types.ts';
import { mmText, signedText, spanText, tenthsText } from './latest.ts';

/** "10.2 across, 20.0 up": a place on the millimetre sheet. */
export function pointText({ xMm, yMm }: PointMm): string {
  return `${tenthsText(xMm)} across, ${tenthsText(yMm)} up`;
}

const VERDICT = {
  accept: 'accepted, for up to 0.5 mm is',
  repeat: 'one more tracing wanted, for up to 0.5 mm is accepted',
  reject: 'to be made again, for over 1.0 mm is rejected',
} as const;

/** The tracings with their points, scatter and angle, in millimetres and degrees. */
export function tracingWords({ apexes, scatter, arch }: TracingView): string {
  const points = apexes.map(
    (apex) => `point ${apex.n} at ${pointText(apex)}${apex.sharp === false ? ', called blunt' : ''}`,
  );
  const parts = [`Tracings on millimetre paper, in mm: ${points.join('; ')}`];
  if (scatter === undefined) parts.push('One point has no scatter');
  else
    parts.push(
      `Middle ${pointText(scatter)}`,
      `A circle of ${mmText(scatter.radiusMm)} holds all points; the furthest two lie ${mmText(scatter.largestPairMm)} apart: ${VERDICT[scatter.verdict]}`,
    );
  if (arch !== undefined)
    parts.push(
      `The legs meet at ${arch.angleDeg.toFixed(0)}°, right ${arch.rightDeg.toFixed(0)}° and left ${arch.leftDeg.toFixed(0)}° from the midline`,
    );
  return `${parts.join('. ')}.`;
}

/** "chin −0.5 mm; incisors −0.5 to −0.4 mm; pin −0.8 to −0.6 mm; first molar −0.3 to −0.2 mm (minus closes)". */
export function changeWords({ chinMm, incisalMm, pinMm, molarMm }: HeightChange): string {
  const parts = [
    `chin ${signedText(chinMm)} mm`,
    `incisors ${spanText(incisalMm)}`,
    `pin ${spanText(pinMm)}`,
    `first molar ${spanText(molarMm)}`,
  ];
  return `${parts.join('; ')} (minus closes)`;
}

/** "Lower jaw, ridge crest: ulcer, 4 mm, 1 week; cause seen: bite; relieved". */
export function soreWords({ jaw, label, what, kind, sizeMm, weeks, cause, done }: SoreArea): string {
  const age = weeks === undefined ? [] : [`${weeks} week${weeks === 1 ? '' : 's'}`];
  const looks = [
    ...(kind === undefined ? [] : [kind.toLowerCase()]),
    ...(sizeMm === undefined ? [] : [`${sizeMm} mm`]),
  ];
  const found = what === 'relieved' ? ['relieved at insertion'] : [...looks, ...age];
  const more = [
    ...(cause === undefined ? [] : [`seen: ${cause.toLowerCase()}`]),
    ...(done === undefined ? [] : [done.toLowerCase()]),
  ];
  const place = `${jaw === 'upper' ? 'Upper' : 'Lower'} jaw, ${label.charAt(0).toLowerCase()}${label.slice(1)}`;
  return `${[`${place}${found.length === 0 ? '' : `: ${found.join(', ')}`}`, ...more].join('; ')}.`;
}

/** "upper retention 3, stability 2; lower retention 2, stability 2; 9 of 10, good". */
export function holdWords(row: HoldRow): string {
  const each = (['upper', 'lower'] as const).flatMap((jaw) => {
    const scores = row[jaw];
    return scores === undefined ? [] : [`${jaw} retention ${scores.retention}, stability ${scores.stability}`];
  });
  return [...each, `${row.sum} of ${row.most}${row.band === undefined ? '' : `, ${row.band}`}`].join('; ');
}

/** "Review after a week: 2026-03-09 (due)". */
export function reviewWords({ id, label, from, to, state }: ReviewRow): string {
  const when = from === to || id === 'ulcer' ? to : `${from} to ${to}`;
  return `${label}: ${when}${state === 'later' ? '' : ` (${state})`}`;
}
