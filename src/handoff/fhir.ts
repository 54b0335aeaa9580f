/**
 * The case as a FHIR R4 (4.0.1) document bundle, for other software. Only what was measured, ordered and answered; no name,
 * no birth date. The same case gives the same ids, so a bundle sent twice (PUT by id) replaces itself.
 */
import type {
  Binary,
  Bundle,
  BundleEntry,
  Composition,
  CompositionSection,
  DocumentReference,
} from '@medplum/fhirtypes';
import type { Outcome } from './case-file.types.ts';
import {
  contextOf,
  encounterKey,
  instant,
  inVisit,
  refTo,
  type Context,
  type FhirInput,
  type Keyed,
} from './fhir-context.ts';
import { withIds } from './fhir-ids.ts';
import { measured } from './fhir-measured.ts';
import { ordered } from './fhir-ordered.ts';
import { CLINIC, PATIENT, peopleAndThings, personRef } from './fhir-people.ts';
import { NOTE_TYPE, words } from './fhir-terms.ts';
import { linesNarrative, sectionNarrative } from './narrative.ts';

export type { FhirInput } from './fhir-context.ts';

const PDF = 'pdf';

function toBase64(bytes: Uint8Array): string {
  let binary = '';
  for (let i = 0; i < bytes.length; i += 8192) binary += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(binary);
}

/** The printed sheet as it was handed over. R4's Attachment.hash is SHA-1, so none is given. */
function printed(context: Context): readonly Keyed[] {
  const { pdf, summary, madeAt, sheet } = context;
  if (pdf === undefined) return [];
  const binary: Binary = { resourceType: 'Binary', contentType: 'application/pdf', data: toBase64(pdf) };
  const document: DocumentReference = {
    resourceType: 'DocumentReference',
    status: 'current',
    type: words('Lab sheet'),
    subject: refTo(context, PATIENT),
    date: instant(madeAt),
    author: [personRef(context, summary.clinician)],
    content: [
      {
        attachment: {
          contentType: 'application/pdf',
          url: refTo(context, inVisit(context, `${PDF}:bytes`)).reference ?? '',
          size: pdf.length,
          title: sheet.title,
        },
      },
    ],
    context: { encounter: [refTo(context, encounterKey(summary.visitName))] },
  };
  return [
    { key: inVisit(context, PDF), resource: document },
    { key: inVisit(context, `${PDF}:bytes`), resource: binary },
  ];
}

/** Which resources a section of the sheet speaks of. */
const SECTION_OF: Readonly<Record<string, readonly string[]>> = {
  work: ['DeviceRequest', 'Task'],
  clocks: ['Procedure'],
  flags: ['DetectedIssue'],
  readings: ['Observation'],
  signed: ['DocumentReference'],
};

function sectionsOf(context: Context, all: readonly Keyed[]): CompositionSection[] {
  return context.sheet.sections.map((section) => {
    const types = SECTION_OF[section.id] ?? [];
    const entries = all.filter(({ resource }) => types.includes(resource.resourceType));
    return {
      title: section.title,
      text: sectionNarrative(section),
      ...(entries.length === 0 ? {} : { entry: entries.map(({ key }) => refTo(context, key)) }),
    };
  });
}

function composition(context: Context, all: readonly Keyed[]): Keyed<Composition> {
  const { summary, sheet, digest, madeAt } = context;
  const signed = summary.signed.map(({ role, initials, at }) => ({
    mode: role === 'clinician' ? ('professional' as const) : ('personal' as const),
    time: instant(at),
    party: personRef(context, initials),
  }));
  const head = sheet.head.map(({ label, value }) => `${label}: ${value}`);
  const resource: Composition = {
    resourceType: 'Composition',
    ...(digest === undefined ? {} : { identifier: { system: 'urn:ietf:rfc:3986', value: `urn:sha256:${digest}` } }),
    status: summary.signed.some((one) => one.role === 'clinician') ? 'final' : 'preliminary',
    type: NOTE_TYPE,
    subject: refTo(context, PATIENT),
    encounter: refTo(context, encounterKey(summary.visitName)),
    date: instant(madeAt),
    author: [personRef(context, summary.clinician)],
    title: sheet.title,
    text: linesNarrative([...head, ...sheet.foot]),
    ...(signed.length === 0 ? {} : { attester: signed }),
    custodian: refTo(context, CLINIC),
    section: sectionsOf(context, all),
  };
  return { key: inVisit(context, 'composition'), resource };
}

function entryOf({ idOf }: Context, { key, resource }: Keyed): BundleEntry {
  const id = idOf(key);
  return { fullUrl: `urn:uuid:${id}`, resource: { ...resource, id } };
}

function bundleOf(context: Context): Bundle {
  const all = [...peopleAndThings(context), ...ordered(context), ...measured(context), ...printed(context)];
  const bundle: Bundle = {
    resourceType: 'Bundle',
    id: context.idOf(inVisit(context, 'bundle')),
    identifier: { system: 'urn:ietf:rfc:3986', value: `urn:uuid:${context.idOf(inVisit(context, 'bundle'))}` },
    type: 'document',
    timestamp: instant(context.madeAt),
    entry: [composition(context, all), ...all].map((one) => entryOf(context, one)),
  };
  return bundle;
}

/** The whole bundle. Same input, same bundle, byte for byte. Refuses a case with a time that is in no calendar. */
export async function fhirBundle(input: FhirInput): Promise<Outcome<Bundle>> {
  try {
    const value = await withIds(input.view.log.caseId, (idOf) => bundleOf(contextOf(input, idOf)));
    return { ok: true, value };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return {
      ok: false,
      reason: 'malformed',
      where: 'at',
      text: 'A time in this case is in no calendar; no bundle was made.',
    };
  }
}
