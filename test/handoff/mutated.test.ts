// @vitest-environment node
/** 5,000 damaged case files: each is refused with a reason, or says exactly what it said before. */
import { expect, it, vi } from 'vitest';
import { readCaseText, toCaseFile } from '../../src/handoff/case-file.ts';
import { caseText } from '../../src/handoff/chain.ts';
import { opening, reading, stamp } from '../helpers/facts.ts';
import { good } from './tamper.ts';

vi.setConfig({ testTimeout: 120_000 });

/** mulberry32: the same numbers on every run. */
function dice(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) % below;
  };
}

type Throw = ReturnType<typeof dice>;
const LETTERS = '0123456789abcdef{}[]",:.-+eE \n\\nulltruefalse\u0000\ud800ß';

const asText: readonly ((text: string, roll: Throw) => string)[] = [
  (text, roll) => splice(text, roll(text.length), 1, LETTERS[roll(LETTERS.length)] ?? ''),
  (text, roll) => splice(text, roll(text.length), 1 + roll(4), ''),
  (text, roll) => splice(text, roll(text.length), 0, LETTERS[roll(LETTERS.length)] ?? ''),
  (text, roll) => text.slice(0, roll(text.length)),
  (text, roll) => splice(text, roll(text.length), 0, text.slice(roll(text.length)).slice(0, 1 + roll(200))),
  (text) => JSON.stringify(JSON.parse(text), null, 2),
];

const splice = (text: string, at: number, gone: number, put: string) => text.slice(0, at) + put + text.slice(at + gone);

const VALUES: readonly unknown[] = [0, -1, 1, 1.5, 1e300, -0, '', 'x', null, true, [], {}, '6750', '0'.repeat(64)];
type Node = Record<string, unknown>;

/** All objects and arrays of a tree. */
function nodes(value: unknown, out: Node[] = []): Node[] {
  if (typeof value === 'object' && value !== null) {
    out.push(value as Node);
    for (const child of Object.values(value)) nodes(child, out);
  }
  return out;
}

const asTree: readonly ((node: Node, key: string, roll: Throw) => void)[] = [
  (node, key, roll) => {
    node[key] = VALUES[roll(VALUES.length)];
  },
  (node, key) => {
    if (Array.isArray(node)) node.splice(Number(key), 1);
    else delete node[key];
  },
  (node, key) => {
    const value = node[key];
    if (typeof value === 'number') node[key] = value + 1;
  },
  (node, key, roll) => {
    const other = Object.keys(node)[roll(Object.keys(node).length)] ?? key;
    [node[key], node[other]] = [node[other], node[key]];
  },
  (node, key) => {
    if (Array.isArray(node)) node.push(node[Number(key)]);
    else node[`${key}x`] = node[key];
  },
];

function damaged(text: string, roll: Throw): string {
  if (roll(2) === 0) return asText[roll(asText.length)]?.(text, roll) ?? text;
  const tree: unknown = JSON.parse(text);
  const all = nodes(tree).filter((node) => Object.keys(node).length > 0);
  const node = all[roll(all.length)];
  const keys = Object.keys(node ?? {});
  if (node !== undefined) asTree[roll(asTree.length)]?.(node, keys[roll(keys.length)] ?? '', roll);
  return JSON.stringify(tree);
}

it('5,000 damaged files: each refused with a reason and a sentence, or equal in meaning', async () => {
  const facts = stamp([
    ...opening,
    reading(6750),
    reading(7650, { corrects: 3 }),
    { kind: 'held' },
    { kind: 'takenOver', clock: 'upper', by: 'MT', order: 2 },
    { kind: 'benchDone', order: 2, line: 'trim', what: 'x', by: 'MT' },
    { kind: 'labDue', order: 2, day: '2026-12-03' },
    { kind: 'benchQuestion', order: 2, line: 'trim', what: '', text: 'x', by: 'MT' },
    { kind: 'benchAnswer', question: 8, text: 'x', by: 'KV' },
    { kind: 'workReturned', order: 2, text: '', by: 'MT' },
  ]);
  const whole = caseText(good(await toCaseFile(facts, 'chair-1')));
  const roll = dice(20_261);
  const reasons = new Map<string, number>();
  for (let i = 0; i < 5000; i += 1) {
    const text = damaged(whole, roll);
    // oxlint-disable-next-line no-await-in-loop
    const outcome = await readCaseText(text);
    if (outcome.ok) expect(caseText(outcome.value), text).toBe(whole);
    else expect(outcome.text.length, text).toBeGreaterThan(20);
    const name = outcome.ok ? 'equal' : outcome.reason;
    reasons.set(name, (reasons.get(name) ?? 0) + 1);
  }
  // Every way of refusing that this kind of damage can bring about was seen, and some damage was none.
  for (const name of ['equal', 'notJson', 'notACaseFile', 'newerFormat', 'malformed', 'changed', 'cut'])
    expect([...reasons.keys()]).toContain(name);
  expect([...reasons.values()].reduce((sum, n) => sum + n, 0)).toBe(5000);
});
