// @vitest-environment node
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import * as v from 'valibot';
import { describe, expect, it, vi } from 'vitest';
import { publishedSchema } from '../../scripts/lib/case-schema.ts';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import { caseFileSchema } from '../../src/handoff/case-file-schema.ts';
import { caseText } from '../../src/handoff/chain.ts';
import type { FactBody } from '../../src/domain/case/facts.ts';
import { stamp } from '../helpers/facts.ts';
import { recorded } from './cases.ts';
import { good, loose } from './tamper.ts';

const published = JSON.parse(
  readFileSync(new URL('../../docs/case-file.schema.json', import.meta.url), 'utf8'),
) as Record<string, unknown>;
const valid = new Ajv({ strict: false }).compile(published);

it('the published schema is the one the app reads by; made anew with scripts/case-schema.ts', () => {
  expect(published).toEqual(JSON.parse(JSON.stringify(publishedSchema())));
});

/** One example of every kind of body in a recorded visit. */
const { facts } = recorded('troubled');
const bench: readonly FactBody[] = [
  { kind: 'takenOver', clock: 'upper', by: 'MT', order: 2 },
  { kind: 'benchDone', order: 2, line: 'trim', what: 'x', by: 'MT' },
  { kind: 'labDue', order: 2, day: '2026-12-03' },
  { kind: 'benchQuestion', order: 2, line: '', what: '', text: 'x', by: 'MT' },
  { kind: 'benchAnswer', question: facts.length + 3, text: 'x', by: 'KV' },
  { kind: 'workReturned', order: 2, text: '', by: 'MT' },
];
const caseId = facts[0]?.caseId ?? '';
const written = stamp(bench, facts.length + 1).map((fact) => ({ ...fact, caseId }));
const file = good(await toCaseFile([...facts, ...written], 'chair-1'));
const kinds = [...new Map(file.entries.map((entry) => [String(entry.fact.body['kind']), entry])).values()];
const small = { ...file, entries: kinds };

type Node = Record<string, unknown>;
interface Spot {
  readonly path: readonly string[];
  readonly node: Node;
  readonly key: string;
}

function spots(value: unknown, path: readonly string[] = []): Spot[] {
  if (typeof value !== 'object' || value === null) return [];
  const node = value as Node;
  return Object.keys(node).flatMap((key) => [{ path: [...path, key], node, key }, ...spots(node[key], [...path, key])]);
}

const WRONG: readonly unknown[] = [null, -1, 0, 1.5, '', 'zz', true, [], {}, 'x'.repeat(5000), 1e300];

vi.setConfig({ testTimeout: 60_000 });

describe('ajv by the published schema and the app by its own', () => {
  it('both take whole files', () => {
    for (const whole of [file, small, JSON.parse(caseText(file)) as unknown]) {
      expect(valid(whole), JSON.stringify(valid.errors?.[0])).toBe(true);
      expect(v.is(caseFileSchema, whole)).toBe(true);
    }
    expect(kinds.length).toBeGreaterThan(12);
  });

  it('agree on every single change of every field', () => {
    const disagree: string[] = [];
    let refused = 0;
    const compare = (tree: unknown, what: string) => {
      const [theirs, ours] = [valid(tree), v.is(caseFileSchema, tree)];
      if (!ours) refused += 1;
      // The app's library takes an empty list for an object whose fields are all optional, and reads it as the empty
      // object; the hash then says that it is another file.
      if (what.endsWith('.words = []') && ours && !theirs) return;
      if (theirs !== ours) disagree.push(`${what}: ajv ${theirs}, app ${ours}`);
    };
    const tree = loose(small);
    for (const { path, node, key } of spots(tree)) {
      const kept = node[key];
      for (const wrong of WRONG) {
        node[key] = wrong;
        compare(tree, `${path.join('.')} = ${JSON.stringify(wrong).slice(0, 20)}`);
      }
      if (Array.isArray(node)) node[Number(key)] = kept;
      else {
        delete node[key];
        compare(tree, `${path.join('.')} taken out`);
        node[key] = kept;
        node['extra'] = 1;
        compare(tree, `${path.join('.')} with a neighbour`);
        delete node['extra'];
      }
    }
    expect(disagree).toEqual([]);
    expect(refused).toBeGreaterThan(1000);
  });
});
