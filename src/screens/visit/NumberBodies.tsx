/** Numbers: asked for, shown large and waiting for a yes, or asked about. */
import type { PendingView } from '../../app/model.ts';
import { withUnit } from '../format.ts';
import { SignIcon } from '../parts/Icons.tsx';
import { Target } from '../parts/Target.tsx';
import { StepDrawing } from './StepDrawing.tsx';
import { StepLines, type BodyProps } from './body.tsx';

type Reading = NonNullable<BodyProps['step']['reading']>;

/** "2 kept, 3 or more wanted" */
function keptWords({ kept, least }: Reading): string {
  if (least <= 1) return kept.length === 0 ? '' : 'kept';
  return `${kept.length} kept, ${least} or more wanted`;
}

function KeptCount({ reading }: { readonly reading: Reading }) {
  const words = keptWords(reading);
  if (words === '') return null;
  return (
    <span className="kept-count">
      {reading.kept.length === 0 ? null : <SignIcon sign="kept" />} {words}
    </span>
  );
}

function KeptList({ reading }: { readonly reading: Reading }) {
  return (
    <ol className="kept-list" aria-label="Kept readings">
      {reading.kept.map((kept) => (
        <li key={kept.seq} className={kept.suspect ? 'kept-one kept-suspect' : 'kept-one'}>
          {kept.digits}
          {kept.suspect ? <span className="kept-why">stands apart</span> : null}
        </li>
      ))}
    </ol>
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
          <s>{correcting.digits}</s> <span className="digits-slot" aria-hidden="true" />
          <span className="unit"> {correcting.unit}</span>
        </p>
      </div>
    );
  }
  return (
    <div className="body body-drawn">
      <div className="body-words">
        {reading === undefined ? null : (
          <>
            <p className="digits-label">
              {reading.label} <KeptCount reading={reading} />
            </p>
            <p className="digits">
              {latest === undefined ? <span className="digits-slot" aria-hidden="true" /> : latest.digits}
              <span className="unit"> {reading.unit}</span>
            </p>
            {reading.kept.length < 2 ? null : <KeptList reading={reading} />}
          </>
        )}
        {latest === undefined ? <StepLines step={step} /> : null}
      </div>
      <StepDrawing model={model} step={step} />
    </div>
  );
}

function Waiting({ pending }: { readonly pending: PendingView }) {
  return (
    <div className="confirm-number">
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
      <p className="must-yes">{pending.mustSayYes ? 'Kept only after a yes.' : 'Yes or Next keeps it.'}</p>
    </div>
  );
}

/** Confirm: nothing else on the screen but the number and its yes. */
export function ConfirmBody({ step, actions }: BodyProps) {
  if (step.pending === undefined) return null;
  return (
    <div className="body confirm">
      <Waiting pending={step.pending} />
      <div className="confirm-targets">
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
  const candidates = step.candidates ?? [];
  return (
    <div className="body body-center choose">
      <p className="digits-label">
        {step.reading?.label ?? 'Which number'}: which one was it, in {unit}?
      </p>
      <div className="candidates">
        {candidates.map((candidate) => (
          <button
            key={candidate.value}
            type="button"
            className="target candidate"
            onClick={() => actions.press(`choose:${candidate.value}`)}
          >
            <span className="digits">{candidate.digits}</span>
          </button>
        ))}
        <Target size="big" onPress={() => actions.press('no')}>
          {candidates.length > 2 ? 'None of these' : 'Neither'}, say it again
        </Target>
      </div>
    </div>
  );
}
