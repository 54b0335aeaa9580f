/** Running clocks on every screen, and the bar that rings. */
import type { AppActions, AppModel } from '../../app/model.ts';
import type { PhaseId } from '../../domain/case/facts.ts';
import { phaseLabel } from '../../domain/summary/clocks.ts';
import type { ClockRow } from '../../domain/summary/types.ts';
import { phaseNow, stretch, timeLeft } from '../format.ts';
import { PhaseIcon, SignIcon } from './Icons.tsx';
import { waitsForPouring } from './Taken.tsx';
import { Target } from './Target.tsx';

export function runningClocks(clocks: readonly ClockRow[]): readonly ClockRow[] {
  return clocks.filter((clock) => !clock.stopped && phaseNow(clock) !== undefined);
}

/** Short enough for a chip; the full words stand at the step. */
const SHORT: Readonly<Record<PhaseId, string>> = {
  mix: 'mixing',
  working: 'working',
  inMouth: 'in the mouth',
  pourFrom: 'wait to pour',
  pourWithin: 'pour within',
  disinfect: 'in the bath',
};

const OVER: Readonly<Record<PhaseId, string>> = {
  mix: 'mixing time over',
  working: 'working time over',
  inMouth: 'setting time over',
  pourFrom: 'may be poured',
  pourWithin: 'pour time over',
  disinfect: 'bath over',
};

interface ChipProps {
  readonly clock: ClockRow;
  readonly now: number;
  /** A clock that is over can be ended here. */
  readonly mayEnd: boolean;
  readonly actions: AppActions;
}

/** What ends a clock that is over: taken out of the bath, or poured. */
function ChipEnd({ clock, actions }: Pick<ChipProps, 'clock' | 'actions'>) {
  const intent = clock.flow === 'timed' ? 'clockDone' : waitsForPouring(clock) ? 'taken' : undefined;
  if (intent === undefined) return null;
  const words = intent === 'taken' ? 'Poured' : 'Done';
  return (
    <Target name={`${words}: ${clock.label}`} onPress={() => actions.press(`${intent}:${clock.clock}`)}>
      {words}
    </Target>
  );
}

function ClockChip({ clock, now, mayEnd, actions }: ChipProps) {
  const phase = phaseNow(clock);
  if (phase === undefined) return null;
  const left = timeLeft(phase.dueAt, now);
  return (
    <li className={`chip chip-${phase.id} ${left.over ? 'chip-over' : ''}`}>
      <PhaseIcon phase={phase.id} />
      <p className="chip-phase">{left.over ? OVER[phase.id] : SHORT[phase.id]}</p>
      <time className="chip-time">{left.over ? `+${left.text}` : left.text}</time>
      <p className="chip-name">
        <strong>{clock.label}</strong>, {clock.name}
      </p>
      {mayEnd && left.over ? <ChipEnd clock={clock} actions={actions} /> : null}
    </li>
  );
}

type StripProps = { readonly model: AppModel; readonly actions: AppActions };

/** On every screen. What rings stands in the bar instead. */
export function ClockStrip({ model, actions }: StripProps) {
  const { clocks, ringing, now, place } = model;
  const quiet = runningClocks(clocks).filter((clock) => !ringing.some((ring) => ring.clock === clock.id));
  if (quiet.length === 0) return null;
  return (
    <section className="clocks" aria-label="Running clocks">
      <ul className="chips">
        {quiet.map((clock) => (
          <ClockChip key={clock.id} clock={clock} now={now} mayEnd={place === 'visit'} actions={actions} />
        ))}
      </ul>
    </section>
  );
}

/** Rings until it is seen: pattern, shape and words; the pattern stands still where motion is not wanted. */
export function RingingBar({ model, actions }: StripProps) {
  const { ringing, clocks } = model;
  if (ringing.length === 0) return null;
  const materialOf = (id: string) => clocks.find((clock) => clock.id === id)?.name;
  return (
    <section className="ringing" aria-label="Time is up">
      <SignIcon sign="bell" />
      <ul className="ringing-list">
        {ringing.map((ring) => (
          <li key={`${ring.clock}:${ring.phase}`}>
            <span role="alert">
              <strong>{ring.label}</strong>, {phaseLabel[ring.phase]} over
            </span>
            <span className="ringing-more">
              {ring.lateMs >= 1000 ? `since ${stretch(ring.lateMs)}, ` : ''}
              {materialOf(ring.clock)}
            </span>
          </li>
        ))}
      </ul>
      <Target look="main" size="big" name="Seen: stop ringing" onPress={actions.silence}>
        Seen
      </Target>
    </section>
  );
}
