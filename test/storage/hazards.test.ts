import { existsSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const root = new URL('../../', import.meta.url);
const text = readFileSync(new URL('docs/hazards.md', root), 'utf8');
const named = [...text.matchAll(/`(test\/[^`]+)` “([^”]+(?:”(?! *[;|])[^”]*)*)”/g)].map(
  ([, file = '', title = '']) => ({
    file,
    title,
  }),
);

/** As it may stand in a source file: apostrophes may be escaped or typographic. */
const plain = (words: string): string => words.replaceAll("\\'", "'").replaceAll('’', "'");

it('every hazard names a test that is there, by its title', () => {
  expect(named.length).toBeGreaterThan(45);
  const missing = named.filter(({ file, title }) => {
    const url = new URL(file, root);
    return !existsSync(url) || !plain(readFileSync(url, 'utf8')).includes(plain(title));
  });
  expect(missing).toEqual([]);
});

it('every row says what is seen, and names a test or says that there is none', () => {
  const rows = text.split('\n').filter((line) => line.startsWith('| ') && !/^\| (what can|---)/.test(line));
  expect(rows.length).toBeGreaterThan(25);
  for (const row of rows) {
    const [, wrong = '', seen = '', shown = ''] = row.split('|').map((cell) => cell.trim());
    expect(
      [wrong, seen].every((cell) => cell.length > 5),
      row,
    ).toBe(true);
    expect(shown, row).toMatch(/`test\/|no remedy|no test of its own/);
  }
});
