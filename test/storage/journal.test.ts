import { describe, expect, it } from 'vitest';
import { browserDigest, seal } from '../../src/storage/chain.ts';
import { createJournalDisk, createMemoryJournal } from '../../src/storage/fake-journal.ts';
import {
  createJournal,
  type JournalAnswer,
  type JournalPort,
  type JournalQuestion,
} from '../../src/storage/journal.ts';
import { lineFor } from '../../src/storage/journal-lines.ts';
import { facts, manualTimers, note, row } from './samples.ts';

function worker() {
  const asked: JournalQuestion[] = [];
  const port: JournalPort & { ended: boolean } = {
    ended: false,
    postMessage: (question) => asked.push(question),
    onmessage: null,
    onerror: null,
    terminate() {
      this.ended = true;
    },
  };
  const answer = (data: JournalAnswer): void => port.onmessage?.({ data } as MessageEvent<JournalAnswer>);
  return { port, asked, answer };
}

const batch = { facts: facts(1, 1), row: row(1) };

describe('a journal that is rewritten', () => {
  it('holds what counts and nothing of what was replaced, and keeps the record of keys', async () => {
    const disk = createJournalDisk();
    const journal = createMemoryJournal(disk);
    await journal.open('db-1');
    for (let seq = 1; seq <= 40; seq += 1) await journal.append({ facts: [note(seq, 'planted')], row: row(seq) });
    await journal.keep({ rev: 1, text: 'planted' });
    await journal.keep({ rev: 2 });
    await journal.append({ facts: facts(1, 40), row: row(40) });
    const before = disk.bytes.length;
    expect(await journal.rewrite()).toMatchObject({ ok: true });
    expect(new TextDecoder().decode(disk.bytes)).not.toContain('planted');
    expect(disk.bytes.length).toBeLessThan(before);
    const next = createMemoryJournal(disk);
    expect(await next.open('db-2')).toMatchObject({
      ok: true,
      value: { dbId: 'db-1', cut: 0, damaged: 0, keyring: { rev: 2 }, cases: [['case-a', { last: 40 }]] },
    });
    expect(await next.read(['case-a'])).toMatchObject({ ok: true, value: [{ facts: facts(1, 40), row: row(40) }] });
  });

  it('killed at any instant of it has lost nothing', async () => {
    const whole = createJournalDisk();
    const first = createMemoryJournal(whole);
    await first.open('db-1');
    for (let seq = 1; seq <= 20; seq += 1) await first.append({ facts: [note(seq, 'planted')], row: row(seq) });
    await first.append({ facts: facts(1, 20), row: row(20) });
    for (let writes = 0; writes < 8; writes += 1) {
      const disk = createJournalDisk();
      disk.bytes = whole.bytes.slice();
      disk.writesLeft = writes;
      await createMemoryJournal(disk).rewrite();
      disk.writesLeft = undefined;
      const next = createMemoryJournal(disk);
      await next.open('db-1');
      expect(await next.read(['case-a'])).toMatchObject({ ok: true, value: [{ facts: facts(1, 20), row: row(20) }] });
    }
  });

  it('is read anew by another window, however long it has grown since', async () => {
    const disk = createJournalDisk();
    const [one, two] = [createMemoryJournal(disk), createMemoryJournal(disk)];
    await one.open('db-1');
    for (let seq = 1; seq <= 30; seq += 1) await one.append({ facts: [note(seq, 'planted')], row: row(seq) });
    await two.open('db-1');
    await one.append({ facts: facts(1, 30), row: row(30) });
    await one.rewrite();
    for (let seq = 31; seq <= 80; seq += 1) await one.append({ facts: facts(seq, seq), row: row(seq) });
    expect(await two.append({ facts: facts(81, 81), row: row(81) })).toMatchObject({ ok: true, value: { ok: true } });
    expect(await createMemoryJournal(disk).read(['case-a'])).toMatchObject({ value: [{ facts: facts(1, 81) }] });
  });
});

describe('the journal in its worker', () => {
  it('gives each answer to whoever asked, in whatever order they come', async () => {
    const { port, asked, answer } = worker();
    const journal = createJournal(port, manualTimers());
    const [one, two] = [journal.append(batch), journal.read(['case-a'])];
    answer({ id: asked[1]!.id, ok: true, value: [] });
    answer({ id: asked[0]!.id, ok: true, value: { ok: true } });
    expect(await one).toMatchObject({ ok: true, value: { ok: true } });
    expect(await two).toMatchObject({ ok: true, value: [] });
  });

  it('that does not answer holds nobody up for more than three seconds, and a late answer does no harm', async () => {
    const { port, asked, answer } = worker();
    const timers = manualTimers();
    const waiting = createJournal(port, timers).append(batch);
    await timers.pass(3000);
    expect(await waiting).toEqual({ ok: false, why: 'no answer' });
    answer({ id: asked[0]!.id, ok: true, value: { ok: true } });
    expect(timers.pending()).toBe(0);
  });

  it('that fails says so; one that cannot start fails everything, at once', async () => {
    const { port, asked, answer } = worker();
    const timers = manualTimers();
    const journal = createJournal(port, timers);
    const first = journal.append(batch);
    answer({ id: asked[0]!.id, ok: false, why: 'QuotaExceededError' });
    expect(await first).toMatchObject({ ok: false, why: 'QuotaExceededError' });
    const second = journal.append(batch);
    port.onerror?.(new Event('error') as ErrorEvent);
    expect(await second).toMatchObject({ ok: false });
    expect(await journal.append(batch)).toMatchObject({ ok: false });
    expect(asked).toHaveLength(2);
    journal.close();
    expect(port.ended).toBe(true);
  });
});

describe('the journal as a file', () => {
  it('keeps the name it was given first, and cuts a torn end off', async () => {
    const disk = createJournalDisk();
    await createMemoryJournal(disk).open('first');
    await createMemoryJournal(disk).append(batch);
    const whole = disk.bytes.length;
    disk.bytes = Uint8Array.from([...disk.bytes, ...lineFor({ facts: facts(2, 2), row: row(2) }).slice(0, 30)]);
    const opened = await createMemoryJournal(disk).open('second');
    expect(opened).toMatchObject({ ok: true, value: { dbId: 'first', cut: 30 } });
    expect(disk.bytes).toHaveLength(whole);
  });

  it('refuses a line that would leave a hole, and says where it ends', async () => {
    const journal = createMemoryJournal();
    await journal.append(batch);
    const answer = await journal.append({ facts: facts(4, 4), row: row(4) });
    expect(answer).toEqual({ ok: true, value: { ok: false, last: 1 } });
  });

  it('takes nothing back when a slow window brings what another one has copied already, and more', async () => {
    const journal = createMemoryJournal();
    const sealed = await seal(facts(1, 3), '', browserDigest()!);
    await journal.append({ facts: sealed.slice(0, 1), row: row(1) });
    await journal.append({ facts: sealed.slice(1), row: row(3) });
    expect(await journal.append({ facts: sealed.slice(1, 2), row: row(2) })).toEqual({ ok: true, value: { ok: true } });
    expect(await journal.read(['case-a'])).toMatchObject({ value: [{ facts: sealed, row: row(3) }] });
  });

  it('takes the later word where two differ: what stands in the database is written over it', async () => {
    const journal = createMemoryJournal();
    const digest = browserDigest()!;
    const refused = await seal(facts(1, 3), '', digest);
    const other = await seal([facts(1, 1)[0]!, note(2, 'the other window')], '', digest);
    await journal.append({ facts: refused, row: row(3) });
    await journal.append({ facts: other.slice(1), row: row(2) });
    expect(await journal.read(['case-a'])).toMatchObject({ value: [{ facts: other, row: row(2) }] });
  });

  it('notices what another window has written to it meanwhile', async () => {
    const disk = createJournalDisk();
    const [one, two] = [createMemoryJournal(disk), createMemoryJournal(disk)];
    await one.open('x');
    await two.open('x');
    await one.append(batch);
    expect(await two.append({ facts: facts(2, 2), row: row(2) })).toEqual({ ok: true, value: { ok: true } });
    expect(await one.append({ facts: facts(3, 3), row: row(3) })).toEqual({ ok: true, value: { ok: true } });
    expect(await one.read(['case-a'])).toMatchObject({ value: [{ facts: facts(1, 3), row: row(3) }] });
  });
});
