/** What was written, laid out for reading: readings, answers, skips, notes, signatures. Struck entries stay in. */
import { isKind, liveOf, visitFacts, type CaseView, type FactOf, type VisitSpan } from '../case/fold.ts';
import type { Bases } from '../case/facts.ts';
import { answerOf, stepOf } from '../protocol/path.ts';
import type { ReadingDef, VisitProtocol } from '../protocol/types.ts';
import type { AnswerRow, ReadingRow, Summary } from './types.ts';

const BASES: readonly string[] = ['none', 'upper', 'lower', 'both'] satisfies Bases[];

/** A reading's definition by id; undefined for an unknown one. */
export function defOf(readings: readonly ReadingDef[], id: string): ReadingDef | undefined {
  return readings.find((def) => def.id === id);
}

/** "visit 1, marks 2": readings may be compared only within one of these. */
export function markSetName(visit: string, set: number): string {
  return set === 0 ? `${visit}, before any marks` : `${visit}, marks ${set}`;
}

/** "visit 2"; a repeated visit says which time: "visit 5, time 2". */
export function visitName(visits: readonly VisitSpan[], place: number): string {
  const number = visits[place]?.opened.body.visit ?? 1;
  const time = visits.slice(0, place + 1).filter((span) => span.opened.body.visit === number).length;
  return time > 1 ? `visit ${number}, time ${time}` : `visit ${number}`;
}

function toReadingRow(view: CaseView, fact: FactOf<'reading'>, readings: readonly ReadingDef[]): ReadingRow {
  const { body, seq, at } = fact;
  const def = defOf(readings, body.reading);
  const strike = view.strikes.get(seq);
  const visit = visitName(view.visits, view.visitOf.get(seq) ?? 0);
  const bases = view.basesOf.get(seq);
  return {
    seq,
    at,
    visit,
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
    ...(def?.repeat?.withinSet === true ? { markSet: markSetName(visit, view.markSetOf.get(seq) ?? 0) } : {}),
    ...(bases !== undefined && BASES.includes(bases) ? { bases: bases as Bases } : {}),
  };
}

/** All readings of the whole case in the order they were kept, struck ones included. */
export function readingRows(view: CaseView, readings: readonly ReadingDef[]): readonly ReadingRow[] {
  const rows: ReadingRow[] = [];
  for (const fact of view.log.facts) if (isKind(fact, 'reading')) rows.push(toReadingRow(view, fact, readings));
  return rows;
}

/** All answers in the order given. An answer given again strikes the earlier one for the reader. */
export function answerRows(view: CaseView, protocol: VisitProtocol): readonly AnswerRow[] {
  const rows: AnswerRow[] = [];
  for (const fact of visitFacts(view)) {
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

/** Steps passed over in this visit with their reasons, unless answered later after all. */
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

/** Remarks of this visit word for word, taken-back ones marked. */
export function noteRows(view: CaseView): Summary['notes'] {
  const rows: { at: number; step: string; text: string; source: string; struck: boolean }[] = [];
  for (const fact of visitFacts(view)) {
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

/** About the work, not the patient: asked anew at each visit, and over once the answer is another. */
const ASKED_ANEW: readonly string[] = ['work-returned', 'bite-agrees', 'finish-consent'];

/**
 * Cautions that stay on screen for the rest of the case: raised by an answer of this or an earlier visit. Those about the
 * laboratory's work and the try-in go by the last answer; those about the patient never go.
 */
export function cautionsOf(view: CaseView, protocols: readonly VisitProtocol[]): readonly string[] {
  const cautions = new Map<string, string>();
  for (const span of view.visits) {
    const protocol = protocols.find(
      (p) => p.id === span.opened.body.protocol && p.version === span.opened.body.version,
    );
    if (protocol === undefined) continue;
    for (const [step, fact] of span.answers) {
      const caution = answerOf(stepOf(protocol, step), fact.body.answer)?.caution;
      if (ASKED_ANEW.includes(step)) cautions.delete(step);
      if (caution !== undefined) cautions.set(ASKED_ANEW.includes(step) ? step : caution, caution);
    }
  }
  return [...new Set(cautions.values())];
}

/** Who signed this visit, and whether something open was overruled. */
export function signedRows(view: CaseView): Summary['signed'] {
  return liveOf(view, 'signed').map((fact) => ({
    role: fact.body.role,
    initials: fact.body.initials,
    at: fact.at,
    ...(fact.body.overruled === undefined ? {} : { overruled: fact.body.overruled }),
  }));
}
