/** `npm run interpret` and `npm run grammar`: one line out for every line in, whatever the line. */
import { execFileSync, spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';

const root = new URL('../../', import.meta.url);
const run = (script: string, args: readonly string[], input: string | Buffer = '') =>
  spawnSync(process.execPath, ['--import', 'tsx', `scripts/${script}.ts`, ...args], {
    cwd: root,
    input,
    maxBuffer: 1 << 28,
  });

function interpretLines(input: string | Buffer, language = 'en'): readonly Record<string, unknown>[] {
  const { stdout, status } = run('interpret', ['--lang', language], input);
  expect(status).toBe(0);
  return stdout
    .toString('utf8')
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Record<string, unknown>);
}

describe('interpret', () => {
  it('prints value, ask, command and certainty', () => {
    const [plain, asked, command, outside] = interpretLines(
      'sixty two point five\nsixty two five\ngo back\nthree hundred point five\n',
    );
    expect(plain).toMatchObject({ value: 62.5, ask: false, command: null, certainty: 'sure' });
    expect(asked).toMatchObject({ value: null, ask: true, certainty: 'ask', candidates: [62.5] });
    expect(command).toMatchObject({ value: null, ask: false, command: 'back' });
    expect(outside).toMatchObject({ value: 300.5, ask: true, certainty: 'check' });
  });
  it('never skips a line', () => {
    const odd = [
      '',
      ' ',
      '\r',
      '62\r',
      'a\u2028b',
      '\u0000',
      '{',
      '{}',
      '[1]',
      'null',
      '{"alternatives":1}',
      'x'.repeat(300_000),
      '62',
    ];
    const bytes = Buffer.concat([
      Buffer.from(odd.join('\n')),
      Buffer.from('\n'),
      Buffer.from([0xed, 0xa0, 0x80, 0xff]),
      Buffer.from('\nlast'),
    ]);
    const lines = interpretLines(bytes);
    expect(lines).toHaveLength(odd.length + 2);
    expect(lines[3]).toMatchObject({ value: 62 });
    expect(lines[12]).toMatchObject({ value: 62 });
  });
  it('takes alternatives, a reading and the set so far as JSON', () => {
    const line = (data: unknown): string => JSON.stringify(data);
    const alternatives = [{ transcript: 'seventy', confidence: 0.8 }, { transcript: 'seventeen' }];
    const [known, off, unknown, bad] = interpretLines(
      [
        line({ alternatives, expect: 'rest-height', previous: [69.5, 70] }),
        line({ alternatives: [{ transcript: 'sixty' }], expect: 'rest-height', previous: [69.5, 70] }),
        line({ alternatives, expect: 'no-such-reading' }),
        line({ alternatives, expect: 'rest-height', previous: ['x'] }),
      ].join('\n'),
    );
    expect(known).toMatchObject({ value: 70, ask: false });
    expect(off).toMatchObject({ value: 60, certainty: 'check' });
    expect(unknown).toMatchObject({ value: null, ask: false, error: 'unknown reading: no-such-reading' });
    expect(bad).toHaveProperty('error');
  });
  it('speaks the other languages and refuses one it does not', () => {
    expect(interpretLines('zweiundsechzigeinhalb', 'de')[0]).toMatchObject({ value: 62.5 });
    expect(interpretLines('soixante-douze virgule cinq', 'fr')[0]).toMatchObject({ value: 72.5 });
    expect(interpretLines('sesenta y dos y medio', 'es')[0]).toMatchObject({ value: 62.5 });
    expect(run('interpret', ['--lang', 'xx']).status).toBe(2);
  });
});

describe('grammar', () => {
  it('prints a grammar for any moment, and for one step', () => {
    const print = (...args: string[]): string =>
      execFileSync(process.execPath, ['--import', 'tsx', 'scripts/grammar.ts', ...args], {
        cwd: root,
        encoding: 'utf8',
      });
    expect(print('--lang', 'de')).toMatch(/^#JSGF V1\.0 UTF-8;\ngrammar rimwise\.de;\n[^]*public <said> = /);
    expect(print('--step', 'sign-in-consent')).toContain('<answer> = yes | ');
  });
  it('refuses an unknown step or language', () => {
    expect(run('grammar', ['--step', 'nowhere']).status).toBe(2);
    expect(run('grammar', ['--lang', 'xx']).status).toBe(2);
  });
});
