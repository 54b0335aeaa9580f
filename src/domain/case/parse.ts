/** Stored or imported facts are checked at the edge; nothing unparsed reaches the fold. */
import * as v from 'valibot';
import { parseDay } from '../measure/calendar.ts';
import type { Fact } from './facts.ts';
import { day, disinfectant, material, practice } from './practiceSchema.ts';

const text = v.pipe(v.string(), v.maxLength(4000));
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const int = v.pipe(v.number(), v.safeInteger());
const seq = v.pipe(v.number(), v.safeInteger(), v.minValue(1));
const num = v.pipe(v.number(), v.finite());
/** No act of a visit takes more of anything. Our choice. */
const MOST = 500;
/** The last moment a calendar of this platform can name, ms since 1970. */
const at = v.pipe(num, v.minValue(-8.64e15), v.maxValue(8.64e15));
const source = v.picklist(['voice', 'keypad', 'key', 'touch', 'app']);
const unit = v.picklist(['mm', 'weeks', '°C', 'points', '°', 'g', 'ml']);
const language = v.picklist(['en', 'de', 'es', 'fr']);
const phase = v.picklist(['mix', 'working', 'inMouth', 'pourFrom', 'pourWithin', 'disinfect']);
const role = v.picklist(['clinician', 'assistant']);
/** The pattern can be said in the published schema, the calendar cannot. */
const plainDay = v.pipe(
  v.string(),
  v.regex(/^\d{4}-\d{2}-\d{2}$/),
  v.check((value) => parseDay(value) !== undefined, 'This is no day of the calendar.'),
);
const heard = v.strictObject({
  source,
  text,
  confidence: v.exactOptional(num),
  certainty: v.picklist(['sure', 'check', 'ask', 'unclear']),
  keptBy: v.picklist(['yes', 'movedOn', 'pause']),
});

/** What a fact may say, field by field; also the base of the published schema of case files. */
export const factBody = v.variant('kind', [
  v.strictObject({ kind: v.literal('caseOpened'), code: text, demo: v.boolean(), practice }),
  v.strictObject({
    kind: v.literal('visitOpened'),
    visit: int,
    protocol: id,
    version: int,
    clinician: text,
    assistant: text,
    language,
    materials: v.exactOptional(v.pipe(v.array(material), v.maxLength(MOST))),
    disinfectants: v.exactOptional(v.pipe(v.array(disinfectant), v.maxLength(MOST))),
  }),
  v.strictObject({
    kind: v.literal('moved'),
    from: text,
    to: id,
    why: v.picklist(['next', 'back', 'skip', 'branch', 'retake', 'goto']),
  }),
  v.strictObject({
    kind: v.literal('reading'),
    step: id,
    reading: id,
    value: int,
    unit,
    heard,
    outOfTurn: v.boolean(),
    corrects: v.exactOptional(seq),
  }),
  v.strictObject({ kind: v.literal('proposalDropped'), step: id, reading: id, value: int, text }),
  v.strictObject({ kind: v.literal('answered'), step: id, answer: id, reason: v.exactOptional(text), source }),
  v.strictObject({
    kind: v.literal('attemptStarted'),
    step: id,
    goto: id,
    steps: v.pipe(v.array(id), v.maxLength(MOST)),
    reason: text,
  }),
  v.strictObject({ kind: v.literal('skipped'), step: id, reason: text }),
  v.strictObject({ kind: v.literal('note'), step: id, text, source }),
  v.variant('flow', [
    v.strictObject({
      kind: v.literal('clockStarted'),
      step: id,
      clock: id,
      flow: v.literal('impression'),
      material,
      day: v.exactOptional(day),
    }),
    v.strictObject({
      kind: v.literal('clockStarted'),
      step: id,
      clock: id,
      flow: v.literal('timed'),
      agent: disinfectant,
      of: v.exactOptional(id),
    }),
  ]),
  v.strictObject({ kind: v.literal('clockSeated'), clock: id }),
  v.strictObject({ kind: v.literal('clockOut'), clock: id }),
  v.strictObject({
    kind: v.literal('takenOver'),
    clock: id,
    by: v.exactOptional(text),
    order: v.exactOptional(seq),
  }),
  v.strictObject({ kind: v.literal('rang'), clock: id, phase, dueAt: at, late: v.boolean() }),
  v.strictObject({ kind: v.literal('alarmSeen'), clock: id, phase }),
  v.strictObject({
    kind: v.literal('flagAnswered'),
    flag: id,
    answer: v.picklist(['keep', 'measureAgain']),
    reason: text,
  }),
  v.strictObject({ kind: v.literal('held') }),
  v.strictObject({ kind: v.literal('carriedOn') }),
  v.strictObject({ kind: v.literal('undone'), act: seq, what: text }),
  v.strictObject({ kind: v.literal('signed'), step: id, role, initials: text, overruled: v.exactOptional(text) }),
  v.strictObject({ kind: v.literal('visitClosed'), visit: int }),
  v.strictObject({ kind: v.literal('benchDone'), order: seq, line: id, what: text, by: text }),
  v.strictObject({ kind: v.literal('labDue'), order: seq, day: plainDay }),
  v.strictObject({ kind: v.literal('benchQuestion'), order: seq, line: text, what: text, text, by: text }),
  v.strictObject({ kind: v.literal('benchAnswer'), question: seq, text, by: text }),
  v.strictObject({ kind: v.literal('workReturned'), order: seq, text, by: text }),
]);

const fact = v.strictObject({
  v: v.literal(1),
  caseId: id,
  seq,
  at,
  act: seq,
  protocol: text,
  app: text,
  body: factBody,
});

export type ParsedFact =
  | { readonly ok: true; readonly fact: Fact }
  | { readonly ok: false; readonly reason: 'newerFormat' | 'malformed'; readonly path: string; readonly text: string };

/**
 * One stored fact, checked field by field.
 * Fails with `newerFormat` when a later version of the app wrote it, `malformed` (and the path) otherwise.
 */
export function parseFact(raw: unknown): ParsedFact {
  const version = typeof raw === 'object' && raw !== null ? (raw as { v?: unknown }).v : undefined;
  if (typeof version === 'number' && version > 1) {
    return {
      ok: false,
      reason: 'newerFormat',
      path: 'v',
      text: 'This case was written by a newer version of the app.',
    };
  }
  const result = v.safeParse(fact, raw, { abortEarly: true });
  if (result.success) return { ok: true, fact: result.output };
  const issue = result.issues[0];
  const path = issue.path?.map((part) => String(part.key)).join('.') ?? '';
  return { ok: false, reason: 'malformed', path, text: issue.message };
}

export type ParsedFacts =
  | { readonly ok: true; readonly facts: readonly Fact[] }
  | {
      readonly ok: false;
      readonly reason: 'newerFormat' | 'malformed' | 'gap';
      readonly at: number;
      readonly path: string;
      readonly text: string;
      readonly good: readonly Fact[];
    };

/** Facts of one case in order. A gap in `seq` or a broken fact ends the good prefix, which is handed back. */
export function parseFacts(raw: readonly unknown[]): ParsedFacts {
  const good: Fact[] = [];
  for (const [index, item] of raw.entries()) {
    const parsed = parseFact(item);
    if (!parsed.ok) return { ...parsed, at: index + 1, good };
    if (parsed.fact.seq !== index + 1) {
      return { ok: false, reason: 'gap', at: index + 1, path: 'seq', text: `Entry ${index + 1} is missing.`, good };
    }
    good.push(parsed.fact);
  }
  return { ok: true, facts: good };
}
