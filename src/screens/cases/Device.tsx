/** What there is to say of this device at the list of cases: a new version, and how safely the record lies here. */
import type { AppActions, AppModel } from '../../app/model.ts';
import { Target } from '../parts/Target.tsx';

interface UpdateProps {
  readonly update: AppModel['update'];
  readonly actions: AppActions;
}

export function UpdateBar({ update, actions }: UpdateProps) {
  if (update === undefined) return null;
  return (
    <section className="update" aria-label="New version">
      <p className="step-line">
        A new version of Rimwise is here. Taking it reloads this page; cases stay as they are.
      </p>
      <Target onPress={actions.takeUpdate}>Take the new version</Target>
    </section>
  );
}

/** Said only where something is less than it could be. */
export function SafetyLine({ safety }: { readonly safety: AppModel['safety'] }) {
  if (safety === undefined) return null;
  const sentences = [
    ...(safety.oneCopy === undefined ? [] : [safety.oneCopy]),
    ...(safety.persisted === 'no'
      ? [
          'This browser may clear stored cases when the device runs short of room. Save a file at the end of each visit.',
        ]
      : []),
  ];
  if (sentences.length === 0) return null;
  return (
    <section className="safety" aria-label="How safely cases lie on this device">
      {sentences.map((sentence) => (
        <p key={sentence} className="step-line">
          {sentence}
        </p>
      ))}
    </section>
  );
}
