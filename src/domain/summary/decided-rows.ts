/** The same as computed values: one line each, with what it rests on and by whose rule. */
import { speakingSpace, SPEAKING_WEARERS, spaceChange } from '../measure/crosschecks.ts';
import { formatHundredths } from '../measure/length.ts';
import { sources, type SourceId } from '../measure/sources.ts';
import { lookFirst, lookText } from '../protocol/sore-causes.ts';
import type { Decided, HoldRow, SoreArea, ToothRow, TracingView } from './decided.types.ts';
import { changeWords, pointText, reviewWords, soreWords } from './decided-words.ts';
import { latest, latestMm, mmText, signedText, tenthsText } from './latest.ts';
import { ownHinge } from './height-change.ts';
import type { ComputedRow, ReadingRow, Summary, VerticalDimension } from './types.ts';

export interface DecidedRowsFrom {
  readonly decided: Decided;
  readonly rows: readonly ReadingRow[];
  readonly all: readonly ReadingRow[];
  readonly vertical: VerticalDimension;
  readonly earlier: Summary['earlier'];
}

type Line = Pick<ComputedRow, 'id' | 'label' | 'text' | 'inputs'> & Partial<ComputedRow>;

const bySource = (line: Line, source: SourceId): ComputedRow => ({
  ...line,
  source: sources[source].citation,
  sourceStatus: sources[source].status,
});

function tracingRows(tracing: TracingView | undefined): readonly ComputedRow[] {
  const { scatter, arch } = tracing ?? {};
  const inputs = (tracing?.apexes ?? []).map((apex) => `point ${apex.n}: ${pointText(apex)}`);
  const rows: ComputedRow[] = [];
  if (scatter !== undefined) {
    const apart = `${inputs.length} points within a circle of ${mmText(scatter.radiusMm)}, furthest two ${mmText(scatter.largestPairMm)} apart`;
    const accepted = scatter.verdict === 'accept';
    const text = accepted ? `${pointText(scatter)}; ${apart}` : `not accepted; ${apart}`;
    rows.push(bySource({ id: 'tracing-centre', label: 'Tracings, middle of the points', text, inputs }, 'arrow-point'));
  }
  if (arch !== undefined) {
    const sides = `right ${arch.rightDeg.toFixed(0)}°, left ${arch.leftDeg.toFixed(0)}° to the midline`;
    const text = `${arch.angleDeg.toFixed(0)}°, ${arch.verdict}; ${sides}`;
    rows.push(bySource({ id: 'tracing-angle', label: 'Tracings, angle of the legs', text, inputs }, 'arrow-lines'));
  }
  return rows;
}

function toothText({ lowMm, highMm, spreadMm, judge, estimates }: ToothRow): string {
  if (estimates.length === 1) return `${mmText(lowMm)} by one rule`;
  const apart = `${mmText(spreadMm)} apart${judge ? ': the clinician judges' : ''}`;
  return `${tenthsText(lowMm)} to ${mmText(highMm)} by ${estimates.length} rules, ${apart}`;
}

const distinct = (words: readonly string[]) => [...new Set(words)];

function toothRow(tooth: ToothRow): ComputedRow {
  const { estimates } = tooth;
  const rules = estimates.map(
    ({ rule, mm, note, status }) => `${rule}: ${mmText(mm)} (${status})${note === undefined ? '' : ` ${note}`}`,
  );
  const ends = estimates.length > 1 ? { rangeMm: [tooth.lowMm, tooth.highMm] as const } : {};
  return {
    id: `teeth-${tooth.id}`,
    label: tooth.label,
    text: toothText(tooth),
    inputs: [...rules, ...distinct(estimates.map((one) => one.from))],
    ...ends,
    source: distinct(estimates.map((one) => one.source)).join(' '),
    sourceStatus: distinct(estimates.map((one) => one.status)).join(', '),
  };
}

function changeRows({ decided, all, vertical }: DecidedRowsFrom): readonly ComputedRow[] {
  const { change } = decided;
  if (change === undefined || change.from === 'record') return [];
  const side = ownHinge(all) === undefined ? undefined : latestMm(all, 'axis-incisal');
  const hinge = side === undefined ? 'average hinge geometry' : `axis to edge ${side} mm, average for the rest`;
  const text = changeWords(change);
  if (change.from === 'ground') {
    const inputs = ['pin before and after grinding', hinge];
    return [bySource({ id: 'pin-ground', label: 'Change by grinding', text, inputs }, 'pin-rule')];
  }
  const wanted = mmText(vertical.targetSpaceMm);
  const inputs = ['mean of rest', 'mean of closed', `wanted space ${wanted}`, hinge];
  const label = `From the closed height to a space of ${wanted}`;
  return [bySource({ id: 'height-change', label, text, inputs }, 'hinge-model')];
}

const SPEAKING: Readonly<Record<string, string>> = {
  contact: 'contact in speech',
  narrow: 'narrower than the usual 1 to 2 mm',
  usual: 'usual at “s”',
  wide: 'wider than the usual 1 to 2 mm',
};

/** The gap at "s" as it was read: with the marks touching in closure it is the whole distance. */
function speakingRows(rows: readonly ReadingRow[]): readonly ComputedRow[] {
  const gap = latest(rows, 'speaking-space');
  const found = gap === undefined ? undefined : speakingSpace(0, gap.value);
  if (gap === undefined || found?.ok !== true) return [];
  const { meanMm, sdMm } = SPEAKING_WEARERS;
  const wearers = `denture wearers ${meanMm.toFixed(1)} ± ${sdMm.toFixed(1)}`;
  const text = `${mmText(found.value.spaceMm)}, ${SPEAKING[found.value.verdict]}; ${wearers}`;
  const inputs = [`${gap.label} ${formatHundredths(gap.value)} mm, ${gap.visit}`];
  return [bySource({ id: 'speaking-space', label: 'Closest speaking space', text, inputs }, 'speaking-space')];
}

/** Against the last visit that read both heights: only the spaces are compared, each between its own marks. */
function spaceRows({ vertical, earlier }: DecidedRowsFrom): readonly ComputedRow[] {
  const before = earlier.findLast((one) => one.vertical.rest !== undefined && one.vertical.closed !== undefined);
  const { rest, closed } = vertical;
  if (before?.vertical.rest === undefined || before.vertical.closed === undefined) return [];
  if (rest === undefined || closed === undefined) return [];
  const first = { rest: before.vertical.rest.values, closed: before.vertical.closed.values };
  const found = spaceChange(first, { rest: rest.values, closed: closed.values });
  if (!found.ok) return [];
  const { changeMm, fromMm, toMm, beyondScatter } = found.value;
  const give = found.uncertainty === undefined ? '' : ` ± ${found.uncertainty.toFixed(1)}`;
  const told = beyondScatter ? 'more than the readings scatter' : 'within the scatter of the readings';
  const text = `${signedText(changeMm)}${give} mm, from ${tenthsText(fromMm)} to ${mmText(toMm)}: ${told}`;
  const line = { id: 'space-change', label: `Rest space since ${before.visit}`, text, inputs: found.inputs };
  return [bySource(line, 'difference-only')];
}

const holdText = ({ sum, most, band }: HoldRow) => `${sum} of ${most}${band === undefined ? '' : `, ${band}`}`;

function holdRow({ decided, rows }: DecidedRowsFrom): readonly ComputedRow[] {
  const visit = rows.at(-1)?.visit;
  const all = decided.hold ?? [];
  const now = all.find((one) => one.visit === visit);
  if (now === undefined) return [];
  const before = all.slice(0, all.indexOf(now)).findLast((one) => one.most === now.most);
  const change = before === undefined ? 0 : now.sum - before.sum;
  const moved = change === 0 ? 'unchanged' : change > 0 ? `+${change}` : `−${-change}`;
  const since = before === undefined ? '' : `; ${moved} since ${before.visit} (${before.sum} of ${before.most})`;
  const inputs = (['upper', 'lower'] as const).flatMap((jaw) => {
    const scores = now[jaw];
    return scores === undefined ? [] : [`${jaw}: retention ${scores.retention}, stability ${scores.stability}`];
  });
  const line = { id: 'hold', label: 'Retention and stability', text: `${holdText(now)}${since}`, inputs };
  return [bySource({ ...line, inputs: [...inputs, now.version] }, 'retention-score')];
}

/** Habits of where to look are told apart from what was found there. */
function soreRows(areas: readonly SoreArea[] | undefined): readonly ComputedRow[] {
  return (areas ?? [])
    .filter((area) => area.current)
    .map((area) => {
      const look = lookFirst(area.region);
      const todo = look === undefined ? '' : ` ${lookText(look)}; the clinician decides.`;
      return {
        id: area.id,
        label: area.what === 'sore' ? 'Sore area' : 'Relieved at insertion',
        text: `${soreWords(area)}${todo}`,
        inputs: [],
        source: 'Where to look first by region: habit of the trade.',
        sourceStatus: look?.status ?? 'none known',
      };
    });
}

function reviewRow({ decided }: DecidedRowsFrom): readonly ComputedRow[] {
  const { reviews } = decided;
  if (reviews === undefined) return [];
  const days = reviews.rows.map(reviewWords);
  const { source, sourceStatus, delivered } = reviews;
  return [
    {
      id: 'reviews',
      label: 'Reviews',
      text: days.join('; '),
      inputs: [`delivered ${delivered}`],
      source,
      sourceStatus,
    },
  ];
}

/** One line for each computed value; what lacks an input has none. */
export function decidedRows(from: DecidedRowsFrom): readonly ComputedRow[] {
  const { decided, rows } = from;
  return [
    ...spaceRows(from),
    ...changeRows(from),
    ...speakingRows(rows),
    ...tracingRows(decided.tracing),
    ...(decided.teeth ?? []).map(toothRow),
    ...holdRow(from),
    ...soreRows(decided.sore),
    ...reviewRow(from),
  ];
}
