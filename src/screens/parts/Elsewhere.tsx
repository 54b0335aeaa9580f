/** The open case is being written in another window: this one follows, and may take it over. */
import type { AppActions, AppModel } from '../../app/model.ts';
import { ToneIcon } from './Icons.tsx';
import { Target } from './Target.tsx';

export function ElsewhereBar({ model, actions }: { readonly model: AppModel; readonly actions: AppActions }) {
  if (model.writer !== 'elsewhere' || model.place === 'cases' || model.place === 'settings') return null;
  return (
    <section className="unsafe elsewhere" role="status" aria-label="Written in another window">
      <ToneIcon tone="warn" />
      <p>
        <strong>Being written in another window.</strong> This one shows what is kept there, and takes no entries.
      </p>
      <Target look="warn" onPress={actions.takeOver}>
        Take over here
      </Target>
    </section>
  );
}
