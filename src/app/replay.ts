/**
 * A recorded visit walked again: JSON lines, a simulated clock, the same session as in the browser. One bad line stops
 * the replay before anything is run, with its number.
 */
import * as v from 'valibot';
import type { Fact, FactKind } from '../domain/case/facts.ts';
import { foldCase, type CaseView } from '../domain/case/fold.ts';
import { readJson } from '../domain/case/plainJson.ts';
import { dayOf, printDay } from '../domain/measure/calendar.ts';
import { protocolFor, protocols } from '../domain/protocol/index.ts';
import type { Practice, ReadingDef, VisitProtocol } from '../domain/protocol/types.ts';
import { allClocks, deadlines, saidOf } from '../domain/summary/clocks.ts';
import { summarise } from '../domain/summary/summarise.ts';
import type { Summary } from '../domain/summary/types.ts';
import type { Utterance } from '../interpret/types.ts';
import { nextVisit } from './case-line.ts';
import { nextOpeningFact, openingFacts } from './opening.ts';
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

/** Letters in a line: nobody says more at a time. Our choice. */
const MOST_LINE = 20_000;

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

/** Empty lines are allowed; times must not run backwards. */
export function parseRecording(content: string): ParsedRecording {
  const lines: ReplayLine[] = [];
  let head: ReplayHeader | undefined;
  for (const [index, raw] of content
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .entries()) {
    if (raw.trim() === '') continue;
    const failed = (why: string): ParsedRecording => ({
      ok: false,
      line: index + 1,
      text: `line ${index + 1}: ${why}`,
    });
    const json = readJson(raw, MOST_LINE);
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
  /** Simulated clock at the end, ms since 1970. */
  readonly end: number;
}

export interface Bell {
  readonly session: Session;
  readonly protocol: VisitProtocol;
  readonly earlierProtocols?: readonly VisitProtocol[];
  readonly rung: Set<string>;
  /** Puts the simulated clock to the moment at which something rings. */
  setClock(at: number): void;
  /** Kept between calls: a long recording is not searched for clocks at every line. */
  readonly lull?: Lull;
}

/** With the record as it was at `facts` entries nothing rings before `until`. */
export interface Lull {
  facts: number;
  until: number;
}

/** What changes when something rings. */
const ON_THE_CLOCK: ReadonlySet<FactKind> = new Set([
  'visitOpened',
  'clockStarted',
  'clockSeated',
  'clockOut',
  'takenOver',
  'undone',
  'attemptStarted',
]);

function lasts(lull: Lull | undefined, facts: readonly Fact[], until: number): boolean {
  if (lull === undefined || until >= lull.until) return false;
  for (let i = lull.facts; i < facts.length; i += 1) if (ON_THE_CLOCK.has(facts[i]!.body.kind)) return false;
  lull.facts = facts.length;
  return true;
}

/** Everything that should have rung by `until` rings, in order, as the app would have written it. */
export function ringUntil(
  { session, protocol, earlierProtocols = [], rung, setClock, lull }: Bell,
  until: number,
): void {
  for (;;) {
    const view = session.view();
    if (lasts(lull, view.log.facts, until)) return;
    const rows = allClocks(view, { protocol, earlierProtocols, now: until });
    const rang = saidOf(view, 'rang');
    const ahead = deadlines(rows);
    const due = ahead
      .filter((d) => d.at <= until && !rung.has(d.id) && !rows.some((row) => row.id === d.clock && rang(row, d.phase)))
      .toSorted((a, b) => a.at - b.at)[0];
    if (due === undefined) {
      const next = ahead.filter((d) => d.at > until).map((d) => d.at);
      if (lull !== undefined) Object.assign(lull, { facts: view.log.facts.length, until: Math.min(...next, Infinity) });
      return;
    }
    rung.add(due.id);
    setClock(due.at);
    session.record({ kind: 'rang', clock: due.clock, phase: due.phase, dueAt: due.at, late: false });
  }
}

export interface ReplayDeps {
  readonly readings: readonly ReadingDef[];
  readonly practice: Practice;
  readonly appVersion: string;
  /** Lets clocks run on after the last line. */
  readonly endAfterMs?: number;
}

const latestFor = (visit: number) => protocols.findLast((p) => p.visit === visit);

/** The case as the visits before left it. */
interface Before {
  readonly facts: readonly Fact[];
  /** When the last visit ended. */
  readonly end: number;
  readonly code: string;
}

interface Failed {
  readonly failed: string;
}

function firstFacts(recording: Recording, protocol: VisitProtocol, deps: ReplayDeps): Fact[] {
  const { header: head } = recording;
  const { practice, appVersion: app } = deps;
  return openingFacts({ head, protocol, practice, at: Date.parse(head.startedAt), app, demo: false, caseId: 'replay' });
}

/** The facts the next visit begins with, or why it may not begin. */
function furtherFacts(
  { header: head }: Recording,
  protocol: VisitProtocol,
  { before, app }: { before: Before; app: string },
): Fact[] | Failed {
  const view = foldCase('replay', before.facts);
  const next = nextVisit(view);
  const start = Date.parse(head.startedAt);
  if (head.case !== before.code)
    return { failed: `the case is ${head.case}, but the visit before was of ${before.code}` };
  if (next === undefined) return { failed: `visit ${head.visit} cannot be opened: the visit before it was not closed` };
  if (next !== head.visit) return { failed: `visit ${head.visit} cannot be opened: visit ${next} comes next` };
  if (start < before.end) return { failed: 'the visit starts before the visit before it ended' };
  const { clinician, assistant, language } = head;
  return [...before.facts, nextOpeningFact({ view, protocol, clinician, assistant, language, at: start, app })];
}

/** Protocols of the visits before the last one. */
function protocolsBefore(view: CaseView): readonly VisitProtocol[] {
  return view.visits
    .slice(0, -1)
    .flatMap((span) => protocolFor(span.opened.body.protocol, span.opened.body.version) ?? []);
}

/** What the written time is ahead of universal time, in milliseconds: the zone the recording was made in. */
function zoneOf(written: string): number {
  const match = /([+-])(\d{2}):?(\d{2})$/.exec(written);
  if (match === null) return 0;
  const ms = (Number(match[2]) * 60 + Number(match[3])) * 60_000;
  return match[1] === '-' ? -ms : ms;
}

/** One visit walked from its first line to its last, and a moment beyond. */
function walkVisit(
  recording: Recording,
  protocol: VisitProtocol,
  ground: { facts: Fact[]; deps: ReplayDeps },
): Replayed {
  const { facts, deps } = ground;
  const { readings, practice, appVersion } = deps;
  const start = Date.parse(recording.header.startedAt);
  let now = start;
  const session = createSession(
    {
      caseId: 'replay',
      protocol,
      readings,
      practice,
      language: recording.header.language,
      appVersion,
      now: () => now,
      day: (moment) => printDay(dayOf(moment + zoneOf(recording.header.startedAt))),
      append: (f) => facts.push(...f),
    },
    [...facts],
  );
  const setClock = (when: number) => {
    now = when;
  };
  const earlierProtocols = protocolsBefore(session.view());
  const bell: Bell = { session, protocol, earlierProtocols, rung: new Set(), setClock, lull: { facts: 0, until: 0 } };
  const outcomes = recording.lines.map((item): Step => {
    ringUntil(bell, start + item.t);
    now = start + item.t;
    return { t: item.t, outcome: session.hear(toUtterance(item, now)) };
  });
  const end = now + (deps.endAfterMs ?? 0);
  ringUntil(bell, end);
  const summary = summarise(session.view(), { protocol, earlierProtocols, readings, practice, now: end });
  return { summary, facts: [...facts], outcomes, end };
}

/** A recording that could not be played; `recording` counts from 0. Always its header, which is the first line. */
export interface NotPlayed extends Failed {
  readonly recording: number;
}

/**
 * Several recordings as successive visits of one case: the first opens the case, each further one the next visit. What
 * may not follow is refused, with the place of the recording.
 */
export function runReplays(recordings: readonly Recording[], deps: ReplayDeps): readonly Replayed[] | NotPlayed {
  const played: Replayed[] = [];
  for (const [recording, item] of recordings.entries()) {
    const protocol = latestFor(item.header.visit);
    if (protocol === undefined) return { failed: `there is no protocol for visit ${item.header.visit}`, recording };
    const last = played.at(-1);
    const code = recordings[0]?.header.case ?? '';
    const facts =
      last === undefined
        ? firstFacts(item, protocol, deps)
        : furtherFacts(item, protocol, { before: { facts: last.facts, end: last.end, code }, app: deps.appVersion });
    if ('failed' in facts) return { ...facts, recording };
    played.push(walkVisit(item, protocol, { facts, deps }));
  }
  return played;
}

/** One recording by itself; `endAfterMs` lets clocks run on. */
export function runReplay(recording: Recording, deps: ReplayDeps): Replayed | Failed {
  const played = runReplays([recording], deps);
  return 'failed' in played ? played : played[0]!;
}
