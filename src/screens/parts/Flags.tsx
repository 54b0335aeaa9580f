/** What disagrees, why it matters, what to do now; and the answer that goes with it to the lab. */
import { useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import type { Flag } from '../../domain/summary/types.ts';
import { SignIcon } from './Icons.tsx';
import { OwnWords } from './OwnWords.tsx';
import { Target } from './Target.tsx';

export const LEVEL: Readonly<Record<Flag['level'], string>> = {
  caution: 'Caution',
  disagrees: 'Disagrees',
  look: 'Look again',
};

interface FlagBarProps {
  readonly flags: readonly Flag[];
  readonly onOpen: () => void;
}

/** One line while the work goes on. */
export function FlagBar({ flags, onOpen }: FlagBarProps) {
  const first = flags[0];
  if (first === undefined) return null;
  return (
    <section className={`flag-bar flag-${first.level}`} aria-label="Open flags">
      <SignIcon sign="flag" />
      <p>
        <strong>{LEVEL[first.level]}:</strong> {first.what}
        {flags.length > 1 ? ` (and ${flags.length - 1} more)` : ''}
      </p>
      <Target onPress={onOpen}>Answer</Target>
    </section>
  );
}

interface ReasonsProps {
  readonly reasons: AppModel['reasons'];
  readonly onReason: (reason: string) => void;
}

/** A reason by touch, or in own words. */
export function ReasonPicker({ reasons = [], onReason }: ReasonsProps) {
  return (
    <div className="reasons">
      <div className="choices choices-many">
        {reasons.map((reason) => (
          <Target key={reason.id} size="big" onPress={() => onReason(reason.label)}>
            {reason.label}
          </Target>
        ))}
      </div>
      <OwnWords label="Other reason" give="Give this reason" onGive={onReason} />
    </div>
  );
}

function FlagText({ flag }: { readonly flag: Flag }) {
  return (
    <dl className="flag-text">
      <div className="flag-first">
        <dt>What disagrees</dt>
        <dd className="flag-what">{flag.what}</dd>
      </div>
      <div>
        <dt>Why it matters</dt>
        <dd>{flag.why}</dd>
      </div>
      <div>
        <dt>What to do now</dt>
        <dd>{flag.todo}</dd>
      </div>
    </dl>
  );
}

interface FlagsPanelProps {
  readonly model: AppModel;
  readonly actions: AppActions;
  readonly onClose: () => void;
}

interface OneFlagProps extends FlagsPanelProps {
  readonly flag: Flag;
  readonly onKeep: (asks: boolean) => void;
}

function FlagAsked({ flag, model, actions, onClose, onKeep }: OneFlagProps) {
  const again = () => {
    actions.answerFlag(flag.id, 'measureAgain', '');
    onClose();
  };
  return (
    <section className={`flags-panel flag-${flag.level}`} aria-label="Flag">
      <h2>
        <SignIcon sign="flag" /> {LEVEL[flag.level]}
        {model.flags.length > 1 ? <span className="flag-count"> 1 of {model.flags.length}</span> : null}
      </h2>
      <FlagText flag={flag} />
      <div className="flag-ends">
        <Target look="quiet" onPress={onClose}>
          Later
        </Target>
        <Target size="big" onPress={() => onKeep(true)}>
          Keep, with a reason
        </Target>
        <Target look="main" size="big" onPress={again}>
          Measure again
        </Target>
      </div>
    </section>
  );
}

function FlagKept({ flag, model, actions, onKeep }: OneFlagProps) {
  return (
    <section className={`flags-panel flag-${flag.level}`} aria-label="Flag">
      <div className="flag-why-kept">
        <h2>Why is it kept as it is? {flag.what}</h2>
        <Target look="quiet" onPress={() => onKeep(false)}>
          Back
        </Target>
      </div>
      <ReasonPicker reasons={model.reasons} onReason={(reason) => actions.answerFlag(flag.id, 'keep', reason)} />
    </section>
  );
}

/** One flag at a time, most serious first. */
export function FlagsPanel(props: FlagsPanelProps) {
  const [keeping, setKeeping] = useState('');
  const flag = props.model.flags[0];
  if (flag === undefined) return null;
  const Shown = keeping === flag.id ? FlagKept : FlagAsked;
  return <Shown {...props} flag={flag} onKeep={(asks) => setKeeping(asks ? flag.id : '')} />;
}
