/** Steps at which the visit stands: a reason is wanted, it is on hold, or it is closed. */
import { choicesOf } from '../choices.ts';
import { OpenNext } from '../parts/CaseLine.tsx';
import { SignIcon } from '../parts/Icons.tsx';
import { OwnWords } from '../parts/OwnWords.tsx';
import { Target } from '../parts/Target.tsx';
import type { BodyProps } from './body.tsx';

export function ReasonBody({ step, actions }: BodyProps) {
  return (
    <div className="body">
      <p className="digits-label">{step.reasonFor ?? 'A reason is wanted'}</p>
      <div className="choices choices-many" role="group" aria-label="Reasons">
        {choicesOf(step).map((choice, index) => (
          <Target
            key={choice.intent}
            size="big"
            {...(index < 9 ? { digit: index + 1 } : {})}
            onPress={() => actions.press(choice.intent)}
          >
            {choice.label}
          </Target>
        ))}
      </div>
      <OwnWords label="Other reason" give="Give this reason" onGive={(reason) => actions.press(`reason:${reason}`)} />
    </div>
  );
}

export function HeldBody({ step, actions }: BodyProps) {
  return (
    <div className="body body-center held">
      <p className="held-sign">
        <SignIcon sign="pause" /> On hold
      </p>
      <p className="step-line">Nothing is lost, and clocks go on. The visit stands at: {step.title}.</p>
      <Target look="main" size="giant" onPress={() => actions.press('carryOn')}>
        Carry on
      </Target>
    </div>
  );
}

export function ClosedBody({ model, actions }: BodyProps) {
  return (
    <div className="body body-center closed">
      <p className="held-sign">
        <SignIcon sign="kept" /> {model.summary?.visitName.replace('visit', 'Visit') ?? 'Visit'} is closed
      </p>
      <p className="step-line">
        The lab works from the lab sheet. Keep a file of the case outside this browser as well.
      </p>
      <div className="yes-no">
        <Target look="main" size="giant" onPress={() => actions.go('labSheet')}>
          Lab sheet
        </Target>
        <Target size="giant" onPress={() => actions.go('summary')}>
          Summary
        </Target>
        <Target size="giant" onPress={actions.saveFile}>
          Save file
        </Target>
        <OpenNext model={model} actions={actions} />
        <Target size="big" onPress={() => actions.go('cases')}>
          All cases
        </Target>
      </div>
    </div>
  );
}
