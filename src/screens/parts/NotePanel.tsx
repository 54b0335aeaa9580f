/** A remark kept word for word. */
import { useState } from 'react';
import type { AppActions } from '../../app/model.ts';
import { Target } from './Target.tsx';

interface NotePanelProps {
  readonly actions: AppActions;
  readonly onClose: () => void;
}

export function NotePanel({ actions, onClose }: NotePanelProps) {
  const [text, setText] = useState('');
  const written = text.trim();
  const keep = () => {
    if (written === '') return;
    actions.note(written);
    onClose();
  };
  return (
    <section className="note-panel" aria-label="Note">
      <p className="step-line">A note is kept word for word. It can also be spoken: say “note”, then the words.</p>
      <label className="field">
        <span>Note</span>
        <textarea rows={4} autoComplete="off" value={text} onChange={(event) => setText(event.target.value)} />
      </label>
      <div className="flag-ends">
        <Target look="quiet" onPress={onClose}>
          Close
        </Target>
        <Target look="main" size="big" refused={written === ''} onPress={keep}>
          Keep the note
        </Target>
      </div>
    </section>
  );
}
