import { describe, expect, it } from 'vitest';
import { sourceTree } from '../helpers/source-tree.ts';

/** Fields for text, with what is set on them: files, and what the field shares with others, are not looked into. */
function textFields(text: string): string[] {
  const fields = [...text.matchAll(/<(?:textarea|input)\b(?:[^>]|=>)*?\/>/g)].map(([field]) => field);
  return fields.filter((field) => !/type="(?:file|password)"/.test(field));
}

const forgets = (field: string, text: string): boolean =>
  /autoComplete="off"/.test(field) || (field.includes('{...shared}') && text.includes("autoComplete: 'off'"));

describe('what is typed', () => {
  const screens = sourceTree('src/screens').filter(({ path }) => path.endsWith('.tsx'));

  it('is found where it is typed', () => {
    expect(textFields('<textarea rows={4} onChange={(event) => set(event.target.value)} />')).toHaveLength(1);
    expect(screens.flatMap(({ text }) => textFields(text)).length).toBeGreaterThan(6);
  });

  // Browsers keep what stands in other fields in their session files, where no passphrase reaches it.
  it('is kept in no session file of the browser', () => {
    const kept = screens.flatMap(({ path, text }) =>
      textFields(text)
        .filter((field) => !forgets(field, text))
        .map((field) => `${path}: ${field.replace(/\s+/g, ' ')}`),
    );
    expect(kept).toEqual([]);
  });
});
