/** What was written, laid out for reading: readings, answers, skips, notes, signatures. Struck entries stay in. */
import { isKind, liveOf, type CaseView, type FactOf } from '../case/fold.ts';
import type { Bases } from '../case/facts.ts';
import { answerOf, stepOf } from '../protocol/path.ts';
import type { ReadingDef, VisitProtocol } from '../protocol/types.ts';
import type { AnswerRow, ReadingRow, Summary } from './types.ts';

/** Which question says what was in the mouth while a height was read. */
const BASES_STEP: Readonly<Record<string, string>> = { 'rest-height': 'bases-rest', 'closed-height': 'bases-closed' };
const BASES: readonly string[] = ['none', 'upper', 'lower', 'both'] satisfies Bases[];

export function defOf(readings: readonly ReadingDef[], id: string): ReadingDef | undefined {
  return readings.find((def) => def.id === id);
}

/** "visit 1, marks 2": readings may be compared only within one of these. */
export function markSetName(visit: number, set: number): string {
  return set === 0 ? `visit ${visit}, before any marks` : `visit ${visit}, marks ${set}`;
}

/** What was in the mouth when this reading was taken: the latest answer before it. */
function basesAt(view: CaseView, fact: FactOf<'reading'>): Bases | undefined {
  const step = BASES_STEP[fact.body.reading];
  if (step === undefined) return undefined;
  const original = fact.body.corrects ?? fact.seq;
  let bases: Bases | undefined;
  for (const earlier of view.log.facts) {
    if (earlier.seq >= original) break;
    if (!isKind(earlier, 'answered') || earlier.body.step !== step) continue;
    if (view.strikes.get(earlier.seq)?.why === 'undone') continue;
    if (BASES.includes(earlier.body.answer)) bases = earlier.body.answer as Bases;
  }
  return bases;
}

function toReadingRow(view: CaseView, fact: FactOf<'reading'>, readings: readonly ReadingDef[]): ReadingRow {
  const { body } = fact;
  const def = defOf(readings, body.reading);
  const strike = view.strikes.get(fact.seq);
  const visit = view.visit?.body.visit ?? 1;
  const bases = basesAt(view, fact);
  return {
    seq: fact.seq,
    at: fact.at,
    step: body.step,
    reading: body.reading,
    label: def?.label ?? body.reading,
    value: body.value,
    unit: body.unit,
    source: body.heard.source,
    text: body.heard.text,
    keptBy: body.heard.keptBy,
    outOfTurn: body.outOfTurn,
    ...(strike === undefined ? {} : { struck: strike }),
    ...(def?.repeat?.withinSet === true ? { markSet: markSetName(visit, view.markSetOf.get(fact.seq) ?? 0) } : {}),
    ...(bases === undefined ? {} : { bases }),
  };
}

/** All readings in the order they were kept, struck ones included. */
export function readingRows(view: CaseView, readings: readonly ReadingDef[]): readonly ReadingRow[] {
  const rows: ReadingRow[] = [];
  for (const fact of view.log.facts) if (isKind(fact, 'reading')) rows.push(toReadingRow(view, fact, readings));
  return rows;
}

/** All answers in the order given. An answer given again strikes the earlier one for the reader. */
export function answerRows(view: CaseView, protocol: VisitProtocol): readonly AnswerRow[] {
  const rows: AnswerRow[] = [];
  for (const fact of view.log.facts) {
    if (!isKind(fact, 'answered')) continue;
    const step = stepOf(protocol, fact.body.step);
    const chosen = answerOf(step, fact.body.answer);
    const later = view.answers.get(fact.body.step);
    const strike =
      view.strikes.get(fact.seq) ??
      (later !== undefined && later.seq > fact.seq
        ? { at: later.at, why: 'corrected' as const, by: later.seq }
        : undefined);
    rows.push({
      seq: fact.seq,
      at: fact.at,
      step: fact.body.step,
      chapter: step?.chapter ?? 0,
      question: step?.title ?? fact.body.step,
      answer: chosen?.label ?? fact.body.answer,
      tone: chosen?.tone ?? 'neutral',
      ...(fact.body.reason === undefined ? {} : { reason: fact.body.reason }),
      ...(strike === undefined ? {} : { struck: strike }),
    });
  }
  return rows;
}

export function skipRows(
  view: CaseView,
  protocol: VisitProtocol,
  wordReason: (id: string) => string,
): Summary['skips'] {
  return liveOf(view, 'skipped')
    .filter((fact) => !view.answers.has(fact.body.step) || (view.answers.get(fact.body.step)?.seq ?? 0) < fact.seq)
    .map((fact) => ({
      at: fact.at,
      title: stepOf(protocol, fact.body.step)?.title ?? fact.body.step,
      reason: wordReason(fact.body.reason),
    }));
}

export function noteRows(view: CaseView): Summary['notes'] {
  const rows: { at: number; step: string; text: string; source: string; struck: boolean }[] = [];
  for (const fact of view.log.facts) {
    if (isKind(fact, 'note'))
      rows.push({
        at: fact.at,
        step: fact.body.step,
        text: fact.body.text,
        source: fact.body.source,
        struck: view.strikes.has(fact.seq),
      });
  }
  return rows;
}

/** Cautions that stay on screen: raised by an answer on record. */
export function cautionsOf(view: CaseView, protocol: VisitProtocol): readonly string[] {
  const cautions: string[] = [];
  for (const [step, fact] of view.answers) {
    const caution = answerOf(stepOf(protocol, step), fact.body.answer)?.caution;
    if (caution !== undefined && !cautions.includes(caution)) cautions.push(caution);
  }
  return cautions;
}

export function signedRows(view: CaseView): Summary['signed'] {
  return liveOf(view, 'signed').map((fact) => ({
    role: fact.body.role,
    initials: fact.body.initials,
    at: fact.at,
    ...(fact.body.overruled === undefined ? {} : { overruled: fact.body.overruled }),
  }));
}
