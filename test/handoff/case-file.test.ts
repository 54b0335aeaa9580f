// @vitest-environment node
import { describe, expect, it } from 'vitest';
import type { Fact, FactBody } from '../../src/domain/case/facts.ts';
import { parseFacts } from '../../src/domain/case/parse.ts';
import { mergeCaseFiles, readCaseText, toCaseFile, toFacts } from '../../src/handoff/case-file.ts';
import { arrivalOf } from '../../src/handoff/case-import.ts';
import { canonical, caseText, sha256 } from '../../src/handoff/chain.ts';
import { opening, reading, stamp } from '../helpers/facts.ts';
import { recorded } from './cases.ts';
import { good, loose, put, rehashed, type Change } from './tamper.ts';

/** Facts written on top of a record, each an act of its own. */
function write(record: readonly Fact[], ...bodies: readonly FactBody[]): Fact[] {
  return [...record, ...stamp(bodies, record.length + 1, 1_000_000)];
}

const flag = (id: string): FactBody => ({ kind: 'flagAnswered', flag: id, answer: 'keep', reason: 'tired' });
const first = stamp([...opening, reading(6750), reading(7650, { corrects: 3 }), flag('suspect:4'), flag('widths:3:4')]);

describe('the canonical form', () => {
  it('is the one of RFC 8785, section 3.2.2 and 3.2.3 (sample, text seen in the reference library’s tests)', () => {
    const sample: unknown = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],' +
        '"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    );
    expect(canonical(sample)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it('sorts keys by UTF-16 units and refuses what JSON cannot say', () => {
    expect(canonical({ '\ufb33': 1, '\ud83d\ude00': 2, '\u20ac': 3, '1': 4, '\r': 5, '\u00f6': 6 })).toBe(
      '{"\\r":5,"1":4,"\u00f6":6,"\u20ac":3,"\ud83d\ude00":2,"\ufb33":1}',
    );
    for (const odd of [Number.NaN, Infinity, '\ud800', undefined])
      expect(() => canonical(odd)).toThrow(/not allowed|no canonical/);
  });

  it('is hashed as FIPS 180-4 has it ("abc")', async () => {
    expect(await sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });
});

describe('a case file', () => {
  it.each(['clean', 'troubled'] as const)('gives back the recorded visit "%s" fact for fact', async (name) => {
    const { facts } = recorded(name);
    const file = good(await toCaseFile(facts, 'chair-1'));
    const again = good(await readCaseText(caseText(file)));
    expect(again).toEqual(file);
    expect(toFacts(again, 'chair-1')).toEqual(facts);
  });

  it('writes references by writer and number', async () => {
    const file = good(await toCaseFile(first, 'chair-1'));
    expect(file.entries.map((entry) => entry.fact.body).slice(3)).toMatchObject([
      { corrects: { writer: 'chair-1', n: 3 } },
      { flag: 'suspect:@chair-1/4' },
      { flag: 'widths:@chair-1/3:@chair-1/4' },
    ]);
    expect(file.entries[3]?.fact.act).toEqual({ writer: 'chair-1', n: 4 });
  });

  it('is the same bytes however often it is made, and says who wrote what after each other', async () => {
    const [a, b] = [good(await toCaseFile(first, 'chair-1')), good(await toCaseFile(first, 'chair-1'))];
    expect(caseText(a)).toBe(caseText(b));
    expect(a.entries.map((entry) => entry.prev)).toEqual(['', ...a.entries.slice(0, -1).map((entry) => entry.hash)]);
    expect(a.digest).toMatch(/^[0-9a-f]{64}$/);
  });

  it.each([
    [[], 'chair-1', 'malformed', ''],
    [first, 'Chair 1', 'malformed', 'writer'],
    [write(first, reading(1, { corrects: 99 })), 'chair-1', 'dangling', 'entry 99'],
    [write(first, flag('suspect:77')), 'chair-1', 'dangling', 'entry 77'],
    [write(first, { kind: 'note', step: 'a', text: '\ud800', source: 'keypad' }), 'chair-1', 'malformed', ''],
    [first.map((fact) => ({ ...fact, app: `1 (lab #${fact.seq + 1})` })), 'chair-1', 'cut', 'lab/2'],
    [first.map((fact) => ({ ...fact, app: '1 (lab #1)' })), 'chair-1', 'forked', 'lab/1'],
  ] as const)('is refused with a reason when the record cannot travel (%#)', async (facts, writer, reason, where) => {
    expect(await toCaseFile(facts, writer)).toMatchObject({ ok: false, reason, where });
  });
});

describe('from clinic to lab and back', () => {
  const lab: FactBody[] = [
    { kind: 'note', step: 'lab', text: 'poured', source: 'keypad' },
    { kind: 'undone', act: 7, what: 'note' },
  ];
  const clinic: FactBody[] = [reading(6800), reading(6850, { corrects: 7 }), flag('suspect:8')];

  async function exchange() {
    const out = good(await toCaseFile(first, 'chair-1'));
    const atLab = good(await arrivalOf([], out, 'lab-2')).facts;
    const labRecord = write(atLab, ...lab);
    const back = good(await toCaseFile(labRecord, 'lab-2'));
    const clinicRecord = write(first, ...clinic);
    const arrival = good(await arrivalOf(clinicRecord, back, 'chair-1'));
    return { out, atLab, labRecord, back, clinicRecord, arrival };
  }

  it('the lab gets every fact, with the same numbers, marked with where it came from', async () => {
    const { atLab } = await exchange();
    expect(atLab.map(({ app: _app, ...fact }) => fact)).toEqual(first.map(({ app: _app, ...fact }) => fact));
    expect(atLab.map((fact) => fact.app)).toEqual(first.map((fact) => `test (chair-1 #${fact.seq})`));
    expect(parseFacts(atLab).ok).toBe(true);
  });

  it('what comes back is appended behind what was written meanwhile, and points at the right facts', async () => {
    const { clinicRecord, arrival } = await exchange();
    expect(arrival.facts.map(({ seq, act, app, body }) => ({ seq, act, app, body }))).toEqual([
      { seq: 10, act: 10, app: 'test (lab-2 #1)', body: lab[0] },
      { seq: 11, act: 11, app: 'test (lab-2 #2)', body: { kind: 'undone', act: 10, what: 'note' } },
    ]);
    expect(parseFacts([...clinicRecord, ...arrival.facts]).ok).toBe(true);
  });

  it('nothing arrives twice, and both sides come to the same digest', async () => {
    const { labRecord, clinicRecord, back, arrival } = await exchange();
    const clinicNow = [...clinicRecord, ...arrival.facts];
    expect(good(await arrivalOf(clinicNow, back, 'chair-1')).facts).toEqual([]);
    const toLab = good(await toCaseFile(clinicNow, 'chair-1'));
    const labNow = [...labRecord, ...good(await arrivalOf(labRecord, toLab, 'lab-2')).facts];
    const labFile = good(await toCaseFile(labNow, 'lab-2'));
    expect(labFile).toEqual(toLab);
    expect(arrival.merged.digest).toBe(labFile.digest);
  });

  it('a machine that lost its tail gets its own facts back as its own', async () => {
    const { out } = await exchange();
    const { facts } = good(await arrivalOf(first.slice(0, 4), out, 'chair-1'));
    expect(facts).toEqual(first.slice(4));
  });
});

describe('what was tampered with', () => {
  const tampered = async (change: Change) => {
    const file = loose(good(await toCaseFile(first, 'chair-1')));
    change(file);
    return readCaseText(JSON.stringify(file));
  };

  it.each<[string, Change, string, string]>([
    ['a changed value', put('entries.2.fact.body.value', 6760), 'changed', 'chair-1/3'],
    ['a changed time', put('entries.1.at', 7), 'changed', 'chair-1/2'],
    ['an entry taken out', (file) => file.entries.splice(2, 1), 'cut', 'chair-1/4'],
    ['a tail cut off', (file) => file.entries.splice(4), 'cut', 'digest'],
    ['a changed case', put('caseId', 'c2'), 'changed', 'chair-1/1'],
    ['a changed digest', put('digest', '0'.repeat(64)), 'cut', 'digest'],
    ['a changed prev', put('entries.3.prev', '0'.repeat(64)), 'changed', 'chair-1/4'],
    ['two entries with one number', put('entries.5.n', 5), 'forked', 'chair-1/5'],
    ['a newer format', put('v', 2), 'newerFormat', 'v'],
    ['another format', put('format', 'other'), 'notACaseFile', 'format'],
    ['a text for a number', put('entries.2.fact.body.value', '6750'), 'malformed', 'entries.2.fact.body.value'],
    ['an unknown field', put('entries.2.fact.body.extra', 1), 'malformed', 'entries.2.fact.body.extra'],
    ['half a letter', put('entries.2.fact.body.heard.text', '\ud800'), 'malformed', 'entries.2.fact.body.heard.text'],
    ['no entries', put('entries', []), 'malformed', 'entries'],
  ])('%s is refused with its place', async (_name, change, reason, where) => {
    expect(await tampered(change)).toMatchObject({ ok: false, reason, where });
  });

  it('text that is no JSON, and JSON that is no case, are refused', async () => {
    expect(await readCaseText('{"format":')).toMatchObject({ reason: 'notJson' });
    for (const json of ['null', '[]', '7', '"x"', '{}'])
      expect(await readCaseText(json)).toMatchObject({ reason: 'notACaseFile' });
  });

  it('a chain rebuilt with right hashes is still refused when it does not hang together', async () => {
    const rebuilt = async (change: Change) => {
      const file = loose(good(await toCaseFile(first, 'chair-1')));
      change(file);
      return readCaseText(JSON.stringify(await rehashed(file)));
    };
    expect(await rebuilt(put('entries.3.fact.body.corrects.n', 40))).toMatchObject({
      reason: 'dangling',
      where: 'chair-1/4',
    });
    expect(await rebuilt(put('entries.4.fact.body.flag', 'suspect:4'))).toMatchObject({ reason: 'dangling' });
    expect(await rebuilt(put('entries.2.fact.app', '1 (lab #1)'))).toMatchObject({
      reason: 'malformed',
      where: 'chair-1/3',
    });
    expect(await rebuilt(() => undefined)).toMatchObject({ ok: true });
  });

  it('entries in another order, or twice, mean the same', async () => {
    const file = good(await toCaseFile(first, 'chair-1'));
    const shuffled = { ...file, entries: [...file.entries.toReversed(), file.entries[0]] };
    expect(good(await readCaseText(JSON.stringify(shuffled, null, 2)))).toEqual(file);
  });
});

describe('files that do not belong together', () => {
  it('another case is foreign', async () => {
    const other = stamp(opening).map((fact) => ({ ...fact, caseId: 'c2' }));
    const file = good(await toCaseFile(other, 'chair-1'));
    expect(await arrivalOf(first, file, 'chair-1')).toMatchObject({ reason: 'foreign' });
    const mine = good(await toCaseFile(first, 'chair-1'));
    expect(await mergeCaseFiles(mine, file)).toMatchObject({ reason: 'foreign' });
  });

  it('two machines under one name that wrote different things are told the first place they part', async () => {
    const a = good(await toCaseFile(write(first, reading(6800), reading(6900)), 'chair-1'));
    const b = good(await toCaseFile(write(first, reading(6850), reading(6900)), 'chair-1'));
    expect(await mergeCaseFiles(a, b)).toMatchObject({ ok: false, reason: 'forked', where: 'chair-1/7' });
    expect(await mergeCaseFiles(b, a)).toMatchObject({ ok: false, reason: 'forked', where: 'chair-1/7' });
  });
});
