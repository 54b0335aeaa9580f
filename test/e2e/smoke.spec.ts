import { statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inBrowser, sizes } from './harness.ts';

const chair = inBrowser();

describe('the app opens', () => {
  it.each(['wide', 'narrow'] as const)('on a %s screen, with something to read and nothing broken', async (size) => {
    const { page, troubles } = await chair.open({ size });
    await page.getByRole('heading').first().waitFor();
    expect(await page.title()).toBe('Rimwise');
    expect(await page.evaluate(() => window.innerWidth)).toBe(sizes[size].width);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    expect(troubles()).toEqual([]);
  });

  it('and asks no other machine for anything', async () => {
    const { page, requests, foreignRequests } = await chair.open();
    await page.getByRole('heading').first().waitFor();
    await page.waitForLoadState('networkidle');
    expect(requests().some((url) => url.endsWith('.js'))).toBe(true);
    expect(foreignRequests()).toEqual([]);
  });

  it.each(['wide', 'narrow'] as const)('and breaks no rule of accessibility on a %s screen', async (size) => {
    const { page, axe } = await chair.open({ size });
    await page.getByRole('heading').first().waitFor();
    expect(await axe()).toEqual([]);
  });

  it('and can be pictured at both sizes', async () => {
    const { page, pictures } = await chair.open();
    await page.getByRole('heading').first().waitFor();
    const paths = await pictures('first-screen');
    expect(paths.map((path) => statSync(path).size > 1000)).toEqual([true, true]);
  });
});

describe('what watches the app sees what is wrong', () => {
  it('a script that is not in a file of the app does not run, and is noticed', async () => {
    const { page, troubles } = await chair.open();
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'window.name = "ran"';
      document.body.append(script);
    });
    expect(await page.evaluate(() => window.name)).toBe('');
    expect(troubles().join()).toContain('Content Security Policy');
  });

  it('a request to another machine is refused, and is noticed', async () => {
    const { page, foreignRequests, troubles } = await chair.open();
    const answer = await page.evaluate(() => fetch('http://elsewhere.invalid/').then(String, () => 'refused'));
    expect(answer).toBe('refused');
    expect([...foreignRequests(), ...troubles()].join()).toContain('elsewhere.invalid');
  });

  it('a picture without words breaks a rule of accessibility', async () => {
    const { page, axe } = await chair.open();
    await page.getByRole('heading').first().waitFor();
    await page.evaluate(() => document.querySelector('#root')?.append(document.createElement('img')));
    expect((await axe()).join()).toContain('image-alt');
  });

  it('what one person stored, the next does not find; who comes back, does', async () => {
    const keep = () => localStorage.setItem('probe', 'kept');
    const look = () => localStorage.getItem('probe');
    const profile = chair.newProfile();
    const first = await chair.open({ profile });
    await first.page.evaluate(keep);
    await first.close();
    const again = await chair.open({ profile });
    expect(await again.page.evaluate(look)).toBe('kept');
    const other = await chair.open();
    expect(await other.page.evaluate(look)).toBeNull();
  });
});
