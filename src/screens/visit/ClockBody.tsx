/** A material on the clock: choose it, start it, seat it, take it out. */
import { choicesOf } from '../choices.ts';
import { actsOf, ifStartedNow, nextAct, type PlannedAct } from '../../domain/summary/planned.ts';
import { findingText, phaseNow, stretch, timeLeft } from '../format.ts';
import { PhaseIcon, ToneIcon } from '../parts/Icons.tsx';
import { Plan } from '../parts/Planned.tsx';
import { TakenTargets } from '../parts/Taken.tsx';
import { Target } from '../parts/Target.tsx';
import { Timeline } from '../drawings/Timeline.tsx';
import type { ClockPhase, ClockRow } from '../../domain/summary/types.ts';
import type { Disinfectant, Material } from '../../domain/protocol/types.ts';
import { StepLines, type BodyProps } from './body.tsx';

const SECOND = 1000;

/** What the leaflet says, short enough for a target. */
function timesOf(item: Material | Disinfectant): string {
  const typical = item.generic ? 'typically ' : '';
  if ('minutes' in item) return `${typical}${item.minutes} min`;
  return `${typical}work to ${stretch(item.workingS * SECOND)}, out after ${stretch(item.removeS * SECOND)}`;
}

function Materials({ step, actions }: BodyProps) {
  const choices = choicesOf(step);
  const materials = step.materials ?? [];
  return (
    <div className="materials">
      <div className={materials.length > 4 ? 'choices choices-many' : 'choices'} role="group" aria-label="Materials">
        {materials.map((item, index) => (
          <Target
            key={item.id}
            size="big"
            digit={index + 1}
            chosen={step.chosenMaterial === item.id}
            onPress={() => actions.press(choices[index]?.intent ?? `material:${item.id}`)}
          >
            {item.name}
            <span className="material-times">{timesOf(item)}</span>
          </Target>
        ))}
      </div>
      {materials.some((item) => item.generic) ? <p className="step-note">Typical times: the leaflet decides.</p> : null}
    </div>
  );
}

function BeforeStart(props: BodyProps) {
  const { model, step, actions } = props;
  const chosen = step.materials?.find(({ id }) => id === step.chosenMaterial);
  const timed = step.step.kind === 'clock' && step.step.flow === 'timed';
  return (
    <div className="body clock-body">
      <Materials {...props} />
      <div className="clock-side">
        <Target
          look="main"
          size="giant"
          icon={<PhaseIcon phase={timed ? 'disinfect' : 'mix'} />}
          refused={step.chosenMaterial === undefined}
          onPress={() => actions.press('start')}
        >
          {timed ? 'Start the clock' : 'Start mixing'}
        </Target>
        {chosen === undefined ? null : (
          <Plan acts={ifStartedNow(chosen, model.now)} now={model.now} head="If you start now" />
        )}
        <StepLines step={step} />
      </div>
    </div>
  );
}

interface BigTimeProps {
  readonly clock: ClockRow;
  readonly phase: ClockPhase;
  readonly now: number;
}

function BigTime({ clock, phase, now }: BigTimeProps) {
  const left = timeLeft(phase.dueAt, now);
  return (
    <div className={`big-time phase-${phase.id} ${left.over ? 'big-time-over' : ''}`}>
      <p className="big-phase">
        <PhaseIcon phase={phase.id} />
        <span>{phase.label}</span>
        <span className="big-left">{left.over ? 'over' : 'left'}</span>
      </p>
      <p className="digits">
        <time>{left.text}</time>
      </p>
      <p className="big-name">
        {clock.name}
        {clock.attempt > 1 ? `, attempt ${clock.attempt}` : ''}
      </p>
    </div>
  );
}

/** From the next act on: a tray whose loading time has passed is taken to be loaded. */
function actsToCome(clock: ClockRow, now: number): readonly PlannedAct[] {
  const next = nextAct(clock, now);
  const acts = actsOf(clock);
  return next === undefined ? [] : acts.slice(acts.findIndex(({ act }) => act === next.act));
}

function ClockTargets({ clock, actions }: { readonly clock: ClockRow } & Pick<BodyProps, 'actions'>) {
  if (clock.outAt !== undefined || clock.stopped) {
    return (
      <div className="clock-targets">
        <TakenTargets clocks={[clock]} actions={actions} />
      </div>
    );
  }
  const seats = clock.flow === 'impression' && clock.seatedAt === undefined;
  const out = clock.flow === 'timed' ? 'Done' : 'Out';
  return (
    <div className="clock-targets">
      {seats ? (
        <Target look="main" size="giant" icon={<PhaseIcon phase="inMouth" />} onPress={() => actions.press('seated')}>
          Seated
        </Target>
      ) : null}
      <Target look={seats ? 'plain' : 'main'} size={seats ? 'big' : 'giant'} onPress={() => actions.press('out')}>
        {seats ? 'Out, not seated' : out}
      </Target>
    </div>
  );
}

function Running({ clock, now }: { readonly clock: ClockRow; readonly now: number }) {
  const phase = phaseNow(clock);
  return (
    <div className="clock-face">
      {phase === undefined ? (
        <p className="big-phase">The clock has ended.</p>
      ) : (
        <BigTime clock={clock} phase={phase} now={now} />
      )}
      <Plan acts={actsToCome(clock, now)} now={now} />
      <Timeline clock={clock} now={now} />
    </div>
  );
}

export function ClockBody(props: BodyProps) {
  const { model, step, actions } = props;
  const { clock } = step;
  if (clock === undefined) return <BeforeStart {...props} />;
  return (
    <div className="body clock-body">
      <Running clock={clock} now={model.now} />
      <div className="clock-side">
        <ClockTargets clock={clock} actions={actions} />
        {clock.findings.map((finding) => (
          <p key={finding.id} className="step-caution">
            <ToneIcon tone="warn" />
            <span>{findingText(finding)}</span>
          </p>
        ))}
        {clock.outAt === undefined ? <StepLines step={step} /> : null}
      </div>
    </div>
  );
}
