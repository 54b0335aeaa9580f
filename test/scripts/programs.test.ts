import { describe, expect, it } from 'vitest';
import { missingPackages, programs } from '../../scripts/lib/programs.mjs';

const all = Object.keys(programs).map((program) => `/usr/bin/${program}`);

describe('programs the tests need', () => {
  it('none is missing where all are there', () => {
    expect(missingPackages(['/usr/bin'], (path) => all.includes(path))).toEqual([]);
  });

  it('a missing one is named by its package, not by its program', () => {
    expect(missingPackages(['/bin', '/usr/bin'], (path) => path === '/usr/bin/qpdf')).toEqual([
      'poppler-utils',
      'zbar-tools',
    ]);
  });
});
