// @vitest-environment node
import { describe, expect, it } from 'vitest';
import { codeModules, codePath } from '../../src/handoff/code-path.ts';
import { DIGEST } from './cases.ts';

describe('the code as a path', () => {
  it('covers exactly the dark modules, each once', () => {
    const { path, size } = codePath(DIGEST);
    const { dark } = codeModules(DIGEST);
    const covered = new Map<string, number>();
    for (const [, x = '', y = '', width = ''] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\3z/g))
      for (let i = 0; i < Number(width); i += 1) {
        const at = `${Number(x) + i} ${y}`;
        covered.set(at, (covered.get(at) ?? 0) + 1);
      }
    for (let y = 0; y < size; y += 1)
      for (let x = 0; x < size; x += 1) expect(covered.get(`${x} ${y}`) ?? 0).toBe(dark(x, y) ? 1 : 0);
    expect(path.replaceAll(/M\d+ \d+h\d+v1h-\d+z/g, '')).toBe('');
  });
});
