/** The runtime on a record that can be under a passphrase, and what tests ask of it. */
import { expect } from 'vitest';
import type { LockView } from '../../src/app/locking.types.ts';
import { parseFacts } from '../../src/domain/case/parse.ts';
import type { FakeTime } from '../../src/time/fake.ts';
import { openLocked, PASSPHRASE } from '../storage/locked-device.ts';
import { createDevice, type Device } from '../storage/two-copies.ts';
import { fakeApp, type FakeApp, type FakeAppOptions } from './app.ts';

export const CODE = 'QUAGGLE-7';
export const MINUTE = 60_000;

export interface Practice {
  readonly device: Device;
  readonly app: FakeApp;
}

export const lock = (app: FakeApp): LockView => {
  const view = app.runtime.model.getState().lock;
  if (view === undefined) throw new Error('there is no lock');
  return view;
};

/** Keys are made and imports come in their own time: waits for both, while the app's clock stands still. */
export async function until(app: FakeApp, is: () => boolean): Promise<void> {
  const end = performance.now() + 5000;
  while (!is() && performance.now() < end) {
    await app.pass();
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
  expect(is()).toBe(true);
}

export const idle = (app: FakeApp) => until(app, () => lock(app).busy === '' && lock(app).state !== 'asking');
export const state = (app: FakeApp, wanted: LockView['state']) => until(app, () => lock(app).state === wanted);
export const isOpen = (app: FakeApp) => until(app, () => app.runtime.model.getState().step !== undefined);

/** The case is on the disk and in the list. */
export const isListed = (app: FakeApp) =>
  until(app, () => {
    const { cases, save } = app.runtime.model.getState();
    return cases.length === 1 && save.state === 'kept';
  });

export async function begin(options: FakeAppOptions & { time?: FakeTime } = {}): Promise<Practice> {
  const device = createDevice();
  const app = await fakeApp({ sealed: () => openLocked(device), ...options });
  app.runtime.newCase({ code: CODE, clinician: 'KV', assistant: 'BR', demo: false });
  await isOpen(app);
  await isListed(app);
  return { device, app };
}

export async function underPassphrase(options: FakeAppOptions = {}): Promise<Practice> {
  const practice = await begin(options);
  practice.app.runtime.askLock({ ask: 'turnOn', passphrase: PASSPHRASE });
  await until(practice.app, () => lock(practice.app).state === 'open' && lock(practice.app).busy === '');
  expect(lock(practice.app)).toMatchObject({ trouble: '', unfinished: false });
  practice.app.runtime.askLock({ ask: 'codeSeen' });
  return practice;
}

export async function locked(app: FakeApp): Promise<void> {
  app.runtime.askLock({ ask: 'lock' });
  await state(app, 'locked');
}

export async function unlock(app: FakeApp, passphrase = PASSPHRASE): Promise<void> {
  app.runtime.askLock({ ask: 'unlock', passphrase });
  await idle(app);
}

/** Everything a screen could show. */
export const shown = (app: FakeApp): string => JSON.stringify(app.runtime.model.getState());

/** Facts of the one case, by kind. */
export async function kinds(device: Device): Promise<readonly string[]> {
  const page = openLocked(device);
  await page.keys.unlock({ lock: 'passphrase', secret: PASSPHRASE });
  const listed = await page.store.listCases();
  const loaded = await page.store.load(listed.ok ? (listed.rows[0]?.id ?? '') : '');
  const parsed = parseFacts(loaded.ok ? loaded.facts : []);
  return parsed.ok ? parsed.facts.map(({ body }) => body.kind) : [];
}
