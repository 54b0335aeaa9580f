/** A case taken from the store, or begun: parsed, its protocol found, a session running on it. */
import type { Fact } from '../domain/case/facts.ts';
import { isKind, type CaseView } from '../domain/case/fold.ts';
import { parseFacts } from '../domain/case/parse.ts';
import { defaultPractice } from '../domain/protocol/practice.ts';
import { readingDefs } from '../domain/protocol/readings.ts';
import type { Practice, VisitProtocol } from '../domain/protocol/types.ts';
import { clockRows, deadlines, ringingNow } from '../domain/summary/clocks.ts';
import { reasonInWords, summarise } from '../domain/summary/summarise.ts';
import type { Flag, Summary } from '../domain/summary/types.ts';
import type { CaseRow } from '../storage/types.ts';
import type { AppModel } from './model.ts';
import type { KitHost, NewCase, OpenCase, Opened } from './open-case.ts';
import { openingFacts } from './opening.ts';
import { loadProtocol, visit1 } from './protocols.ts';
import { createSession, type Session } from './session.ts';
import { stepView } from './step-view.ts';
import { appVersion } from './version.ts';

const NOT_CHANGED = 'Nothing was changed. Save a file of it and ask for help.';
const RANK: Readonly<Record<Flag['level'], number>> = { caution: 0, disagrees: 1, look: 2 };

/** Raw facts as stored → a running session, or a sentence saying why not. */
export async function openStored(id: string, raw: readonly unknown[], host: KitHost): Promise<Opened> {
  const parsed = parseFacts(raw);
  if (!parsed.ok) {
    const where = parsed.path === '' ? '' : ` (${parsed.path})`;
    return { ok: false, text: `Entry ${parsed.at} of this case cannot be read${where}: ${parsed.text} ${NOT_CHANGED}` };
  }
  return openFacts(id, parsed.facts, host);
}

/** A new case: its opening facts, and the session that runs on them. */
export async function openNew(input: NewCase, host: KitHost): Promise<{ opened: Opened; facts: readonly Fact[] }> {
  const { id, code, clinician, assistant, demo, language } = input;
  const head = { case: code, visit: 1, clinician, assistant, language };
  const at = host.now();
  const facts = openingFacts({
    head,
    protocol: visit1,
    practice: defaultPractice,
    at,
    app: appVersion,
    demo,
    caseId: id,
  });
  return { opened: await openFacts(id, facts, host), facts };
}

async function openFacts(id: string, facts: readonly Fact[], host: KitHost): Promise<Opened> {
  const opened = facts.find((fact) => isKind(fact, 'caseOpened'));
  const visit = facts.findLast((fact) => isKind(fact, 'visitOpened'));
  if (opened === undefined || visit === undefined)
    return { ok: false, text: `This case has no opening entry. ${NOT_CHANGED}` };
  const { protocol: protocolId, version, language } = visit.body;
  const protocol = await loadProtocol(protocolId, version);
  if (protocol === undefined) {
    return { ok: false, text: `This app does not know the protocol ${protocolId}, version ${version}. ${NOT_CHANGED}` };
  }
  const { practice } = opened.body;
  const session = createSession(
    {
      caseId: id,
      protocol,
      readings: readingDefs,
      practice,
      language,
      appVersion,
      now: () => host.now(),
      append: () => undefined,
    },
    facts,
  );
  return { ok: true, open: toOpenCase(id, session, { protocol, practice }) };
}

interface Ground {
  readonly protocol: VisitProtocol;
  readonly practice: Practice;
}

function toOpenCase(id: string, session: Session, ground: Ground): OpenCase {
  return {
    id,
    session,
    parts: (now) => partsOf(session, ground, now),
    deadlines: (now) => openDeadlines(session.view(), ground.protocol, now),
    row: () => rowOf(id, session.view(), ground.protocol),
  };
}

function unanswered(summary: Summary): readonly Flag[] {
  return summary.flags.filter((flag) => flag.answer === undefined).toSorted((a, b) => RANK[a.level] - RANK[b.level]);
}

function partsOf(session: Session, { protocol, practice }: Ground, now: number): Partial<AppModel> {
  const view = session.view();
  const context = session.context();
  const summary = summarise(view, { protocol, readings: readingDefs, practice, now });
  const expectation = session.expectation();
  const chosen = session.chosen();
  const step = stepView({ context, view, protocol, readings: readingDefs, practice, expectation, summary, chosen });
  return {
    ...(step === undefined ? {} : { step }),
    summary,
    clocks: summary.clocks.filter((row) => !row.stopped),
    ringing: ringingNow(view, summary.clocks, now),
    flags: unanswered(summary),
    cautions: summary.cautions,
    reasons: practice.reasons.map(({ id }) => ({ id, label: reasonInWords(practice)(id) })),
  };
}

function openDeadlines(view: CaseView, protocol: VisitProtocol, now: number) {
  const rung = new Set(view.log.facts.flatMap((f) => (isKind(f, 'rang') ? [`${f.body.clock}:${f.body.phase}`] : [])));
  return deadlines(clockRows(view, protocol, now)).filter((due) => !rung.has(due.id));
}

function rowOf(id: string, view: CaseView, protocol: VisitProtocol): CaseRow {
  const facts = view.log.facts;
  return {
    id,
    code: view.opened?.body.code ?? '',
    demo: view.opened?.body.demo ?? false,
    openedAt: view.opened?.at ?? 0,
    lastAt: facts.at(-1)?.at ?? 0,
    visit: protocol.visit,
    closed: view.closed !== undefined,
    lastSeq: facts.length,
  };
}
