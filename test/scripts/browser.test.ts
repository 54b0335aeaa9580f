import { describe, expect, it } from 'vitest';
import { findBrowser } from '../../scripts/lib/browser.mjs';

interface Given {
  readonly platform?: NodeJS.Platform;
  readonly env?: Record<string, string>;
  readonly there?: readonly string[];
  readonly notes?: readonly string[];
}

const find = ({ platform = 'linux', env = {}, there = [], notes = [] }: Given) =>
  findBrowser({
    platform,
    env,
    exists: (path) => [...there, ...notes].includes(path),
    works: (path) => there.includes(path),
  });

describe('the browser for the tests', () => {
  it('is the one that is named', () => {
    const env = { RIMWISE_BROWSER: '/somewhere/odd' };
    expect(find({ env, there: ['/somewhere/odd', '/usr/bin/chromium'] })).toEqual({ ok: true, path: '/somewhere/odd' });
  });

  it('is never another than the one that is named', () => {
    const found = find({ env: { RIMWISE_BROWSER: '/gone' }, there: ['/usr/bin/chromium'] });
    expect(found).toEqual({ ok: false, why: expect.stringContaining('/gone') });
  });

  it.each([
    ['/usr/bin/chromium', 'linux', {}],
    ['/usr/bin/google-chrome', 'linux', {}],
    ['/usr/bin/chromium-browser', 'linux', {}],
    ['/home/me/bin/chromium', 'linux', { PATH: 'relative:/home/me/bin' }],
    ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome', 'darwin', { HOME: '/Users/me' }],
    ['/Users/me/Applications/Chromium.app/Contents/MacOS/Chromium', 'darwin', { HOME: '/Users/me' }],
    ['C:\\Programs\\Google\\Chrome\\Application\\chrome.exe', 'win32', { ProgramFiles: 'C:\\Programs' }],
  ] as const)('is found at %s', (path, platform, env) => {
    expect(find({ platform, env, there: [path] })).toEqual({ ok: true, path });
  });

  it('is Chromium before Chrome', () => {
    expect(find({ there: ['/usr/bin/google-chrome', '/usr/bin/chromium'] })).toEqual({
      ok: true,
      path: '/usr/bin/chromium',
    });
  });

  it('is not a program that only says where to get one', () => {
    const found = find({ notes: ['/usr/bin/chromium-browser'], there: ['/usr/bin/google-chrome'] });
    expect(found).toEqual({ ok: true, path: '/usr/bin/google-chrome' });
  });

  it('is asked for in a sentence when there is none', () => {
    expect(find({})).toEqual({ ok: false, why: expect.stringMatching(/No Chromium or Chrome.*RIMWISE_BROWSER/) });
  });
});
