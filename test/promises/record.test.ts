/** Promises about the record: what was kept stays, what was taken back is still to be read. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseRecording, ringUntil, runReplay, type ReplayLine } from '../../src/app/replay.ts';
import { defaultPractice } from '../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../src/domain/protocol/readings.ts';
import { visit1 } from '../../src/domain/protocol/visit1.ts';
import { atRestHeight, bench, firstVisit, type Bench } from '../helpers/visit.ts';

function recorded(name: string) {
  const parsed = parseRecording(readFileSync(new URL(`../../scripts/recorded/${name}.jsonl`, import.meta.url), 'utf8'));
  if (!parsed.ok) throw new Error(parsed.text);
  const replayed = runReplay(parsed.recording, {
    readings: readingDefs,
    practice: defaultPractice,
    appVersion: 'test',
  });
  if ('failed' in replayed) throw new Error(replayed.failed);
  return { recording: parsed.recording, ...replayed };
}

/** One recorded line on a running bench. */
function walk(b: Bench, line: ReplayLine): void {
  if (line.source === 'key') b.key(line.key);
  else if (line.source === 'touch') b.press(line.press);
  else if (line.source === 'keypad') b.type(line.text);
  else if ('alternatives' in line) b.say(line.alternatives[0]?.transcript ?? '', line.alternatives);
  else b.say(line.text);
}

describe('the record', () => {
  it.each(['clean', 'troubled'])('resumes exactly where the visit stood, after every line of the %s visit', (name) => {
    const { recording } = recorded(name);
    const start = Date.parse(recording.header.startedAt);
    const running = bench(firstVisit);
    let compared = 0;
    const setClock = (at: number) => (running.at = at);
    const bell = { session: running.session, protocol: visit1, rung: new Set<string>(), setClock };
    for (const line of recording.lines) {
      ringUntil(bell, start + line.t);
      running.at = start + line.t;
      walk(running, line);
      const memory = running.session.context();
      // A number, question or reason that waits is not on record; after a stop it is simply asked for again.
      const waits = [memory.pending, memory.candidates, memory.asking, memory.correcting].some((x) => x !== undefined);
      if (waits) continue;
      expect(bench(firstVisit, running.facts).session.context()).toEqual(memory);
      compared += 1;
    }
    expect(running.session.context().closed).toBe(true);
    expect(compared).toBeGreaterThan(80);
  });

  it.each(['clean', 'troubled'])(
    'rings the same in the %s visit whether it looks at every line or only when it must',
    (name) => {
      const { recording } = recorded(name);
      const start = Date.parse(recording.header.startedAt);
      const walked = (lull?: { facts: number; until: number }) => {
        const running = bench(firstVisit);
        const setClock = (at: number) => (running.at = at);
        const bell = { session: running.session, protocol: visit1, rung: new Set<string>(), setClock };
        for (const line of recording.lines) {
          ringUntil(lull === undefined ? bell : { ...bell, lull }, start + line.t);
          running.at = start + line.t;
          walk(running, line);
        }
        ringUntil(lull === undefined ? bell : { ...bell, lull }, running.at + 86_400_000);
        return running.session.view().log.facts;
      };
      const looked = walked();
      expect(looked.filter((fact) => fact.body.kind === 'rang').length).toBeGreaterThan(0);
      expect(walked({ facts: 0, until: 0 })).toEqual(looked);
    },
  );

  it('undo says what it undid and deletes nothing', () => {
    const b = atRestHeight();
    b.say('sixty-two point five');
    b.say('yes');
    const before = b.facts.length;
    const undone = b.say('undo');
    expect(undone.said).toBe('Undone: Rest height 62.5 mm');
    expect(b.facts.length).toBe(before + 1);
    expect(b.summary().readings.find((row) => row.value === 6250)?.struck?.why).toBe('undone');
  });

  it('undo takes back the step together with the answer that moved it', () => {
    const b = bench();
    b.press('next');
    b.press('answer:yes');
    expect(b.step()).toBe('width');
    b.press('undo');
    expect(b.step()).toBe('ask');
    expect(b.session.context().answers['ask']).toBeUndefined();
  });

  it('a corrected reading stays on record, struck through, and no longer counts', () => {
    const b = atRestHeight();
    b.say('sixty-two point five');
    b.say('yes');
    const seq = b.summary().readings.find((row) => row.value === 6250)!.seq;
    b.press(`correct:${seq}`);
    b.say('sixty-five point two');
    const kept = b.say('yes');
    expect(kept.said).toBe('corrected: Rest height 65.2 mm');
    const rows = b.summary().readings.filter((row) => row.reading === 'rest-height');
    expect(rows.map((row) => [row.value, row.struck?.why])).toEqual([
      [6250, 'corrected'],
      [6520, undefined],
    ]);
    expect(b.summary().sets[0]?.values).toEqual([6520]);
    expect(b.step()).toBe('rest-height');
  });

  it('an impression taken again is a new attempt, and the first stays on record with its clock', () => {
    const b = bench();
    for (const intent of ['next', 'answer:yes']) b.press(intent);
    b.type('58');
    b.press('yes');
    for (const intent of ['material:soft-1', 'start', 'seated', 'out', 'next']) b.press(intent);
    expect(b.press('answer:again').facts).toEqual([]);
    expect(b.press('reason:notNeeded').said).toContain('taken again from: Take it');
    expect(b.step()).toBe('dip');
    b.press('start');
    const rows = b.summary().clocks.filter((row) => row.clock === 'dip');
    expect(rows.map((row) => [row.attempt, row.struck])).toEqual([
      [1, true],
      [2, false],
    ]);
  });

  it('a reading called out of turn is filed under its own name, and the visit stays where it is', () => {
    const b = atRestHeight();
    b.say('width fifty-nine point five');
    b.say('yes');
    expect(b.step()).toBe('rest-height');
    const row = b.summary().readings.at(-1)!;
    expect([row.reading, row.value, row.outOfTurn]).toEqual(['width', 5950, true]);
  });

  it('a note is kept word for word', () => {
    const b = atRestHeight();
    b.say('note left side tender on closing');
    expect(b.summary().notes.at(-1)?.text).toBe('left side tender on closing');
  });

  it('a step passed over names its reason', () => {
    const b = bench();
    b.press('next');
    b.press('skip');
    expect(b.session.context().asking).toEqual({ for: 'skip' });
    b.press('reason:notNeeded');
    expect(b.summary().skips).toMatchObject([{ title: 'Is it so', reason: 'Not needed' }]);
    expect(b.step()).toBe('width');
  });

  it('a visit is not closed over something open without a reason', () => {
    const b = atRestHeight();
    b.say('seventy');
    b.say('yes');
    b.press('next');
    expect(b.step()).toBe('sign');
    b.press('sign:KV');
    expect(b.session.context().closed).toBe(false);
    b.press('reason:notNeeded');
    expect(b.session.context().closed).toBe(true);
    expect(b.summary().signed.at(-1)?.overruled).toBe('Not needed');
  });
});
