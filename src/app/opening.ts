/** How a case begins, and how each further visit of it does. */
import type { Fact, FactBody } from '../domain/case/facts.ts';
import type { CaseView } from '../domain/case/fold.ts';
import type { Language, Practice, VisitProtocol } from '../domain/protocol/types.ts';

export interface Opening {
  readonly head: {
    readonly case: string;
    readonly visit: number;
    readonly clinician: string;
    readonly assistant: string;
    readonly language: Language;
  };
  readonly protocol: VisitProtocol;
  readonly practice: Practice;
  readonly at: number;
  readonly app: string;
  readonly demo: boolean;
  readonly caseId: string;
}

/** The two facts every case begins with: the practice's conventions travel with the case from here on. */
export function openingFacts({ head, protocol, practice, at, app, demo, caseId }: Opening): Fact[] {
  const { id, version } = protocol;
  const { clinician, assistant, language, visit } = head;
  const bodies: FactBody[] = [
    { kind: 'caseOpened', code: head.case, demo, practice },
    { kind: 'visitOpened', visit, protocol: id, version, clinician, assistant, language },
  ];
  return bodies.map((body, i): Fact => ({
    v: 1,
    caseId,
    seq: i + 1,
    at,
    act: 1,
    protocol: `${id}@${version}`,
    app,
    body,
  }));
}

export interface NextOpening {
  readonly view: CaseView;
  readonly protocol: VisitProtocol;
  readonly clinician: string;
  readonly assistant: string;
  readonly language: Language;
  readonly at: number;
  readonly app: string;
  /** The practice as it is today; its materials go with the visit where they are not those the case was opened with. */
  readonly today?: Practice;
}

type Stock = Pick<Practice, 'materials' | 'disinfectants'>;

/** What is on the shelf today, where it differs from what the case began with: another lot, other figures. */
function stockOf(today: Practice | undefined, first: Practice | undefined): Partial<Stock> {
  if (today === undefined || first === undefined) return {};
  const { materials, disinfectants } = today;
  const same = JSON.stringify([materials, disinfectants]) === JSON.stringify([first.materials, first.disinfectants]);
  return same ? {} : { materials, disinfectants };
}

/** The fact a further visit begins with. Whether it may begin is for `nextVisit` to say. */
export function nextOpeningFact(next: NextOpening): Fact {
  const { view, protocol, clinician, assistant, language, at, app, today } = next;
  const { id, version, visit } = protocol;
  const seq = view.log.facts.length + 1;
  return {
    v: 1,
    caseId: view.log.caseId,
    seq,
    at,
    act: seq,
    protocol: `${id}@${version}`,
    app,
    body: {
      kind: 'visitOpened',
      visit,
      protocol: id,
      version,
      clinician,
      assistant,
      language,
      ...stockOf(today, view.opened?.body.practice),
    },
  };
}
