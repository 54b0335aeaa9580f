/**
 * A recorded visit walked again: JSON lines, a simulated clock, the same session as in the browser. One bad line stops
 * the replay before anything is run, with its number.
 */
import * as v from 'valibot';
import type { Fact } from '../domain/case/facts.ts';
import { protocols } from '../domain/protocol/index.ts';
import type { Practice, ReadingDef, VisitProtocol } from '../domain/protocol/types.ts';
import { clockRows, deadlines } from '../domain/summary/clocks.ts';
import { summarise } from '../domain/summary/summarise.ts';
import type { Summary } from '../domain/summary/types.ts';
import type { Utterance } from '../interpret/types.ts';
import { openingFacts } from './opening.ts';
import { createSession, type Outcome, type Session } from './session.ts';

const text = v.pipe(v.string(), v.maxLength(2000));
const header = v.strictObject({
  replay: v.literal(1),
  case: text,
  visit: v.optional(v.picklist([1, 2, 3, 4, 5]), 1),
  clinician: text,
  assistant: text,
  startedAt: v.pipe(v.string(), v.isoTimestamp()),
  language: v.optional(v.picklist(['en', 'de', 'es', 'fr']), 'en'),
});
const at = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const alternative = v.strictObject({ transcript: text, confidence: v.exactOptional(v.number()) });
const line = v.union([
  v.strictObject({ t: at, source: v.picklist(['voice']), text }),
  v.strictObject({ t: at, source: v.picklist(['voice']), alternatives: v.pipe(v.array(alternative), v.minLength(1)) }),
  v.strictObject({ t: at, source: v.picklist(['keypad']), text }),
  v.strictObject({ t: at, source: v.picklist(['key']), key: text }),
  v.strictObject({ t: at, source: v.picklist(['touch']), press: text }),
]);

export type ReplayHeader = v.InferOutput<typeof header>;
export type ReplayLine = v.InferOutput<typeof line>;
export interface Recording {
  readonly header: ReplayHeader;
  readonly lines: readonly ReplayLine[];
}
export type ParsedRecording =
  | { readonly ok: true; readonly recording: Recording }
  | { readonly ok: false; readonly line: number; readonly text: string };

const LINE_HELP =
  'expected {"t": ms, "source": "voice|keypad", "text": "…"}, {"t", "source": "key", "key"} or {"t", "source": "touch", "press"}';

function parseJson(raw: string): { ok: true; value: unknown } | { ok: false } {
  try {
    return { ok: true, value: JSON.parse(raw) as unknown };
  } catch {
    return { ok: false };
  }
}

/** Empty lines are allowed; times must not run backwards. */
export function parseRecording(content: string): ParsedRecording {
  const lines: ReplayLine[] = [];
  let head: ReplayHeader | undefined;
  for (const [index, raw] of content.split(/\r?\n/).entries()) {
    if (raw.trim() === '') continue;
    const failed = (why: string): ParsedRecording => ({
      ok: false,
      line: index + 1,
      text: `line ${index + 1}: ${why}`,
    });
    const json = parseJson(raw);
    if (!json.ok) return failed(`this is not JSON: ${raw.slice(0, 60)}`);
    if (head === undefined) {
      const parsed = v.safeParse(header, json.value);
      if (!parsed.success) return failed(`the first line must be the header: ${issueText(parsed.issues[0])}`);
      head = parsed.output;
      continue;
    }
    const parsed = v.safeParse(line, json.value);
    if (!parsed.success) return failed(LINE_HELP);
    if (parsed.output.t < (lines.at(-1)?.t ?? 0))
      return failed(`time ${parsed.output.t} lies before the line above it`);
    lines.push(parsed.output);
  }
  if (head === undefined) return { ok: false, line: 1, text: 'line 1: the file is empty' };
  return { ok: true, recording: { header: head, lines } };
}

function issueText(issue: v.BaseIssue<unknown>): string {
  return `${v.getDotPath(issue) ?? 'line'}: ${issue.message}`;
}

function toUtterance(item: ReplayLine, now: number): Utterance {
  if (item.source === 'voice' && 'alternatives' in item) {
    return { source: 'voice', text: item.alternatives[0]?.transcript ?? '', alternatives: item.alternatives, at: now };
  }
  const said = 'key' in item ? item.key : 'press' in item ? item.press : item.text;
  return {
    source: item.source,
    text: said,
    alternatives: item.source === 'voice' ? [{ transcript: said }] : [],
    at: now,
  };
}

export interface Step {
  readonly t: number;
  readonly outcome: Outcome;
}
export interface Replayed {
  readonly summary: Summary;
  readonly facts: readonly Fact[];
  readonly outcomes: readonly Step[];
}

export interface Bell {
  readonly session: Session;
  readonly protocol: VisitProtocol;
  readonly rung: Set<string>;
  /** Puts the simulated clock to the moment at which something rings. */
  setClock(at: number): void;
}

/** Everything that should have rung by `until` rings, in order, as the app would have written it. */
export function ringUntil({ session, protocol, rung, setClock }: Bell, until: number): void {
  for (;;) {
    const due = deadlines(clockRows(session.view(), protocol, until))
      .filter((d) => d.at <= until && !rung.has(d.id))
      .toSorted((a, b) => a.at - b.at)[0];
    if (due === undefined) return;
    rung.add(due.id);
    setClock(due.at);
    session.rang(due.clock, due.phase, { dueAt: due.at, late: false });
  }
}

/** Walks a recording from its first line to its last and a moment beyond; `endAfterMs` lets clocks run on. */
export function runReplay(
  recording: Recording,
  deps: { readings: readonly ReadingDef[]; practice: Practice; appVersion: string; endAfterMs?: number },
): Replayed | { readonly failed: string } {
  const { header: head, lines } = recording;
  const protocol = protocols.findLast((p) => p.visit === head.visit);
  if (protocol === undefined) return { failed: `there is no protocol for visit ${head.visit}` };
  const start = Date.parse(head.startedAt);
  let now = start;
  const facts: Fact[] = openingFacts({
    head,
    protocol,
    practice: deps.practice,
    at: start,
    app: deps.appVersion,
    demo: false,
    caseId: 'replay',
  });
  const session = createSession(
    {
      caseId: 'replay',
      protocol,
      readings: deps.readings,
      practice: deps.practice,
      language: head.language,
      appVersion: deps.appVersion,
      now: () => now,
      append: (f) => facts.push(...f),
    },
    [...facts],
  );
  const setClock = (when: number) => {
    now = when;
  };
  const bell: Bell = { session, protocol, rung: new Set(), setClock };
  const outcomes = lines.map((item): Step => {
    ringUntil(bell, start + item.t);
    now = start + item.t;
    return { t: item.t, outcome: session.hear(toUtterance(item, now)) };
  });
  const end = now + (deps.endAfterMs ?? 0);
  ringUntil(bell, end);
  const summary = summarise(session.view(), { protocol, readings: deps.readings, practice: deps.practice, now: end });
  return { summary, facts, outcomes };
}
