import { describe, expect, it } from 'vitest';
import { addressedWords } from '../../src/screens/settings/addressed.ts';
import { stepped } from '../../src/screens/settings/parts.tsx';
import { letGo, pressed, toggled, TOUCH_MS, type Talk } from '../../src/screens/settings/talk.ts';

const shut: Talk = { open: false };
/** The ear after a touch that lasts so long. */
const touch = (talk: Talk, ms: number): Talk => letGo(pressed(talk, 1000), 1000 + ms);

describe('push-to-talk by one target', () => {
  it('is open from the first moment of the touch', () => {
    expect(pressed(shut, 1000).open).toBe(true);
  });

  it('held, it closes when it is let go', () => {
    expect(touch(shut, TOUCH_MS)).toEqual({ open: false });
    expect(touch(shut, 10_000)).toEqual({ open: false });
  });

  it('touched briefly, it stays open until the next touch, brief or long', () => {
    const open = touch(shut, TOUCH_MS - 1);
    expect(open).toEqual({ open: true });
    expect(touch(open, 50)).toEqual({ open: false });
    expect(touch(open, 5000)).toEqual({ open: false });
  });

  it('a release that no touch came before changes nothing', () => {
    expect(letGo(shut, 5)).toEqual(shut);
    expect(letGo({ open: true }, 5)).toEqual({ open: true });
  });

  it('by the keyboard each press changes over', () => {
    expect(toggled(shut)).toEqual({ open: true });
    expect(toggled(toggled(shut))).toEqual(shut);
  });
});

describe('the strip of words for an ear with a name', () => {
  const words = ['a number', 'next', 'back'];
  it.each([
    ['reading', 'rim', ['a number', '“rim”, then:', 'next', 'back']],
    ['check', 'rim', ['“rim”, then:', 'a number', 'next', 'back']],
    ['confirm', 'rim', words],
    ['choose', 'rim', words],
    ['reading', '', words],
  ] as const)('%s with “%s”', (mode, address, expected) => {
    expect(addressedWords(words, mode, address)).toEqual(expected);
  });
});

describe('more or less', () => {
  it('goes in clean steps', () => {
    expect(stepped(0.7, 0.1)).toBe(0.8);
    expect(stepped(0.3, -0.1)).toBe(0.2);
    let value = 0.1;
    for (let i = 0; i < 9; i += 1) value = stepped(value, 0.1);
    expect(value).toBe(1);
  });
});
