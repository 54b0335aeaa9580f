/** What all step bodies share: the lines of the step, and its drawing beside them. */
import type { ReactNode } from 'react';
import type { AppActions, AppModel, StepView } from '../../app/model.ts';
import { Figures } from '../parts/Figures.tsx';
import { ToneIcon } from '../parts/Icons.tsx';
import type { VisitUi } from '../useVisitUi.ts';
import { StepDrawing } from './StepDrawing.tsx';

export interface BodyProps {
  readonly model: AppModel;
  readonly step: StepView;
  readonly actions: AppActions;
  readonly ui: VisitUi;
}

/** Caution first, then what to do, then what has been computed: what is cut on a small screen is cut from the end. */
export function StepLines({ step }: { readonly step: StepView }) {
  return (
    <>
      {step.caution === undefined ? null : (
        <p className="step-caution">
          <ToneIcon tone="warn" />
          <span>{step.caution}</span>
        </p>
      )}
      {step.lines.length === 0 ? null : (
        <ul className="step-lines">
          {step.lines.map((line) => (
            <li key={line} className="step-line">
              {line}
            </li>
          ))}
        </ul>
      )}
      {step.figures === undefined ? null : <Figures figures={step.figures} />}
    </>
  );
}

/**
 * Words on the left, drawing on the right (below, on a narrow screen), targets in a row of their own underneath: words
 * and drawing give way to the targets, never the other way round.
 */
export function WithDrawing({
  model,
  step,
  children,
}: Pick<BodyProps, 'model' | 'step'> & { readonly children?: ReactNode }) {
  return (
    <div className={step.drawing === undefined ? 'body' : 'body body-drawn'}>
      <div className="body-words">
        <StepLines step={step} />
      </div>
      <StepDrawing model={model} step={step} />
      {children}
    </div>
  );
}
