import { describe, expect, it } from 'vitest';
import { isSealed, openEntry, openRow, openValue, sealEntry, sealRow, sealValue } from '../../src/storage/sealing.ts';
import { newRecoveryCode, readRecoveryCode } from '../../src/storage/recovery-code.ts';
import { keptKey, newKey } from '../../src/storage/keyring.ts';
import { note, row } from './samples.ts';

const odd = note(3, 'wax \u0000 \ud83e\uddb7 \ud800 <b>62</b> zweiundsechzig');

describe('an entry under a key', () => {
  it('comes back as it went in, and shows nothing but its case and its number', async () => {
    const key = await keptKey(await newKey());
    const sealed = await sealEntry(key, odd);
    expect(Object.keys(sealed).sort()).toEqual(['caseId', 'sealed', 'seq']);
    expect(isSealed(sealed)).toBe(true);
    expect(atob(sealed.sealed)).not.toContain('zweiundsechzig');
    expect(await openEntry(key, structuredClone(sealed))).toEqual(odd);
  });

  it('is another text each time', async () => {
    const key = await newKey();
    expect((await sealEntry(key, odd)).sealed).not.toBe((await sealEntry(key, odd)).sealed);
  });

  it('does not open under another key, in another place, or changed in any byte', async () => {
    const key = await newKey();
    const sealed = await sealEntry(key, odd);
    expect(await openEntry(await newKey(), sealed)).toBeUndefined();
    expect(await openEntry(key, { ...sealed, seq: 4 })).toBeUndefined();
    expect(await openEntry(key, { ...sealed, caseId: 'case-b' })).toBeUndefined();
    const bytes = atob(sealed.sealed);
    for (let at = 0; at < bytes.length; at += 7) {
      const changed = btoa(bytes.slice(0, at) + String.fromCharCode(bytes.charCodeAt(at) ^ 1) + bytes.slice(at + 1));
      expect(await openEntry(key, { ...sealed, sealed: changed })).toBeUndefined();
    }
    expect(await openEntry(key, { ...sealed, sealed: 'no base64 %' })).toBeUndefined();
    expect(await openEntry(key, { ...sealed, sealed: '' })).toBeUndefined();
  });

  it('leaves a case row with its id and its last number, and gives the rest back', async () => {
    const key = await newKey();
    const whole = row(12);
    const sealed = await sealRow(key, whole);
    expect(JSON.stringify(sealed)).not.toContain(whole.code);
    expect(sealed).toMatchObject({ id: whole.id, lastSeq: 12, code: '', openedAt: 0, lastAt: 0 });
    expect(await openRow(key, sealed)).toEqual(whole);
    // Mended from a copy that ends earlier: the number in clear is the one that holds.
    expect(await openRow(key, { ...sealed, lastSeq: 9 })).toEqual({ ...whole, lastSeq: 9 });
    expect(await openRow(key, { ...sealed, id: 'case-b' })).toBeUndefined();
  });

  it('a key kept for use cannot be taken out of the browser', async () => {
    const key = await keptKey(await newKey());
    expect(key.extractable).toBe(false);
    await expect(crypto.subtle.exportKey('raw', key)).rejects.toThrow(/extractable/);
    expect(await openValue(key, 'x', await sealValue(key, 'x', [1]))).toEqual([1]);
  });
});

describe('a recovery code', () => {
  it('is 25 letters that cannot be mistaken for each other, and never twice the same', () => {
    const codes = Array.from({ length: 200 }, newRecoveryCode);
    expect(new Set(codes).size).toBe(200);
    for (const code of codes) expect(code).toMatch(/^([0-9A-HJKMNP-TV-Z]{5}-){4}[0-9A-HJKMNP-TV-Z]{5}$/);
  });

  it('is read as it was meant, however it was typed', () => {
    const code = '01ABC-0D1EF-GH1JK-MN0PQ-RSTVW';
    expect(readRecoveryCode(' o1abc 0dIef ghljk mnOpq rstvw ')).toBe(code);
    expect(readRecoveryCode(code)).toBe(code);
  });
});
