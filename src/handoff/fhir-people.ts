/** Patient under a pseudonym, people by their initials, the two places of work, visits, and things used. */
import type { Device, Encounter, Organization, Patient, Practitioner } from '@medplum/fhirtypes';
import { parseDay } from '../domain/measure/calendar.ts';
import type { ClockRow } from '../domain/summary/types.ts';
import { encounterKey, instant, refTo, type Context, type Keyed } from './fhir-context.ts';
import { AMBULATORY, own, OWN, PSEUDONYMOUS, words } from './fhir-terms.ts';

export const PATIENT = 'patient';
export const CLINIC = 'organization:clinic';
export const LAB = 'organization:lab';
export const CALIPER = 'device:caliper';

const initialsKey = (initials: string) => `practitioner:${initials}`;
type Thing = Pick<ClockRow, 'name' | 'material'>;

/** One package of a material is one thing: another lot is another. */
export const materialKey = ({ name, material }: Thing): string =>
  `material:${[name, material?.lot ?? '', material?.expires ?? ''].join('|')}`;

/** Somebody known by initials; nobody when there are none. */
export function personRef(context: Context, initials: string) {
  return initials.trim() === ''
    ? refTo<Organization>(context, CLINIC)
    : refTo<Practitioner>(context, initialsKey(initials));
}

function patient({ summary }: Context): Keyed<Patient> {
  return {
    key: PATIENT,
    resource: {
      resourceType: 'Patient',
      meta: { security: [PSEUDONYMOUS] },
      identifier: [{ use: 'secondary', system: `${OWN}:case`, value: summary.caseCode || 'unnamed' }],
    },
  };
}

function everybody({ summary, view }: Context): readonly string[] {
  const opened = view.visits.flatMap(({ opened: { body } }) => [body.clinician, body.assistant]);
  const bench = (summary.bench?.log ?? []).map((entry) => entry.by);
  const signed = summary.signed.map((one) => one.initials);
  const all = [...opened, summary.clinician, summary.assistant, ...signed, ...bench];
  return [...new Set(all.filter((initials) => initials.trim() !== ''))];
}

function practitioner(initials: string): Keyed<Practitioner> {
  return {
    key: initialsKey(initials),
    resource: { resourceType: 'Practitioner', identifier: [{ system: `${OWN}:initials`, value: initials }] },
  };
}

const organization = (key: string, name: string): Keyed<Organization> => ({
  key,
  resource: { resourceType: 'Organization', name },
});

function encounters(context: Context): readonly Keyed<Encounter>[] {
  return context.view.visits.map(({ opened, closed }, place) => ({
    key: encounterKey(context.visits[place] ?? ''),
    resource: {
      resourceType: 'Encounter',
      status: closed === undefined ? 'in-progress' : 'finished',
      class: AMBULATORY,
      type: [own('visit', String(opened.body.visit), context.visits[place] ?? '')],
      subject: refTo(context, PATIENT),
      participant: [{ individual: personRef(context, opened.body.clinician) as never }],
      period: { start: instant(opened.at), ...(closed === undefined ? {} : { end: instant(closed.at) }) },
      serviceProvider: refTo(context, CLINIC),
    },
  }));
}

function deviceOf(thing: Thing): Keyed<Device> {
  const { name, material } = thing;
  const expires = material?.expires;
  return {
    key: materialKey(thing),
    resource: {
      resourceType: 'Device',
      ...(material?.lot === undefined || material.lot.trim() === '' ? {} : { lotNumber: material.lot.trim() }),
      ...(expires === undefined || parseDay(expires) === undefined ? {} : { expirationDate: expires }),
      deviceName: [{ name, type: 'user-friendly-name' }],
      type: words(name),
    },
  };
}

function devices({ summary }: Context): readonly Keyed<Device>[] {
  const named = summary.clocks.filter(({ name }) => name.trim() !== '');
  const things = new Map(named.map((thing) => [materialKey(thing), thing]));
  return [
    {
      key: CALIPER,
      resource: { resourceType: 'Device', type: words('Caliper or rule of the clinic, as used at the visit') },
    },
    ...[...things.values()].map(deviceOf),
  ];
}

/** Who and where, the visits, the instruments and materials. */
export function peopleAndThings(context: Context): readonly Keyed[] {
  return [
    patient(context),
    ...everybody(context).map((initials) => practitioner(initials)),
    organization(CLINIC, 'Clinic'),
    organization(LAB, 'Dental laboratory'),
    ...encounters(context),
    ...devices(context),
  ];
}
