/** What is ordered: a device request for each arch, a task for each line of the order. */
import type { Annotation, DeviceRequest, DeviceRequestParameter, Task } from '@medplum/fhirtypes';
import { archesOf, type Arch } from '../domain/summary/arches.ts';
import { questionNotes, returnNotes, standing } from './fhir-bench.ts';
import { encounterKey, instant, inVisit, refTo, type Context, type Keyed } from './fhir-context.ts';
import { LAB, PATIENT, personRef } from './fhir-people.ts';
import { mmQuantity, own, OWN } from './fhir-terms.ts';
import { keptAsMeasured } from './sheet-parts.ts';

const requestKey = (arch: Arch) => `request:${arch}`;

/** None at a later visit that asks for no change: it is mounted at the height that was kept. */
function parameters({ summary }: Context): DeviceRequestParameter[] {
  const { vertical } = summary;
  if (keptAsMeasured(summary)) return [];
  const range = (id: string, text: string, [low, high]: readonly [number, number]): DeviceRequestParameter => ({
    code: own('parameter', id, text),
    valueRange: { low: mmQuantity(low), high: mmQuantity(high) },
  });
  return [
    {
      code: own('parameter', 'space', 'Space between rest and closed wanted'),
      valueQuantity: mmQuantity(vertical.targetSpaceMm),
    },
    ...(vertical.targetHeightMm === undefined
      ? []
      : [
          {
            code: own('parameter', 'height', 'Height wanted between the marks'),
            valueQuantity: mmQuantity(vertical.targetHeightMm),
          },
        ]),
    ...(vertical.lab === undefined
      ? []
      : [
          range('incisors', 'Change between the rims at the incisors; minus closes', vertical.lab.incisalMm),
          range('pin', 'Change at the incisal pin; minus closes', vertical.lab.pinMm),
        ]),
  ];
}

const noted = (note: readonly Annotation[]): { note?: Annotation[] } => (note.length === 0 ? {} : { note: [...note] });

function requestOf(context: Context, arch: Arch): Keyed<DeviceRequest> {
  const { summary, view } = context;
  const parameter = parameters(context);
  return {
    key: requestKey(arch),
    resource: {
      resourceType: 'DeviceRequest',
      groupIdentifier: { system: `${OWN}:case`, value: view.log.caseId },
      status: 'active',
      intent: 'order',
      codeCodeableConcept: own('prosthesis', `complete-denture-${arch}`, `Complete denture, ${arch} jaw`),
      ...(parameter.length === 0 ? {} : { parameter }),
      subject: refTo(context, PATIENT),
      encounter: refTo(context, encounterKey(summary.visitName)),
      authoredOn: instant(summary.closedAt ?? summary.openedAt),
      requester: personRef(context, summary.clinician),
      performer: refTo(context, LAB),
      ...noted([...summary.cautions.map((text) => ({ text })), ...returnNotes(context), ...questionNotes(context, '')]),
    },
  };
}

function taskOf(context: Context, line: Context['summary']['labWork'][number], place: number): Keyed<Task> {
  const { summary } = context;
  const arches = archesOf(context.view);
  const at = instant(summary.closedAt ?? summary.openedAt);
  const bench = summary.bench?.lines[place];
  return {
    key: inVisit(context, `task:${line.id}`),
    resource: {
      resourceType: 'Task',
      identifier: [{ system: `${OWN}:order-line`, value: `${place + 1}` }],
      basedOn: arches.map((arch) => refTo(context, requestKey(arch))),
      ...standing(context, place),
      intent: 'order',
      code: own('order-line', line.id, line.text),
      description: line.detail === undefined ? line.text : `${line.text} ${line.detail}`,
      focus: refTo(context, requestKey(arches[0] ?? 'upper')),
      for: refTo(context, PATIENT),
      encounter: refTo(context, encounterKey(summary.visitName)),
      authoredOn: at,
      requester: personRef(context, summary.clinician),
      owner: refTo(context, LAB),
      ...(line.at === undefined ? {} : { restriction: { period: { end: instant(line.at) } } }),
      ...noted(questionNotes(context, bench?.id)),
    },
  };
}

/** The order. */
export function ordered(context: Context): readonly Keyed[] {
  return [
    ...archesOf(context.view).map((arch) => requestOf(context, arch)),
    ...context.summary.labWork.map((line, place) => taskOf(context, line, place)),
  ];
}
