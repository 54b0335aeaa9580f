/** Promise: a question asked about a number never leaves another number standing that moving on would keep. */
import { describe, expect, it } from 'vitest';
import { atRestHeight } from '../helpers/visit.ts';

const kept = (b: ReturnType<typeof atRestHeight>) =>
  b.facts.filter(({ body }) => body.kind === 'reading' && body.reading === 'rest-height').length;

/** A sure number shown, then "no" and a number that may be two. */
function doubted() {
  const b = atRestHeight();
  b.say('sixty-two point five');
  expect(b.session.context().pending?.certainty).toBe('sure');
  b.say('no, sixty-three or sixty-four');
  expect(b.session.context().candidates?.values).toEqual([6300, 6400]);
  return b;
}

describe('a number that was shown before the question', () => {
  it('is kept only by a yes when the question is turned down', () => {
    const b = doubted();
    b.say('no');
    b.say('next');
    expect(kept(b)).toBe(0);
    expect(b.session.context().pending).toMatchObject({ value: 6250, certainty: 'check' });
    b.say('yes');
    expect(kept(b)).toBe(1);
  });

  it('is not called given up by an undo that gives up the question', () => {
    const b = doubted();
    const { said } = b.say('undo');
    expect(b.session.context().candidates).toBeUndefined();
    expect(said).not.toContain('Not kept');
    expect(b.session.context().pending?.value).toBe(6250);
  });
});

describe('while a question is asked', () => {
  it('another number that may be two takes its place, and nothing is refused in words of the machine', () => {
    const b = doubted();
    const { trouble } = b.say('sixty-five or sixty-six');
    expect(trouble).toBe('');
    expect(b.session.context().candidates?.values).toEqual([6500, 6600]);
    b.say('sixty-six');
    expect(b.session.context().pending).toMatchObject({ value: 6600, certainty: 'check' });
    expect(kept(b)).toBe(0);
  });

  it('a number that may be two says plainly that none is taken where none can be', () => {
    const b = atRestHeight();
    b.say('skip');
    const { trouble } = b.say('rest height sixty-five or sixty-six');
    expect(trouble).toContain('No number can be taken just now');
  });
});
