/** Push-to-talk by key: F8, or the key left of the 1, whatever is printed on it. Open while it is held. */
import { useEffect, useRef } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';

const isTalkKey = ({ key, code }: KeyboardEvent): boolean => key === 'F8' || code === 'Backquote';

const inTextField = (element: EventTarget | null): boolean =>
  element instanceof Element && element.closest('input, textarea, select, [contenteditable="true"]') !== null;

export function useTalkKey(model: AppModel, actions: AppActions): void {
  const active = model.place === 'visit' && model.preferences?.earMode === 'push';
  const latest = useRef(actions);
  useEffect(() => {
    latest.current = actions;
  });
  useEffect(() => {
    if (!active) return undefined;
    let held = false;
    const set = (next: boolean) => {
      if (next === held) return;
      held = next;
      latest.current.talk(next);
    };
    const onKeyDown = (event: KeyboardEvent) => {
      if (!isTalkKey(event) || event.ctrlKey || event.altKey || event.metaKey) return;
      if (event.code === 'Backquote' && inTextField(document.activeElement)) return;
      event.preventDefault();
      set(true);
    };
    const onKeyUp = (event: KeyboardEvent) => {
      if (isTalkKey(event)) set(false);
    };
    // A key let go in another window is never reported.
    const away = () => set(false);
    window.addEventListener('keydown', onKeyDown);
    window.addEventListener('keyup', onKeyUp);
    window.addEventListener('blur', away);
    document.addEventListener('visibilitychange', away);
    return () => {
      away();
      window.removeEventListener('keydown', onKeyDown);
      window.removeEventListener('keyup', onKeyUp);
      window.removeEventListener('blur', away);
      document.removeEventListener('visibilitychange', away);
    };
  }, [active]);
}
