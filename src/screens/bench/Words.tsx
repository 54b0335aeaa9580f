/** Words to be sent: a question, an answer, a remark with the work. By hand, or one of those ready. */
import { useState } from 'react';
import { Target } from '../parts/Target.tsx';

interface WordsProps {
  readonly title: string;
  readonly give: string;
  /** May be sent with nothing written. */
  readonly mayBeEmpty?: boolean;
  readonly onGive: (text: string) => void;
  readonly onClose: () => void;
}

export function Words({ title, give, mayBeEmpty = false, onGive, onClose }: WordsProps) {
  const [text, setText] = useState('');
  const ready = mayBeEmpty || text.trim() !== '';
  return (
    <form
      className="bench-ask no-print"
      onSubmit={(event) => {
        event.preventDefault();
        if (ready) onGive(text.trim());
      }}
    >
      <label className="field">
        <span>{title}</span>
        <textarea
          rows={2}
          autoComplete="off"
          value={text}
          maxLength={600}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <div className="flag-ends">
        <Target look="quiet" onPress={onClose}>
          Close
        </Target>
        <button type="submit" className="target target-main target-big" aria-disabled={!ready}>
          <span className="target-words">{give}</span>
        </button>
      </div>
    </form>
  );
}
