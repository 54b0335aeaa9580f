/** Promise: the people of the practice stand ready wherever a visit is begun, and who did it goes on record. */
import { beforeAll, describe, expect, it } from 'vitest';
import { peopleIn } from '../../src/app/people.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { fakeApp, type FakeApp } from '../helpers/app.ts';

const model = (app: FakeApp) => app.runtime.model.getState();
const people = [
  { initials: 'KV', role: 'clinician' },
  { initials: 'BR', role: 'assistant' },
] as const;

async function until(app: FakeApp, there: () => boolean): Promise<void> {
  for (let i = 0; i < 50 && !there(); i += 1) await app.pass(20);
  expect(there()).toBe(true);
}

beforeAll(async () => {
  await Promise.all([import('../../src/app/visit-kit.ts'), import('../../src/app/desk.ts')]);
  await import('../../src/domain/protocol/index.ts');
});

describe('people of the practice', () => {
  it('stand on the first screen at once, after they were saved and in a new page', async () => {
    const app = await fakeApp();
    app.runtime.go('practice');
    await until(app, () => model(app).own !== undefined);
    app.runtime.askOwn({ ask: 'savePractice', practice: { ...defaultPractice, people } });
    await until(app, () => model(app).said !== '');
    app.runtime.go('cases');
    expect(model(app).people).toEqual(people);
    const next = await app.reload(1000);
    await until(next, () => (model(next).people ?? []).length > 0);
    expect(model(next).people).toEqual(people);
  });

  it('a visit done by another clinician says so on the case line, from the record', async () => {
    const app = await fakeApp();
    app.runtime.newCase({ code: 'X', clinician: 'KV', assistant: 'BR', demo: false });
    await until(app, () => model(app).step !== undefined);
    for (const intent of ['goto:signoff-clinician', 'sign:KV', 'reason:not-possible']) app.runtime.press(intent);
    await until(app, () => model(app).step?.mode === 'closed');
    app.runtime.openVisit({ visit: 2, clinician: 'LM', assistant: 'BR' });
    await until(app, () => model(app).summary?.visit === 2);
    expect(model(app).caseLine?.map(({ people: who, otherClinician }) => [who, otherClinician])).toEqual([
      ['KV, BR', undefined],
      ['LM, BR', true],
      [undefined, undefined],
      [undefined, undefined],
      [undefined, undefined],
    ]);
  });
});

describe('a stored list is looked at before it is shown', () => {
  it.each([
    [undefined, []],
    [{}, []],
    [{ people: 'KV' }, []],
    [{ people: [{ initials: 'KV', role: 'owner' }, { initials: 7, role: 'clinician' }, null, people[0]] }, [people[0]]],
    [{ people }, people],
  ])('%j', (stored, found) => {
    expect(peopleIn(stored)).toEqual(found);
  });
});
