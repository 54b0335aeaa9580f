// @vitest-environment node
import type { Device, DeviceRequest, Procedure, Task } from '@medplum/fhirtypes';
import { describe, expect, it, vi } from 'vitest';
import { answered, before, LOT } from '../answered.ts';
import { bundleOf } from './bundle.ts';
import { validators } from './validators.ts';

vi.setConfig({ testTimeout: 60_000 });

const bundle = await bundleOf(answered, { pdf: new TextEncoder().encode('%PDF-1.7') });
const resources = (bundle.entry ?? []).map((entry) => entry.resource);
const tasks = resources.filter((one): one is Task => one?.resourceType === 'Task');
const devices = resources.filter((one): one is Device => one?.resourceType === 'Device');
const task = (line: string) => tasks.find((one) => one.code?.coding?.[0]?.code === line);

describe('a bundle of a case that the laboratory has written to', () => {
  it.each(Object.entries(validators))('%s has nothing against', (_name, validate) => {
    expect(validate(bundle)).toEqual([]);
  });

  it('says of each line where it stands: done, waiting for an answer, or received', () => {
    expect(task('trim')).toMatchObject({ status: 'completed', businessStatus: { text: 'done at the bench by MT' } });
    expect(task('trim')?.executionPeriod?.end).toBe(task('trim')?.lastModified);
    expect(task('border')).toMatchObject({
      status: 'on-hold',
      statusReason: { text: 'The laboratory asks: How short at the back?' },
    });
    expect(task('border')?.note?.map((note) => note.text)).toEqual(['The laboratory asks: How short at the back?']);
    // Ticked and taken back again.
    expect(task('relief')?.status).toBe('received');
    expect(tasks).toHaveLength(answered.summary.labWork.length);
  });

  it('asks for everything while the laboratory has written nothing', async () => {
    const first = await bundleOf(before);
    const all = (first.entry ?? [])
      .map((entry) => entry.resource)
      .filter((one): one is Task => one?.resourceType === 'Task');
    expect(new Set(all.map((one) => one.status))).toEqual(new Set(['requested']));
  });

  it('carries questions about the whole work, answers and returns with the order, each by whoever wrote it', () => {
    const order = resources.find((one): one is DeviceRequest => one?.resourceType === 'DeviceRequest');
    const notes = (order?.note ?? []).filter((note) => note.authorReference !== undefined);
    expect(notes.map((note) => note.text)).toEqual([
      'Work returned: trays only',
      'The laboratory asks: Which rim first?',
      'The clinic answers: The upper one.',
    ]);
    const named = new Map(bundle.entry?.map((entry) => [entry.fullUrl, entry.resource]));
    const initials = notes.map(({ authorReference }) => {
      const person = named.get(authorReference?.reference ?? '');
      return person?.resourceType === 'Practitioner' ? person.identifier?.[0]?.value : undefined;
    });
    expect(initials).toEqual(['MT', 'MT', 'KV']);
  });

  it('names the lot of each package that was used, and its last day', () => {
    const packages = devices.filter((one) => one.lotNumber !== undefined);
    expect(packages.length).toBeGreaterThan(0);
    for (const one of packages) expect(one).toMatchObject({ lotNumber: LOT.lot, expirationDate: LOT.expires });
    const used = resources
      .filter((one): one is Procedure => one?.resourceType === 'Procedure')
      .flatMap((one) => (one.usedReference ?? []).map((ref) => ref.reference));
    const urls = bundle.entry?.filter(({ resource }) => packages.some((one) => one.id === resource?.id)) ?? [];
    for (const { fullUrl } of urls) expect(used).toContain(fullUrl);
  });
});
