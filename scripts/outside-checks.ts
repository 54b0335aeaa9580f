/** npx tsx scripts/outside-checks.ts: writes docs/outside-checks.md from the tables that test/outside runs. */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { sources, type SourceId } from '../src/domain/measure/sources.ts';
import { printedTolerance, type Row, type Table } from '../test/outside/check.ts';
import { contradictions } from '../test/outside/contradictions.ts';
import { dixonSweeps } from '../test/outside/dixon.ts';
import { invariants } from '../test/outside/invariants.ts';
import { sweeps } from '../test/outside/sweeps.ts';
import { tables } from '../test/outside/tables.ts';

export const outsideChecksFile = new URL('../docs/outside-checks.md', import.meta.url);

const allSweeps = [...sweeps, ...dixonSweeps];
const cell = (text: string) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
const line = (cells: readonly string[]) => `| ${cells.map(cell).join(' | ')} |`;
const grid = (head: readonly string[], body: readonly (readonly string[])[]) =>
  [line(head), line(head.map(() => '---')), ...body.map(line)].join('\n');

/** How closely a row is met, as it is tested. */
function tolerance({ expected, run }: Row): string {
  if (typeof expected === 'number') return 'exact';
  const printed = typeof run() === 'number' ? printedTolerance(expected) : undefined;
  return printed === undefined ? 'word for word' : `± ${Number(printed.within.toPrecision(1))}`;
}

function section({ title, rows }: Table): string {
  const body = rows.map((row) => [row.what, String(row.expected) || '(none)', tolerance(row), row.source, row.status]);
  return `### ${title}\n\n${grid(['Check', 'Expected', 'Met to', 'Source', 'Status'], body)}`;
}

function sweepSection(): string {
  const body = allSweeps.map((s) => [
    s.what,
    s.against,
    s.cases.toLocaleString('en'),
    String(s.tolerance),
    s.source,
    s.status,
  ]);
  return grid(['What', 'Against', 'Cases', 'Largest error allowed', 'Source', 'Status'], body);
}

function contradictionSection(): string {
  const figure = (value: number | string) => (typeof value === 'number' ? String(Number(value.toFixed(3))) : value);
  const body = contradictions.map((c) => [c.about, c.printed, figure(c.other()), c.whatWeDo]);
  return grid(['About', 'One says', 'The other', 'What the program does'], body);
}

function sourceSection(): string {
  const used: SourceId[] = [...tables.flatMap((t) => t.rows), ...allSweeps, ...invariants].map((entry) => entry.source);
  const ids = [...new Set(used)].toSorted();
  return grid(
    ['Source', 'Citation', 'How far it was seen'],
    ids.map((id) => [id, sources[id].citation, sources[id].status]),
  );
}

/** The whole document. */
export function outsideChecks(): string {
  const count = tables.reduce((sum, table) => sum + table.rows.length, 0);
  const parts = [
    '# Outside checks',
    `What the computations in src/domain/measure are held against: ${count} figures, ${allSweeps.length} comparisons over random cases, ${invariants.length} invariants. This file is written by \`npx tsx scripts/outside-checks.ts\` from the tables that test/outside runs; a test fails when it is stale.`,
    'The status belongs to the expected figure. **text seen**: the source’s text was read. **second-hand**: quoted from a page that quotes it. **from memory**: from handbooks, check before citing. **common practice**: how the trade works. **our choice**: a limit this program set. **derived**: worked out by hand from the rule or definition named as source. The list of sources at the end says how far the rule itself was seen.',
    '## Figures',
    ...tables.map(section),
    '## Random cases, worked out a second way',
    sweepSection(),
    '## What must hold for every case',
    grid(
      ['What', 'Over', 'Source', 'Status'],
      invariants.map((i) => [i.what, i.over, i.source, i.status]),
    ),
    '## Where sources contradict themselves or each other',
    'Nothing is bent to fit; a test fails if an entry here stops being a contradiction.',
    contradictionSection(),
    '## Sources',
    sourceSection(),
  ];
  return `${parts.join('\n\n')}\n`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  writeFileSync(outsideChecksFile, outsideChecks());
  console.log('docs/outside-checks.md written');
}
