/** What the laboratory did, asked and sent back, and the order as a list to tick off. */
import { isKind, ofTheBench, type CaseView, type FactOf } from '../case/fold.ts';
import type { Fact, FactKind } from '../case/facts.ts';
import { formatHundredths } from '../measure/length.ts';
import type { Practice } from '../protocol/types.ts';
import type {
  BenchEntry,
  BenchFigure,
  BenchLine,
  BenchMark,
  BenchQuestion,
  BenchReturned,
  BenchSummary,
} from './bench.types.ts';
import { figuresOf, plain, type Ordered } from './bench-figures.ts';
import { keptImpressions } from './lab.ts';
import { visitName } from './rows.ts';
import type { LabLine, Summary } from './types.ts';

/** "visit 1" of the opening with this seq; '' for one that is no opening. */
function visitAt(view: CaseView, order: number): string {
  const place = view.visits.findIndex((span) => span.opened.seq === order);
  return place < 0 ? '' : visitName(view.visits, place);
}

const mark = ({ seq, act, at }: Fact, by: string): BenchMark => ({ seq, act, at, by });

/** An impression taken again is another line: a tick for the first attempt is none for the second. */
function lineId({ id }: LabLine, clocks: Summary['clocks']): string {
  const clock = keptImpressions(clocks).find((one) => id === `pour:${one.clock}`);
  return clock === undefined ? id : `${id}/${clock.attempt}`;
}

/** Sets by their median, other readings singly; struck ones not at all. */
function numbersOf({ sets, readings }: Ordered): readonly BenchFigure[] {
  const inSets = new Set(sets.flatMap((set) => set.seqs));
  return [
    ...sets.flatMap((set): BenchFigure[] =>
      set.medianMm === undefined
        ? []
        : [
            {
              label: set.label,
              digits: plain(set.medianMm),
              unit: 'mm',
              more: `${set.n === 1 ? '1 reading' : `median of ${set.n}, spread ${plain(set.rangeMm ?? 0)}`}; ${set.markSet}`,
            },
          ],
    ),
    ...readings
      .filter((row) => row.struck === undefined && !inSets.has(row.seq))
      .map((row) => ({ label: row.label, digits: formatHundredths(row.value), unit: row.unit })),
  ];
}

/** What no number of an order follows from. */
const NO_CHANGE: ReadonlySet<FactKind> = new Set([
  'rang',
  'alarmSeen',
  'takenOver',
  'moved',
  'held',
  'carriedOn',
  'signed',
  'labDue',
  'visitClosed',
  'visitOpened',
]);

/** Written by the visit itself and still standing: what a line's numbers may follow from. */
function lastChange(view: CaseView): number {
  const own = view.log.facts.filter(
    (fact) => !ofTheBench(fact) && !NO_CHANGE.has(fact.body.kind) && !takesBackBench(view, fact),
  );
  return own.at(-1)?.seq ?? 0;
}

function takesBackBench({ log }: CaseView, fact: Fact): boolean {
  if (!isKind(fact, 'undone')) return false;
  const taken = log.facts[fact.body.act - 1];
  return taken !== undefined && ofTheBench(taken);
}

function live<K extends Fact['body']['kind']>(view: CaseView, kind: K): FactOf<K>[] {
  const out: FactOf<K>[] = [];
  for (const fact of view.log.facts) if (isKind(fact, kind) && !view.strikes.has(fact.seq)) out.push(fact);
  return out;
}

function linesOf(view: CaseView, found: Ordered, practice: Practice): readonly BenchLine[] {
  const done = live(view, 'benchDone').filter((fact) => fact.body.order === view.from);
  const changed = lastChange(view);
  return found.labWork.map((line): BenchLine => {
    const id = lineId(line, found.clocks);
    const tick = done.findLast((fact) => fact.body.line === id);
    const clock = keptImpressions(found.clocks).find((one) => line.id === `pour:${one.clock}` && !one.stopped);
    return {
      id,
      text: line.text,
      ...(line.detail === undefined ? {} : { detail: line.detail }),
      ...(line.at === undefined ? {} : { at: line.at }),
      figures: figuresOf(line, found, practice),
      ...(tick === undefined ? {} : { done: mark(tick, tick.body.by) }),
      outdated: tick !== undefined && tick.seq < changed,
      ...(clock === undefined ? {} : { clock: clock.clock }),
    };
  });
}

function questionsOf(view: CaseView): readonly BenchQuestion[] {
  const answers = live(view, 'benchAnswer');
  return live(view, 'benchQuestion').map((fact) => {
    const answer = answers.findLast((one) => one.body.question === fact.seq);
    return {
      ...mark(fact, fact.body.by),
      visit: visitAt(view, fact.body.order),
      line: fact.body.line,
      about: fact.body.what,
      text: fact.body.text,
      ...(answer === undefined ? {} : { answer: { ...mark(answer, answer.body.by), text: answer.body.text } }),
    };
  });
}

const returnedOf = (view: CaseView): readonly BenchReturned[] =>
  live(view, 'workReturned').map((fact) => ({
    ...mark(fact, fact.body.by),
    visit: visitAt(view, fact.body.order),
    text: fact.body.text,
  }));

interface Told {
  readonly kind: BenchEntry['kind'];
  readonly order: number;
  readonly by: string;
  readonly text: string;
}

/** A bench entry in words; undefined for every other fact. */
function told({ body }: Fact, view: CaseView, clock: (id: string) => string): Told | undefined {
  switch (body.kind) {
    case 'benchDone':
      return { kind: 'done', order: body.order, by: body.by, text: `Done: ${body.what}` };
    case 'benchQuestion':
      return { kind: 'question', order: body.order, by: body.by, text: `Question: ${body.text}` };
    case 'workReturned':
      return {
        kind: 'returned',
        order: body.order,
        by: body.by,
        text: `Work returned${body.text === '' ? '' : `: ${body.text}`}`,
      };
    case 'benchAnswer': {
      const asked = view.log.facts[body.question - 1];
      const order = asked !== undefined && isKind(asked, 'benchQuestion') ? asked.body.order : 0;
      return { kind: 'answer', order, by: body.by, text: `Answer: ${body.text}` };
    }
    case 'takenOver':
      if (body.by === undefined) return undefined;
      return {
        kind: 'taken',
        order: body.order ?? 0,
        by: body.by,
        text: `Poured or taken over: ${clock(body.clock)}`,
      };
    default:
      return undefined;
  }
}

function logOf(view: CaseView, clock: (id: string) => string): readonly BenchEntry[] {
  return view.log.facts.flatMap((fact): BenchEntry[] => {
    const said = told(fact, view, clock);
    if (said === undefined) return [];
    return [
      {
        ...mark(fact, said.by),
        kind: said.kind,
        visit: visitAt(view, said.order),
        text: said.text,
        struck: view.strikes.has(fact.seq),
      },
    ];
  });
}

function doneOf(view: CaseView): Readonly<Record<string, number>> {
  const lines = new Map<string, Set<string>>();
  for (const { body } of live(view, 'benchDone')) {
    const visit = visitAt(view, body.order);
    lines.set(visit, (lines.get(visit) ?? new Set()).add(body.line));
  }
  return Object.fromEntries([...lines].map(([visit, done]) => [visit, done.size]));
}

/**
 * The order of the current visit as a list to tick off, and all that clinic and laboratory wrote to each other in any
 * visit of the case. Ticks, questions and answers are facts; taken-back ones stay in `log`, struck. Lengths are
 * millimetres in words.
 */
export function benchSummary(view: CaseView, found: Ordered, practice: Practice): BenchSummary {
  const labels = new Map(found.clocks.map((row) => [row.clock, row.label]));
  return {
    order: view.from,
    lines: linesOf(view, found, practice),
    numbers: numbersOf(found),
    questions: questionsOf(view),
    returned: returnedOf(view),
    log: logOf(view, (id) => labels.get(id) ?? id),
    doneOf: doneOf(view),
  };
}
