import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { changedAt, isStale } from '../../scripts/lib/build.mjs';

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'rimwise-build-'));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

function touch(name: string, seconds: number): void {
  const path = join(root, name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, '');
  utimesSync(path, seconds, seconds);
}

function age(name: string, seconds: number): void {
  utimesSync(join(root, name), seconds, seconds);
}

describe('a build is stale', () => {
  it('when there is none', () => {
    touch('src/a/b.ts', 100);
    expect(isStale(root)).toBe(true);
  });

  it('when a source deep inside is newer, and not when all are older', () => {
    touch('src/a/b.ts', 100);
    touch('machines/m.ts', 100);
    touch('dist/index.html', 200);
    for (const folder of ['src/a', 'src', 'machines']) age(folder, 100);
    expect(isStale(root)).toBe(false);
    age('src/a/b.ts', 300);
    expect(isStale(root)).toBe(true);
  });

  it('when a source was deleted, which only its folder remembers', () => {
    touch('src/a/b.ts', 100);
    touch('dist/index.html', 200);
    for (const folder of ['src', 'src/a']) age(folder, 100);
    expect(isStale(root)).toBe(false);
    rmSync(join(root, 'src/a/b.ts'));
    expect(isStale(root)).toBe(true);
  });
});

it('what is not there has never changed', () => {
  expect(changedAt(join(root, 'nowhere'))).toBe(0);
});
