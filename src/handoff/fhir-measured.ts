/** Readings, sets, the space between heights, computed values; what disagrees and how it was answered; steps on the clock. */
import type { DetectedIssue, Observation, Procedure, Reference } from '@medplum/fhirtypes';
import type { ClockRow, Flag, ReadingRow, SetRow, Summary } from '../domain/summary/types.ts';
import { encounterKey, instant, inVisit, readingKey, refTo, type Context, type Keyed } from './fhir-context.ts';
import { CALIPER, materialKey, PATIENT, personRef } from './fhir-people.ts';
import { mmQuantity, own, quantity, words } from './fhir-terms.ts';

const here = (context: Context) => encounterKey(context.summary.visitName);
export const setKey = ({ reading, markSet, bases }: SetRow): string => `set:${reading}|${markSet}|${bases ?? ''}`;
const SPACE = 'rest-space';

function subjectAt(context: Context, encounter: string): Pick<Observation, 'subject' | 'encounter'> {
  return { subject: refTo(context, PATIENT), encounter: refTo(context, encounter) };
}

const STRUCK = { corrected: 'corrected', undone: 'taken back', newAttempt: 'given up for a new attempt' } as const;

function observationOf(context: Context, row: ReadingRow): Keyed<Observation> {
  const heard = row.source === 'voice' ? `Called out: “${row.text}”.` : `Entered by ${row.source}.`;
  const { struck } = row;
  const gone = struck === undefined ? [] : [{ text: `Struck: ${STRUCK[struck.why]} at ${instant(struck.at)}.` }];
  const known = context.visits.includes(row.visit) ? encounterKey(row.visit) : here(context);
  const clinician = context.view.visits[context.visits.indexOf(row.visit)]?.opened.body.clinician ?? '';
  return {
    key: readingKey(row.seq),
    resource: {
      resourceType: 'Observation',
      status: struck === undefined ? 'final' : 'entered-in-error',
      code: own('reading', row.reading, row.label),
      ...subjectAt(context, known),
      effectiveDateTime: instant(row.at),
      performer: [personRef(context, clinician)],
      valueQuantity: quantity(row.value / 100, row.unit),
      note: [
        { text: [heard, row.markSet, row.bases && `Bases in the mouth: ${row.bases}.`].filter(Boolean).join(' ') },
        ...gone,
      ],
      method: words(row.source === 'voice' ? 'read and called out' : 'read and entered by hand'),
      ...(row.unit === 'mm' ? { device: refTo(context, CALIPER) } : {}),
    },
  };
}

function setObservation(context: Context, set: SetRow): readonly Keyed<Observation>[] {
  if (set.medianMm === undefined || set.n < 2) return [];
  const component = (id: string, text: string, value: number) => ({
    code: own('statistic', id, text),
    valueQuantity: mmQuantity(value),
  });
  const resource: Observation = {
    resourceType: 'Observation',
    status: 'final',
    code: own('reading', set.reading, `${set.label}, accepted`),
    ...subjectAt(context, here(context)),
    effectiveDateTime: instant(context.summary.closedAt ?? context.summary.openedAt),
    valueQuantity: mmQuantity(set.medianMm),
    method: words(`median of ${set.n} readings, ${set.markSet}`),
    derivedFrom: set.seqs.map((seq) => refTo<Observation>(context, readingKey(seq))),
    component: [
      ...(set.rangeMm === undefined ? [] : [component('range', 'range', set.rangeMm)]),
      ...(set.meanMm === undefined ? [] : [component('mean', 'mean', set.meanMm)]),
      ...(set.sdMm === undefined ? [] : [component('sd', 'sample standard deviation', set.sdMm)]),
    ],
  };
  if (resource.component?.length === 0) delete resource.component;
  return [{ key: setKey(set), resource }];
}

/** The observation that stands for a set: its median, or its only reading. */
function refsOfSet(context: Context, set: SetRow | undefined): Reference<Observation>[] {
  if (set === undefined) return [];
  if (set.medianMm !== undefined && set.n >= 2) return [refTo(context, setKey(set))];
  return set.seqs.map((seq) => refTo(context, readingKey(seq)));
}

/** Band of the usual teaching range, millimetres; a reference range, no verdict. */
const USUAL = [2, 4] as const;

function spaceObservation(context: Context): readonly Keyed<Observation>[] {
  const { restSpaceMm, uncertaintyMm, rest, closed, targetSpaceMm } = context.summary.vertical;
  if (restSpaceMm === undefined) return [];
  const give = uncertaintyMm === undefined ? '' : `; uncertainty ± ${uncertaintyMm.toFixed(2)} mm`;
  return [
    {
      key: inVisit(context, SPACE),
      resource: {
        resourceType: 'Observation',
        status: 'final',
        code: own('computed', SPACE, 'Space between rest and closed'),
        ...subjectAt(context, here(context)),
        effectiveDateTime: instant(context.summary.closedAt ?? context.summary.openedAt),
        valueQuantity: mmQuantity(restSpaceMm),
        method: words(`difference of the means${give}`),
        referenceRange: [
          {
            low: mmQuantity(USUAL[0]),
            high: mmQuantity(USUAL[1]),
            text: `usual teaching range; chosen ${targetSpaceMm} mm`,
          },
        ],
        derivedFrom: [...refsOfSet(context, rest), ...refsOfSet(context, closed)],
      },
    },
  ];
}

function computedObservation(context: Context, row: Summary['computed'][number]): Keyed<Observation> {
  return {
    key: inVisit(context, `computed:${row.id}`),
    resource: {
      resourceType: 'Observation',
      status: 'final',
      code: own('computed', row.id, row.label),
      ...subjectAt(context, here(context)),
      effectiveDateTime: instant(context.summary.closedAt ?? context.summary.openedAt),
      valueString: row.text,
      method: words(`${row.source} (${row.sourceStatus})`),
      ...(row.inputs.length === 0 ? {} : { note: [{ text: `From: ${row.inputs.join('; ')}` }] }),
    },
  };
}

const SEVERITY = { caution: 'high', disagrees: 'moderate', look: 'low' } as const;

/** Readings named in a flag's id by their number, and sets named by quantity and marks. */
function implicated(context: Context, flag: Flag): Reference<Observation>[] {
  const parts = flag.id.split(':');
  const known = new Set(context.rows.map((row) => row.seq));
  const readings = parts.filter((part) => /^\d+$/.test(part) && known.has(Number(part)));
  const sets = context.summary.sets.filter((set) => parts.includes(set.reading) && parts.includes(set.markSet));
  return [
    ...readings.map((seq) => refTo<Observation>(context, readingKey(Number(seq)))),
    ...sets.flatMap((set) => refsOfSet(context, set)),
  ];
}

function issueOf(context: Context, flag: Flag): Keyed<DetectedIssue> {
  const { answer } = flag;
  const about = implicated(context, flag);
  const action = answer?.answer === 'keep' ? `Kept: ${answer.reason}` : 'To be measured again';
  return {
    key: inVisit(context, `flag:${flag.id}`),
    resource: {
      resourceType: 'DetectedIssue',
      status: 'final',
      code: own('flag', flag.id.split(':')[0] ?? '', flag.what),
      severity: SEVERITY[flag.level],
      patient: refTo(context, PATIENT),
      identifiedDateTime: instant(context.summary.openedAt),
      ...(about.length === 0 ? {} : { implicated: about }),
      detail: `${flag.what} ${flag.why} ${flag.todo}`,
      ...(answer === undefined
        ? {}
        : {
            mitigation: [
              {
                action: words(action),
                date: instant(answer.at),
                author: personRef(context, context.summary.clinician) as never,
              },
            ],
          }),
    },
  };
}

function procedureOf(context: Context, clock: ClockRow): Keyed<Procedure> {
  const status = clock.struck ? 'stopped' : clock.outAt === undefined ? 'in-progress' : 'completed';
  const end = clock.outAt === undefined ? {} : { end: instant(Math.max(clock.outAt, clock.startedAt)) };
  return {
    key: inVisit(context, `clock:${clock.id}`),
    resource: {
      resourceType: 'Procedure',
      status,
      code: own('step', clock.clock, `${clock.label}, attempt ${clock.attempt}`),
      subject: refTo(context, PATIENT),
      encounter: refTo(context, here(context)),
      performedPeriod: { start: instant(clock.startedAt), ...end },
      ...(clock.name.trim() === '' ? {} : { usedReference: [refTo(context, materialKey(clock))] }),
      ...(clock.findings.length === 0
        ? {}
        : { note: clock.findings.map((found) => ({ text: `${found.id}: by ${Math.round(found.byMs / 1000)} s` })) }),
    },
  };
}

/** Everything measured and done, in the order of the record. */
export function measured(context: Context): readonly Keyed[] {
  const { summary } = context;
  return [
    ...context.rows.map((row) => observationOf(context, row)),
    ...summary.sets.flatMap((set) => setObservation(context, set)),
    ...spaceObservation(context),
    ...summary.computed.filter((row) => row.id !== SPACE).map((row) => computedObservation(context, row)),
    ...summary.flags.map((flag) => issueOf(context, flag)),
    ...summary.clocks.map((clock) => procedureOf(context, clock)),
  ];
}
