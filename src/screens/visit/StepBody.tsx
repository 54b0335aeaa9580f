/** The middle of a step, one shape for each kind of thing that is asked. */
import { choicesOf } from '../choices.ts';
import { Target } from '../parts/Target.tsx';
import { ToneIcon } from '../parts/Icons.tsx';
import { ChooseBody, ConfirmBody, ReadingBody } from './NumberBodies.tsx';
import { ClockBody } from './ClockBody.tsx';
import { ClosedBody, HeldBody, ReasonBody } from './PauseBodies.tsx';
import { SignoffBody } from './SignoffBody.tsx';
import { WithDrawing, type BodyProps } from './body.tsx';

function AnswersBody({ model, step, actions }: BodyProps) {
  const choices = choicesOf(step);
  return (
    <WithDrawing model={model} step={step}>
      <div
        className={choices.length > 6 ? 'choices choices-many' : `choices choices-${choices.length}`}
        role="group"
        aria-label="Answers"
      >
        {choices.map((choice, index) => {
          const onRecord = choice.intent === `answer:${step.answered ?? ''}`;
          return (
            <Target
              key={choice.intent}
              size="big"
              look={choice.tone === 'warn' ? 'warn' : 'plain'}
              icon={<ToneIcon tone={choice.tone} />}
              digit={index + 1}
              chosen={onRecord}
              onPress={() => actions.press(choice.intent)}
            >
              {choice.label}
              {onRecord ? <span className="on-record"> on record</span> : null}
            </Target>
          );
        })}
      </div>
    </WithDrawing>
  );
}

export function StepBody(props: BodyProps) {
  switch (props.step.mode) {
    case 'inform':
      return <WithDrawing model={props.model} step={props.step} />;
    case 'check':
    case 'decision':
      return <AnswersBody {...props} />;
    case 'reading':
      return <ReadingBody {...props} />;
    case 'confirm':
      return <ConfirmBody {...props} />;
    case 'choose':
      return <ChooseBody {...props} />;
    case 'clock':
      return <ClockBody {...props} />;
    case 'reason':
      return <ReasonBody {...props} />;
    case 'signoff':
      return <SignoffBody {...props} />;
    case 'held':
      return <HeldBody {...props} />;
    case 'closed':
      return <ClosedBody {...props} />;
  }
}
