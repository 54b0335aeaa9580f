/** What the laboratory answered: where each line of the order stands, and what was asked and sent back, as notes. */
import type { Annotation, Task } from '@medplum/fhirtypes';
import type { BenchQuestion } from '../domain/summary/bench.types.ts';
import { instant, type Context } from './fhir-context.ts';
import { personRef } from './fhir-people.ts';
import { words } from './fhir-terms.ts';

type Standing = Pick<Task, 'status' | 'businessStatus' | 'statusReason' | 'executionPeriod' | 'lastModified'>;

const openAbout = ({ summary }: Context, line: string | undefined): readonly BenchQuestion[] =>
  (summary.bench?.questions ?? []).filter(
    (one) => one.visit === summary.visitName && one.line === line && one.answer === undefined,
  );

/**
 * A ticked line is completed; one that is asked about waits; one of an order that the laboratory has written to is
 * received; any other is requested. `place` counts the lines of the order from 0.
 */
export function standing(context: Context, place: number): Standing & Required<Pick<Task, 'status'>> {
  const { summary } = context;
  const { bench } = summary;
  const line = bench?.lines[place];
  const given = instant(summary.closedAt ?? summary.openedAt);
  if (line?.done !== undefined) {
    const end = instant(line.done.at);
    return {
      status: 'completed',
      businessStatus: words(`done at the bench by ${line.done.by}`),
      executionPeriod: { end },
      lastModified: end,
    };
  }
  const [asked] = openAbout(context, line?.id);
  if (asked !== undefined)
    return {
      status: 'on-hold',
      statusReason: words(`The laboratory asks: ${asked.text}`),
      businessStatus: words('waits for an answer of the clinic'),
      lastModified: instant(asked.at),
    };
  const first = bench?.log.find((entry) => entry.visit === summary.visitName && !entry.struck);
  if (first !== undefined)
    return { status: 'received', businessStatus: words('at the laboratory'), lastModified: instant(first.at) };
  return { status: 'requested', businessStatus: words('handed over to the laboratory'), lastModified: given };
}

function annotation(
  context: Context,
  text: string,
  { by, at }: { readonly by: string; readonly at: number },
): Annotation {
  return { text, time: instant(at), authorReference: personRef(context, by) };
}

/** Questions about one line, or with '' about the work as a whole, each followed by its answer. */
export function questionNotes(context: Context, line: string | undefined): readonly Annotation[] {
  const { bench, visitName } = context.summary;
  return (bench?.questions ?? [])
    .filter((one) => one.visit === visitName && one.line === line)
    .flatMap((one) => [
      annotation(context, `The laboratory asks: ${one.text}`, one),
      ...(one.answer === undefined ? [] : [annotation(context, `The clinic answers: ${one.answer.text}`, one.answer)]),
    ]);
}

/** Work that went back to the clinic. */
export function returnNotes(context: Context): readonly Annotation[] {
  const { bench, visitName } = context.summary;
  return (bench?.returned ?? [])
    .filter((one) => one.visit === visitName)
    .map((one) => annotation(context, `Work returned${one.text === '' ? '' : `: ${one.text}`}`, one));
}
