/** Running clocks on every screen, and the bar that rings. */
import type { AppActions, AppModel } from '../../app/model.ts';
import type { ClockRow } from '../../domain/summary/types.ts';
import { phaseNow, stretch, timeLeft } from '../format.ts';
import { PhaseIcon, SignIcon } from './Icons.tsx';
import { Target } from './Target.tsx';

export function runningClocks(clocks: readonly ClockRow[]): readonly ClockRow[] {
  return clocks.filter((clock) => !clock.stopped && phaseNow(clock) !== undefined);
}

interface ChipProps {
  readonly clock: ClockRow;
  readonly now: number;
  readonly rings: boolean;
  readonly actions: AppActions;
}

function ClockChip({ clock, now, rings, actions }: ChipProps) {
  const phase = phaseNow(clock);
  if (phase === undefined) return null;
  const left = timeLeft(phase.dueAt, now);
  const ends = clock.flow === 'timed';
  return (
    <li className={`chip chip-${phase.id} ${left.over ? 'chip-over' : ''} ${rings ? 'chip-rings' : ''}`}>
      <PhaseIcon phase={phase.id} />
      <p className="chip-words">
        <strong>{clock.label}</strong>
        <span>{clock.name}</span>
        <span className="chip-phase">{left.over ? `${phase.label}: over since` : phase.label}</span>
      </p>
      <time className="chip-time">{left.text}</time>
      {ends ? (
        <Target name={`Done: ${clock.label}`} onPress={() => actions.press(`clockDone:${clock.clock}`)}>
          Done
        </Target>
      ) : null}
    </li>
  );
}

type StripProps = Pick<AppModel, 'clocks' | 'ringing' | 'now'> & { readonly actions: AppActions };

export function ClockStrip({ clocks, ringing, now, actions }: StripProps) {
  const running = runningClocks(clocks);
  if (running.length === 0) return null;
  return (
    <section className="clocks" aria-label="Running clocks">
      <ul className="chips">
        {running.map((clock) => (
          <ClockChip
            key={clock.id}
            clock={clock}
            now={now}
            rings={ringing.some((ring) => ring.clock === clock.id || ring.clock === clock.clock)}
            actions={actions}
          />
        ))}
      </ul>
    </section>
  );
}

/** Rings until it is seen: pattern, shape and words; the pattern stands still where motion is not wanted. */
export function RingingBar({ ringing, actions }: Pick<AppModel, 'ringing'> & { readonly actions: AppActions }) {
  if (ringing.length === 0) return null;
  return (
    <section className="ringing" role="alert" aria-label="Time is up">
      <SignIcon sign="bell" />
      <ul className="ringing-list">
        {ringing.map((ring) => (
          <li key={`${ring.clock}:${ring.phase}`}>
            <strong>{ring.label}:</strong> {ring.phase} over
            {ring.lateMs >= 1000 ? `, rang ${stretch(ring.lateMs)} late` : ''}
          </li>
        ))}
      </ul>
      <Target look="main" size="big" name="Seen: stop ringing" onPress={actions.silence}>
        Seen
      </Target>
    </section>
  );
}
