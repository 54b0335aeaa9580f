/** One line of the order: what to do, its numbers large, until when, and the tick with initials and time. */
import type { BenchLine as Line } from '../../domain/summary/bench.types.ts';
import type { ClockRow } from '../../domain/summary/types.ts';
import { moment, phaseNow, timeLeft } from '../format.ts';
import { PhaseIcon, SignIcon, ToneIcon } from '../parts/Icons.tsx';
import { Target } from '../parts/Target.tsx';
import { BenchFigures, LargeNumbers } from './Figures.tsx';

interface WaitProps {
  readonly clock: ClockRow;
  readonly now: number;
}

const POUR_FROM = ['to wait before pouring', 'may be poured now'] as const;
const POUR_WITHIN = ['left to pour', 'past the time to pour'] as const;

/** The time left to pour, or how long it is over. */
function Wait({ clock, now }: WaitProps) {
  const phase = phaseNow(clock);
  if (phase === undefined) return null;
  const left = timeLeft(phase.dueAt, now);
  const [before, after] = phase.id === 'pourFrom' ? POUR_FROM : POUR_WITHIN;
  return (
    <p className={left.over && phase.id !== 'pourFrom' ? 'bench-wait bench-wait-over' : 'bench-wait'}>
      <PhaseIcon phase={phase.id} />
      <span className="bench-digits">{left.over ? `+${left.text}` : left.text}</span>
      <span>
        {left.over ? after : before}
        <span className="cell-more">
          {left.over ? 'since' : 'until'} {moment(phase.dueAt)}
        </span>
      </span>
    </p>
  );
}

function Ticked({ line, onTakeBack }: { readonly line: Line; readonly onTakeBack: (act: number) => void }) {
  const { done, outdated } = line;
  if (done === undefined) return null;
  return (
    <>
      <p className="bench-done">
        <SignIcon sign="kept" />{' '}
        <span>
          Done, <strong>{done.by}</strong>, {moment(done.at)}
        </span>
      </p>
      {outdated ? (
        <p className="bench-outdated">
          <ToneIcon tone="warn" /> The clinic wrote after this tick. Look at the numbers again.
        </p>
      ) : null}
      <Target look="quiet" name={`Take back: tick of ${line.text}`} onPress={() => onTakeBack(done.act)}>
        Take back
      </Target>
    </>
  );
}

export interface LineDeeds {
  readonly onTick: () => void;
  readonly onTaken: (clock: string) => void;
  readonly onTakeBack: (act: number) => void;
  readonly onAsk: () => void;
}

interface LineProps extends LineDeeds {
  readonly line: Line;
  readonly place: number;
  readonly clock: ClockRow | undefined;
  readonly now: number;
  /** It stands out: keys and pedal mean this one. */
  readonly current: boolean;
}

export function BenchLine({ line, place, clock, now, current, ...deeds }: LineProps) {
  const { clock: waits } = line;
  return (
    <li
      id={`bench-line-${place}`}
      className={`bench-line${current ? ' bench-line-now' : ''}${line.done === undefined ? '' : ' bench-line-done'}`}
      aria-current={current ? 'step' : undefined}
    >
      <div className="bench-words">
        <p className="bench-text">
          <kbd className="target-digit">{place + 1}</kbd>{' '}
          <span>
            <LargeNumbers text={line.text} />
          </span>
        </p>
        {clock === undefined || waits === undefined ? null : <Wait clock={clock} now={now} />}
        {line.detail === undefined ? null : <p className="bench-detail">{line.detail}</p>}
        <BenchFigures figures={line.figures} />
      </div>
      <div className="bench-deeds">
        {waits === undefined ? null : (
          <Target size="big" onPress={() => deeds.onTaken(waits)} name={`Taken over: ${line.text}`}>
            Taken over
          </Target>
        )}
        {line.done === undefined ? (
          <Target look={current ? 'main' : 'plain'} size="big" name={`Done: ${line.text}`} onPress={deeds.onTick}>
            Done
          </Target>
        ) : (
          <Ticked line={line} onTakeBack={deeds.onTakeBack} />
        )}
        <Target look="quiet" name={`Ask: ${line.text}`} onPress={deeds.onAsk}>
          Ask
        </Target>
      </div>
    </li>
  );
}
