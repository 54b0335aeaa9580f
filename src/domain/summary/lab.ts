/** The order to the laboratory and what is still open before it may be handed over. */
import { liveOf, visitFacts, type CaseView } from '../case/fold.ts';
import { formatHundredths, type Hundredths } from '../measure/length.ts';
import { answerOf, isShown } from '../protocol/path.ts';
import type { Practice, Step, VisitProtocol } from '../protocol/types.ts';
import type { Decided } from './decided.types.ts';
import { laterWork } from './lab-later.ts';
import type { ClockRow, Flag, LabLine, ReadingRow, VerticalDimension } from './types.ts';
import { endedEarly } from './unfinished.ts';

/** The clock of an impression that counts and is poured: removed, not given up, the latest attempt. */
export function keptImpressions(clocks: readonly ClockRow[]): readonly ClockRow[] {
  const latest = new Map<string, ClockRow>();
  for (const clock of clocks) {
    const poured = clock.phases.some((phase) => phase.id === 'pourWithin');
    if (poured && clock.flow === 'impression' && !clock.struck && clock.outAt !== undefined)
      latest.set(clock.clock, clock);
  }
  return [...latest.values()];
}

/** How an impression was disinfected, in words for whoever touches it next. */
function bathOf(clock: ClockRow, clocks: readonly ClockRow[]): string {
  const bath = clocks.findLast(
    (c) => c.flow === 'timed' && !c.struck && c.of === clock.clock && c.startedAt >= (clock.outAt ?? 0),
  );
  if (bath?.outAt === undefined) return 'Disinfection not recorded.';
  return `Disinfected: ${bath.name}, ${Math.floor((bath.outAt - bath.startedAt) / 60_000)} min.`;
}

function pourLine(clock: ClockRow, clocks: readonly ClockRow[]): LabLine {
  const due = clock.phases.find((phase) => phase.id === 'pourWithin')?.dueAt;
  const waits = clock.phases.some((phase) => phase.id === 'pourFrom');
  const parts = [
    `${clock.name}, attempt ${clock.attempt}.`,
    bathOf(clock, clocks),
    ...(waits ? ['Not before the waiting time of the leaflet.'] : []),
    ...(clock.takenAt === undefined ? [] : ['Poured or taken over already.']),
  ];
  return {
    id: `pour:${clock.clock}`,
    text: `Pour the ${clock.label}.`,
    detail: parts.join(' '),
    ...(due === undefined || clock.takenAt !== undefined ? {} : { at: due }),
  };
}

/** Tray border: the chosen distance short of the deepest point of the sulcus, site by site. */
function borderLines(rows: readonly ReadingRow[], practice: Practice): readonly LabLine[] {
  const sites = rows.filter((row) => row.struck === undefined && row.reading.includes('sulcus'));
  const short = formatHundredths(practice.borderShort);
  const text = `Custom trays to the outline, borders ${short} mm short of the deepest point of the sulcus.`;
  if (sites.length === 0) return [{ id: 'border', text }];
  const border = (depth: Hundredths) => formatHundredths(Math.max(0, depth - practice.borderShort));
  const detail = sites
    .map((row) => `${row.label} ${formatHundredths(row.value)} mm deep: border at ${border(row.value)} mm`)
    .join('; ');
  return [{ id: 'border', text, detail }];
}

function mountLine(vertical: VerticalDimension): LabLine {
  if (vertical.record?.medianMm === undefined || vertical.lab === undefined) {
    return {
      id: 'mount',
      text: 'Mount by the preliminary record.',
      detail: 'No height was read with the record in place: do not change the pin; ask the clinic.',
    };
  }
  const target =
    vertical.targetHeightMm === undefined
      ? ''
      : ` to stand at ${vertical.targetHeightMm.toFixed(1)} mm (rest less ${vertical.targetSpaceMm.toFixed(1)} mm)`;
  const chin = vertical.lab.chinMm;
  return {
    id: 'mount',
    text: `Mount by the preliminary record, made at ${vertical.record.medianMm.toFixed(1)} mm. ${vertical.lab.text}`,
    detail: `Between the marks: ${chin > 0 ? '+' : chin < 0 ? '−' : ''}${Math.abs(chin).toFixed(1)} mm${target}. Pin range from the hinge model and its assumptions.`,
  };
}

/** What the patient wishes: the answer, and every remark made at that step. */
function wishesOf(view: CaseView, protocol: VisitProtocol): readonly string[] {
  const notes = liveOf(view, 'note');
  return protocol.steps
    .filter((step) => step.id.startsWith('wish') && view.answers.has(step.id))
    .map((step) => {
      const said = notes.filter((fact) => fact.body.step === step.id).map((fact) => fact.body.text);
      const answer = answerOf(step, view.answers.get(step.id)?.body.answer)?.label ?? '';
      return `${step.title}: ${said.length > 0 ? said.join('; ') : answer}`;
    });
}

/** Work for the laboratory after this visit, in working order: what is poured first, then what the visit decided. */
export function labWorkOf(found: {
  readonly view: CaseView;
  readonly protocol: VisitProtocol;
  readonly practice: Practice;
  readonly rows: readonly ReadingRow[];
  readonly clocks: readonly ClockRow[];
  readonly vertical: VerticalDimension;
  readonly decided?: Decided;
}): readonly LabLine[] {
  const { view, protocol, practice, rows, clocks, vertical, decided = {} } = found;
  const kept = keptImpressions(clocks);
  const pours = kept.map((clock) => pourLine(clock, clocks));
  if (endedEarly(view)) return pours;
  if (protocol.visit > 1) return [...pours, ...laterWork({ view, protocol, rows, vertical, decided })];
  const wishes = wishesOf(view, protocol);
  return [
    ...pours,
    { id: 'trim', text: 'Trim the casts; transfer the outline and the rear limit scored in the upper impression.' },
    ...borderLines(rows, practice),
    { id: 'relief', text: 'Relieve with wax where the clinic has marked it; clear the frena.' },
    {
      id: 'rims',
      text: 'Rims or tracing plates on the custom trays, parallel to the ridges, within the mounted height.',
    },
    mountLine(vertical),
    ...(wishes.length === 0
      ? []
      : [{ id: 'wishes', text: 'Wishes of the patient for the try-in.', detail: wishes.join('; ') }]),
  ];
}

function missingDisinfection(clocks: readonly ClockRow[]): readonly string[] {
  return keptImpressions(clocks)
    .filter(
      (clock) =>
        !clocks.some(
          (c) =>
            c.flow === 'timed' &&
            !c.struck &&
            c.outAt !== undefined &&
            c.startedAt >= (clock.outAt ?? 0) &&
            c.of === clock.clock,
        ),
    )
    .map((clock) => `The ${clock.label} is not recorded as disinfected.`);
}

/** Steps of the visit that want something of a person, were neither left out nor passed over with a reason. */
function wanted(view: CaseView, protocol: VisitProtocol): readonly Step[] {
  const answers = Object.fromEntries([...view.answers].map(([step, fact]) => [step, fact.body.answer]));
  const skipped = new Set(
    visitFacts(view).flatMap((f) => (f.body.kind === 'skipped' && !view.strikes.has(f.seq) ? [f.body.step] : [])),
  );
  return protocol.steps.filter((step) => step.optional !== true && isShown(step, answers) && !skipped.has(step.id));
}

const sentence = (title: string): string => `${title}${/[.?]$/.test(title) ? '' : '.'}`;

function unanswered(view: CaseView, steps: readonly Step[]): readonly string[] {
  return steps
    .filter((step) => (step.kind === 'check' || step.kind === 'decision') && !view.answers.has(step.id))
    .map((step) => `Not answered: ${sentence(step.title)}`);
}

/** Of which there is no reading at all; too few of a set is for the flags to say. */
function unmeasured(view: CaseView, steps: readonly Step[]): readonly string[] {
  const kept = new Set(liveOf(view, 'reading').map((fact) => fact.body.reading));
  return steps
    .filter((step) => step.kind === 'reading' && !kept.has(step.reading))
    .map((step) => `Not measured: ${sentence(step.title)}`);
}

/** What must be answered, measured, finished or overruled before hand-over, one sentence each. */
export function openItems(found: {
  readonly view: CaseView;
  readonly protocol: VisitProtocol;
  readonly clocks: readonly ClockRow[];
  readonly flags: readonly Flag[];
}): readonly string[] {
  const { view, protocol, clocks, flags } = found;
  const steps = wanted(view, protocol);
  const mouth = clocks.filter((clock) => !clock.struck && clock.flow === 'impression' && clock.outAt === undefined);
  return [
    ...mouth.map((clock) => `The ${clock.label} is still on the clock.`),
    ...missingDisinfection(clocks),
    ...unanswered(view, steps),
    ...unmeasured(view, steps),
    ...flags.filter((flag) => flag.settled !== true && flag.answer === undefined).map((flag) => flag.what),
  ];
}
