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

/** Calls `onDeed` for every key that means something here. */
export function useKeys(setting: KeySetting, onDeed: (deed: KeyDeed) => void): void {
  const latest = useRef({ setting, onDeed });
  useEffect(() => {
    latest.current = { setting, onDeed };
  });
  useEffect(() => {
    let byTab = false;
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
      const deed = deedOf(pressed, latest.current.setting);
      if (deed.do === 'leave') return;
      event.preventDefault();
      if (onControl && !byTab) dropFocus();
      if (deed.do !== 'nothing') latest.current.onDeed(deed);
    };
    const onMouseDown = (event: MouseEvent) => {
      byTab = false;
      if (matches(event.target, CONTROLS)) event.preventDefault();
    };
    const onClick = (event: MouseEvent) => {
      if (event.detail > 0 && !matches(event.target, 'input, textarea, select, label')) dropFocus();
    };
    window.addEventListener('keydown', onKeyDown);
    document.addEventListener('mousedown', onMouseDown);
    document.addEventListener('click', onClick);
    return () => {
      window.removeEventListener('keydown', onKeyDown);
      document.removeEventListener('mousedown', onMouseDown);
      document.removeEventListener('click', onClick);
    };
  }, []);
}
