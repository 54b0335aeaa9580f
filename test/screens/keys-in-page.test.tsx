// @vitest-environment happy-dom
import { act } from 'react';
import { afterEach, describe, expect, it } from 'vitest';
import type { AppModel } from '../../src/app/model.ts';
import { states } from '../../src/screens/preview/states.ts';
import { mount, type Mounted } from './mount.tsx';

let mounted: Mounted | undefined;
const open = (name: string, more: Partial<AppModel> = {}): Mounted => {
  const found = states[name];
  if (found === undefined) throw new Error(`no state ${name}`);
  mounted = mount({ ...found, ...more });
  return mounted;
};
afterEach(() => mounted?.close());

describe('a second press meant for what stood there before', () => {
  it('the same key again at once does not answer the step that has just come up', () => {
    const { press, show, actions } = open('check');
    press('Enter');
    const next = states['decision'] ?? states['clock-choose'];
    if (next === undefined) throw new Error('no second state');
    show(next);
    expect(press('Enter')).toBe(true);
    expect(actions.key.mock.calls).toEqual([['Enter']]);
  });
  it('the second click of a double click falls on nothing', () => {
    const { button, actions } = open('check');
    act(() => {
      button('Hold').dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail: 1 }));
      button('Hold').dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail: 2 }));
    });
    expect(actions.press.mock.calls).toEqual([['hold']]);
  });
});

describe('a pedal never does two things at once', () => {
  it('Enter after a touch goes to the visit, not to the button that was touched', () => {
    const { click, button, press, actions } = open('check');
    act(() => button('Hold').focus());
    click('Hold');
    expect(document.activeElement).toBe(document.body);
    expect(press('Enter')).toBe(true);
    expect(actions.key.mock.calls).toEqual([['Enter']]);
    expect(actions.press.mock.calls).toEqual([['hold']]);
  });
  it('a button that only holds the focus loses it to the pedal', () => {
    const { button, press, actions } = open('check');
    act(() => button('Undo').focus());
    expect(press(' ')).toBe(true);
    expect(document.activeElement).toBe(document.body);
    expect(actions.key.mock.calls).toEqual([[' ']]);
  });
  it('a button reached with Tab keeps Enter and Space for itself', () => {
    const { button, press, actions } = open('check');
    press('Tab');
    act(() => button('Undo').focus());
    expect(press('Enter')).toBe(false);
    expect(press(' ')).toBe(false);
    expect(actions.key).not.toHaveBeenCalled();
    expect(press('PageDown')).toBe(true);
    expect(actions.key.mock.calls).toEqual([['PageDown']]);
  });
  it('a touch ends the tour with Tab', () => {
    const { button, press, click, actions } = open('check');
    press('Tab');
    act(() => button('Undo').focus());
    click('Hold');
    press('Enter');
    expect(actions.key.mock.calls).toEqual([['Enter']]);
  });
  it('keys typed into a text field stay there', () => {
    const { click, page, press, actions } = open('check');
    click('Note');
    act(() => page.querySelector('textarea')?.focus());
    for (const key of ['h', 'Enter', 'Backspace', '5', 'PageDown']) expect(press(key)).toBe(false);
    expect(actions.key).not.toHaveBeenCalled();
  });
  it('while a panel is open nothing moves behind it', () => {
    const { click, press, actions, page } = open('flags-bar');
    click('Answer');
    press('PageDown');
    expect(actions.key).not.toHaveBeenCalled();
    press('PageUp');
    expect(page.querySelector('.flags-panel')).toBeNull();
  });
  it('in other places keys scroll, as they do everywhere', () => {
    const { press, actions } = open('summary');
    expect(press('PageDown')).toBe(false);
    expect(actions.key).not.toHaveBeenCalled();
  });
});

describe('digits', () => {
  it('open the keypad, are shown large and handed on as text', () => {
    const shown = open('reading-first');
    shown.press('6');
    expect(shown.actions.openKeypad).toHaveBeenCalledWith(true);
    shown.show({ ...(states['reading-first'] as AppModel), keypadOpen: true });
    for (const key of ['6', ',', '5']) shown.press(key);
    expect(shown.page.querySelector('.digits')?.textContent).toContain('66.5');
    shown.press('Enter');
    expect(shown.actions.type.mock.calls).toEqual([['66.5']]);
  });
  it('half a number does not wait for the next time', () => {
    const shown = open('keypad-empty');
    shown.press('6');
    expect(shown.page.querySelector('.digits')?.textContent).toContain('6');
    shown.show({ ...(states['keypad-empty'] as AppModel), keypadOpen: false });
    shown.show(states['keypad-empty'] as AppModel);
    expect(shown.page.querySelector('.digits-slot')).not.toBeNull();
  });
  it('on the screen do the same: no number field anywhere', () => {
    const shown = open('keypad-empty');
    for (const name of ['7', '0', 'point', '2', '5']) shown.click(name);
    shown.click('Rub out');
    shown.click('Enter');
    expect(shown.actions.type.mock.calls).toEqual([['70.2']]);
    expect(shown.page.querySelector('input')).toBeNull();
  });
  it('too large for anything measured here is said, and stays for mending', () => {
    const shown = open('keypad-empty');
    for (const key of ['9', '9', '9', '9', 'Enter']) shown.press(key);
    expect(shown.actions.type).not.toHaveBeenCalled();
    expect(shown.page.querySelector('.keypad-trouble')?.textContent).toContain('Larger than anything measured here');
    expect(shown.page.querySelector('.digits')?.textContent).toContain('9999');
  });
  it('pick the answer that carries the digit', () => {
    const { press, actions } = open('check');
    press('2');
    expect(actions.press).toHaveBeenLastCalledWith('answer:noted');
    expect(actions.openKeypad).not.toHaveBeenCalled();
  });
});
