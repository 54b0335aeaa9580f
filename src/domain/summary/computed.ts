/** Values computed from readings and answers, each with what it was computed from and by whose rule. */
import type { CaseView } from '../case/fold.ts';
import { edentulousClass, type ClassInput } from '../measure/edentulous.ts';
import { toMm } from '../measure/length.ts';
import type { Known, Measured } from '../measure/result.ts';
import { sources, type SourceId } from '../measure/sources.ts';
import { trayBorder } from '../measure/trays.ts';
import { describeSet, pinChange, restSpace } from '../measure/vertical.ts';
import type { Practice } from '../protocol/types.ts';
import { decidedRows, type DecidedRowsFrom } from './decided-rows.ts';
import { trayRanking } from './trays.ts';
import type { ComputedRow } from './types.ts';

export interface ComputeFrom extends DecidedRowsFrom {
  readonly view: CaseView;
  readonly practice: Practice;
}

interface Named {
  readonly id: string;
  readonly label: string;
}

function row({ id, label }: Named, text: string, known: Pick<Known<unknown>, 'inputs' | 'source'>): ComputedRow {
  const source: SourceId = known.source;
  return {
    id,
    label,
    text,
    inputs: known.inputs,
    source: sources[source].citation,
    sourceStatus: sources[source].status,
  };
}

/** A computation that refused leaves no row: what is missing is not a value. */
function rowOf<T>(named: Named, measured: Measured<T>, text: (value: T) => string): readonly ComputedRow[] {
  return measured.ok ? [row(named, text(measured.value), measured)] : [];
}

const mm = (value: number) => `${value.toFixed(1)} mm`;

function restRows({ vertical, practice }: ComputeFrom): readonly ComputedRow[] {
  const { rest, closed, record } = vertical;
  const space = rest && closed ? restSpace(rest.values, closed.values) : undefined;
  const figures = rest && describeSet(rest.values);
  const pin =
    rest?.medianMm !== undefined && record?.medianMm !== undefined
      ? pinChange({ restMm: rest.medianMm, recordedMm: record.medianMm, targetSpaceMm: toMm(practice.restSpaceTarget) })
      : undefined;
  const spaceText = (value: { spaceMm: number; verdict: string }) => {
    const give = space?.ok && space.uncertainty !== undefined ? ` ± ${space.uncertainty.toFixed(1)} mm` : '';
    return `${mm(value.spaceMm)}${give}, ${vertical.doubt ?? value.verdict}`;
  };
  return [
    ...(figures === undefined
      ? []
      : rowOf(
          { id: 'rest-height', label: 'Rest vertical dimension' },
          figures,
          (f) => `median ${mm(f.medianMm)}, mean ${mm(f.meanMm)}, range ${mm(f.rangeMm)}, n ${f.n}`,
        )),
    ...(space === undefined ? [] : rowOf({ id: 'rest-space', label: 'Interocclusal rest space' }, space, spaceText)),
    ...(pin === undefined
      ? []
      : rowOf({ id: 'pin', label: 'Change of height for the mounting' }, pin, (p) => {
          const span = ([a, b]: readonly [number, number]) =>
            `${Math.min(a, b).toFixed(1)} to ${Math.max(a, b).toFixed(1)} mm`;
          const parts = [
            `incisors ${span(p.incisalRangeMm)}`,
            `pin ${span(p.pinRangeMm)}`,
            `first molar ${span(p.molarRangeMm)}`,
          ];
          return `chin ${p.chinMm.toFixed(1)} mm; ${parts.join('; ')} (minus closes)`;
        })),
  ];
}

const LETTERS = {
  maxilla: ['ridge-form-upper', ['A', 'B', 'C', 'D']],
  muscle: ['muscle', ['A', 'B', 'C', 'D', 'E']],
  relation: ['jaw-relation', ['I', 'II', 'III']],
} as const;

/** What visit 1 knows of the class: bone height, upper ridge form, muscle attachments, ridge relation, gag reflex. */
function classInput({ view, rows }: ComputeFrom): ClassInput {
  const input: Record<string, unknown> = {};
  for (const [key, [step, allowed]] of Object.entries(LETTERS)) {
    const answer = view.answers.get(step)?.body.answer;
    if (answer !== undefined && (allowed as readonly string[]).includes(answer)) input[key] = answer;
  }
  const bone = rows.findLast((r) => r.reading === 'bone-height' && r.struck === undefined);
  if (bone !== undefined) input['boneMm'] = toMm(bone.value);
  if (view.answers.get('sign-in-gag')?.body.answer === 'strong') input['gag'] = 'hyperactive';
  return input;
}

function classRows(from: ComputeFrom): readonly ComputedRow[] {
  const found = edentulousClass(classInput(from));
  return rowOf({ id: 'class', label: 'Complete edentulism class' }, found, (value) => value.text);
}

function trayRows({ rows, practice }: ComputeFrom): readonly ComputedRow[] {
  return (['upper', 'lower'] as const).flatMap((arch) => {
    const ranking = trayRanking(rows, practice, arch);
    const first = ranking?.ranked[0];
    if (ranking === undefined || first === undefined) return [];
    const text = `${first.tray.label}: ${mm(first.leftMm)} each side. ${first.advice}`;
    const named = { id: `tray-${arch}`, label: `${arch === 'upper' ? 'Upper' : 'Lower'} stock tray to try first` };
    return [row(named, text, { inputs: ranking.inputs, source: 'tray-size' })];
  });
}

function borderRows({ rows }: ComputeFrom): readonly ComputedRow[] {
  return rows
    .filter((r) => r.struck === undefined && r.reading.startsWith('sulcus-'))
    .flatMap((r) =>
      rowOf(
        { id: `border-${r.reading}`, label: `Tray border, ${r.label.toLowerCase()}` },
        trayBorder(r.value),
        (b) => `${b.lengthMm[0].toFixed(1)} to ${mm(b.lengthMm[1])} from the ridge`,
      ),
    );
}

/** Everything that can be computed from what is on record now; what lacks an input is left out. */
export function computedRows(from: ComputeFrom): readonly ComputedRow[] {
  return [...restRows(from), ...classRows(from), ...trayRows(from), ...borderRows(from), ...decidedRows(from)];
}
