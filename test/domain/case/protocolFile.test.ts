/** A visit as a file: the same visit comes back, and a broken one is refused with place and reason. */
import { describe, expect, it } from 'vitest';
import { openFile, problemText, fileText } from '../../../src/domain/case/fileFormat.ts';
import { protocolFileText, readProtocolFile } from '../../../src/domain/case/protocolFile.ts';
import { protocols } from '../../../src/domain/protocol/index.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import type { VisitProtocol } from '../../../src/domain/protocol/types.ts';

const [visit] = protocols as [VisitProtocol];

function broken(change: (content: { steps: Record<string, unknown>[] }) => void): string {
  const file = JSON.parse(protocolFileText(visit)) as { content: { steps: Record<string, unknown>[] } };
  change(file.content);
  const read = readProtocolFile(JSON.stringify(file), defaultPractice);
  return read.ok ? '' : problemText(read);
}

describe('a protocol file', () => {
  it.each(protocols.map((protocol) => [protocol.id, protocol] as const))(
    'brings back %s as it was',
    (_id, protocol) => {
      const read = readProtocolFile(protocolFileText(protocol), defaultPractice);
      expect(read).toEqual({ ok: true, value: protocol });
    },
  );

  it.each<[string, (content: { steps: Record<string, unknown>[] }) => void, string]>([
    [
      'a step of no known kind',
      (c) => Object.assign(c.steps[0]!, { kind: 'dance' }),
      'steps.0.kind: Here stands "dance".',
    ],
    ['a step without a title', (c) => delete c.steps[3]!['title'], 'steps.3.title: This is missing.'],
    [
      'a title nobody can read',
      (c) => Object.assign(c.steps[0]!, { title: 'x'.repeat(60) }),
      'steps.sign-in-patient.title: 60 characters',
    ],
    [
      'two steps of one id',
      (c) => Object.assign(c.steps[1]!, { id: 'sign-in-patient' }),
      'steps.sign-in-patient: Two steps share this id.',
    ],
    ['a visit nobody can close', (c) => c.steps.pop(), 'must be the sign-off that closes the visit'],
    [
      'a reading that does not exist',
      (c) =>
        Object.assign(
          c.steps.find((s) => s['kind'] === 'reading')!,
          { reading: 'nose' },
        ),
      'There is no reading "nose".',
    ],
    [
      'a material class nobody has',
      (c) =>
        Object.assign(
          c.steps.find((s) => s['kind'] === 'clock')!,
          { materials: ['clay'] },
        ),
      'no material of class "clay"',
    ],
  ])('is refused for %s, with its place', (_name, change, why) => {
    expect(broken(change)).toContain(why);
  });
});

describe('numbered formats', () => {
  const kind = {
    kind: 'rimwise sample',
    format: 3,
    migrations: {
      1: (content: unknown) => ({ name: content }),
      2: (content: unknown) => ({ ...(content as object), lots: [] }),
    },
  };

  it('bring an older file up to date one step at a time', () => {
    const old = fileText({ ...kind, format: 1 }, 'a');
    expect(openFile(old, kind)).toEqual({ ok: true, value: { name: 'a', lots: [] } });
    expect(openFile(fileText({ ...kind, format: 2 }, { name: 'b' }), kind)).toEqual({
      ok: true,
      value: { name: 'b', lots: [] },
    });
    expect(openFile(fileText(kind, { name: 'c' }), kind)).toEqual({ ok: true, value: { name: 'c' } });
  });

  it('a newer one is left alone', () => {
    expect(openFile(fileText({ ...kind, format: 4 }, {}), kind)).toMatchObject({ ok: false, path: 'format' });
  });
});
