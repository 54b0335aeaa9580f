/** The one listener for keys, and the rule that a touch leaves no focus behind for the pedal to trip over. */
import { useEffect, useRef } from 'react';
import { deedOf, type KeyDeed, type KeySetting } from './keyboard.ts';

const TEXT_FIELDS = 'input, textarea, select, [contenteditable="true"]';
const CONTROLS = 'button, a[href], [role="button"]';

const matches = (element: EventTarget | null, selector: string): boolean =>
  element instanceof Element && element.closest(selector) !== null;

function dropFocus(): void {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
}

/** The same key again so soon, though the screen has changed in between, was meant for what stood there before. */
const BOUNCE_MS = 350;

/** Calls `onDeed` for every key that means something here. */
export function useKeys(setting: KeySetting, onDeed: (deed: KeyDeed) => void): void {
  const latest = useRef({ setting, onDeed });
  useEffect(() => {
    latest.current = { setting, onDeed };
  });
  useEffect(() => {
    let byTab = false;
    let last = { key: '', at: -BOUNCE_MS, shown: '' };
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented) return;
      if (event.key === 'Tab') byTab = true;
      const focused = document.activeElement;
      const onControl = matches(focused, CONTROLS);
      const pressed = {
        key: event.key,
        repeat: event.repeat,
        modified: event.ctrlKey || event.altKey || event.metaKey,
        inTextField: matches(focused, TEXT_FIELDS),
        onTabbedControl: byTab && onControl,
      };
      const { shown, choices } = latest.current.setting;
      const now = performance.now();
      const typed = choices.length === 0 && /^[0-9.,]$/.test(event.key);
      const bounced = !typed && event.key === last.key && now - last.at < BOUNCE_MS && shown !== last.shown;
      const deed = deedOf(pressed, latest.current.setting);
      if (deed.do === 'leave') return;
      event.preventDefault();
      if (bounced) return;
      last = { key: event.key, at: now, shown };
      if (onControl && !byTab) dropFocus();
      if (deed.do !== 'nothing') latest.current.onDeed(deed);
    };
    const onMouseDown = (event: MouseEvent) => {
      byTab = false;
      if (matches(event.target, CONTROLS)) event.preventDefault();
    };
    // The second click of a double click falls on what has just come up; only a keypad and arrows are pressed that fast.
    const onSecondClick = (event: MouseEvent) => {
      if (event.detail < 2 || matches(event.target, '.keypad, .sheet-arrows')) return;
      event.preventDefault();
      event.stopPropagation();
    };
    const onClick = (event: MouseEvent) => {
      if (event.detail > 0 && !matches(event.target, 'input, textarea, select, label')) dropFocus();
    };
    window.addEventListener('keydown', onKeyDown);
    document.addEventListener('mousedown', onMouseDown);
    document.addEventListener('click', onSecondClick, { capture: true });
    document.addEventListener('click', onClick);
    return () => {
      window.removeEventListener('keydown', onKeyDown);
      document.removeEventListener('mousedown', onMouseDown);
      document.removeEventListener('click', onSecondClick, { capture: true });
      document.removeEventListener('click', onClick);
    };
  }, []);
}
