import { describe, expect, it } from 'vitest';
import type { FakeApp } from '../helpers/app.ts';
import { CODE, isOpen, kinds, lock, locked, MINUTE, shown, underPassphrase, unlock, until } from '../helpers/locked.ts';

/** Walks on until a clock runs. */
async function clockRuns(app: FakeApp): Promise<void> {
  app.runtime.press('goto:upper-impression');
  await app.pass();
  app.runtime.press('material:alginate-regular');
  app.runtime.press('start');
  await app.pass();
  expect(app.runtime.model.getState().clocks.length).toBeGreaterThan(0);
}

describe('while locked, clocks', () => {
  it('go on and ring, in words that do not tell whose they are, and it is written down after unlocking', async () => {
    const { device, app } = await underPassphrase();
    await clockRuns(app);
    const before = (await kinds(device)).filter((kind) => kind === 'rang').length;
    await locked(app);
    const { alarms } = lock(app);
    expect(alarms.length).toBeGreaterThan(0);
    expect(JSON.stringify([...app.settings])).not.toContain(CODE);
    await app.pass(Math.max(...alarms.map(({ at }) => at)) - app.time.host.now() + 1000);
    await until(app, () => lock(app).alarms.every((alarm) => alarm.rang !== undefined));
    expect(lock(app).alarms[0]?.label).toMatch(/over \(.+\)$/);
    expect(shown(app)).not.toContain(CODE);
    expect((await kinds(device)).filter((kind) => kind === 'rang')).toHaveLength(before);
    await unlock(app);
    await isOpen(app);
    await until(app, () => app.runtime.model.getState().save.state === 'kept');
    expect((await kinds(device)).filter((kind) => kind === 'rang')).toHaveLength(before + alarms.length);
  });

  it('ring after a reload too, late if they were late, and once', async () => {
    const { device, app } = await underPassphrase();
    await clockRuns(app);
    await locked(app);
    const { alarms } = lock(app);
    const next = await app.reload(60 * MINUTE);
    await until(
      next,
      () => lock(next).alarms.length === alarms.length && lock(next).alarms.every(({ rang }) => rang?.late),
    );
    await unlock(next);
    await until(next, () => next.runtime.model.getState().cases.length === 1);
    const rang = (await kinds(device)).filter((kind) => kind === 'rang').length;
    expect(rang).toBeGreaterThan(0);
    const later = await next.reload(MINUTE);
    await unlock(later);
    await until(later, () => later.runtime.model.getState().cases.length === 1);
    for (let turn = 0; turn < 40; turn += 1) await later.pass(100);
    expect((await kinds(device)).filter((kind) => kind === 'rang')).toHaveLength(rang);
  });
});
