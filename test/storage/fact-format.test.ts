import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { createFactLog } from '../../src/storage/fact-log.ts';
import { createMemoryStore } from '../../src/storage/fake.ts';
import { facts, manualTimers, row } from './samples.ts';

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const names = (text: string, pattern: RegExp): string[] => [...text.matchAll(pattern)].map(([, name]) => name ?? '');

it('every kind of fact is described in docs/fact-format.md, and nothing else', () => {
  const kinds = names(read('src/domain/case/facts.ts'), /readonly kind: '(\w+)'/g);
  const section = read('docs/fact-format.md').split('## Kinds')[1]?.split('## The file')[0] ?? '';
  const rows = section.split('\n').filter((line) => line.startsWith('| `') && !line.startsWith('| `kind`'));
  const described = rows.flatMap((line) => names(line.split('|')[1] ?? '', /`(\w+)`/g));
  expect([...new Set(kinds)].sort()).toEqual([...described].sort());
});

it('the file has exactly the fields that docs/fact-format.md names', async () => {
  const log = createFactLog({ storage: createMemoryStore(), host: manualTimers() });
  await log.append(facts(1, 1), row(1));
  const file = JSON.parse((await log.exportFile('case-a', 'chair-1')).text) as object;
  const example = read('docs/fact-format.md').split('```json')[1]?.split('```')[0] ?? '{}';
  expect(Object.keys(file)).toEqual(Object.keys(JSON.parse(example) as object));
});
