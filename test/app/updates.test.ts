import { describe, expect, it } from 'vitest';
import { createUpdates, namesOfLocks } from '../../src/app/updates.ts';

function setUp(locks: string[] = []) {
  const told: unknown[] = [];
  const worker = Object.assign(new EventTarget(), { postMessage: (message: unknown) => told.push(message) });
  const registration = Object.assign(new EventTarget(), { waiting: worker, installing: null, update: async () => {} });
  const workers = Object.assign(new EventTarget(), { controller: {}, register: async () => registration });
  let reloads = 0;
  const updates = createUpdates({
    workers: workers as unknown as ServiceWorkerContainer,
    lockNames: () => Promise.resolve(locks),
    reload: () => (reloads += 1),
  });
  let changes = 0;
  updates.start(() => (changes += 1));
  const activate = () => workers.dispatchEvent(new Event('controllerchange'));
  return { updates, told, activate, reloads: () => reloads, changes: () => changes };
}

const settle = () => new Promise((resolve) => setImmediate(resolve));

describe('a newer version that waits', () => {
  it('is seen, and taken when no other window has a case open', async () => {
    const { updates, told, activate, reloads, changes } = setUp(['rimwise-case-a', 'rimwise-journal']);
    await settle();
    expect([updates.available(), changes()]).toEqual([true, 1]);
    updates.setIdle(false);
    expect(await updates.take('a')).toBe('');
    expect(told).toEqual([{ type: 'SKIP_WAITING' }]);
    activate();
    expect(reloads()).toBe(1);
  });

  it.each([
    ['another case', ['rimwise-case-a', 'rimwise-case-b']],
    ['the same case, followed', ['rimwise-case-a', 'rimwise-case-a']],
  ])('is not taken while another window has %s open', async (_what, locks) => {
    const { updates, told } = setUp(locks);
    await settle();
    expect(await updates.take('a')).toMatch(/another window/);
    expect(told).toEqual([]);
  });

  it('taken elsewhere does not reload a window with a case; one at the list follows', async () => {
    const busy = setUp();
    busy.updates.setIdle(false);
    busy.activate();
    expect(busy.reloads()).toBe(0);
    const idle = setUp();
    idle.activate();
    expect(idle.reloads()).toBe(1);
  });
});

it('locks are counted held or waited for, and none where there are no locks', async () => {
  const query = async () => ({ held: [{ name: 'a' }], pending: [{ name: 'b' }, {}] });
  expect(await namesOfLocks({ query })).toEqual(['a', 'b']);
  expect(await namesOfLocks(undefined)).toEqual([]);
});
