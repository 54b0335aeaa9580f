// @vitest-environment node
import { readFile } from 'node:fs/promises';
import { describe, expect, it, vi } from 'vitest';
import {
  arriving,
  digestNow,
  makeCaseFile,
  makeFhir,
  makePdf,
  readCaseFile,
  type HandoffHost,
} from '../../src/app/handoff.ts';
import type { OpenCase } from '../../src/app/open-case.ts';
import { openStored } from '../../src/app/visit-kit.ts';
import type { Fact } from '../../src/domain/case/facts.ts';
import { recorded } from './cases.ts';
import { good } from './tamper.ts';
import { run, scratch } from './tools.ts';

vi.setConfig({ testTimeout: 30_000 });

const { facts } = recorded('clean');
const now = facts.at(-1)?.at ?? 0;
const host: HandoffHost = { now: () => now, writer: 'chair-1', timeZone: 'UTC', read: (url) => readFile(url) };

async function open(record: readonly Fact[]): Promise<OpenCase> {
  const opened = await openStored('replay', record, { now: () => now });
  if (!opened.ok) throw new Error(opened.text);
  return opened.open;
}
const here = await open(facts);
const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

describe('an open case leaves the app', () => {
  it('as a PDF whose printed digest is the one of its case file', async () => {
    const files = scratch();
    try {
      const pdf = good(await makePdf(here, 'A4', host));
      const file = good(await makeCaseFile(here, host));
      expect(pdf.name).toBe('lab-sheet-DEMO-C-visit-1.pdf');
      expect(pdf.digest).toBe(file.digest);
      expect(run('pdftotext', [files.put('a.pdf', pdf.bytes), '-'])).toContain(file.digest);
      expect(good(await digestNow(here, host))).toBe(file.digest);
    } finally {
      files.remove();
    }
  });

  it('and without its fonts there is no PDF but a sentence', async () => {
    const poor = { ...host, read: () => Promise.reject(new Error('offline')) };
    expect(await makePdf(here, 'A4', poor)).toMatchObject({
      ok: false,
      text: expect.stringContaining('Print the page'),
    });
  });

  it('as a bundle that carries the digest and the PDF', async () => {
    const pdf = good(await makePdf(here, 'LETTER', host));
    const bundle = text(good(await makeFhir(here, host, pdf.bytes)).bytes);
    expect(bundle).toContain(`urn:sha256:${pdf.digest}`);
    expect(bundle).toContain(Buffer.from(pdf.bytes).toString('base64').slice(0, 200));
  });
});

describe('and comes back', () => {
  it('fact for fact on another machine, under a passphrase too', async () => {
    const passphrase = 'seven wet gloves';
    const made = good(await makeCaseFile(here, host, passphrase));
    expect(text(made.bytes)).not.toContain('DEMO-C');
    expect(await readCaseFile(text(made.bytes))).toMatchObject({ reason: 'locked' });
    expect(await readCaseFile(text(made.bytes), 'another one')).toMatchObject({ reason: 'wrongPassphrase' });
    const file = good(await readCaseFile(text(made.bytes), passphrase));
    const arrived = good(await arriving([], file, 'lab-2')).facts;
    expect(arrived.map((fact) => fact.body)).toEqual(facts.map((fact) => fact.body));
    const there = await open(arrived);
    expect(there.parts(now).summary).toEqual(here.parts(now).summary);
    expect(good(await digestNow(there, { ...host, writer: 'lab-2' }))).toBe(made.digest);
  });

  it('a file in which the words of a sealed one occur is read for what it is', async () => {
    expect(await readCaseFile('{"a":"rimwise-case-sealed"}')).toMatchObject({ reason: 'notACaseFile' });
    expect(await readCaseFile('{"a":"rimwise-case-sealed"')).toMatchObject({ reason: 'notJson' });
  });
});
