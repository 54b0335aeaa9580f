/** One line of text in the person's own words, given with a target or with Enter. */
import { useState } from 'react';

interface OwnWordsProps {
  readonly label: string;
  readonly give: string;
  readonly maxLength?: number;
  readonly onGive: (text: string) => void;
}

export function OwnWords({ label, give, maxLength = 200, onGive }: OwnWordsProps) {
  const [text, setText] = useState('');
  const given = text.trim();
  return (
    <form
      className="own-words"
      onSubmit={(event) => {
        event.preventDefault();
        if (given === '') return;
        setText('');
        onGive(given);
      }}
    >
      <label>
        <span>{label}</span>
        <input
          type="text"
          value={text}
          maxLength={maxLength}
          autoComplete="off"
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <button type="submit" className="target target-plain" aria-disabled={given === ''}>
        <span className="target-words">{give}</span>
      </button>
    </form>
  );
}
