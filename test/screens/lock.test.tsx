// @vitest-environment happy-dom
import { act } from 'react';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { LockedAlarm, LockView } from '../../src/app/locking.types.ts';
import type { AppModel } from '../../src/app/model.ts';
import { states } from '../../src/screens/preview/states.ts';
import { defaultSettings } from '../../src/stores/stores.ts';
import { mount, type Mounted } from './mount.tsx';

const visit = Object.values(states).find((model) => model.place === 'visit' && model.step?.mode === 'check');
const none: LockView = {
  state: 'none',
  busy: '',
  said: '',
  trouble: '',
  waitUntil: 0,
  code: '',
  unfinished: false,
  alarms: [],
};
const now = visit?.now ?? 0;
const alarm: LockedAlarm = {
  caseId: 'x',
  due: 'upper/1:working',
  clock: 'upper/1',
  phase: 'working',
  label: 'Upper impression: working time over (Alginate)',
  at: now + 65_000,
};

beforeAll(async () => {
  await import('../../src/screens/lock/screens.ts');
});

let mounted: Mounted | undefined;
async function open(lock: Partial<LockView>, more: Partial<AppModel> = {}): Promise<Mounted> {
  if (visit === undefined) throw new Error('the preview has no check');
  const preferences = { ...defaultSettings, onDevice: 'unknown' } as const;
  mounted = mount({ ...visit, preferences, lock: { ...none, ...lock }, ...more });
  // The lock's screens come a moment later.
  for (let turn = 0; turn < 20; turn += 1) await act(() => new Promise((resolve) => setTimeout(resolve, 1)));
  return mounted;
}
afterEach(() => mounted?.close());

const submit = (of: Mounted, name: string) =>
  act(() => of.page.querySelector<HTMLFormElement>(`form[aria-label="${name}"]`)?.requestSubmit());

describe('locked', () => {
  it('shows nothing of the visit, and takes no key for it', async () => {
    const of = await open({ state: 'locked' });
    expect(of.page.textContent).not.toContain(visit?.step?.title);
    expect(of.page.querySelector('h1')?.textContent).toContain('Locked');
    of.press('PageDown');
    expect(of.actions.key).not.toHaveBeenCalled();
  });

  it('gives the passphrase that was typed, shown or hidden, and forgets it', async () => {
    const of = await open({ state: 'locked' });
    of.write('Passphrase of the practice', 'seven grey herons');
    const field = of.page.querySelector('input');
    expect(field?.type).toBe('password');
    of.click('Show: Passphrase of the practice');
    expect(field?.type).toBe('text');
    submit(of, 'Passphrase');
    expect(of.actions.askLock.mock.calls).toEqual([[{ ask: 'unlock', passphrase: 'seven grey herons' }]]);
    expect(field?.value).toBe('');
  });

  it('clocks that run and clocks that ring are there in words', async () => {
    const ringing = { ...alarm, due: 'lower/1:working', label: 'Lower impression: working time over', at: now - 5000 };
    const of = await open({ state: 'locked', alarms: [alarm, { ...ringing, rang: { at: now, late: false } }] });
    expect(of.page.querySelector('.lock-clocks')?.textContent).toContain(
      'Upper impression: working time over (Alginate)',
    );
    expect(of.page.querySelector('.lock-clocks time')?.textContent).toBe('in 1:05');
    expect(of.page.querySelector('.ringing')?.textContent).toContain('Lower impression');
    of.click('Seen: stop ringing');
    expect(of.actions.silence).toHaveBeenCalledOnce();
  });

  it('says how long to wait, and takes nothing meanwhile', async () => {
    const of = await open({ state: 'locked', waitUntil: now + 9500 });
    expect(of.page.textContent).toContain('The next try in 10 s. Nothing is deleted');
    expect(of.page.querySelector('input')).toBeNull();
  });

  it('opens by the code with another passphrase, typed twice', async () => {
    const of = await open({ state: 'locked' });
    of.click('Use the recovery code');
    of.write('Recovery code', 'abcde');
    of.write('New passphrase', 'nine brown wrens');
    of.write('The same again', 'nine brown wren');
    submit(of, 'Recovery code');
    expect(of.page.textContent).toContain('The two are not the same.');
    of.write('The same again', 'nine brown wrens');
    submit(of, 'Recovery code');
    expect(of.actions.askLock.mock.calls).toEqual([
      [{ ask: 'recover', code: 'abcde', passphrase: 'nine brown wrens' }],
    ]);
  });
});

describe('the recovery code', () => {
  it('stands in the way until it is written down', async () => {
    const of = await open({ state: 'open', code: 'AAAAA-BBBBB-CCCCC-DDDDD-EEEEE' });
    expect(of.page.querySelector('.recovery-code')?.textContent).toBe('AAAAABBBBBCCCCCDDDDDEEEEE');
    of.click('Print this sheet');
    expect(of.actions.print).toHaveBeenCalledOnce();
    of.click('It is written down');
    expect(of.actions.askLock).toHaveBeenCalledWith({ ask: 'codeSeen' });
  });
});

describe('in the settings', () => {
  it('without a passphrase it is said who can read what is stored, and one can be set', async () => {
    const of = await open({}, { place: 'settings' });
    expect(of.page.querySelector('.setting-lock')?.textContent).toContain(
      'can be read by whoever can use this browser',
    );
    of.click('Set a passphrase');
    of.write('New passphrase', 'short');
    submit(of, 'Set a passphrase');
    expect(of.actions.askLock).not.toHaveBeenCalled();
    of.write('New passphrase', 'seven grey herons');
    of.write('The same again', 'seven grey herons');
    submit(of, 'Set a passphrase');
    expect(of.actions.askLock.mock.calls).toEqual([[{ ask: 'turnOn', passphrase: 'seven grey herons' }]]);
  });

  it('with one, it is changed, renewed, taken away, and when it locks is chosen', async () => {
    const of = await open({ state: 'open' }, { place: 'settings' });
    of.click('Lock now');
    of.click('15 min');
    of.click('Take the passphrase away');
    of.write('Passphrase as it is now', 'seven grey herons');
    submit(of, 'Take the passphrase away');
    expect(of.actions.askLock.mock.calls).toEqual([
      [{ ask: 'lock' }],
      [{ ask: 'turnOff', passphrase: 'seven grey herons' }],
    ]);
    expect(of.actions.setPreferences.mock.calls).toEqual([[{ lockAfterMin: 15 }]]);
  });
});

describe('at the list of cases', () => {
  it('it is said that what is stored can be read; with a passphrase there is a target that locks', async () => {
    const plain = await open({}, { place: 'cases' });
    expect(plain.page.textContent).toContain('can be read by whoever can use this browser');
    plain.close();
    const sealed = await open({ state: 'open' }, { place: 'cases' });
    expect(sealed.page.textContent).not.toContain('can be read by whoever');
    sealed.click('Lock');
    expect(sealed.actions.askLock.mock.calls).toEqual([[{ ask: 'lock' }]]);
  });
});
