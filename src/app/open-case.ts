/** A case taken from the store, or begun: parsed, its protocol found, a session running on it. */
import type { Fact } from '../domain/case/facts.ts';
import { isKind } from '../domain/case/fold.ts';
import { parseFacts } from '../domain/case/parse.ts';
import { protocolFor } from '../domain/protocol/index.ts';
import type { Practice, ReadingDef, VisitProtocol } from '../domain/protocol/types.ts';
import { createSession, type Session, type SessionDeps } from './session.ts';

export interface OpenCase {
  readonly id: string;
  readonly session: Session;
  readonly protocol: VisitProtocol;
  readonly practice: Practice;
}

export type Opened = { readonly ok: true; readonly open: OpenCase } | { readonly ok: false; readonly text: string };

interface Around {
  readonly readings: readonly ReadingDef[];
  readonly appVersion: string;
  now(): number;
  append(facts: readonly Fact[]): void;
}

const NOT_CHANGED = 'Nothing was changed. Save a file of it and ask for help.';

/** Raw facts as stored → a running session, or a sentence saying why not. */
export function openStored(id: string, raw: readonly unknown[], around: Around): Opened {
  const parsed = parseFacts(raw);
  if (!parsed.ok) {
    const where = parsed.path === '' ? '' : ` (${parsed.path})`;
    return { ok: false, text: `Entry ${parsed.at} of this case cannot be read${where}: ${parsed.text} ${NOT_CHANGED}` };
  }
  return openFacts(id, parsed.facts, around);
}

/** Facts that are known to be whole → a running session. */
export function openFacts(id: string, facts: readonly Fact[], around: Around): Opened {
  const opened = facts.find((fact) => isKind(fact, 'caseOpened'));
  const visit = facts.findLast((fact) => isKind(fact, 'visitOpened'));
  if (opened === undefined || visit === undefined)
    return { ok: false, text: `This case has no opening entry. ${NOT_CHANGED}` };
  const { protocol: protocolId, version, language } = visit.body;
  const protocol = protocolFor(protocolId, version);
  if (protocol === undefined) {
    return { ok: false, text: `This app does not know the protocol ${protocolId}, version ${version}. ${NOT_CHANGED}` };
  }
  const { practice } = opened.body;
  const deps: SessionDeps = { caseId: id, protocol, practice, language, ...around };
  return { ok: true, open: { id, session: createSession(deps, facts), protocol, practice } };
}
