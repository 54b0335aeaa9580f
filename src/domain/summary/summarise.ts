/** CaseView → Summary: the one model that every screen, sheet and export is drawn from. */
import { liveOf, type CaseView } from '../case/fold.ts';
import type { Practice, ReadingDef, VisitProtocol } from '../protocol/types.ts';
import { benchSummary } from './bench.ts';
import { clockRows } from './clocks.ts';
import { computedRows } from './computed.ts';
import { decidedOf } from './decided.ts';
import { flagsOf } from './flags.ts';
import { dueLines } from './lab-standing.ts';
import { labWorkOf, openItems } from './lab.ts';
import { answerRows, cautionsOf, noteRows, readingRows, signedRows, skipRows, visitName } from './rows.ts';
import { setRows, verticalDimension } from './sets.ts';
import type { Flag, ReadingRow, Summary } from './types.ts';

export interface Surroundings {
  readonly protocol: VisitProtocol;
  /** Protocols of the case's earlier visits, as far as they are known; for cautions that stay. */
  readonly earlierProtocols?: readonly VisitProtocol[];
  readonly readings: readonly ReadingDef[];
  readonly practice: Practice;
  /** Wall clock, ms since 1970. */
  readonly now: number;
}

function withAnswers(view: CaseView, flags: readonly Flag[]): readonly Flag[] {
  const answers = new Map(liveOf(view, 'flagAnswered').map((fact) => [fact.body.flag, fact]));
  return flags.map((flag) => {
    const fact = answers.get(flag.id);
    return fact === undefined
      ? flag
      : { ...flag, answer: { answer: fact.body.answer, reason: fact.body.reason, at: fact.at } };
  });
}

/** A step counts as passed once the visit has gone beyond it at any time, or was closed. */
function passedSteps(view: CaseView, protocol: VisitProtocol): (step: string) => boolean {
  const order = new Map(protocol.steps.map((step, index) => [step.id, index]));
  const furthest = Math.max(0, ...liveOf(view, 'moved').map((fact) => order.get(fact.body.to) ?? 0));
  return (step) => view.closed !== undefined || furthest > (order.get(step) ?? Number.POSITIVE_INFINITY);
}

/** Reason ids of the practice in words; free words stay as they are. */
export function reasonInWords(practice: Practice): (reason: string) => string {
  return (reason) => practice.reasons.find((r) => r.id === reason)?.label ?? reason;
}

function conventionOf(view: CaseView, practice: Practice): Practice['recordAt'] {
  const chosen = view.answers.get('record-at')?.body.answer;
  return chosen === 'rest' || chosen === 'restLessSpace' ? chosen : practice.recordAt;
}

interface Heights {
  readonly all: readonly ReadingRow[];
  readonly readings: readonly ReadingDef[];
  readonly practice: Practice;
}

/** Heights of the visits before this one, each within its own marks. */
function earlierHeights(view: CaseView, { all, readings, practice }: Heights): Summary['earlier'] {
  return view.visits.slice(0, -1).map((_span, place) => {
    const visit = visitName(view.visits, place);
    const sets = setRows(
      all.filter((row) => row.visit === visit),
      readings,
    );
    return { visit, vertical: verticalDimension(sets, practice, practice.recordAt) };
  });
}

/** Everything that follows from the record at `now`. Pure; the same facts and time give the same summary. */
export function summarise(view: CaseView, around: Surroundings): Summary {
  const { protocol, readings, practice, now } = around;
  const name = visitName(view.visits, view.visits.length - 1);
  const all = readingRows(view, readings);
  const rows = all.filter((row) => row.visit === name);
  const sets = setRows(rows, readings);
  const vertical = verticalDimension(sets, practice, conventionOf(view, practice));
  const clocks = clockRows(view, protocol, now);
  const passed = passedSteps(view, protocol);
  const earlier = earlierHeights(view, { all, readings, practice });
  const protocols = [protocol, ...(around.earlierProtocols ?? [])];
  const decided = decidedOf({ view, visit: protocol.visit, rows, all, vertical, protocols, now });
  const flags = withAnswers(view, flagsOf({ rows, sets, vertical, clocks, readings, decided, passed, now }));
  const reason = reasonInWords(practice);
  const labWork = [...labWorkOf({ view, protocol, practice, rows, clocks, vertical, decided }), ...dueLines(view)];
  return {
    caseCode: view.opened?.body.code ?? '',
    demo: view.opened?.body.demo ?? false,
    visit: protocol.visit,
    visitName: name,
    visitTitle: protocol.title,
    openedAt: view.visit?.at ?? view.opened?.at ?? now,
    ...(view.closed === undefined ? {} : { closedAt: view.closed.at }),
    clinician: view.visit?.body.clinician ?? '',
    assistant: view.visit?.body.assistant ?? '',
    protocol: `${protocol.id}@${protocol.version}`,
    readings: rows,
    sets,
    vertical,
    earlier,
    ...decided,
    clocks,
    answers: answerRows(view, protocol).map((row) =>
      row.reason === undefined ? row : { ...row, reason: reason(row.reason) },
    ),
    skips: skipRows(view, protocol, reason),
    notes: noteRows(view),
    cautions: cautionsOf(view, protocols),
    flags: flags.map((f) =>
      f.answer === undefined ? f : { ...f, answer: { ...f.answer, reason: reason(f.answer.reason) } },
    ),
    computed: computedRows({ view, rows, all, vertical, practice, decided, earlier }),
    labWork,
    bench: benchSummary(view, { labWork, clocks, readings: rows, sets, vertical, ...decided }, practice),
    open: openItems({ view, protocol, clocks, flags }),
    signed: signedRows(view).map((s) => (s.overruled === undefined ? s : { ...s, overruled: reason(s.overruled) })),
  };
}
