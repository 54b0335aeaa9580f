// @vitest-environment node
import type { Bundle, Observation, Resource } from '@medplum/fhirtypes';
import { describe, expect, it, vi } from 'vitest';
import { foldCase } from '../../../src/domain/case/fold.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { readingRows } from '../../../src/domain/summary/rows.ts';
import { fhirBundle } from '../../../src/handoff/fhir.ts';
import { UCUM_CODE } from '../../../src/handoff/fhir-terms.ts';
import { escaped } from '../../../src/handoff/narrative.ts';
import { sheetModel } from '../../../src/handoff/sheet-model.ts';
import { sheetTimes } from '../../../src/handoff/sheet-times.ts';
import { DIGEST, recorded, recordedHandovers } from '../cases.ts';
import { oneOfEverything } from '../fixture.ts';
import { bundleOf, MADE } from './bundle.ts';
import { ownLook, validators } from './validators.ts';

vi.setConfig({ testTimeout: 60_000 });

const { summary, facts } = recorded('troubled');
const clean = recorded('clean');
const bundle = await bundleOf({ summary, facts }, { pdf: new TextEncoder().encode('%PDF-1.7') });
/** The recorded case with answers, flags and drawings of every sort. */
const atVisit1 = oneOfEverything.readings.map((row) => ({ ...row, visit: 'visit 1' }));
const full = await bundleOf({ summary: { ...oneOfEverything, visitName: 'visit 1' }, facts }, { rows: atVisit1 });

const all = <T extends Resource['resourceType']>(type: T, of: Bundle = bundle) =>
  (of.entry ?? []).map((entry) => entry.resource).filter((r) => r?.resourceType === type) as Extract<
    Resource,
    { resourceType: T }
  >[];

const later = await Promise.all(recordedHandovers().map((made) => bundleOf(made)));

const nothing = {
  sets: [],
  labWork: [],
  flags: [],
  clocks: [],
  computed: [],
  signed: [],
  cautions: [],
  clinician: '',
  vertical: { markSet: '', verdict: 'notYet', convention: 'rest', targetSpaceMm: 3 },
} as const;
const bundles: readonly (readonly [string, Bundle])[] = [
  ['the troubled visit with its PDF', bundle],
  ['the clean visit', await bundleOf(clean)],
  ['one of everything', full],
  ...later.map((made, i) => [`the hand-over after visit ${i + 1}`, made] as const),
  [
    'a visit in which nothing was done',
    await bundleOf({ summary: { ...oneOfEverything, ...nothing, visitName: 'visit 1' }, facts: facts.slice(0, 2) }),
  ],
];

describe.each(Object.entries(validators))('%s has nothing against', (_name, validate) => {
  it.each(bundles)('%s', (_case, made) => {
    expect(validate(made)).toEqual([]);
  });
});

describe('what is ordered', () => {
  const wanted = (of: Bundle) =>
    all('DeviceRequest', of).map(({ parameter }) => parameter?.map((one) => one.code?.coding?.[0]?.code));

  it('names a height to be made and a change where a record asks for them, as the sheet does, and at no later visit', () => {
    const asked = ['space', 'height', 'incisors', 'pin'];
    expect(wanted(bundle)).toEqual([asked, asked]);
    expect(later.slice(1).map(wanted)).toEqual([
      [undefined, undefined],
      [undefined, undefined],
    ]);
  });
});

describe('the bundle', () => {
  it('holds every reading, struck ones as entered in error with the reason', () => {
    const raw = all('Observation').filter(
      (o) => o.note?.[0]?.text?.startsWith('Called out') || o.note?.[0]?.text?.startsWith('Entered'),
    );
    expect(raw.map((o) => o.valueQuantity?.value)).toEqual(summary.readings.map((row) => row.value / 100));
    const struck = raw.filter((o) => o.status === 'entered-in-error');
    expect(struck).toHaveLength(summary.readings.filter((row) => row.struck !== undefined).length);
    expect(struck.map((o) => o.note?.[1]?.text)).toEqual([
      expect.stringMatching(/^Struck: corrected at 2026-03-04T13:54:/),
      expect.stringMatching(/^Struck: taken back at /),
    ]);
  });

  it('derives the accepted height from exactly its live readings', () => {
    const byUrl = new Map(bundle.entry?.map((entry) => [entry.fullUrl, entry.resource]));
    const accepted = all('Observation').find((o) => o.code.text === 'Rest height, accepted');
    const from = (accepted?.derivedFrom ?? []).map((ref) => byUrl.get(ref.reference) as Observation);
    expect(from.map((o) => [o.status, o.valueQuantity?.value])).toEqual(
      [70.5, 70, 71, 70.5, 70.5].map((v) => ['final', v]),
    );
    expect(accepted?.valueQuantity).toEqual({
      value: 70.5,
      unit: 'mm',
      system: 'http://unitsofmeasure.org',
      code: 'mm',
    });
  });

  it('orders one denture for each jaw, in one group, and gives the laboratory a task for each line', () => {
    const requests = all('DeviceRequest');
    expect(requests.map((r) => r.codeCodeableConcept?.text)).toEqual([
      'Complete denture, upper jaw',
      'Complete denture, lower jaw',
    ]);
    expect(new Set(requests.map((r) => r.groupIdentifier?.value)).size).toBe(1);
    expect(all('Task').map((task) => task.code?.text)).toEqual(summary.labWork.map((line) => line.text));
    expect(all('Task', full)[0]?.restriction?.period?.end).toBe('2026-03-03T08:25:00.000Z');
  });

  it('says what disagrees, how gravely, about which readings, and how it was answered', () => {
    const issues = all('DetectedIssue', full);
    expect(issues.map((issue) => issue.severity)).toEqual(['moderate', 'low']);
    expect(issues.map((issue) => issue.mitigation?.[0]?.action.text)).toEqual([undefined, 'Kept: Patient tired']);
  });

  it('names nobody: a pseudonym and initials only', () => {
    for (const patient of all('Patient'))
      expect(Object.keys(patient).toSorted()).toEqual(['id', 'identifier', 'meta', 'resourceType']);
    for (const person of all('Practitioner'))
      expect(Object.keys(person).toSorted()).toEqual(['id', 'identifier', 'resourceType']);
  });

  it('carries the digest, the printed sheet, and each visit', () => {
    expect(all('Composition')[0]?.identifier?.value).toBe(`urn:sha256:${DIGEST}`);
    expect(Buffer.from(all('Binary')[0]?.data ?? '', 'base64').toString()).toBe('%PDF-1.7');
    expect(all('Encounter')).toHaveLength(1);
    expect(all('Composition')[0]?.status).toBe('final');
    expect(all('Composition', full)[0]?.section?.map((s) => s.title)).toContain('What does not agree');
  });

  it('is the same each time, ids included; another case has no id in common', async () => {
    expect(JSON.stringify(await bundleOf({ summary, facts }, { pdf: new TextEncoder().encode('%PDF-1.7') }))).toBe(
      JSON.stringify(bundle),
    );
    const other = await bundleOf({ summary, facts: facts.map((fact) => ({ ...fact, caseId: 'another' })) });
    const ids = (of: Bundle) => (of.entry ?? []).map((entry) => entry.resource?.id ?? '');
    expect(ids(other).filter((id) => ids(bundle).includes(id))).toEqual([]);
    for (const id of ids(bundle))
      expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it('is refused for a case with a time that is in no calendar', async () => {
    const view = foldCase('c', facts);
    const sheet = sheetModel(summary, sheetTimes('UTC'));
    const rows = readingRows(view, readingDefs);
    const input = { summary: { ...summary, openedAt: 1e300 }, view, rows, sheet, madeAt: MADE };
    expect(await fhirBundle(input)).toMatchObject({ ok: false, reason: 'malformed' });
  });
});

describe('narratives', () => {
  it('escape whatever people wrote', async () => {
    const nasty = '<script>alert("x")</script>&\u0000';
    const notes = [{ at: MADE, step: 'a', text: nasty, source: 'keypad', struck: false }];
    const made = await bundleOf({ summary: { ...summary, notes, caseCode: '<b>' }, facts });
    const divs = JSON.stringify(made.entry?.[0]?.resource);
    expect(divs).toContain('&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;&amp;[U+0000]');
    expect(divs).not.toContain('<script');
    for (const validate of Object.values(validators)) expect(validate(made)).toEqual([]);
  });

  it.each([
    ['<&>"\'', '&lt;&amp;&gt;&quot;&#39;'],
    ['\u0007\ufffe', '[U+0007][U+FFFE]'],
    ['\ud800', '[U+D800]'],
    ['Größe 😀', 'Größe 😀'],
  ])('%j becomes %j', (text, out) => {
    expect(escaped(text)).toBe(out);
  });
});

it('every unit of the app has a UCUM code that the library of its keepers knows', () => {
  for (const code of Object.values(UCUM_CODE))
    expect(ownLook({ a: { system: 'http://unitsofmeasure.org', code } }), code).toEqual([]);
  for (const code of ['millimetre', 'MM', 'sec', '°C', 'degrees'])
    expect(ownLook({ a: { system: 'http://unitsofmeasure.org', code } }), code).toHaveLength(1);
});
