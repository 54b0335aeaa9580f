/** An impression leaves the chair: poured here, or taken over by the laboratory. Its clock then stops. */
import type { AppActions, RunningClock } from '../../app/model.ts';
import type { ClockRow } from '../../domain/summary/types.ts';
import { PhaseIcon } from './Icons.tsx';
import { Target } from './Target.tsx';

/** Removed, still waiting to be poured. */
export function waitsForPouring(clock: ClockRow): boolean {
  return !clock.stopped && (clock.now === 'pourFrom' || clock.now === 'pourWithin');
}

interface TakenProps {
  readonly clocks: readonly RunningClock[];
  readonly actions: AppActions;
}

/** Of the open case; another has to be opened first. */
export function TakenTargets({ clocks, actions }: TakenProps) {
  const own = clocks.filter((clock) => clock.case === undefined && waitsForPouring(clock));
  return own.map((clock) => (
    <Target
      key={clock.id}
      size="big"
      icon={<PhaseIcon phase="pourWithin" />}
      onPress={() => actions.press(`taken:${clock.clock}`)}
    >
      Poured or at the lab: {clock.label}
    </Target>
  ));
}
