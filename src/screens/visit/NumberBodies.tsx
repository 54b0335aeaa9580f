/** Numbers: asked for, shown large and waiting for a yes, or asked about. */
import { withUnit } from '../format.ts';
import { SignIcon } from '../parts/Icons.tsx';
import { Target } from '../parts/Target.tsx';
import { StepDrawing } from './StepDrawing.tsx';
import { StepLines, type BodyProps } from './body.tsx';

type Reading = NonNullable<BodyProps['step']['reading']>;

function KeptList({ reading }: { readonly reading: Reading }) {
  const wanted =
    reading.least > 1 ? `${reading.kept.length} kept, ${reading.least} or more wanted` : `${reading.kept.length} kept`;
  return (
    <section className="kept" aria-label="Kept readings">
      <p className="kept-count">{wanted}</p>
      <ol className="kept-list">
        {reading.kept.map((kept) => (
          <li key={kept.seq} className={kept.suspect ? 'kept-one kept-suspect' : 'kept-one'}>
            {kept.digits}
            {kept.suspect ? <span className="kept-why">stands apart</span> : null}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Reading: the latest kept value large, or a place for the first one. */
export function ReadingBody({ model, step }: BodyProps) {
  const { reading, correcting } = step;
  const latest = reading?.kept.at(-1);
  if (correcting !== undefined) {
    return (
      <div className="body body-center">
        <p className="step-line">
          Correcting: <strong>{correcting.label}</strong>. Say or type the right number. The old one stays on record,
          struck through.
        </p>
        <p className="digits">
          <s>{correcting.digits}</s> <span className="digits-empty">– –</span>
          <span className="unit"> {correcting.unit}</span>
        </p>
      </div>
    );
  }
  return (
    <div className="body body-drawn">
      <div className="body-words">
        <StepLines step={step} />
        {reading === undefined ? null : (
          <>
            <p className="digits-label">{reading.label}</p>
            <p className="digits">
              {latest === undefined ? <span className="digits-empty">– –</span> : latest.digits}
              <span className="unit"> {reading.unit}</span>
              {latest === undefined ? null : (
                <span className="digits-tag">
                  <SignIcon sign="kept" /> kept
                </span>
              )}
            </p>
            {reading.kept.length === 0 && reading.least <= 1 ? null : <KeptList reading={reading} />}
          </>
        )}
      </div>
      <StepDrawing model={model} step={step} />
    </div>
  );
}

/** Confirm: nothing else on the screen but the number and its yes. */
export function ConfirmBody({ step, actions }: BodyProps) {
  const { pending } = step;
  if (pending === undefined) return null;
  return (
    <div className="body body-center confirm">
      <p className="digits-label">
        {pending.readingLabel}
        {pending.correctsDigits === undefined ? null : (
          <>
            , instead of <s>{withUnit(pending.correctsDigits, pending.unit)}</s>
          </>
        )}
      </p>
      <p className="digits digits-giant" role="status">
        {pending.digits}
        <span className="unit"> {pending.unit}</span>
      </p>
      <p className="heard">Heard or typed: “{pending.text}”</p>
      {pending.why.length === 0 ? null : (
        <ul className="why">
          {pending.why.map((why) => (
            <li key={why}>{why}</li>
          ))}
        </ul>
      )}
      {pending.mustSayYes ? (
        <p className="must-yes">Kept only after a yes.</p>
      ) : (
        <p className="must-yes">Yes or Next keeps it.</p>
      )}
      <div className="yes-no">
        <Target look="main" size="giant" icon={<SignIcon sign="kept" />} onPress={() => actions.press('yes')}>
          Yes, keep
        </Target>
        <Target size="giant" onPress={() => actions.press('no')}>
          No, again
        </Target>
        <Target size="big" onPress={() => actions.openKeypad(true)}>
          Type it
        </Target>
      </div>
    </div>
  );
}

/** Choose: fifty or fifteen. */
export function ChooseBody({ step, actions }: BodyProps) {
  const unit = step.reading?.unit ?? 'mm';
  return (
    <div className="body body-center choose">
      <p className="digits-label">{step.reading?.label ?? 'Which number'}: which one was it?</p>
      <div className="candidates">
        {(step.candidates ?? []).map((candidate) => (
          <button
            key={candidate.value}
            type="button"
            className="target candidate"
            onClick={() => actions.press(`choose:${candidate.value}`)}
          >
            <span className="digits">{candidate.digits}</span>
            <span className="unit">{unit}</span>
          </button>
        ))}
      </div>
      <Target size="big" onPress={() => actions.press('no')}>
        Neither, say it again
      </Target>
    </div>
  );
}
