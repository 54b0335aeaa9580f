/** Which computed values a step is shown with: never a bare number, never one that does not matter here. */
import { dayOf, printDay } from '../domain/measure/calendar.ts';
import { solveHinge } from '../domain/measure/hinge.ts';
import { mixPlan } from '../domain/measure/mixing.ts';
import { pinRule } from '../domain/measure/pin.ts';
import { reviewDates } from '../domain/measure/review.ts';
import { sources, type SourceId } from '../domain/measure/sources.ts';
import type { Material, Practice, Step } from '../domain/protocol/types.ts';
import type { ComputedRow, Summary } from '../domain/summary/types.ts';
import type { FigureLine } from './model.ts';

/** Step id → ids of computed rows (a trailing * takes all that begin so). Where a drawing says it already, no line does. */
const AT_STEP: Readonly<Record<string, readonly string[]>> = {
  'jaw-relation': ['class'],
  'old-dentures': ['class'],
  'upper-tray-try': ['tray-upper'],
  'lower-tray-try': ['tray-lower'],
  'outline-upper': ['border-sulcus-upper*'],
  'outline-lower': ['border-sulcus-lower*'],
  'rest-height': ['rest-height'],
  'closed-height': ['rest-space'],
  'record-at': ['rest-height', 'rest-space'],
  'record-height': ['pin'],
  'new-record-keep': ['pin'],
  'heights-keep': ['speaking-space', 'height-change'],
  'bite-agrees': ['rest-space', 'speaking-space', 'height-change'],
  contacts: ['height-change'],
  'pin-change': ['pin-ground'],
  'sound-s': ['pin-ground'],
  'tracing-keep': ['tracing-angle'],
  'what-next': ['hold', 'reviews'],
  recall: ['reviews'],
  'sore-1-cause': ['sore-1'],
  'sore-2-cause': ['sore-2'],
  'sore-3-cause': ['sore-3'],
  'sore-4-cause': ['sore-4'],
};

const matches = (pattern: string, id: string) =>
  pattern.endsWith('*') ? id.startsWith(pattern.slice(0, -1)) : id === pattern;

const fromRow = ({ label, text, source, sourceStatus }: ComputedRow): FigureLine => ({
  label,
  text,
  source,
  status: sourceStatus,
});

const fromSource = (label: string, text: string, id: SourceId): FigureLine => ({
  label,
  text,
  source: sources[id].citation,
  status: sources[id].status,
});

/** The height the caliper is set to before the record is taken. */
function recordTarget(step: Step, { vertical }: Summary): readonly FigureLine[] {
  if (!['record-at', 'record-material', 'bite-record'].includes(step.id) || vertical.rest?.medianMm === undefined)
    return [];
  const atRest = vertical.convention === 'rest';
  const height = atRest ? vertical.rest.medianMm : vertical.targetHeightMm;
  if (height === undefined) return [];
  const how = atRest ? 'rest height' : `rest height less ${vertical.targetSpaceMm.toFixed(1)} mm`;
  return [fromSource('Close to', `${height.toFixed(1)} mm (${how})`, 'glossary-rest-space')];
}

/** Powder and water of the chosen material, from its own leaflet. */
function mixOf(step: Step, practice: Practice, chosen: string | undefined): readonly FigureLine[] {
  const material: Material | undefined =
    step.kind === 'clock' ? practice.materials.find((m) => m.id === chosen) : undefined;
  if (material?.mix === undefined) return [];
  const { powderG, waterMl, lessWater = 0 } = material.mix;
  const plan = mixPlan({ leaflet: { powderG, waterMl }, lessWater });
  if (!plan.ok) return [];
  const amounts = `${plan.value.powderG.toFixed(0)} g powder, ${plan.value.waterMl.toFixed(0)} ml water`;
  const water = material.waterC === undefined ? '' : `, water at ${material.waterC} °C`;
  const stiff = lessWater > 0 ? `. ${plan.value.text}` : '.';
  const note = material.generic ? 'Generic figures: replace with the leaflet’s.' : material.source;
  return [
    {
      label: 'One portion',
      text: `${amounts}${water}${stiff}`,
      source: note,
      status: material.generic ? 'generic' : 'leaflet',
    },
  ];
}

/** What is read off the pin, at the places where it is felt: the published rule, then the average hinge. */
function pinInMouth({ id }: Step, { change }: Summary): readonly FigureLine[] {
  if ((id !== 'pin-direction' && id !== 'pin-change') || change?.from === 'ground') return [];
  const opened = pinRule(1);
  const move = opened.ok ? solveHinge('incisal', opened.value.incisalMm) : opened;
  if (!opened.ok || !move.ok) return [];
  const places = [
    `incisors ${opened.value.incisalMm.toFixed(1)} mm`,
    `chin ${move.value.chinMm.toFixed(1)} mm`,
    `first molar ${move.value.molarMm.toFixed(1)} mm`,
  ];
  return [fromSource('One millimetre at the pin', places.join(', '), opened.source)];
}

/** The score of the last visit that had one, while this visit's is being found. */
function lastScore({ id }: Step, { hold = [], visitName }: Summary): readonly FigureLine[] {
  const [, what, jaw] = /^(retention|stability)-(upper|lower)$/.exec(id) ?? [];
  const before = hold.findLast(
    (row) => row.visit !== visitName && (jaw === 'upper' ? row.upper : row.lower) !== undefined,
  );
  const scores = jaw === 'upper' ? before?.upper : before?.lower;
  if (what === undefined || before === undefined || scores === undefined) return [];
  const score = what === 'retention' ? scores.retention : scores.stability;
  return [fromSource(`At ${before.visit}`, `${score}`, 'retention-score')];
}

/** While the dentures are being handed over the review days still count from today. */
function reviewDays(step: Step, { openedAt }: Summary): readonly FigureLine[] {
  const found = step.id === 'review-booked' ? reviewDates(printDay(dayOf(openedAt))) : undefined;
  if (found?.ok !== true) return [];
  const { first, week, fourWeeks, year } = found.value;
  const days = `${first[0]} to ${first[1]}, ${week}, ${fourWeeks}, then ${year}`;
  return [fromSource('Handed over today', days, found.source)];
}

/** All of it for one step, in reading order. */
export function figuresAt(
  step: Step,
  around: { summary: Summary; practice: Practice; chosen: string | undefined },
): readonly FigureLine[] {
  const { summary, practice, chosen } = around;
  const wanted = AT_STEP[step.id] ?? [];
  const rows = summary.computed.filter((row) => wanted.some((pattern) => matches(pattern, row.id)));
  return [
    ...rows.map(fromRow),
    ...recordTarget(step, summary),
    ...pinInMouth(step, summary),
    ...lastScore(step, summary),
    ...reviewDays(step, summary),
    ...mixOf(step, practice, chosen),
  ];
}
