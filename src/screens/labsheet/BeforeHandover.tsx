/** What must be empty, or overruled with a reason, before anything is handed over. */
import type { AppActions, AppModel } from '../../app/model.ts';
import { SignIcon } from '../parts/Icons.tsx';
import { Target } from '../parts/Target.tsx';

interface BeforeProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

export function BeforeHandover({ model, actions }: BeforeProps) {
  const { summary, flags } = model;
  if (summary === undefined) return null;
  const overruled = summary.signed.filter((one) => one.overruled !== undefined);
  const { open, closedAt } = summary;
  if (open.length === 0 && closedAt !== undefined)
    return (
      <section className="before-handover before-handover-clear no-print" aria-label="Before hand-over">
        <p className="step-line">
          <SignIcon sign="kept" /> Nothing is open before hand-over; the visit is signed and closed.
        </p>
      </section>
    );
  return (
    <section className="before-handover no-print" aria-label="Before hand-over">
      <h2>{open.length === 0 ? 'Not signed yet' : `Still open before hand-over: ${open.length}`}</h2>
      <ul>
        {open.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
      {overruled.map(({ role, initials, overruled: reason }) => (
        <p key={role} className="step-line">
          Overruled by {initials}: {reason}. This stands on the sheet.
        </p>
      ))}
      <div className="page-targets">
        {flags.length === 0 ? null : <Target onPress={() => actions.go('summary')}>Answer the flags</Target>}
        {closedAt !== undefined ? null : (
          <Target onPress={() => actions.go('visit')}>
            {open.length === 0 ? 'To the sign-off' : 'Finish it, or overrule it at the sign-off'}
          </Target>
        )}
      </div>
    </section>
  );
}
