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
      {step.figures === undefined ? null : <Figures figures={step.figures} />}
      {step.lines.length === 0 ? null : (
        <ul className="step-lines">
          {step.lines.map((line) => (
            <li key={line} className="step-line">
              {line}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

const MOST_BESIDE_DRAWING = 3;

/**
 * Words on the left, drawing on the right (below, on a narrow screen), targets in a row of their own underneath: words
 * and drawing give way to the targets, never the other way round.
 */
export function WithDrawing({
  model,
  step,
  children,
}: Pick<BodyProps, 'model' | 'step'> & { readonly children?: ReactNode }) {
  // A page of figures needs the room more than the drawing does.
  const crowded = (step.figures?.length ?? 0) > MOST_BESIDE_DRAWING;
  const drawn = step.drawing !== undefined && !crowded;
  return (
    <div className={drawn ? 'body body-drawn' : 'body'}>
      <div className="body-words">
        <StepLines step={step} />
      </div>
      {drawn ? <StepDrawing model={model} step={step} /> : null}
      {children}
    </div>
  );
}
