// @vitest-environment node
/** The command as a person runs it. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { afterAll, expect, it, vi } from 'vitest';
import { caseText } from '../../src/handoff/chain.ts';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import { projectRoot } from '../helpers/source-tree.ts';
import { recorded } from './cases.ts';
import { good } from './tamper.ts';
import { run, scratch } from './tools.ts';

vi.setConfig({ testTimeout: 60_000 });

const files = scratch();
afterAll(() => files.remove());
const bytes = (text: string) => new TextEncoder().encode(text);

const { facts } = recorded('troubled');
const lines = files.put('facts.jsonl', bytes(facts.map((fact) => `${JSON.stringify(fact)}\n`).join('')));
const file = good(await toCaseFile(facts, 'chair-1'));
const whole = files.put('case.json', bytes(caseText(file)));

function handoff(...args: readonly string[]) {
  const made = spawnSync(process.execPath, ['--import', 'tsx', 'scripts/handoff.ts', ...args], {
    cwd: projectRoot,
    encoding: 'utf8',
  });
  return { code: made.status, out: made.stdout, err: made.stderr };
}
const out = (name: string) => `${files.folder}/${name}`;

it('makes everything at once from the facts of a replay', () => {
  const made = handoff(
    lines,
    '--sheet',
    out('a.txt'),
    '--pdf',
    out('a.pdf'),
    '--case',
    out('a.json'),
    '--fhir',
    out('a.fhir'),
  );
  expect(made).toEqual({ code: 0, out: '', err: '' });
  expect(readFileSync(out('a.json'), 'utf8')).toBe(caseText(file));
  expect(readFileSync(out('a.txt'), 'utf8')).toContain(`Case digest (SHA-256): ${file.digest}`);
  expect(run('pdftotext', [out('a.pdf'), '-'])).toContain(file.digest);
  expect(readFileSync(out('a.fhir'), 'utf8')).toContain(file.digest);
});

it('makes the same sheet from the case file', () => {
  const made = handoff(whole, '--sheet', '-', '--tz', 'UTC');
  expect(made.out).toBe(readFileSync(out('a.txt'), 'utf8'));
});

it.each([
  ['nothing asked for', [whole], /usage/],
  ['no file', ['--sheet', '-'], /usage/],
  ['a file that is not there', ['/nowhere/x', '--sheet', '-'], /cannot read/],
  ['another paper', [whole, '--pdf', '-', '--paper', 'a5'], /unknown paper a5/],
  ['no such zone', [whole, '--sheet', '-', '--tz', 'Mars'], /unknown time zone/],
  ['a bad writer', [lines, '--case', '-', '--writer', 'Chair One'], /writer is named/],
  [
    'a changed value',
    [files.put('bad.json', bytes(caseText(file).replace('7050', '7060'))), '--sheet', '-'],
    /entry chair-1\/\d+ was changed/,
  ],
  [
    'a cut file',
    [files.put('cut.json', bytes(caseText(file).slice(0, 900))), '--sheet', '-'],
    /This file is not JSON: it is cut off or not a case file\./,
  ],
  [
    'a cut record',
    [files.put('cut.jsonl', bytes(JSON.stringify(facts[0]).slice(0, 900))), '--sheet', '-'],
    /This file is not JSON: it is cut off or not a case file\./,
  ],
  [
    'a record cut further down',
    [files.put('later.jsonl', bytes(`${JSON.stringify(facts[0])}\n{"v":1,`)), '--sheet', '-'],
    /line 2 is not JSON: it is cut off or not a line of a case\./,
  ],
  [
    'a bundle',
    [files.put('bundle.json', bytes('{"resourceType":"Bundle"}')), '--sheet', '-'],
    /This is not a case file\./,
  ],
  [
    'a bundle over several lines',
    [files.put('bundle-2.json', bytes('{\n  "resourceType": "Bundle"\n}\n')), '--sheet', '-'],
    /This is not a case file\./,
  ],
  [
    'lines with a hole',
    [
      files.put(
        'hole.jsonl',
        bytes(
          facts
            .filter((fact) => fact.seq !== 7)
            .map((fact) => JSON.stringify(fact))
            .join('\n'),
        ),
      ),
      '--sheet',
      '-',
    ],
    /entry 7 cannot be read/,
  ],
  ['an empty file', [files.put('empty', bytes('')), '--sheet', '-'], /nothing in it/],
])('%s: a sentence and exit code 2', (_what, args, sentence) => {
  const { code, out: printed, err } = handoff(...args);
  expect({ code, printed }).toEqual({ code: 2, printed: '' });
  expect(err).toMatch(sentence);
  expect(err).toMatch(/^handoff: /);
});
