/** Running clocks on every screen, and the bar that rings. */
import { useState } from 'react';
import type { AppActions, AppModel, RunningClock } from '../../app/model.ts';
import { phaseLabel } from '../../domain/summary/clocks.ts';
import { dueNext } from '../../domain/summary/planned.ts';
import { stretch } from '../format.ts';
import { AllClocks } from './AllClocks.tsx';
import { ClockChip, keyOf, SmallChip } from './ClockChip.tsx';
import { SignIcon } from './Icons.tsx';
import { Target } from './Target.tsx';

/** More than so many are drawn small, but for the one that is due first. */
const ROOMY = 3;
/** As many small ones as the strip has room for; the others are one touch away. */
const MOST_SMALL = 4;

type StripProps = { readonly model: AppModel; readonly actions: AppActions };

/** As many of what rings are told in full: the bar must not stand over what is to be touched. */
const MOST_RINGING = 3;

/** Where an entry can be made: everywhere a case is shown. */
const PLACES: ReadonlySet<AppModel['place']> = new Set<AppModel['place']>(['visit', 'summary', 'labSheet', 'record']);

/** On every screen, the soonest first. What rings stands in the bar instead. */
export function ClockStrip({ model, actions }: StripProps) {
  const [all, setAll] = useState(false);
  const { clocks, ringing, now, place } = model;
  const rings = (row: RunningClock) => ringing.some((ring) => ring.clock === row.id && ring.case?.id === row.case?.id);
  const due = dueNext(clocks, now);
  const quiet = due.filter(({ row }) => !rings(row));
  const mayEnd = PLACES.has(place);
  if (due.length === 0) return null;
  if (all) return <AllClocks due={due} now={now} mayEnd={mayEnd} actions={actions} onClose={() => setAll(false)} />;
  if (quiet.length === 0) return null;
  const crowded = quiet.length > ROOMY;
  const large = crowded ? quiet.slice(0, 1) : quiet;
  const small = crowded ? quiet.slice(1, 1 + MOST_SMALL) : [];
  return (
    <section className={crowded ? 'clocks clocks-crowded' : 'clocks'} aria-label="Running clocks">
      <ul className="chips">
        {large.map((one) => (
          <ClockChip key={keyOf(one)} due={one} now={now} mayEnd={mayEnd} actions={actions} />
        ))}
        {small.map((one) => (
          <SmallChip key={keyOf(one)} due={one} now={now} />
        ))}
      </ul>
      {crowded ? <Target onPress={() => setAll(true)}>All {due.length} clocks</Target> : null}
    </section>
  );
}

/** Rings until it is seen: pattern, shape and words; the pattern stands still where motion is not wanted. */
export function RingingBar({ model, actions }: StripProps) {
  const { ringing, clocks } = model;
  if (ringing.length === 0) return null;
  const materialOf = (ring: AppModel['ringing'][number]) =>
    clocks.find((row) => row.id === ring.clock && row.case?.id === ring.case?.id)?.name;
  const more = ringing.slice(MOST_RINGING);
  const codes = [...new Set(more.flatMap((ring) => (ring.case === undefined ? [] : [ring.case.code])))];
  return (
    <section className="ringing" aria-label="Time is up">
      <SignIcon sign="bell" />
      <ul className="ringing-list">
        {ringing.slice(0, MOST_RINGING).map((ring) => (
          <li key={`${ring.case?.id ?? ''}${ring.clock}:${ring.phase}`}>
            <span role="alert">
              {ring.case === undefined ? null : <span className="chip-case">{ring.case.code}</span>}{' '}
              <strong>{ring.label}</strong>, {phaseLabel[ring.phase]} over
            </span>
            <span className="ringing-more">
              {ring.lateMs >= 1000 ? `since ${stretch(ring.lateMs)}, ` : ''}
              {materialOf(ring)}
            </span>
          </li>
        ))}
        {more.length === 0 ? null : (
          <li className="ringing-rest">
            <span role="alert">
              and {more.length} more{codes.length === 0 ? '' : `: ${codes.join(', ')}`}
            </span>
          </li>
        )}
      </ul>
      <Target look="main" size="big" name="Seen: stop ringing" onPress={actions.silence}>
        Seen
      </Target>
    </section>
  );
}
