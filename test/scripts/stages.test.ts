import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { choose, stages } from '../../scripts/lib/stages.mjs';

const names = (wish: { fast: boolean; only: string | undefined }) => {
  const choice = choose(wish);
  return choice.ok ? choice.chosen.map((stage) => stage.name) : choice.why;
};

describe('the stages of npm test', () => {
  it('are all of them, in order', () => {
    expect(names({ fast: false, only: undefined })).toEqual([
      'format',
      'lint',
      'types',
      'unit',
      'build',
      'e2e',
      'size',
      'test:acoustic',
    ]);
  });

  it('are the quick ones with --fast', () => {
    expect(names({ fast: true, only: undefined })).toEqual(['format', 'lint', 'types', 'unit']);
  });

  it('are the named ones with --only, still in order', () => {
    expect(names({ fast: false, only: 'size' })).toEqual(['size']);
    expect(names({ fast: true, only: 'e2e, lint' })).toEqual(['lint', 'e2e']);
  });

  it('are listed when a name is unknown', () => {
    expect(names({ fast: false, only: 'lint,speed' })).toMatch(/no stage "speed".*format, lint, types/);
  });

  it('can each be run as a command of their own, but for the size', () => {
    const { scripts } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
      scripts: Record<string, string>;
    };
    const commands = stages.map((stage) => (stage.name === 'format' ? 'format:check' : stage.name));
    expect(commands.filter((name) => scripts[name] === undefined)).toEqual(['size']);
  });
});
