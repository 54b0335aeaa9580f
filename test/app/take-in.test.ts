import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { FilesRequest } from '../../src/app/files.types.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { MOST_FILE_BYTES } from '../../src/domain/case/fileSize.ts';
import { toCaseFile } from '../../src/handoff/case-file.ts';
import { caseText } from '../../src/handoff/chain.ts';
import { opening, stamp } from '../helpers/facts.ts';
import { demoOpen, fakeApp, type FakeApp } from '../helpers/app.ts';
import { fakeBrowser } from '../helpers/windows.ts';

/** What is fetched when first wanted is to be there at once. */
beforeAll(async () => {
  await Promise.all([
    import('../../src/app/visit-kit.ts'),
    import('../../src/app/file-desk.ts'),
    import('../../src/handoff/case-file.ts'),
    import('../../src/handoff/case-import.ts'),
    import('../../src/handoff/saved-record.ts'),
    import('../../src/handoff/sealed.ts'),
  ]);
});

const model = (app: FakeApp) => app.runtime.model.getState();
const stored = (app: FakeApp, id = 'case-1') => (app.disk.facts.get(id) ?? []) as Fact[];
const bytesOf = (text: string) => new Uint8Array(Buffer.from(text, 'latin1'));

/** Until all of what was asked for is done; hashing and sealing take real time, on another thread. */
async function ask(app: FakeApp, request: FilesRequest): Promise<void> {
  app.runtime.askFiles(request);
  expect(model(app).files?.busy).toBe(true);
  await vi.waitFor(() => expect(model(app).files?.busy).toBe(false), { timeout: 20_000, interval: 2 });
  await app.pass();
}

/** The open case as it would lie in the downloads. */
async function exported(app: FakeApp, passphrase?: string): Promise<Uint8Array> {
  const before = app.files.length;
  await ask(app, { ask: 'caseFile', ...(passphrase === undefined ? {} : { passphrase }) });
  expect(app.files).toHaveLength(before + 1);
  return bytesOf(app.files.at(-1)?.text ?? '');
}

const takeIn = (app: FakeApp, bytes: Uint8Array) => ask(app, { ask: 'takeIn', name: 'a.json', bytes });

/** A clinic with a visit begun, and a laboratory that has taken its file in. */
async function clinicAndLab() {
  const clinic = await demoOpen();
  clinic.runtime.note('first');
  await clinic.pass();
  const lab = await fakeApp({ settings: new Map<string, unknown>([['preferences', { standsAt: 'lab' }]]) });
  await takeIn(lab, await exported(clinic));
  return { clinic, lab };
}

describe('a case file taken in', () => {
  it('is a new case in the list, entry for entry, and opens at the bench where the device stands in the laboratory', async () => {
    const { clinic, lab } = await clinicAndLab();
    expect(model(lab).place).toBe('bench');
    expect(model(lab).files?.lines).toEqual([`New case DEMO-01: ${stored(clinic).length} entries.`]);
    expect(model(lab).cases.map((row) => row.code)).toEqual(['DEMO-01']);
    expect(stored(lab).map((fact) => fact.body)).toEqual(stored(clinic).map((fact) => fact.body));
    expect(model(lab).summary?.caseCode).toBe('DEMO-01');
  });

  it('brings only what is new, behind what is here, which stays as it was', async () => {
    const { clinic, lab } = await clinicAndLab();
    const here = structuredClone(stored(lab));
    clinic.runtime.note('second');
    clinic.runtime.note('third');
    await clinic.pass();
    const file = await exported(clinic);
    await takeIn(lab, file);
    expect(model(lab).files?.lines).toEqual([`Case DEMO-01: 2 new entries, ${here.length} already here.`]);
    expect(stored(lab).slice(0, here.length)).toEqual(here);
    expect(model(lab).summary?.notes.map((note) => note.text)).toEqual(['first', 'second', 'third']);
    await takeIn(lab, file);
    expect(model(lab).files?.lines).toEqual([
      `Case DEMO-01: nothing new, all ${here.length + 2} entries already here.`,
    ]);
    expect(stored(lab)).toHaveLength(here.length + 2);
  });

  it('keeps what was written here meanwhile; both sides come to the same digest', async () => {
    const { clinic, lab } = await clinicAndLab();
    await ask(lab, { ask: 'bench', by: 'MT', deed: { do: 'done', line: 'trim' } });
    clinic.runtime.note('second');
    await clinic.pass();
    await takeIn(lab, await exported(clinic));
    await takeIn(clinic, await exported(lab));
    for (const app of [clinic, lab]) await ask(app, { ask: 'digest' });
    expect(model(clinic).files?.digest?.value).toMatch(/^[0-9a-f]{64}$/);
    expect(model(clinic).files?.digest).toEqual(model(lab).files?.digest);
    expect(model(clinic).summary?.bench?.lines.find((line) => line.id === 'trim')?.done?.by).toBe('MT');
    expect(model(clinic).files?.lines[1]).toBe('The laboratory has done 1 line of the order.');
  });

  it('is refused with the place named when an entry was changed, and nothing of it is taken', async () => {
    const { clinic, lab } = await clinicAndLab();
    const before = stored(lab).length;
    clinic.runtime.note('second');
    await clinic.pass();
    const text = Buffer.from(await exported(clinic)).toString('utf8');
    await takeIn(lab, new Uint8Array(Buffer.from(text.replace('"second"', '"Second"'))));
    expect(model(lab).trouble).toMatch(/content of entry chair-[a-z0-9]+\/\d+ was changed/);
    expect(stored(lab)).toHaveLength(before);
  });

  it.each([
    ['{', /not JSON/],
    ['{"format":"x"}', /not a case file/],
    ['\u00ff\u00fe', /not text/],
  ])('%j is no case file, in words', async (text, why) => {
    const app = await fakeApp();
    await takeIn(app, bytesOf(text));
    expect(model(app).trouble).toMatch(why);
  });

  it('of more than 20 MB is not read at all', async () => {
    const app = await fakeApp();
    await takeIn(app, new Uint8Array(MOST_FILE_BYTES + 1));
    expect(model(app).trouble).toMatch(/larger than 20 MB/);
  });

  it('waits while a number waits for its yes: that number would be lost', async () => {
    const { clinic, lab } = await clinicAndLab();
    const file = await exported(lab);
    clinic.runtime.press('goto:rest-height');
    await clinic.pass();
    clinic.runtime.type('68');
    await clinic.pass();
    expect(model(clinic).step?.mode).toBe('confirm');
    await takeIn(clinic, file);
    expect(model(clinic).trouble).toMatch(/number waits/);
    expect(model(clinic).step?.mode).toBe('confirm');
  });

  it('of a visit whose protocol is not known here is refused in words', async () => {
    const facts = stamp([
      opening[0]!,
      { kind: 'visitOpened', visit: 1, protocol: 'own-1', version: 9, clinician: 'A', assistant: 'B', language: 'en' },
    ]);
    const file = await toCaseFile(facts, 'chair-9');
    if (!file.ok) throw new Error(file.text);
    const app = await fakeApp();
    await takeIn(app, new Uint8Array(Buffer.from(caseText(file.value))));
    expect(model(app).files).toMatchObject({
      refused: true,
      lines: [expect.stringMatching(/does not know the protocol own-1, version 9.*Nothing was taken in/)],
    });
    expect(app.disk.facts.size).toBe(0);
  });

  it('is refused while another window writes the case', async () => {
    const browser = fakeBrowser();
    const one = await demoOpen({ windows: browser.open() });
    await one.pass();
    const file = await exported(one);
    const two = await fakeApp({ windows: browser.open(), disk: one.disk });
    await takeIn(two, file);
    expect(model(two).trouble).toMatch(/another window/);
    expect(model(two).files).toMatchObject({ refused: true, lines: [expect.stringMatching(/another window/)] });
  });
});

describe('a sealed case file', () => {
  it('asks for its passphrase, keeps asking after a wrong one, and opens with the right one', async () => {
    const { clinic } = await clinicAndLab();
    const file = await exported(clinic, 'seven wet gloves');
    const other = await fakeApp();
    await takeIn(other, file);
    expect(model(other).files?.locked).toEqual({ name: 'a.json' });
    expect(model(other).trouble).toBe('');
    await ask(other, { ask: 'open', passphrase: 'seven dry gloves' });
    expect(model(other).trouble).toMatch(/does not open/);
    expect(model(other).files).toMatchObject({ locked: { name: 'a.json' }, refused: true });
    await ask(other, { ask: 'open', passphrase: 'seven wet gloves' });
    expect(model(other).files?.locked).toBeUndefined();
    expect(model(other).files?.lines).toEqual([`New case DEMO-01: ${stored(clinic).length} entries.`]);
  });

  it('can be left alone', async () => {
    const { clinic } = await clinicAndLab();
    const file = await exported(clinic, 'seven wet gloves');
    const other = await fakeApp();
    await takeIn(other, file);
    await ask(other, { ask: 'open', passphrase: '' });
    expect(model(other).files?.locked).toBeUndefined();
    expect(model(other).cases).toEqual([]);
  });
});

describe('the bench', () => {
  const bench = (app: FakeApp) => model(app).summary?.bench;
  const deed = (app: FakeApp, what: Extract<FilesRequest, { ask: 'bench' }>['deed'], by = 'MT') =>
    ask(app, { ask: 'bench', by, deed: what });

  it('writes nothing without initials, without words, twice, or about what is not there', async () => {
    const { lab } = await clinicAndLab();
    const before = stored(lab).length;
    await deed(lab, { do: 'done', line: 'trim' }, ' ');
    expect(model(lab).trouble).toMatch(/Initials/);
    for (const what of [
      { do: 'ask', line: '', text: ' ' },
      { do: 'done', line: 'nothing' },
      { do: 'answer', question: 1, text: 'x' },
      { do: 'taken', clock: 'nothing' },
      { do: 'takeBack', act: 1 },
    ] as const) {
      await deed(lab, what);
      expect(model(lab).trouble).not.toBe('');
    }
    expect(stored(lab)).toHaveLength(before);
    await deed(lab, { do: 'done', line: 'trim' });
    await deed(lab, { do: 'done', line: 'trim' });
    expect(model(lab).trouble).toMatch(/Already ticked by MT/);
    expect(stored(lab)).toHaveLength(before + 1);
  });

  it('takes a tick back once, and it can be ticked again; all three stay on the record', async () => {
    const { lab } = await clinicAndLab();
    const before = stored(lab).length;
    await deed(lab, { do: 'done', line: 'trim' });
    const act = bench(lab)?.lines.find((line) => line.id === 'trim')?.done?.act ?? 0;
    await deed(lab, { do: 'takeBack', act });
    expect(bench(lab)?.lines.find((line) => line.id === 'trim')?.done).toBeUndefined();
    await deed(lab, { do: 'takeBack', act });
    expect(model(lab).trouble).toMatch(/taken back already/);
    await deed(lab, { do: 'done', line: 'trim' });
    expect(
      stored(lab)
        .slice(before)
        .map((fact) => fact.body.kind),
    ).toEqual(['benchDone', 'undone', 'benchDone']);
  });

  it('asks, the clinic answers, the bench reads the answer', async () => {
    const { clinic, lab } = await clinicAndLab();
    await deed(lab, { do: 'ask', line: 'border', text: 'How short at the back?' });
    await deed(lab, { do: 'returned', text: 'rims on trays' });
    await takeIn(clinic, await exported(lab));
    expect(model(clinic).files?.lines.slice(1)).toEqual([
      'The laboratory asks: How short at the back?',
      'Work returned: rims on trays',
    ]);
    const [question] = bench(clinic)?.questions ?? [];
    await deed(clinic, { do: 'answer', question: question?.seq ?? 0, text: 'Two more.' }, 'KV');
    await takeIn(lab, await exported(clinic));
    expect(bench(lab)?.questions[0]?.answer).toMatchObject({ text: 'Two more.', by: 'KV' });
    await deed(clinic, { do: 'answer', question: question?.seq ?? 0, text: 'No, three.' }, 'KV');
    expect(model(clinic).trouble).toMatch(/answered/);
  });

  it('never comes under the undo of the chair', async () => {
    const { clinic, lab } = await clinicAndLab();
    await deed(lab, { do: 'done', line: 'trim' });
    await takeIn(clinic, await exported(lab));
    clinic.runtime.go('visit');
    clinic.runtime.key('Backspace');
    await clinic.pass();
    expect(model(clinic).said).toMatch(/Undone: note: first/);
    expect(bench(clinic)?.lines.find((line) => line.id === 'trim')?.done?.by).toBe('MT');
  });
});

const encoded = (text: string) => new TextEncoder().encode(text);

describe('a record saved in need', () => {
  /** What “Save file” gives while the disk is full. */
  async function saved() {
    const app = await demoOpen();
    app.runtime.note('before');
    await app.pass();
    app.store.trouble = 'full';
    app.runtime.note('only in memory');
    await app.pass();
    app.runtime.saveFile();
    await app.pass();
    return { app, text: app.files.at(-1)?.text ?? '' };
  }

  it('is taken in elsewhere, with what was never on the disk; the device’s own file brings nothing twice', async () => {
    const { app, text } = await saved();
    const other = await fakeApp();
    await takeIn(other, encoded(text));
    expect(JSON.stringify(stored(other))).toContain('only in memory');
    const there = stored(other).length;
    expect(there).toBe(stored(app).length + 1);
    app.store.trouble = 'none';
    await app.pass(60_000);
    await takeIn(other, await exported(app));
    expect(stored(other)).toHaveLength(there);
    expect(model(other).files?.lines[0]).toMatch(/nothing new/);
  });

  it('of which a part is missing, or that names no device, is refused in words', async () => {
    const { text } = await saved();
    const other = await fakeApp();
    const raw = JSON.parse(text) as Record<string, unknown>;
    const { writer: _writer, ...nameless } = raw;
    for (const [bad, why] of [
      [{ ...raw, complete: false }, /not the whole case/],
      [nameless, /does not name the device/],
      [{ ...raw, facts: (raw['facts'] as unknown[]).slice(1) }, /missing/],
      [{ ...raw, caseId: 'another' }, /different cases/],
    ] as const) {
      await takeIn(other, encoded(JSON.stringify(bad)));
      expect(model(other).files?.lines.join(' ')).toMatch(why);
      expect(other.disk.facts.size).toBe(0);
    }
  });
});
