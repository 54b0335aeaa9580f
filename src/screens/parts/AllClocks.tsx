/** All running clocks in a list, over the screen: what is due, when, and what ends each of them. */
import { useEffect } from 'react';
import type { RunningClock } from '../../app/model.ts';
import type { Due } from '../../domain/summary/planned.ts';
import { DueRow, keyOf, type ChipProps } from './ClockChip.tsx';
import { Target } from './Target.tsx';

const CLOSES: ReadonlySet<string> = new Set(['Escape', 'PageUp']);
/** Keys that keep what they mean to the buttons in the list. */
const WITHIN: ReadonlySet<string> = new Set(['Tab', 'Enter', ' ']);

/** While the list is open, Page Up or Escape closes it and nothing moves behind it. */
function useClosingKeys(onClose: () => void): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const onButton = document.activeElement?.closest('.all-clocks button') !== null;
      if (WITHIN.has(event.key) && (event.key === 'Tab' || onButton)) return;
      event.preventDefault();
      event.stopPropagation();
      if (CLOSES.has(event.key)) onClose();
    };
    window.addEventListener('keydown', onKeyDown, { capture: true });
    return () => window.removeEventListener('keydown', onKeyDown, { capture: true });
  }, [onClose]);
}

interface AllProps extends Omit<ChipProps, 'due'> {
  readonly due: readonly Due<RunningClock>[];
  readonly onClose: () => void;
}

export function AllClocks({ due, now, mayEnd, actions, onClose }: AllProps) {
  useClosingKeys(onClose);
  return (
    <section className="all-clocks" aria-label="All running clocks">
      <header>
        <h2>{due.length} clocks, the next one first</h2>
        <Target look="main" size="big" onPress={onClose}>
          Close
        </Target>
      </header>
      <ul className="due-rows">
        {due.map((one) => (
          <DueRow key={keyOf(one)} due={one} now={now} mayEnd={mayEnd} actions={actions} />
        ))}
      </ul>
    </section>
  );
}
