import { describe, expect, it } from 'vitest';
import { SingleWriter } from '../../src/app/single-writer.ts';
import { fakeBrowser, type FakeBrowser } from '../helpers/windows.ts';

const settle = () => new Promise((resolve) => setImmediate(resolve));

function open(browser: FakeBrowser) {
  const window = browser.open();
  const read: string[] = [];
  const writer = new SingleWriter({
    windows: window,
    readAnew: (id) => read.push(id),
    listAnew: () => undefined,
    changed: () => undefined,
  });
  return { window, writer, read };
}

describe('a case open in two windows', () => {
  it('is written by the first; the second follows what it writes', async () => {
    const browser = fakeBrowser();
    const [one, two] = [open(browser), open(browser)];
    expect(await one.writer.open('a')).toBe('here');
    expect(await two.writer.open('a')).toBe('elsewhere');
    one.window.postMessage({ kind: 'written', caseId: 'a', lastSeq: 3 });
    one.window.postMessage({ kind: 'written', caseId: 'b', lastSeq: 3 });
    one.window.postMessage({ kind: 'else', caseId: 'a' });
    expect(two.read).toEqual(['a']);
    expect(one.read).toEqual([]);
  });

  it('may be another case in each', async () => {
    const browser = fakeBrowser();
    const [one, two] = [open(browser), open(browser)];
    expect(await one.writer.open('a')).toBe('here');
    expect(await two.writer.open('b')).toBe('here');
    expect(await two.writer.open('a')).toBe('elsewhere');
    expect(await one.writer.open('b')).toBe('here');
    await settle();
    expect(two.writer.state()).toBe('here');
    expect(two.read).toEqual(['a']);
  });

  it('goes to the second when it takes over; the first reads anew and follows', async () => {
    const browser = fakeBrowser();
    const [one, two] = [open(browser), open(browser)];
    await one.writer.open('a');
    await two.writer.open('a');
    await two.writer.takeOver();
    await settle();
    expect([one.writer.state(), two.writer.state()]).toEqual(['elsewhere', 'here']);
    expect([one.read, two.read]).toEqual([['a'], ['a']]);
    await one.writer.takeOver();
    await settle();
    expect([one.writer.state(), two.writer.state()]).toEqual(['here', 'elsewhere']);
  });

  it('goes to the second by itself when the first is closed', async () => {
    const browser = fakeBrowser();
    const [one, two] = [open(browser), open(browser)];
    await one.writer.open('a');
    await two.writer.open('a');
    one.writer.stop();
    await settle();
    expect(two.writer.state()).toBe('here');
    expect(two.read).toEqual(['a']);
  });

  it('is let go of by a page that is left, and asked for again when it comes back', async () => {
    const browser = fakeBrowser();
    const [one, two] = [open(browser), open(browser)];
    await one.writer.open('a');
    one.window.live('leaving');
    expect(await two.writer.open('a')).toBe('here');
    one.window.live('shown');
    await settle();
    expect(one.writer.state()).toBe('elsewhere');
    two.window.live('leaving');
    await settle();
    expect(one.writer.state()).toBe('here');
  });

  it('comes back to a page that was left when nobody has taken it, and is read anew', async () => {
    const one = open(fakeBrowser());
    await one.writer.open('a');
    one.window.live('leaving');
    one.window.live('shown');
    await settle();
    expect(one.writer.state()).toBe('here');
    expect(one.read).toEqual(['a']);
  });

  it('is written here where there are no locks, or where they are refused', async () => {
    const none = new SingleWriter({
      windows: undefined,
      readAnew: () => undefined,
      listAnew: () => undefined,
      changed: () => undefined,
    });
    expect(await none.open('a')).toBe('here');
    const browser = fakeBrowser();
    const refusing = new SingleWriter({
      windows: { ...browser.open(), locks: { request: () => Promise.reject(new DOMException('', 'SecurityError')) } },
      readAnew: () => undefined,
      listAnew: () => undefined,
      changed: () => undefined,
    });
    expect(await refusing.open('a')).toBe('here');
  });
});
