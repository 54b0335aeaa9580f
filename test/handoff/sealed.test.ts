// @vitest-environment node
import { argon2id } from 'hash-wasm';
import { describe, expect, it, vi } from 'vitest';
import { isSealed, seal, unseal } from '../../src/handoff/sealed.ts';
import { good } from './tamper.ts';

const PASS = 'seven wet gloves';
const json = async (text: string, pass = PASS) => JSON.parse(good(await seal(text, pass))) as Record<string, string>;

describe('a sealed file', () => {
  it('opens with its passphrase, however its letters are composed or spaced at the ends', async () => {
    const sealed = await json('Größe 67.5', 'Löffel und Abdruck');
    expect(isSealed(sealed)).toBe(true);
    expect(good(await unseal(sealed, ' Lo\u0308ffel und Abdruck '))).toBe('Größe 67.5');
  });

  it('shows nothing of what is in it, and is another one each time', async () => {
    const [a, b] = [await json('case DEMO-7'), await json('case DEMO-7')];
    expect(JSON.stringify(a)).not.toContain('DEMO');
    expect(a['data']).not.toBe(b['data']);
  });

  it('does not open with another passphrase', async () => {
    expect(await unseal(await json('x'), 'seven dry gloves')).toMatchObject({ ok: false, reason: 'wrongPassphrase' });
  });

  it('does not open when a letter of it was changed, in the head or in the body', async () => {
    const sealed = await json('x');
    const data = sealed['data'] ?? '';
    const other = `${data.startsWith('A') ? 'B' : 'A'}${data.slice(1)}`;
    expect(await unseal({ ...sealed, data: other }, PASS)).toMatchObject({ reason: 'wrongPassphrase' });
    const kdf = { ...(sealed['kdf'] as unknown as object), passes: 3 };
    expect(await unseal({ ...sealed, kdf }, PASS)).toMatchObject({ reason: 'wrongPassphrase' });
  });

  it('that would make the reader work without end is refused before any work', async () => {
    const sealed = await json('x');
    const kdf = { ...(sealed['kdf'] as unknown as object), memoryKiB: 4_000_000 };
    expect(await unseal({ ...sealed, kdf }, PASS)).toMatchObject({ reason: 'malformed', where: 'kdf.memoryKiB' });
    expect(await unseal({ ...sealed, data: '%' }, PASS)).toMatchObject({ reason: 'malformed', where: 'data' });
  });

  it('is neither made nor opened, and says why, where the browser forbids what makes the key', async () => {
    const sealed = await json('x');
    vi.stubGlobal('WebAssembly', undefined);
    try {
      expect(await seal('x', PASS)).toMatchObject({ ok: false, reason: 'unsupported' });
      expect(await unseal(sealed, PASS)).toMatchObject({ ok: false, reason: 'unsupported' });
    } finally {
      vi.unstubAllGlobals();
    }
  });

  it('is not made with a passphrase of under eight letters', async () => {
    expect(await seal('x', '1234567')).toMatchObject({ ok: false });
  });
});

it.each([
  [2, 65_536, '09316115d5cf24ed5a15a31a3ba326e5cf32edc24702987c02b6566f61913cf7'],
  [2, 256, '9dfeb910e80bad0311fee20f9c0e2b12c17987b4cac90c2ef54d5b3021c68bfe'],
])(
  'the key is argon2id as its reference implementation has it: %i passes, %i KiB (vectors from memory)',
  async (...vector) => {
    const [iterations, memorySize, hash] = vector;
    const input = { password: 'password', salt: 'somesalt', parallelism: 1, hashLength: 32 };
    expect(await argon2id({ ...input, iterations, memorySize })).toBe(hash);
  },
);
