/** The ear as a target to hold: open while it is held, or from one brief touch to the next. */
import { useEffect, useRef, type MouseEvent, type PointerEvent } from 'react';
import type { AppActions, EarState } from '../../app/model.ts';
import { asksConsent, EarFace } from '../parts/EarStrip.tsx';
import { letGo, pressed, toggled, type Talk } from './talk.ts';

interface TalkTargetProps {
  readonly ear: EarState;
  readonly actions: AppActions;
  readonly onConsent: () => void;
}

const isOpen = ({ state }: EarState): boolean => state !== 'off' && state !== 'shut' && state !== 'blocked';

export function TalkTarget({ ear, actions, onConsent }: TalkTargetProps) {
  const talk = useRef<Talk>({ open: false });
  const latest = useRef(actions);
  useEffect(() => {
    latest.current = actions;
  });
  // Gone with the step or the screen: nobody holds it any more.
  useEffect(
    () => () => {
      if (talk.current.open) latest.current.talk(false);
    },
    [],
  );
  const become = (next: Talk) => {
    if (next.open !== talk.current.open) actions.talk(next.open);
    talk.current = next;
  };
  const asks = asksConsent(ear);
  const down = (event: PointerEvent<HTMLButtonElement>) => {
    if (asks || event.button !== 0) return;
    // Touched while it cannot listen: tried once more.
    if (ear.state === 'blocked') talk.current = { open: false };
    event.currentTarget.setPointerCapture(event.pointerId);
    become(pressed(talk.current, event.timeStamp));
  };
  const up = (event: PointerEvent<HTMLButtonElement>) => become(letGo(talk.current, event.timeStamp));
  const click = (event: MouseEvent) => {
    if (asks) onConsent();
    else if (event.detail === 0) become(toggled(talk.current));
  };
  return (
    <button
      type="button"
      className={`target ear ear-talk ear-${ear.state}`}
      aria-pressed={isOpen(ear)}
      onPointerDown={down}
      onPointerUp={up}
      onPointerCancel={up}
      onContextMenu={(event) => event.preventDefault()}
      onClick={click}
    >
      <EarFace ear={ear} stop="let go, or touch again, to stop" />
    </button>
  );
}
