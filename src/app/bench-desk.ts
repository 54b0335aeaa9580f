/** What is done, asked, answered and sent back between clinic and laboratory: one fact each. */
import type { FactBody } from '../domain/case/facts.ts';
import { ofTheBench } from '../domain/case/fold.ts';
import type { BenchSummary } from '../domain/summary/bench.types.ts';
import type { BenchDeed } from './files.types.ts';
import type { OpenCase } from './open-case.ts';

/** A deed as a fact with the words for it, or why it was not taken. */
export type Written =
  { readonly ok: true; readonly body: FactBody; readonly said: string } | { readonly ok: false; readonly text: string };

const no = (text: string): Written => ({ ok: false, text });
const yes = (body: FactBody, said: string): Written => ({ ok: true, body, said });

interface Bench {
  readonly open: OpenCase;
  readonly bench: BenchSummary;
  readonly by: string;
}

function done({ line: id }: Extract<BenchDeed, { do: 'done' }>, { bench, by }: Bench): Written {
  const line = bench.lines.find((one) => one.id === id);
  if (line === undefined) return no('That line is no longer part of the order.');
  if (line.done !== undefined) return no(`Already ticked by ${line.done.by}.`);
  return yes({ kind: 'benchDone', order: bench.order, line: id, what: line.text, by }, `Done: ${line.text} (${by})`);
}

/** Only what stands, and only what belongs to the bench: the visit has its own undo. */
function takeBack({ act }: Extract<BenchDeed, { do: 'takeBack' }>, { open, bench }: Bench): Written {
  const { log, strikes } = open.session.view();
  const facts = log.facts.filter((fact) => fact.act === act);
  const entry = bench.log.find((one) => one.act === act);
  if (entry === undefined || facts.length === 0 || !facts.every(ofTheBench))
    return no('There is nothing to take back.');
  if (facts.every((fact) => strikes.has(fact.seq))) return no('That was taken back already.');
  return yes({ kind: 'undone', act, what: entry.text }, `Taken back: ${entry.text}`);
}

function taken({ clock }: Extract<BenchDeed, { do: 'taken' }>, { bench, by }: Bench): Written {
  const line = bench.lines.find((one) => one.clock === clock);
  if (line === undefined) return no('That impression waits no more.');
  return yes({ kind: 'takenOver', clock, by, order: bench.order }, `Taken over: ${line.text} (${by})`);
}

function answer({ question, text }: Extract<BenchDeed, { do: 'answer' }>, { bench, by }: Bench): Written {
  const asked = bench.questions.find((one) => one.seq === question);
  if (asked === undefined) return no('That question no longer stands.');
  if (asked.answer !== undefined) return no('That question is answered. Take the answer back first.');
  return yes({ kind: 'benchAnswer', question, text: text.trim(), by }, `Answered: ${text.trim()}`);
}

/** One deed by somebody known by initials. Nothing is written without them, or without words where words are wanted. */
export function benchFact(deed: BenchDeed, found: Bench): Written {
  if (found.by.trim() === '') return no('Initials first: whoever does it is named on the record.');
  const from: Bench = { ...found, by: found.by.trim() };
  const { bench, by } = from;
  const what = deed.do === 'ask' ? (bench.lines.find((line) => line.id === deed.line)?.text ?? '') : '';
  if ((deed.do === 'ask' || deed.do === 'answer') && deed.text.trim() === '') return no('Write the words first.');
  switch (deed.do) {
    case 'done':
      return done(deed, from);
    case 'takeBack':
      return takeBack(deed, from);
    case 'taken':
      return taken(deed, from);
    case 'answer':
      return answer(deed, from);
    case 'ask':
      return yes(
        { kind: 'benchQuestion', order: bench.order, line: deed.line, what, text: deed.text.trim(), by },
        `Question: ${deed.text.trim()}`,
      );
    case 'returned':
      return yes({ kind: 'workReturned', order: bench.order, text: deed.text.trim(), by }, 'Work returned');
  }
}
