/** Signing: what is still open stands above the initials. */
import { SignIcon, ToneIcon } from '../parts/Icons.tsx';
import { LabAgree } from '../parts/LabDue.tsx';
import { OwnWords } from '../parts/OwnWords.tsx';
import { Target } from '../parts/Target.tsx';
import { initialsOf } from '../parts/Who.tsx';
import { StepLines, type BodyProps } from './body.tsx';

/** So many others of the role stand ready; anybody else types. */
const OTHERS = 2;

/** So many open items stand here; the summary has them all. */
const SHOWN = 4;

function OpenItems({ model }: Pick<BodyProps, 'model'>) {
  const open = model.summary?.open ?? [];
  if (open.length === 0) {
    return (
      <p className="open-none">
        <SignIcon sign="kept" /> Nothing is open.
      </p>
    );
  }
  return (
    <section className="open-items" aria-label="Still open">
      <h2>Still open: {open.length}</h2>
      <ul>
        {open.slice(0, SHOWN).map((item) => (
          <li key={item}>
            <ToneIcon tone="warn" />
            <span>{item}</span>
          </li>
        ))}
      </ul>
      {open.length > SHOWN ? <p className="open-more">and {open.length - SHOWN} more, all on the summary</p> : null}
    </section>
  );
}

export function SignoffBody({ model, step, actions, ui }: BodyProps) {
  if (step.step.kind !== 'signoff') return null;
  const { role } = step.step;
  const initials = model.summary?.[role] ?? '';
  const others = initialsOf(model.people ?? [], role)
    .filter((who) => who !== initials)
    .slice(0, OTHERS);
  const sign = (who: string) => actions.press(`sign:${who}`);
  const signed = model.summary?.signed.filter((one) => one.role === role) ?? [];
  return (
    <div className="body body-sign">
      <div className="body-words">
        <StepLines step={step} />
        <OpenItems model={model} />
      </div>
      <div className="sign-side">
        {signed.length === 0 ? null : (
          <p className="step-line">Signed: {signed.map((one) => one.initials).join(', ')}</p>
        )}
        {initials === '' ? null : (
          <Target look="main" size="giant" icon={<SignIcon sign="pencil" />} onPress={() => sign(initials)}>
            Sign as {initials} <span className="material-times">{role}</span>
          </Target>
        )}
        <OwnWords label="Other initials" give="Sign with these" maxLength={6} onGive={sign} />
        {model.flags.length === 0 ? null : (
          <Target size="big" icon={<SignIcon sign="flag" />} onPress={() => ui.show('flags')}>
            Answer the flags
          </Target>
        )}
        <div className="entry-ends">
          {others.map((who) => (
            <Target key={who} name={`Sign as ${who}`} onPress={() => sign(who)}>
              {who}
            </Target>
          ))}
          {role === 'assistant' ? <LabAgree model={model} actions={actions} /> : null}
          <Target onPress={() => actions.go('summary')}>Read it all first</Target>
        </div>
      </div>
    </div>
  );
}
