/**
 * What running a visit costs: transitions of the visit machine against a bare counter machine of as many states, a whole
 * case of five visits walked again, a long recording against a short one, and the work between an entry and the screen at
 * 2,000 entries. Nothing is asserted.
 */
import { readFileSync } from 'node:fs';
import { createActor, createMachine, type AnyActor } from 'xstate';
import { visitMachine } from '../../machines/visit.ts';
import { parseRecording, runReplay, runReplays, type Recording } from '../../src/app/replay.ts';
import { visitInput } from '../../src/app/resume.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { emptyLog, extendCase, foldCase, readCase } from '../../src/domain/case/fold.ts';
import { protocolFor } from '../../src/domain/protocol/index.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { summarise } from '../../src/domain/summary/summarise.ts';

const ROUNDS = 9;
const TRANSITIONS = 20_000;
const MANY = 2_000;
const SHORT = 500;
const LONG = 20_000;
const deps = { readings: readingDefs, practice: defaultPractice, appVersion: 'bench' };

/** Median over rounds of milliseconds for `times` runs. */
function cost(times: number, work: () => void): number {
  const costs: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = performance.now();
    for (let i = 0; i < times; i += 1) work();
    costs.push(performance.now() - start);
  }
  return costs.toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)]!;
}

/** All states of a machine, those that hold others and the routing one included. */
function statesOf(node: { readonly states: object }): number {
  const children = Object.values(node.states) as { states: object }[];
  return children.reduce((sum, child) => sum + 1 + statesOf(child), 0);
}

/** As many states in a ring, one event, a number that is counted up. */
function counter(states: number): AnyActor {
  const ring = Array.from({ length: states }, (_, i) => [
    `s${i}`,
    { on: { NEXT: { target: `s${(i + 1) % states}` }, BACK: { target: `s${(i + states - 1) % states}` } } },
  ]);
  return createActor(createMachine({ initial: 's0', states: Object.fromEntries(ring) }));
}

function perSecond(actor: AnyActor): number {
  actor.start();
  const steps = () => {
    actor.send({ type: 'NEXT' });
    actor.send({ type: 'BACK' });
  };
  return (TRANSITIONS / cost(TRANSITIONS / 2, steps)) * 1000;
}

function transitions(): void {
  const input = { ...visitInput(readCase(emptyLog('bench')), visit1, readingDefs), step: 'upper-ready' };
  const states = statesOf(visitMachine.root);
  const answered = { ...input, answers: { 'upper-mix': 'syringe-and-tray' } };
  const visit = perSecond(createActor(visitMachine, { input: answered }));
  const bare = perSecond(counter(states));
  console.log(`transitions a second, next and back in turn; ${states} states each`);
  console.log(
    `  visit machine ${visit.toFixed(0)}, bare counter ${bare.toFixed(0)}, ratio 1 : ${(bare / visit).toFixed(1)}`,
  );
}

function recordings(): readonly Recording[] {
  return [1, 2, 3, 4, 5].map((visit) => {
    const file = new URL(`../recorded/five/visit-${visit}.jsonl`, import.meta.url);
    const parsed = parseRecording(readFileSync(file, 'utf8'));
    if (!parsed.ok) throw new Error(parsed.text);
    return parsed.recording;
  });
}

function replays(all: readonly Recording[]): readonly Fact[] {
  const walk = () => {
    const played = runReplays(all, deps);
    if ('failed' in played) throw new Error(played.failed);
    return played;
  };
  const facts = walk().at(-1)!.facts;
  const lines = all.reduce((sum, one) => sum + one.lines.length, 0);
  const ms = cost(1, walk);
  console.log(
    `a case of five visits replayed: ${(1000 / ms).toFixed(2)} a second (${lines} lines, ${facts.length} entries)`,
  );
  return facts;
}

/** A visit of so many lines: remarks, and every tenth line a width said again and agreed to. */
function longRecording(lines: number): Recording {
  const head = {
    replay: 1,
    case: 'LONG-1',
    clinician: 'KV',
    assistant: 'BR',
    startedAt: '2026-03-02T08:00:00Z',
  };
  const said = (i: number) =>
    i % 10 === 8 ? `upper width fifty-${['one', 'two', 'three'][i % 3]}` : i % 10 === 9 ? 'yes' : `note remark ${i}`;
  const all = Array.from({ length: lines }, (_, i) => JSON.stringify({ t: i * 2000, source: 'voice', text: said(i) }));
  const parsed = parseRecording([JSON.stringify(head), ...all].join('\n'));
  if (!parsed.ok) throw new Error(parsed.text);
  return parsed.recording;
}

/** Microseconds of processor time a line, so that what else the machine does stays out of the ratio; the short one first. */
function longReplays(): void {
  const each = (lines: number, rounds: number): number => {
    const recording = longRecording(lines);
    const costs = Array.from({ length: rounds }, () => {
      const start = process.cpuUsage();
      const played = runReplay(recording, deps);
      if ('failed' in played) throw new Error(played.failed);
      const { user, system } = process.cpuUsage(start);
      return (user + system) / lines;
    });
    return costs.toSorted((a, b) => a - b)[Math.floor(rounds / 2)]!;
  };
  const [short, long] = [each(SHORT, 5), each(LONG, 1)];
  console.log(
    `a recording replayed: ${short.toFixed(0)} µs of processor time a line at ${SHORT} lines, ${long.toFixed(0)} µs at ${LONG}, ratio ${(long / short).toFixed(2)} : 1`,
  );
}

/** The case made long: notes at its last visit until there are as many entries as asked for. */
function lengthened(facts: readonly Fact[], to: number): readonly Fact[] {
  const open = facts.filter((fact) => fact.body.kind !== 'visitClosed' || fact !== facts.at(-1));
  const last = open.at(-1)!;
  const more = Array.from({ length: Math.max(0, to - open.length) }, (_, i): Fact => {
    const seq = open.length + 1 + i;
    const body = { kind: 'note', step: 'complaint', text: `remark ${i}`, source: 'keypad' } as const;
    return { ...last, seq, act: seq, at: last.at + i * 1000, body };
  });
  return [...open, ...more];
}

/** The last hundred entries one by one, as they come in a visit; milliseconds each. */
function oneMore(facts: readonly Fact[]): number {
  const rounds = Array.from({ length: ROUNDS }, () => {
    let seen = foldCase('replay', facts.slice(0, -100));
    const start = performance.now();
    for (const fact of facts.slice(-100)) seen = extendCase(seen, [fact]);
    return (performance.now() - start) / 100;
  });
  return rounds.toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)]!;
}

function longCase(facts: readonly Fact[]): void {
  const many = lengthened(facts, MANY);
  const protocol = protocolFor('visit-5', 1) ?? visit1;
  const view = foldCase('replay', many);
  const around = { protocol, readings: readingDefs, practice: defaultPractice, now: many.at(-1)!.at };
  const fold = cost(20, () => void foldCase('replay', many)) / 20;
  const one = oneMore(many);
  const sum = cost(20, () => void summarise(view, around)) / 20;
  console.log(
    `${many.length} entries: fold ${fold.toFixed(2)} ms, one more entry ${one.toFixed(3)} ms, summary ${sum.toFixed(2)} ms`,
  );
}

export default function measure(): Promise<void> {
  transitions();
  longCase(replays(recordings()));
  longReplays();
  return Promise.resolve();
}
