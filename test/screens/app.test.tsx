// @vitest-environment happy-dom
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { AppModel } from '../../src/app/model.ts';
import { dueNext } from '../../src/domain/summary/planned.ts';
import { timeLeft } from '../../src/screens/format.ts';
import { states } from '../../src/screens/preview/states.ts';
import { mount, type Mounted } from './mount.tsx';

let mounted: Mounted | undefined;
const open = (model: AppModel | string): Mounted => {
  const found = typeof model === 'string' ? states[model] : model;
  if (found === undefined) throw new Error('no such state');
  mounted = mount(found);
  return mounted;
};
afterEach(() => mounted?.close());

describe('every state of the preview', () => {
  it.each(Object.keys(states))('%s has one title, one main part, and no complaint of React', (name) => {
    const complaints = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const { page } = open(name);
    expect(page.querySelectorAll('h1')).toHaveLength(1);
    expect(page.querySelectorAll('main')).toHaveLength(1);
    expect(complaints).not.toHaveBeenCalled();
    complaints.mockRestore();
  });

  it.each(Object.entries(states))('%s shows every clock that runs: name, time, words', (_name, model) => {
    const { page } = open(model);
    const top = page.querySelector('.top')?.textContent ?? '';
    const due = dueNext(model.clocks, model.now);
    for (const { row, at } of due) {
      expect(top).toContain(row.label);
      if (row.case !== undefined) expect(top).toContain(row.case.code);
      if (model.ringing.some((ring) => ring.clock === row.id)) continue;
      expect(top).toContain(timeLeft(at, model.now).text);
      if (due.length <= 3) expect(top).toContain(row.name);
    }
  });

  it.each(Object.entries(states).filter(([, model]) => model.place === 'visit' && model.step !== undefined))(
    '%s keeps the ear and the actions in view',
    (_name, model) => {
      const { page, button } = open(model);
      expect(page.querySelector('.ear')?.textContent?.length).toBeGreaterThan(3);
      for (const name of ['Undo', 'Hold', 'Skip', 'Keypad', 'Note', 'Next']) expect(button(name)).toBeDefined();
    },
  );
});

describe('the state of the ear is said in words and in shape', () => {
  const ears = Object.keys(states).filter((name) => name.startsWith('ear-'));
  it('no two states look or read alike', () => {
    const seen = ears.map((name) => {
      const shown = open(name);
      const ear = shown.page.querySelector('.ear');
      const pair = [ear?.querySelector('strong')?.textContent, ear?.querySelector('svg')?.innerHTML] as const;
      shown.close();
      return pair;
    });
    mounted = undefined;
    expect(new Set(seen.map(([words]) => words)).size).toBe(ears.length);
    expect(new Set(seen.map(([, shape]) => shape)).size).toBe(ears.length);
  });
  it('touching it shuts or opens it', () => {
    const { click, actions } = open('check');
    click('Listening');
    expect(actions.setEar).toHaveBeenLastCalledWith(false);
    mounted?.close();
    const blocked = open('ear-blocked');
    blocked.click('Cannot listen');
    expect(blocked.actions.setEar).toHaveBeenLastCalledWith(true);
  });
});

describe('speech leaves the device only with consent', () => {
  it('the ear asks first, in words', () => {
    const { click, actions, page } = open('ear-consent');
    click('Consent wanted');
    expect(actions.setEar).not.toHaveBeenCalled();
    expect(page.textContent).toContain('May speech be sent off this device?');
    click('Yes, it may be sent');
    expect(actions.setSpeechMayLeave.mock.calls).toEqual([[true]]);
  });
  it('a no changes nothing', () => {
    const { click, actions, page } = open('ear-consent');
    click('Consent wanted');
    click('No, stay on this device');
    expect(actions.setSpeechMayLeave).not.toHaveBeenCalled();
    expect(page.querySelector('.consent-panel')).toBeNull();
  });
  it('it is taken back with one touch under More', () => {
    const { click, actions } = open({ ...(states['check'] as AppModel), speechMayLeave: true });
    click('More');
    click('Speech may be sent: take back');
    expect(actions.setSpeechMayLeave.mock.calls).toEqual([[false]]);
  });
});

describe('the visits of a case', () => {
  it('the next one is opened when the one before is closed', () => {
    const { click, actions } = open('closed');
    click('Open visit 2');
    expect(actions.openVisit).toHaveBeenCalledWith({ visit: 2, clinician: 'CL', assistant: 'AS' });
    mounted?.close();
    const states5 = [...open('summary-clear').page.querySelectorAll('.case-visit-state')].map((one) => one.textContent);
    expect(states5).toEqual(['closed 12 May 2026', 'may be opened', 'later', 'later', 'later']);
  });
});

describe('numbers wait for their yes', () => {
  it('shows what was heard, why a yes is wanted, and what it replaces', () => {
    const { page, click, actions } = open('confirm-must');
    expect(page.querySelector('.digits')?.textContent).toContain('16.75');
    expect(page.textContent).toContain('sixteen point seven five');
    expect(page.textContent).toContain('Outside 40 to 110 mm.');
    expect(page.querySelector('s')?.textContent).toContain('74.5');
    click('Yes, keep');
    click('No, again');
    expect(actions.press.mock.calls).toEqual([['yes'], ['no']]);
    expect(page.textContent).toContain('Kept only after a yes.');
  });
  it('asks which of two numbers it was', () => {
    const { click, actions } = open('choose');
    click('50');
    click('15');
    click('Neither');
    expect(actions.press.mock.calls).toEqual([['choose:5000'], ['choose:1500'], ['no']]);
  });
  it('an answer is one touch, and says when it is on record', () => {
    const { click, button, actions } = open('check-four');
    expect(button('Latex').getAttribute('aria-pressed')).toBe('true');
    click('None known');
    expect(actions.press).toHaveBeenLastCalledWith('answer:none');
  });
});

describe('clocks', () => {
  it('the material is chosen first, then the clock is started', () => {
    const first = open('clock-choose');
    expect(first.button('Start mixing').getAttribute('aria-disabled')).toBe('true');
    first.click('Alginate, fast set');
    expect(first.actions.press).toHaveBeenLastCalledWith('material:alginate-fast');
    first.close();
    const chosen = open('clock-chosen');
    chosen.click('Start mixing');
    expect(chosen.actions.press).toHaveBeenLastCalledWith('start');
  });
  it('seated, out and done stand where they are needed', () => {
    const working = open('clock-working');
    working.click('Seated');
    working.close();
    const late = open('clock-setting-late');
    expect(late.page.textContent).toContain('Seated after the working time had ended, late by 0:11');
    late.click('Out');
    late.close();
    const bath = open('clock-bath');
    bath.click('Done');
    const pressed = [working, late, bath].map((one) => one.actions.press.mock.calls[0]?.[0] as string);
    expect(pressed).toEqual(['seated', 'out', 'out']);
  });
  it('what rings stays until it is seen, in any place', () => {
    const { click, actions, page } = open('cases-ringing');
    expect(page.querySelector('.ringing')?.textContent).toContain('disinfecting over');
    click('Seen');
    expect(actions.silence).toHaveBeenCalledOnce();
  });
  it('a bath that is over can be ended from the strip where its case is shown', () => {
    const { click, actions } = open('flags-bar');
    click('Done: lower');
    expect(actions.press).toHaveBeenLastCalledWith('clockDone:disinfect-lower');
    mounted?.close();
    expect(open('cases').page.querySelector('.chip button')).toBeNull();
  });
  it('says what is due next, by when and how long that is, planned back from the working time', () => {
    // Mixed 84 s ago; loaded by 1:30, seated by 1:45, out from 4:30 after the start of mixing.
    const plan = open('clock-working').page.querySelector('.plan')?.textContent ?? '';
    expect(plan).toMatch(/^Load the tray by \d\d:\d\d:26 in 0:06/);
    expect(plan).toMatch(/Seat by \d\d:\d\d:41 in 0:21/);
    expect(plan).toMatch(/Out from \d\d:\d\d:26 in 3:06/);
  });
  it('says before the start when each act would be due', () => {
    const plan = open('clock-chosen').page.querySelector('.plan')?.textContent ?? '';
    expect(plan).toMatch(/^If you start now.*Load the tray by .*:50.*Seat by .*:05.*Out from .*:50/);
    mounted?.close();
    expect(open('clock-choose').page.querySelector('.plan')).toBeNull();
  });
  it('five at once: the one due first stands large, the others small, all of them in a list at one touch', () => {
    const { page, click, actions } = open('clock-five');
    const [first, ...others] = [...page.querySelectorAll('.chip')];
    expect(first?.textContent).toContain('Lower, disinfecting'.toLowerCase());
    expect(first?.className).not.toContain('chip-small');
    expect(others.map((chip) => chip.className.includes('chip-small'))).toEqual([true, true, true, true]);
    const times = others.map((chip) => chip.querySelector('time')?.textContent);
    expect(times).toEqual(['0:06', '1:10', '4:38', '13:00']);
    click('All 5 clocks');
    const listed = [...page.querySelectorAll('.all-clocks li')].map((item) => item.textContent ?? '');
    expect(listed).toHaveLength(5);
    for (const clock of states['clock-five']?.clocks ?? [])
      expect(listed.some((text) => text.includes(clock.name))).toBe(true);
    click('Open K-0417');
    expect(actions.openCase).toHaveBeenLastCalledWith('other');
    click('Close');
    expect(page.querySelector('.all-clocks')).toBeNull();
  });
  it('while the list is open, Page Up closes it and nothing moves behind it', () => {
    const { page, click, actions, press } = open('clock-five');
    click('All 5 clocks');
    press('PageDown');
    press('5');
    expect(actions.key).not.toHaveBeenCalled();
    expect(page.querySelector('.all-clocks')).not.toBeNull();
    press('PageUp');
    expect(page.querySelector('.all-clocks')).toBeNull();
    expect(actions.key).not.toHaveBeenCalled();
  });
  it('an impression can be handed over', () => {
    const { click, actions } = open('clock-out');
    click('Poured or at the lab');
    expect(actions.press).toHaveBeenLastCalledWith('taken:upper-impression');
  });
});

describe('what has left the room', () => {
  const rowsOf = (page: HTMLElement) =>
    [...page.querySelectorAll('.case-list li')].map((row) =>
      [...row.querySelectorAll('.case-clock')].map((clock) => clock.textContent),
    );
  it('stands in the list of cases at its own case, closed or not, with what is due', () => {
    const [first, second, third] = rowsOf(open('cases').page);
    expect(first?.join(' ')).toMatch(/lower, disinfecting: bath over \+0:12 .*upper impression: pour by \d\d:\d\d/);
    expect(second).toEqual([]);
    expect(third?.join(' ')).toMatch(/lower impression: pour by \d\d:\d\d 13:00/);
  });
  it.each(['summary', 'labSheet'] as const)('can be said to be poured on the %s, of the open case only', (place) => {
    const state = { ...states['summary']!, place, clocks: [...states['summary']!.clocks, ...states['cases']!.clocks] };
    const { page, click, actions } = open({ ...state, ringing: [] });
    const waiting = page.querySelector('.waiting')?.textContent ?? '';
    expect(waiting).toContain('upper impression');
    expect(waiting).not.toContain('K-2198');
    const target = [...page.querySelectorAll<HTMLButtonElement>('.waiting button')].find((one) =>
      one.textContent?.includes('Poured'),
    );
    expect(target).toBeDefined();
    click('Poured: upper impression');
    expect(actions.press).toHaveBeenLastCalledWith('taken:upper-impression');
  });
  it('is not asked for where nothing waits', () => {
    expect(open('summary-clear').page.querySelector('.waiting')).toBeNull();
  });
});

describe('flags are answered', () => {
  it('three sentences, then measured again', () => {
    const { click, actions, page } = open('flags-bar');
    click('Answer');
    for (const part of ['What disagrees', 'Why it matters', 'What to do now']) expect(page.textContent).toContain(part);
    click('Measure again');
    expect(actions.answerFlag).toHaveBeenLastCalledWith('range:rest', 'measureAgain', '');
  });
  it('or kept with a reason, by touch or in own words', () => {
    const { click, write, actions } = open('flags-bar');
    click('Answer');
    click('Keep, with a reason');
    click('Clinical judgement');
    expect(actions.answerFlag).toHaveBeenLastCalledWith('range:rest', 'keep', 'Clinical judgement');
    write('Other reason', '  tired patient ');
    click('Give this reason');
    expect(actions.answerFlag).toHaveBeenLastCalledWith('range:rest', 'keep', 'tired patient');
  });
  it('an empty reason is none', () => {
    const { click, actions } = open('flags-bar');
    click('Answer');
    click('Keep, with a reason');
    click('Give this reason');
    expect(actions.answerFlag).not.toHaveBeenCalled();
  });
});

describe('safety of the record and of the sound', () => {
  it('says not safe yet, why, and offers a file', () => {
    const { page, click, actions } = open('unsafe');
    expect(page.querySelector('.unsafe')?.textContent).toContain('Not safe yet: The browser refuses to store more.');
    expect(page.querySelector('.save')).toBeNull();
    click('Save file');
    expect(actions.saveFile).toHaveBeenCalledOnce();
    click('Touch to arm sound');
    expect(actions.armSound).toHaveBeenCalledOnce();
  });
});

describe('cases', () => {
  it('the demo is one touch', () => {
    const { click, actions } = open('cases-first');
    click('Try the demo case');
    expect(actions.newCase.mock.calls[0]?.[0]).toMatchObject({ demo: true });
  });
  it('a new case wants a code and initials, and says which is missing', () => {
    const { click, write, actions, page } = open('cases-first');
    click('New case');
    click('Begin visit 1');
    expect(page.textContent).toContain('A case code is wanted.');
    write('Case code', ' K-1 ');
    write('Clinician', 'QX');
    write('Assistant', 'ZY');
    click('Begin visit 1');
    expect(actions.newCase).toHaveBeenCalledWith({ code: 'K-1', clinician: 'QX', assistant: 'ZY', demo: false });
  });
  it('an earlier case opens with one touch', () => {
    const { click, actions } = open('cases');
    click('K-2207');
    expect(actions.openCase).toHaveBeenCalledWith('2');
  });
});
