// @vitest-environment happy-dom
import { afterEach, describe, expect, it } from 'vitest';
import type { BackupView } from '../../src/app/backup.types.ts';
import type { AppModel, CaseListRow } from '../../src/app/model.ts';
import { backupLine } from '../../src/screens/backup/Backup.tsx';
import { AT_A_TIME } from '../../src/screens/cases/CaseList.tsx';
import { states } from '../../src/screens/preview/states.ts';
import { mount, type Mounted } from './mount.tsx';

const cases = states['cases'];
if (cases === undefined) throw new Error('no such state');
const quiet: BackupView = { busy: '', changed: 0, due: false, mustSeal: false, lines: [] };
const withBackup = (backup: Partial<BackupView>, more: Partial<AppModel> = {}): AppModel => ({
  ...cases,
  ...more,
  files: { busy: false, lines: [], backup: { ...quiet, ...backup } },
});

let mounted: Mounted | undefined;
const open = (model: AppModel): Mounted => (mounted = mount(model));
afterEach(() => mounted?.close());

const asked = (backup: object) => ({ ask: 'backup', backup });

describe('the backup line', () => {
  const DAY = 86_400_000;
  it.each([
    [{ changed: 0 }, 'No backup yet.'],
    [{ changed: 3 }, 'No backup yet: 3 cases in no other place.'],
    [{ lastAt: 0, changed: 3 }, 'Last backup: 9 days ago, 3 cases changed since.'],
    [{ lastAt: 8 * DAY, changed: 1 }, 'Last backup: yesterday, 1 case changed since.'],
    [{ lastAt: 9 * DAY + 5, changed: 0 }, 'Last backup: today, nothing changed since.'],
  ])('%j is told', (view, text) => {
    expect(backupLine(view, 9 * DAY + 10)).toBe(text);
  });

  it('stands on the list of cases, with a target beside it', () => {
    const { page, button } = open(withBackup({ lastAt: cases.now - 9 * DAY, changed: 3, due: true }));
    expect(page.querySelector('.backup-due')?.textContent).toBe('Last backup: 9 days ago, 3 cases changed since.');
    expect(button('Make a backup')).toBeDefined();
  });
});

describe('making a backup', () => {
  it('is done plain, or under the same passphrase twice', () => {
    const { actions, click, write } = open(withBackup({}));
    click('Make a backup');
    write('Passphrase of the backup', 'seven wet gloves');
    write('The same again', 'seven wet glove');
    click('Under the passphrase');
    expect(actions.askFiles).not.toHaveBeenCalled();
    write('The same again', 'seven wet gloves');
    click('Under the passphrase');
    expect(actions.askFiles).toHaveBeenLastCalledWith(asked({ do: 'make', passphrase: 'seven wet gloves' }));
    click('Make a backup');
    click('Without a passphrase');
    expect(actions.askFiles).toHaveBeenLastCalledWith(asked({ do: 'make' }));
  });

  it('of a sealed record is not offered without a passphrase', () => {
    const { page, click } = open(withBackup({ mustSeal: true }));
    click('Make a backup');
    expect(page.textContent).not.toContain('Without a passphrase');
  });
});

describe('a backup that was read', () => {
  it('says what it holds and would change, and settings are taken only at their own target', () => {
    const found = {
      name: 'b.json',
      lines: ['This backup is damaged. 2 of 3 cases can be read.'],
      faults: ['This case is missing. (at line 4)'],
      cases: 2,
      settings: ['volume: now 1, then 0.5'],
    };
    const { page, actions, click } = open(withBackup({ found }));
    for (const text of [...found.lines, ...found.faults, ...found.settings]) expect(page.textContent).toContain(text);
    click('Add the 2 cases');
    expect(actions.askFiles).toHaveBeenLastCalledWith(asked({ do: 'restore', settings: false }));
    click('Add the 2 cases and take the settings');
    expect(actions.askFiles).toHaveBeenLastCalledWith(asked({ do: 'restore', settings: true }));
    click('Leave it');
    expect(actions.askFiles).toHaveBeenLastCalledWith(asked({ do: 'leave' }));
  });
});

describe('a list of ten thousand cases', () => {
  const rows = Array.from({ length: 10_000 }, (_, i): CaseListRow => {
    const row = cases.cases[0];
    if (row === undefined) throw new Error('no row');
    return { ...row, demo: false, id: `c${i}`, code: `K-${String(i).padStart(5, '0')}` };
  });
  const codes = (page: HTMLElement) => [...page.querySelectorAll('.case-code')].map((one) => one.textContent?.trim());

  it('draws the newest twenty, more at a touch, and finds any by its code', () => {
    const { page, click, write } = open(withBackup({}, { cases: rows }));
    expect(codes(page)).toHaveLength(AT_A_TIME);
    expect(codes(page)[0]).toBe('K-00000');
    click('20 more of 9980');
    expect(codes(page)).toHaveLength(2 * AT_A_TIME);
    write('Find by code', 'k 09876');
    expect(codes(page)).toEqual(['K-09876']);
    write('Find by code', 'zzz');
    expect(page.querySelector('.case-list')?.textContent).toContain('No case has this in its code.');
  });
});
