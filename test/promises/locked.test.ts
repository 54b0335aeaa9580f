import { describe, expect, it } from 'vitest';
import { createFakeTime } from '../../src/time/fake.ts';
import { fakeApp } from '../helpers/app.ts';
import {
  begin,
  CODE,
  isListed,
  isOpen,
  kinds,
  lock,
  locked,
  MINUTE,
  shown,
  state,
  underPassphrase,
  unlock,
  until,
} from '../helpers/locked.ts';
import { START } from '../helpers/visit.ts';
import { fakeBrowser } from '../helpers/windows.ts';
import { onDisk, openLocked, PASSPHRASE, type Page } from '../storage/locked-device.ts';
import { createDevice } from '../storage/two-copies.ts';

const FULL = { ok: false, reason: 'full', why: 'The disk is full.' } as const;

describe('without a passphrase', () => {
  it('that data can be read here is known to the screens, and nothing else is different', async () => {
    const { device, app } = await begin();
    expect(lock(app)).toMatchObject({ state: 'none', alarms: [] });
    expect(await onDisk(device)).toContain(CODE);
  });
});

describe('in the first moment, before it is known whether anything is locked', () => {
  it('a touch is not lost: it counts once it is known', async () => {
    const device = createDevice();
    const seen: unknown[] = [];
    const app = await fakeApp({
      sealed: () => openLocked(device),
      early: (runtime) => {
        seen.push(runtime.model.getState().lock?.state);
        runtime.go('settings');
        seen.push(runtime.model.getState().place);
      },
    });
    await until(app, () => app.runtime.model.getState().place === 'settings');
    expect(seen).toEqual(['asking', 'cases']);
    expect(lock(app).state).toBe('none');
  });
});

describe('with a passphrase', () => {
  it('what is on the disk is sealed, the visit goes on, and the recovery code is shown once', async () => {
    const { device, app } = await begin();
    app.runtime.askLock({ ask: 'turnOn', passphrase: PASSPHRASE });
    await until(app, () => lock(app).code !== '' && lock(app).busy === '');
    const { code } = lock(app);
    expect(await onDisk(device)).not.toContain(CODE);
    app.runtime.askLock({ ask: 'codeSeen' });
    expect(lock(app).code).toBe('');
    app.runtime.note('a word nobody else has');
    await until(app, () => app.runtime.model.getState().save.state === 'kept');
    expect(await onDisk(device)).not.toContain('nobody else');
    const next = await app.reload();
    await state(next, 'locked');
    next.runtime.askLock({ ask: 'recover', code, passphrase: 'nine brown wrens' });
    await until(next, () => next.runtime.model.getState().cases[0]?.code === CODE);
    await locked(next);
    await unlock(next, 'nine brown wrens');
    expect(lock(next).state).toBe('open');
  });

  it('a short one is refused in words', async () => {
    const { app } = await begin();
    app.runtime.askLock({ ask: 'turnOn', passphrase: 'short' });
    await until(app, () => lock(app).trouble !== '');
    expect(lock(app)).toMatchObject({ state: 'none', trouble: 'A passphrase has at least 8 letters.' });
  });

  it('taking it away needs it, and everything lies in clear again', async () => {
    const { device, app } = await underPassphrase();
    app.runtime.askLock({ ask: 'turnOff', passphrase: 'not this one' });
    await until(app, () => lock(app).trouble !== '');
    expect(lock(app).state).toBe('open');
    app.runtime.askLock({ ask: 'turnOff', passphrase: PASSPHRASE });
    await state(app, 'none');
    expect(await onDisk(device)).toContain(CODE);
  });
});

describe('locked', () => {
  it('nothing of a case is shown, and a visit cannot be advanced', async () => {
    const { app } = await underPassphrase();
    await locked(app);
    expect(shown(app)).not.toContain(CODE);
    expect(app.runtime.model.getState()).toMatchObject({ cases: [], clocks: [], ringing: [], said: '' });
    expect(app.runtime.model.getState().step).toBeUndefined();
    for (const act of [
      () => app.runtime.press('next'),
      () => app.runtime.openCase('case-1'),
      () => app.runtime.newCase({ code: 'OTHER', clinician: 'A', assistant: 'B', demo: false }),
      () => app.runtime.go('record'),
      () => app.runtime.type('62'),
    ])
      act();
    for (let turn = 0; turn < 30; turn += 1) await app.pass();
    expect(app.runtime.model.getState()).toMatchObject({ cases: [], place: 'cases' });
    expect(lock(app).state).toBe('locked');
  });

  it('it is the same after a reload, and unlocking goes on where somebody stood', async () => {
    const { app } = await underPassphrase();
    app.runtime.press('next');
    await app.pass();
    const standing = app.runtime.model.getState().step?.title;
    await locked(app);
    await unlock(app);
    await isOpen(app);
    expect(app.runtime.model.getState()).toMatchObject({ place: 'visit', step: { title: standing } });
    const next = await app.reload();
    await state(next, 'locked');
    expect(shown(next)).not.toContain(CODE);
    await unlock(next);
    await until(next, () => next.runtime.model.getState().cases[0]?.code === CODE);
  });

  it('a word locks at once; the same words in a sentence do not', async () => {
    const { app } = await underPassphrase();
    app.runtime.type('please lock the screen of the other one');
    await app.pass();
    expect(lock(app).state).toBe('open');
    app.runtime.type('Lock the screen.');
    await state(app, 'locked');
  });

  it('a number that waited for its yes is said not to have been kept, without the number; after unlocking with it', async () => {
    const { app } = await underPassphrase();
    app.runtime.press('goto:upper-width');
    await app.pass();
    app.runtime.type('62.5');
    await until(app, () => app.runtime.model.getState().step?.pending !== undefined);
    await locked(app);
    expect(lock(app).said).toBe('A number that waited for its yes was not kept.');
    expect(shown(app)).not.toContain('62.5');
    await unlock(app);
    await isOpen(app);
    expect(app.runtime.model.getState().said).toMatch(/^Not kept: .*62\.5/);
  });

  it('entries that are not on the disk yet hold the lock back, in words', async () => {
    const device = createDevice();
    const disk = { full: false };
    const refusing = (page: Page): Page => ({
      ...page,
      store: {
        load: (id) => page.store.load(id),
        listCases: () => page.store.listCases(),
        append: (facts, row) => (disk.full ? Promise.resolve(FULL) : page.store.append(facts, row)),
        close: () => page.store.close(),
      },
    });
    const { app } = await underPassphrase({ sealed: () => refusing(openLocked(device)) });
    disk.full = true;
    app.runtime.note('not written yet');
    app.runtime.askLock({ ask: 'lock' });
    await until(app, () => lock(app).trouble !== '');
    expect(lock(app).trouble).toMatch(/^Not locked: 1 entry is not on the disk yet/);
    expect(lock(app).state).toBe('open');
    disk.full = false;
    await locked(app);
    await unlock(app);
    await isOpen(app);
    expect(await kinds(device)).toContain('note');
  });
});

describe('locking by itself', () => {
  it('comes after so many minutes without a touch, and not before', async () => {
    const { app } = await underPassphrase();
    app.runtime.setPreferences({ lockAfterMin: 2 });
    app.runtime.touched();
    await app.pass(2 * MINUTE - 1000);
    expect(lock(app).state).toBe('open');
    app.runtime.touched();
    await app.pass(MINUTE);
    expect(lock(app).state).toBe('open');
    await app.pass(MINUTE);
    await state(app, 'locked');
  });

  it('never comes where that was chosen', async () => {
    const { app } = await underPassphrase();
    app.runtime.setPreferences({ lockAfterMin: 0 });
    await app.pass(6 * MINUTE);
    expect(lock(app).state).toBe('open');
  });

  it.each([true, false])('on hiding comes only by choice: %s', async (lockOnHide) => {
    const window = fakeBrowser().open();
    const { app } = await underPassphrase({ windows: window });
    app.runtime.setPreferences({ lockOnHide });
    window.live('hidden');
    for (let turn = 0; turn < 40; turn += 1) await app.pass();
    expect(lock(app).state).toBe(lockOnHide ? 'locked' : 'open');
  });
});

describe('two windows', () => {
  it('lock together; each is unlocked by itself, and what they tell each other is no secret', async () => {
    const device = createDevice();
    const time = createFakeTime(START);
    const browser = fakeBrowser();
    const [left, right] = [browser.open(), browser.open()];
    const told: unknown[] = [];
    const settings = new Map<string, unknown>();
    const open = (window: typeof left) =>
      fakeApp({
        sealed: () => openLocked(device),
        windows: window,
        time,
        settings,
        tellLock: (news) => {
          told.push(news);
          window.postMessage(news);
        },
      });
    const one = await open(left);
    one.runtime.newCase({ code: CODE, clinician: 'KV', assistant: 'BR', demo: false });
    await isOpen(one);
    await isListed(one);
    const two = await open(right);
    await until(two, () => two.runtime.model.getState().cases.length === 1);
    one.runtime.askLock({ ask: 'turnOn', passphrase: PASSPHRASE });
    await until(one, () => lock(one).state === 'open' && lock(one).busy === '');
    await state(two, 'locked');
    expect(shown(two)).not.toContain(CODE);
    await unlock(two);
    await until(two, () => two.runtime.model.getState().cases[0]?.code === CODE);
    await locked(two);
    await state(one, 'locked');
    expect(shown(one)).not.toContain(CODE);
    await unlock(one);
    expect([lock(one).state, lock(two).state]).toEqual(['open', 'locked']);
    expect(told).toEqual([{ kind: 'keys' }, { kind: 'locked' }]);
  });
});

describe('a wrong passphrase', () => {
  it('is told, waits longer each time, also after a reload, and deletes nothing', async () => {
    const { app } = await underPassphrase();
    await locked(app);
    const waits: number[] = [];
    for (let turn = 0; turn < 5; turn += 1) {
      await unlock(app, `wrong ${turn} wrong`);
      expect(lock(app).trouble).toMatch(/^That does not open the record\./);
      const wait = Math.max(0, lock(app).waitUntil - app.time.host.now());
      waits.push(wait);
      if (turn < 4) await app.pass(wait);
    }
    expect(waits).toEqual([0, 0, 5000, 10_000, 20_000]);
    await unlock(app);
    expect(lock(app)).toMatchObject({ state: 'locked', trouble: 'Wait 20 seconds.' });
    const next = await app.reload(5000);
    await state(next, 'locked');
    await unlock(next);
    expect(lock(next)).toMatchObject({ state: 'locked', trouble: 'Wait 15 seconds.' });
    await next.pass(15_000);
    await unlock(next);
    expect(lock(next).state).toBe('open');
    await until(next, () => next.runtime.model.getState().cases[0]?.code === CODE);
  });
});
