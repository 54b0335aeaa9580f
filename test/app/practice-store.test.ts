/** The practice's own settings and visits: kept, checked, used by cases opened from then on, and by no other. */
import { beforeAll, describe, expect, it } from 'vitest';
import { openNew, openStored, openVisit } from '../../src/app/visit-kit.ts';
import { PRACTICE_KEY } from '../../src/app/people.ts';
import { PracticeStore, PROTOCOLS_KEY } from '../../src/app/practice-store.ts';
import type { OpenCase, Opened } from '../../src/app/open-case.ts';
import { dropStep, rewordStep } from '../../src/domain/protocol/edit.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { START } from '../helpers/visit.ts';

function disk(full = false) {
  const kept = new Map<string, unknown>();
  const settings = {
    read: (name: string) => Promise.resolve({ ok: true as const, value: kept.get(name) }),
    write: (name: string, value: unknown) => {
      if (full) return Promise.resolve({ ok: false as const, reason: 'full' as const, why: 'The disk is full.' });
      kept.set(name, structuredClone(value));
      return Promise.resolve({ ok: true as const });
    },
  };
  return { kept, settings };
}

async function fresh(settings: ReturnType<typeof disk>['settings']): Promise<PracticeStore> {
  const store = new PracticeStore(settings);
  expect(await store.read()).toBe('');
  return store;
}

const head = { id: 'c1', code: 'X', clinician: 'KV', assistant: 'BR', demo: false, language: 'en' } as const;
const host = (store: PracticeStore) => ({ now: () => START, practice: store.practice, protocols: store.protocols });

function opened(result: Opened): OpenCase {
  if (!result.ok) throw new Error(result.text);
  return result.open;
}

const titled = (title: string) => rewordStep(visit1, 'marks', { title, lines: ['Two dots'], caution: '' });
const titleIn = (open: OpenCase) => {
  open.session.hear({ source: 'touch', text: 'goto:marks', alternatives: [], at: START });
  return open.parts(START).step?.title;
};

beforeAll(async () => {
  await import('../../src/domain/protocol/index.ts');
});

describe('settings of the practice', () => {
  it('are the starting ones until others are saved, and come back after a reload', async () => {
    const { settings } = disk();
    const store = await fresh(settings);
    expect(store.practice).toEqual(defaultPractice);
    expect(await store.savePractice({ ...defaultPractice, restSpaceTarget: 250 })).toEqual({ ok: true });
    expect((await fresh(settings)).practice.restSpaceTarget).toBe(250);
  });

  it('are refused with path and reason when they make no sense; what was before stays', async () => {
    const { settings } = disk();
    const store = await fresh(settings);
    const kept = await store.savePractice({ ...defaultPractice, restSpaceTarget: 9000 });
    expect(kept).toMatchObject({ ok: false });
    expect(kept.ok ? '' : kept.text).toContain('restSpaceTarget: 90 is not between 1 and 8 mm');
    expect((await fresh(settings)).practice).toEqual(defaultPractice);
  });

  it('say so when the disk is full or what is stored cannot be read', async () => {
    const full = await fresh(disk(true).settings);
    expect(await full.savePractice(defaultPractice)).toEqual({ ok: false, text: 'The disk is full.' });
    const { kept, settings } = disk();
    kept.set(PRACTICE_KEY, { restSpaceTarget: 'wide' });
    kept.set(PROTOCOLS_KEY, [{ id: 'x' }]);
    const store = new PracticeStore(settings);
    expect(await store.read()).toMatch(/settings of the practice cannot be used: .* A protocol of the practice cannot/);
    expect(store.practice).toEqual(defaultPractice);
  });

  it('travel as a file to another device', async () => {
    const store = await fresh(disk().settings);
    await store.savePractice({ ...defaultPractice, people: [{ initials: 'KV', role: 'clinician' }] });
    const other = await fresh(disk().settings);
    expect(await other.importPractice(store.practiceFile())).toEqual({ ok: true });
    expect(other.practice).toEqual(store.practice);
    expect(await other.importPractice('{')).toEqual({
      ok: false,
      text: 'The file was not taken: This file is not JSON.',
    });
  });

  it('hold for cases opened from then on; a case keeps those it was opened under', async () => {
    const store = await fresh(disk().settings);
    const before = await openNew(head, host(store));
    await store.savePractice({ ...defaultPractice, restSpaceTarget: 250 });
    const after = await openNew({ ...head, id: 'c2' }, host(store));
    const target = (open: OpenCase) => open.parts(START).summary?.vertical.targetSpaceMm;
    expect(target(opened(after.opened))).toBe(2.5);
    expect(target(opened(await openStored('c1', before.facts, host(store))))).toBe(3);
  });
});

describe('visits of the practice', () => {
  it('a saved version is used for the next visit opened; a running visit keeps its own, also after a reload', async () => {
    const { settings } = disk();
    const store = await fresh(settings);
    const shipped = await openNew(head, host(store));
    expect(await store.saveProtocol(visit1, titled('Dot nose and chin'))).toEqual({ ok: true });
    const second = await openNew({ ...head, id: 'c2' }, host(store));
    expect(await store.saveProtocol(await store.latest(1), titled('Dot the skin'))).toEqual({ ok: true });
    const again = await fresh(settings);
    expect(again.protocols.map(({ id, version }) => `${id}@${version}`)).toEqual(['visit-1-own@2', 'visit-1-own@3']);
    const third = await openNew({ ...head, id: 'c3' }, host(again));
    const reopened = async (id: string, facts: readonly unknown[]) =>
      titleIn(opened(await openStored(id, facts, host(again))));
    const original = visit1.steps.find((step) => step.id === 'marks')!.title;
    expect(await reopened('c1', shipped.facts)).toBe(original);
    expect(await reopened('c2', second.facts)).toBe('Dot nose and chin');
    expect(titleIn(opened(third.opened))).toBe('Dot the skin');
  });

  it('a draft that cannot be used is not kept, and why is said', async () => {
    const { kept, settings } = disk();
    const store = await fresh(settings);
    const result = await store.saveProtocol(visit1, dropStep(visit1, 'signoff-clinician'));
    expect(result.ok ? '' : result.text).toContain('must be the sign-off that closes the visit');
    expect(kept.has(PROTOCOLS_KEY)).toBe(false);
  });

  it('a protocol from a file becomes the next version', async () => {
    const store = await fresh(disk().settings);
    const file = store.protocolFile(titled('Dot nose and chin'));
    expect(await store.importProtocol(file)).toEqual({ ok: true });
    expect(await store.latest(1)).toMatchObject({ id: 'visit-1-own', version: 2 });
    const broken = await store.importProtocol(file.replace('"visit": 1', '"visit": 9'));
    expect(broken.ok ? '' : broken.text).toContain('The file was not taken: visit: ');
  });

  it('a further visit brings the lots of its day; conventions stay those of the case', async () => {
    const store = await fresh(disk().settings);
    const { facts } = await openNew(head, host(store));
    const first = opened(await openStored('c1', facts, host(store)));
    for (const text of ['goto:signoff-clinician', 'sign:KV', 'reason:not-possible'])
      first.session.hear({ source: 'touch', text, alternatives: [], at: START });
    const materials = defaultPractice.materials.map((m) => ({ ...m, lot: 'B 7' }));
    await store.savePractice({ ...defaultPractice, restSpaceTarget: 250, materials });
    const next = { visit: 2, clinician: 'LM', assistant: 'BR', language: 'en' } as const;
    const second = opened((await openVisit(first, next, host(store))).opened);
    second.session.hear({ source: 'touch', text: 'goto:upper-final', alternatives: [], at: START });
    const { step, summary } = second.parts(START);
    expect(step?.materials?.every((m) => 'mixS' in m && m.lot === 'B 7')).toBe(true);
    expect(summary?.vertical.targetSpaceMm).toBe(3);
    const all = JSON.parse(JSON.stringify(second.session.view().log.facts)) as unknown[];
    const again = opened(await openStored('c1', all, host(store)));
    again.session.hear({ source: 'touch', text: 'goto:upper-final', alternatives: [], at: START });
    expect(again.parts(START).step?.materials).toEqual(step?.materials);
  });
});
