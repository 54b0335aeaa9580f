/** A case taken from the store, or begun: parsed, its protocol found, a session running on it. */
import type { Fact } from '../domain/case/facts.ts';
import { isKind, type CaseView } from '../domain/case/fold.ts';
import { parseFacts } from '../domain/case/parse.ts';
import { defaultPractice } from '../domain/protocol/practice.ts';
import { withOwnCautions, withOwnRanges } from '../domain/protocol/own.ts';
import { readingDefs } from '../domain/protocol/readings.ts';
import type { Language, Practice, ReadingDef, VisitProtocol } from '../domain/protocol/types.ts';
import { allClocks, carriedClocks, deadlines, ringingNow, saidOf } from '../domain/summary/clocks.ts';
import { orderInHand } from '../domain/summary/lab-standing.ts';
import { reasonInWords, summarise } from '../domain/summary/summarise.ts';
import type { ClockRow, Flag, Summary } from '../domain/summary/types.ts';
import { loadLanguage } from '../interpret/index.ts';
import type { CaseRow, FactLog } from '../storage/types.ts';
import type { AppModel } from './model.ts';
import { caseLine, nextVisit, standsNow, type LineAround } from './case-line.ts';
import { localDay } from './dates.ts';
import { modeOf } from './expectation.ts';
import type { KitHost, NewCase, NextVisit, OpenCase, Opened } from './open-case.ts';
import { nextOpeningFact, openingFacts } from './opening.ts';
import { phrasesFor } from './phrases.ts';
import { latestProtocol, loadProtocol, visit1 } from './protocols.ts';
import { createSession, type Session } from './session.ts';
import { stepView } from './step-view.ts';
import { appVersion } from './version.ts';
import { lostWhileWaiting, noteWaiting } from './waiting.ts';

export { PracticeStore } from './practice-store.ts';
export { Listening } from './listening.ts';

const NOT_CHANGED = 'Nothing was changed. Save a file of it and ask for help.';
const RANK: Readonly<Record<Flag['level'], number>> = { caution: 0, disagrees: 1, look: 2 };

/** A case from the store → a running session, or a sentence saying why not. */
export async function openFromLog(id: string, log: Pick<FactLog, 'open'>, host: KitHost): Promise<Opened> {
  const loaded = await log.open(id);
  if (loaded.ok) {
    const opened = await openStored(id, loaded.facts, host);
    return opened.ok ? withNews(opened, loaded.recovered, host) : opened;
  }
  return { ok: false, text: loaded.reason === 'gap' ? `${loaded.why} ${NOT_CHANGED}` : loaded.why };
}

type Open = Extract<Opened, { ok: true }>;

/** What was mended on the disk, and what was lost with the page. */
async function withNews(opened: Open, mended: string | undefined, host: KitHost): Promise<Opened> {
  const lost = await lostWhileWaiting(host.waiting, opened.open.session.view().log.facts);
  const news = [mended ?? '', lost].filter((text) => text !== '').join(' ');
  return news === '' ? opened : { ...opened, recovered: news };
}

/** Raw facts as stored → a running session, or a sentence saying why not. */
export async function openStored(id: string, raw: readonly unknown[], host: KitHost): Promise<Opened> {
  const parsed = parseFacts(raw);
  if (!parsed.ok) {
    const where = parsed.path === '' ? '' : ` (${parsed.path})`;
    return { ok: false, text: `Entry ${parsed.at} of this case cannot be read${where}: ${parsed.text} ${NOT_CHANGED}` };
  }
  return openFacts(id, parsed.facts, host);
}

/** A visit begun, and the facts that have to be kept for it. */
interface Begun {
  readonly opened: Opened;
  readonly facts: readonly Fact[];
}

const refuse = (text: string): Begun => ({ opened: { ok: false, text }, facts: [] });

/** A new case: its opening facts, and the session that runs on them. */
export async function openNew(input: NewCase, host: KitHost): Promise<Begun> {
  const { id, code, clinician, assistant, demo, language } = input;
  const head = { case: code, visit: 1, clinician, assistant, language };
  const at = host.now();
  const facts = openingFacts({
    head,
    protocol: (await latestProtocol(1, host.protocols)) ?? visit1,
    practice: host.practice ?? defaultPractice,
    at,
    app: appVersion,
    demo,
    caseId: id,
  });
  return { opened: await openFacts(id, facts, host), facts };
}

/** The next visit of a case whose last one is closed: its opening fact, and the session that runs on it. */
export async function openVisit(open: OpenCase, input: NextVisit, host: KitHost): Promise<Begun> {
  const view = open.session.view();
  if (nextVisit(view) !== input.visit) return refuse('This visit cannot be opened now: close the one before it first.');
  if (input.clinician.trim() === '' || input.assistant.trim() === '')
    return refuse('A visit needs the initials of clinician and assistant.');
  const protocol = await latestProtocol(input.visit, host.protocols);
  if (protocol === undefined) return refuse(`There is no protocol for visit ${input.visit}.`);
  const fact = nextOpeningFact({
    view,
    protocol,
    clinician: input.clinician.trim(),
    assistant: input.assistant.trim(),
    language: input.language,
    at: host.now(),
    app: appVersion,
    ...(host.practice === undefined ? {} : { today: host.practice }),
  });
  return { opened: await openFacts(open.id, [...view.log.facts, fact], host), facts: [fact] };
}

/** Protocols of the visits before the current one; one that this build does not know is left out. */
async function protocolsBefore(facts: readonly Fact[], own: KitHost['protocols']): Promise<readonly VisitProtocol[]> {
  const opened = facts.filter((fact) => isKind(fact, 'visitOpened')).slice(0, -1);
  const loaded = await Promise.all(opened.map((fact) => loadProtocol(fact.body.protocol, fact.body.version, own)));
  return loaded.filter((protocol) => protocol !== undefined);
}

/** The conventions the case was opened under, with the materials of the day of the visit. */
function practiceOf(first: Practice, { materials, disinfectants }: Partial<Practice>): Practice {
  return {
    ...first,
    ...(materials === undefined ? {} : { materials }),
    ...(disinfectants === undefined ? {} : { disinfectants }),
  };
}

async function openFacts(id: string, facts: readonly Fact[], host: KitHost): Promise<Opened> {
  const opened = facts.find((fact) => isKind(fact, 'caseOpened'));
  const visit = facts.findLast((fact) => isKind(fact, 'visitOpened'));
  if (opened === undefined || visit === undefined)
    return { ok: false, text: `This case has no opening entry. ${NOT_CHANGED}` };
  const { protocol: protocolId, version, language } = visit.body;
  const known = await loadProtocol(protocolId, version, host.protocols);
  if (known === undefined) {
    return { ok: false, text: `This app does not know the protocol ${protocolId}, version ${version}. ${NOT_CHANGED}` };
  }
  const practice = practiceOf(opened.body.practice, visit.body);
  const protocol = withOwnCautions(known, practice);
  const readings = withOwnRanges(readingDefs, practice);
  const earlier = (await protocolsBefore(facts, host.protocols)).map((before) => withOwnCautions(before, practice));
  const hasWords = await loadLanguage(language).then(
    () => true,
    () => false,
  );
  const session = createSession(
    {
      caseId: id,
      protocol,
      readings,
      practice,
      language,
      appVersion,
      now: () => host.now(),
      day: (at) => host.day?.(at) ?? localDay(at),
      append: () => undefined,
      waits: (pending) => {
        const standing = { caseId: id, facts: session.view().log.facts.length, names: { protocol, readings } };
        noteWaiting(host.waiting, pending, standing);
      },
    },
    facts,
  );
  const ground = { protocol, readings, practice, earlier, language, hasWords };
  return { ok: true, open: toOpenCase(id, session, { ...ground, dayAt: (at) => host.day?.(at) ?? localDay(at) }) };
}

interface Ground {
  readonly protocol: VisitProtocol;
  /** With the practice's own ranges. */
  readonly readings: readonly ReadingDef[];
  readonly earlier: readonly VisitProtocol[];
  readonly practice: Practice;
  readonly language: Language;
  readonly hasWords: boolean;
  dayAt(at: number): string;
}

/** A number is asked for, or waits for its yes. */
function listensFor(session: Session): { reading: boolean; waits: boolean } {
  const mode = modeOf(session.context());
  const waits = mode === 'confirm' || mode === 'choose';
  return { reading: waits || mode === 'reading' || mode === 'correcting', waits };
}

function toOpenCase(id: string, session: Session, ground: Ground): OpenCase {
  return {
    id,
    session,
    language: ground.language,
    hasWords: ground.hasWords,
    listensFor: () => listensFor(session),
    phrases: (address) => phrasesFor(session.expectation(), address),
    parts: (now) => partsOf(session, ground, now),
    running: (now) => runningOf(session.view(), clocksOf(session.view(), ground, now), now),
    deadlines: (now) => openDeadlines(session.view(), ground, now),
    row: () => rowOf(id, session.view(), ground),
  };
}

function unanswered(summary: Summary): readonly Flag[] {
  return summary.flags.filter((flag) => flag.answer === undefined).toSorted((a, b) => RANK[a.level] - RANK[b.level]);
}

function partsOf(session: Session, ground: Ground, now: number): Partial<AppModel> {
  const { protocol, practice, earlier, readings } = ground;
  const view = session.view();
  const context = session.context();
  const summary = summarise(view, { protocol, earlierProtocols: earlier, readings, practice, now });
  const expectation = session.expectation();
  const chosen = session.chosen();
  const around = lineAround(ground, now);
  const due = orderInHand(view, around, now);
  const step = stepView({ context, view, protocol, readings, practice, expectation, summary, chosen });
  return {
    ...(step === undefined ? {} : { step }),
    summary,
    caseLine: caseLine(view, around),
    ...(due === undefined ? {} : { labDue: due }),
    ...runningOf(view, [...carriedClocks(view, earlier, now), ...summary.clocks], now),
    flags: unanswered(summary),
    cautions: summary.cautions,
    reasons: practice.reasons.map(({ id }) => ({ id, label: reasonInWords(practice)(id) })),
  };
}

const lineAround = ({ practice, dayAt }: Ground, now: number): LineAround => ({
  practice,
  dayAt,
  now,
  reason: reasonInWords(practice),
});

const clocksOf = (view: CaseView, { protocol, earlier }: Ground, now: number) =>
  allClocks(view, { protocol, earlierProtocols: earlier, now });

function runningOf(view: CaseView, clocks: readonly ClockRow[], now: number): Pick<AppModel, 'clocks' | 'ringing'> {
  return { clocks: clocks.filter((row) => !row.stopped), ringing: ringingNow(view, clocks, now) };
}

function openDeadlines(view: CaseView, ground: Ground, now: number) {
  const clocks = clocksOf(view, ground, now);
  const rang = saidOf(view, 'rang');
  const rung = new Set(
    clocks.flatMap((row) => row.phases.filter((p) => rang(row, p.id)).map((p) => `${row.id}:${p.id}`)),
  );
  return deadlines(clocks).filter((due) => !rung.has(due.id));
}

function rowOf(id: string, view: CaseView, ground: Ground): CaseRow {
  const { facts } = view.log;
  const lastAt = facts.at(-1)?.at ?? 0;
  const stands = standsNow(view, lineAround(ground, lastAt));
  return {
    id,
    code: view.opened?.body.code ?? '',
    demo: view.opened?.body.demo ?? false,
    openedAt: view.opened?.at ?? 0,
    lastAt,
    visit: ground.protocol.visit,
    closed: view.closed !== undefined,
    lastSeq: facts.length,
    ticks: clocksOf(view, ground, lastAt).some((row) => !row.stopped),
    ...(stands === undefined ? {} : { stands }),
  };
}
