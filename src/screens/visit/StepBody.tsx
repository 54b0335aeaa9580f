/** The middle of a step, one shape for each kind of thing that is asked. */
import { useState } from 'react';
import { useDecided } from '../decided/Lazy.tsx';
import { choicesOf } from '../choices.ts';
import { Target } from '../parts/Target.tsx';
import { ToneIcon } from '../parts/Icons.tsx';
import { ChooseBody, ConfirmBody, ReadingBody } from './NumberBodies.tsx';
import { ClockBody } from './ClockBody.tsx';
import { ClosedBody, HeldBody, ReasonBody } from './PauseBodies.tsx';
import { SignoffBody } from './SignoffBody.tsx';
import type { SheetMark } from './TracingBody.tsx';
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

const ON_MAP = ['sore-upper', 'sore-lower'];

export function StepBody(props: BodyProps) {
  // Held here, for a point on the millimetre sheet is kept in two steps.
  const [mark, setMark] = useState<SheetMark>();
  const { mode, drawing, correcting } = props.step;
  const parts = useDecided();
  if (parts !== undefined && mode === 'check' && ON_MAP.includes(drawing ?? '')) return <parts.SoreBody {...props} />;
  if (parts !== undefined && mode === 'reading' && drawing === 'tracing' && correcting === undefined)
    return <parts.TracingBody {...props} mark={mark} onMark={setMark} />;
  switch (mode) {
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
