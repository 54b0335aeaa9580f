import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { browserDigest, linkOf, seal, soundLength, stableText, unsealed } from '../../src/storage/chain.ts';
import { crc32, lineFor, scan } from '../../src/storage/journal-lines.ts';
import { facts } from './samples.ts';

const digest = browserDigest()!;

describe('the text that is hashed', () => {
  it('does not depend on the order in which a fact was put together', () => {
    expect(stableText({ b: 1, a: { d: null, c: ['x', 2] } })).toBe('{"a":{"c":["x",2],"d":null},"b":1}');
    expect(stableText({ a: { c: ['x', 2], d: null }, b: 1 })).toBe(stableText({ b: 1, a: { d: null, c: ['x', 2] } }));
  });

  it('says the same as plain JSON does', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(JSON.parse(stableText(value))).toEqual(plain(value));
      }),
    );
  });
});

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('the chain', () => {
  it('is SHA-256 over the fact and the hash before it', async () => {
    const [first, second] = await seal(facts(1, 2), '', digest);
    const sha = (text: string) => createHash('sha256').update(text).digest('hex');
    const one = sha(stableText({ fact: facts(1, 1)[0], prev: '' }));
    expect(linkOf(first)).toEqual({ prev: '', hash: one });
    expect(linkOf(second)).toEqual({ prev: one, hash: sha(stableText({ fact: facts(2, 2)[0], prev: one })) });
    expect(unsealed(second)).toEqual(facts(2, 2)[0]);
  });

  it('notices every change, swap, deletion and insertion, and where', async () => {
    const sealed = await seal(facts(1, 6), '', digest);
    expect(await soundLength(sealed, digest)).toBe(6);
    for (let at = 0; at < 6; at += 1) {
      const changed = sealed.with(at, { ...sealed[at]!, act: 99 });
      expect(await soundLength(changed, digest)).toBe(at);
      const stripped = sealed.with(at, unsealed(sealed[at]) as (typeof sealed)[number]);
      expect(await soundLength(stripped, digest)).toBe(at === 0 ? 1 : at);
    }
    expect(await soundLength(sealed.toSpliced(2, 1), digest)).toBe(2);
    expect(await soundLength(sealed.toSpliced(2, 0, sealed[1]!), digest)).toBe(2);
  });

  it('may begin after entries that have none', async () => {
    const late = await seal(facts(4, 6), '', digest);
    expect(await soundLength([...facts(1, 3), ...late], digest)).toBe(6);
    expect(await soundLength([...late, ...facts(7, 8)], digest)).toBe(3);
  });
});

describe('a line of the journal', () => {
  it('has the checksum that gzip uses (check value of the CRC catalogue: "123456789" gives cbf43926)', () => {
    expect(crc32(new TextEncoder().encode('123456789')).toString(16)).toBe('cbf43926');
  });

  it('torn anywhere, or changed in any byte, is not taken for one; the others are', () => {
    const lines = [{ a: 'eins\n' }, { b: 'zwei \u0000 ü' }, { c: 3 }];
    const bytes = lines.map(lineFor);
    const whole = Uint8Array.from(bytes.flatMap((line) => [...line]));
    const read = (from: Uint8Array): unknown[] => {
      const found: unknown[] = [];
      scan(from, (value) => found.push(value));
      return found;
    };
    expect(read(whole)).toEqual(lines);
    const firstTwo = bytes[0]!.length + bytes[1]!.length;
    for (let cut = firstTwo; cut < whole.length; cut += 1) {
      expect(read(whole.slice(0, cut))).toEqual(lines.slice(0, 2));
      expect(scan(whole.slice(0, cut), () => undefined).good).toBe(firstTwo);
    }
    for (let at = 0; at < whole.length; at += 1) {
      const bad = whole.slice();
      bad[at] = bad[at]! ^ 1;
      const left = read(bad);
      expect(left.length).toBeLessThan(3);
      expect(lines).toEqual(expect.arrayContaining(left));
    }
  });
});
