/** The ear, always in view: what it does in a shape and in words, and what can be said now. */
import type { AppActions, EarState } from '../../app/model.ts';
import { EarIcon } from './Icons.tsx';

interface EarWords {
  readonly head: string;
  readonly more: string;
}

function wordsOf(ear: EarState): EarWords {
  switch (ear.state) {
    case 'off':
      return { head: 'Ear off', more: 'touch to listen' };
    case 'asking':
      return { head: 'May I listen?', more: 'answer the question of the browser' };
    case 'starting':
      return { head: 'Ear starting', more: 'one moment' };
    case 'listening':
      return ear.waits === true
        ? { head: 'Listening for a yes or a no', more: 'touch to stop' }
        : { head: 'Listening', more: 'touch to stop' };
    case 'shut':
      return { head: 'Ear shut for now', more: ear.why };
    case 'heard':
      return { head: 'Heard', more: `“${ear.text}”` };
    case 'notUnderstood':
      return { head: 'Not understood', more: `“${ear.text}” ${ear.hint}` };
    case 'speaking':
      return { head: 'Speaking, ear shut', more: `“${ear.text}”` };
    case 'blocked':
      return { head: ear.consent === true ? 'Consent wanted' : 'Cannot listen', more: ear.why };
  }
}

const isOn = (ear: EarState): boolean => ear.state !== 'off' && ear.state !== 'blocked';

export const asksConsent = (ear: EarState): boolean => ear.state === 'blocked' && ear.consent === true;

interface EarFaceProps {
  readonly ear: EarState;
  /** How an open ear is closed, where that is not by a touch. */
  readonly stop?: string;
}

/** The state of the ear in a shape and in words. */
export function EarFace({ ear, stop }: EarFaceProps) {
  const { head, more } = wordsOf(ear);
  return (
    <>
      <EarIcon state={asksConsent(ear) ? 'consent' : ear.state} />
      <span className="ear-words">
        <strong>{head}</strong>
        <span className="ear-more">{stop !== undefined && ear.state === 'listening' ? stop : more}</span>
      </span>
    </>
  );
}

interface EarTargetProps {
  readonly ear: EarState;
  readonly actions: AppActions;
  /** Asks the person before speech leaves the device. */
  readonly onConsent: () => void;
}

export function EarTarget({ ear, actions, onConsent }: EarTargetProps) {
  const asks = asksConsent(ear);
  return (
    <button
      type="button"
      className={`target ear ear-${ear.state}`}
      onClick={() => (asks ? onConsent() : actions.setEar(!isOn(ear)))}
    >
      <EarFace ear={ear} />
    </button>
  );
}

export function SayNow({ words }: { readonly words: readonly string[] }) {
  if (words.length === 0) return null;
  return (
    <section className="say-now" aria-label="Words that can be said now">
      <h2 className="say-head">Say</h2>
      <ul className="say-words">
        {words.map((word) => (
          <li key={word}>{word}</li>
        ))}
      </ul>
    </section>
  );
}
