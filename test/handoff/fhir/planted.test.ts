// @vitest-environment node
/**
 * Mistakes planted one at a time, and who notices. The table says why five look: none of them would do alone.
 */
import { describe, expect, it, vi } from 'vitest';
import { recorded } from '../cases.ts';
import { Bench, bundleOf, type Loose } from './bundle.ts';
import { validators } from './validators.ts';

vi.setConfig({ testTimeout: 60_000 });

const whole = await bundleOf(recorded('troubled'), { pdf: new TextEncoder().encode('%PDF-1.7') });

type Who = keyof typeof validators;
type Plant = (bench: Bench) => void;

const set =
  (type: string, key: string, value: unknown): Plant =>
  (bench) => {
    bench.first(type)[key] = value;
  };
const drop =
  (type: string, key: string): Plant =>
  (bench) => {
    delete bench.first(type)[key];
  };
const top =
  (key: string, value?: unknown): Plant =>
  (bench) => {
    if (value === undefined) delete bench.bundle[key];
    else bench.bundle[key] = value;
  };
const inQuantity =
  (change: (quantity: Loose) => void): Plant =>
  (bench) =>
    change(bench.first('Observation')['valueQuantity'] as Loose);

const table: readonly (readonly [mistake: string, plant: Plant, noticed: readonly Who[]])[] = [
  ['required Observation.code missing', drop('Observation', 'code'), ['medplum', 'fhirJs', 'jsonSchema']],
  ['required Composition.title missing', drop('Composition', 'title'), ['medplum', 'fhirJs']],
  ['a number where text belongs', set('Composition', 'title', 7), ['medplum', 'jsonSchema']],
  ['text where a number belongs', inQuantity((q) => (q['value'] = '70.5')), ['medplum', 'fhirJs', 'jsonSchema']],
  ['unknown Observation.status', set('Observation', 'status', 'finished'), ['fhirJs', 'jsonSchema']],
  ['unknown Task.status', set('Task', 'status', 'open'), ['fhirJs', 'jsonSchema']],
  ['unknown DetectedIssue.severity', set('DetectedIssue', 'severity', 'grave'), ['fhirJs', 'jsonSchema']],
  ['unknown property', set('Observation', 'colour', 'blue'), ['medplum', 'fhirJs', 'jsonSchema']],
  ['document without identifier (bdl-9)', top('identifier'), ['medplum', 'invariants']],
  ['document without time (bdl-10)', top('timestamp'), ['medplum', 'invariants']],
  [
    'composition not first (bdl-11)',
    (bench) => bench.entries().push(bench.entries().shift()!),
    ['medplum', 'invariants'],
  ],
  [
    'the same full URL twice (bdl-7)',
    (bench) => (bench.entries()[2]!['fullUrl'] = bench.entries()[1]!['fullUrl']),
    ['medplum', 'invariants', 'ownLook'],
  ],
  ['section without content (cmp-1)', set('Composition', 'section', [{ title: 'Empty' }]), ['medplum', 'invariants']],
  ['unit code without system (qty-3)', inQuantity((q) => delete q['system']), ['invariants']],
  [
    'period that ends before it begins (per-1)',
    set('Encounter', 'period', { start: '2026-03-04T14:00:00Z', end: '2026-03-04T13:00:00Z' }),
    ['invariants'],
  ],
  ['a date that is none', set('Observation', 'effectiveDateTime', '2026-13-45'), ['medplum', 'jsonSchema']],
  ['a date as people write it', set('Observation', 'effectiveDateTime', '04.03.2026'), ['medplum', 'jsonSchema']],
  ['null', set('Observation', 'method', null), ['medplum', 'fhirJs']],
  ['a time without a zone', set('Observation', 'effectiveDateTime', '2026-03-04T13:30:00'), ['jsonSchema']],
  ['empty text', set('Composition', 'title', ''), ['medplum', 'jsonSchema']],
  ['an id with a blank', set('Observation', 'id', 'a b'), ['jsonSchema']],
  ['a list where one belongs', set('Observation', 'subject', [{ reference: 'x' }]), ['medplum', 'fhirJs', 'ownLook']],
  [
    'one where a list belongs',
    set('Observation', 'performer', { display: 'x' }),
    ['medplum', 'fhirJs', 'jsonSchema', 'invariants'],
  ],
  ['data that is no base64', set('Binary', 'data', '%%%'), ['medplum']],
  [
    'a reference that leads nowhere',
    set('Observation', 'subject', { reference: 'urn:uuid:00000000-0000-8000-8000-000000000000' }),
    ['ownLook'],
  ],
  ['a unit that is none', inQuantity((q) => (q['code'] = 'millimetre')), ['ownLook']],
  ['two values at once', set('Observation', 'valueString', 'seventy'), ['ownLook']],
  [
    'a script in the narrative',
    set('Composition', 'text', {
      status: 'generated',
      div: '<div xmlns="http://www.w3.org/1999/xhtml"><script>x</script></div>',
    }),
    ['ownLook'],
  ],
  [
    'a code that LOINC does not have',
    set('Composition', 'type', { coding: [{ system: 'http://loinc.org', code: '99999-0' }] }),
    ['ownLook'],
  ],
];

const noticing = (bundle: unknown): Who[] =>
  (Object.keys(validators) as Who[]).filter((who) => validators[who](bundle).length > 0);

it('the bundle before anything is planted passes all five', () => {
  expect(noticing(whole)).toEqual([]);
});

describe('planted', () => {
  it.each(table)('%s', (_mistake, plant, noticed) => {
    const bench = new Bench(whole);
    plant(bench);
    expect(noticing(bench.bundle)).toEqual(noticed);
  });

  it.each(Object.keys(validators) as Who[])('%s notices something that another one does not', (who) => {
    const others = (Object.keys(validators) as Who[]).filter((other) => other !== who);
    for (const other of others)
      expect(
        table.some(([, , noticed]) => noticed.includes(who) && !noticed.includes(other)),
        other,
      ).toBe(true);
  });
});
