import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request, type IncomingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileFor, serve } from '../../scripts/lib/serve.mjs';

const outside = mkdtempSync(join(tmpdir(), 'rimwise-serve-'));
const folder = join(outside, 'dist');
let port = 0;
let close = async () => {};

beforeAll(async () => {
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(outside, 'secret.txt'), 'secret');
  writeFileSync(join(outside, 'dist-secret.txt'), 'secret');
  writeFileSync(join(folder, 'index.html'), '<!doctype html>page');
  writeFileSync(join(folder, '.hidden'), 'secret');
  for (const name of ['app.js', 'app.css', 'a b.svg', 'app.js.map', 'font.woff2', 'odd.xyz']) {
    writeFileSync(join(folder, 'assets', name), name);
  }
  const served = await serve(folder, 0);
  if (!served.ok) throw new Error(served.why);
  ({ port, close } = served);
});
afterAll(async () => {
  await close();
  rmSync(outside, { recursive: true, force: true });
});

interface Answer {
  readonly status: number | undefined;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** A raw request: a well-behaved client would tidy up the path before sending it. */
function ask(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answer> {
  return new Promise((done, failed) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers }, (answer) => {
      let body = '';
      answer.on('data', (chunk) => (body += String(chunk)));
      answer.on('end', () => done({ status: answer.statusCode, headers: answer.headers, body }));
    });
    sent.on('error', failed);
    sent.end();
  });
}

describe('what is served', () => {
  it.each([
    ['/', 'text/html; charset=utf-8', '<!doctype html>page'],
    ['/?case=1', 'text/html; charset=utf-8', '<!doctype html>page'],
    ['/assets/app.js', 'text/javascript; charset=utf-8', 'app.js'],
    ['/assets/app.css', 'text/css; charset=utf-8', 'app.css'],
    ['/assets/a%20b.svg', 'image/svg+xml', 'a b.svg'],
    ['/assets/app.js.map', 'application/json; charset=utf-8', 'app.js.map'],
    ['/assets/font.woff2', 'font/woff2', 'font.woff2'],
    ['/assets/odd.xyz', 'application/octet-stream', 'odd.xyz'],
  ])('%s as %s', async (path, type, body) => {
    const answer = await ask(path);
    expect([answer.status, answer.headers['content-type'], answer.body]).toEqual([200, type, body]);
    expect(answer.headers['content-length']).toBe(String(body.length));
  });

  it('only to this machine', async () => {
    const served = await serve(folder, 0);
    if (!served.ok) throw new Error(served.why);
    expect(served.address).toBe(`http://127.0.0.1:${served.port}/`);
    await served.close();
  });

  it('with a policy that lets the page load nothing from elsewhere and run nothing inline', async () => {
    for (const path of ['/', '/assets/app.js', '/nothing']) {
      const { headers } = await ask(path);
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("default-src 'self'");
      expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';");
      expect(policy.replace("'wasm-unsafe-eval'", '')).not.toMatch(/unsafe|\*|https?:/);
      expect(headers['x-content-type-options']).toBe('nosniff');
    }
  });

  it('named by content for ever, anything else asked for anew each time', async () => {
    expect((await ask('/assets/app.js')).headers['cache-control']).toContain('immutable');
    expect((await ask('/')).headers['cache-control']).toBe('no-cache');
  });

  it('headers alone when only headers are asked for', async () => {
    const answer = await ask('/', {}, 'HEAD');
    expect([answer.status, answer.headers['content-length'], answer.body]).toEqual([200, '19', '']);
  });
});

describe('what is not served', () => {
  it.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e%2fsecret.txt',
    '/..%5csecret.txt',
    '/../dist-secret.txt',
    '/.hidden',
    '/assets',
    '/assets/',
    '/nothing',
    '/%',
    '/%00',
    '//etc/passwd',
    '/app/cases/1',
  ])('%s', async (path) => {
    const answer = await ask(path);
    expect(answer.status).toBe(404);
    expect(answer.body).not.toContain('secret');
  });

  it('anything that is sent', async () => {
    expect((await ask('/', {}, 'POST')).status).toBe(405);
  });

  it.each(['*', 'http://elsewhere.invalid/', ''])('a target that is no path: %s', (url) => {
    expect(fileFor(folder, url)).toBeUndefined();
  });
});

describe('one address, so that the cases are in one place', () => {
  it('a page opened under another name of this machine is sent there', async () => {
    const answer = await ask('/?a=1', { host: `localhost:${port}`, 'sec-fetch-mode': 'navigate' });
    expect([answer.status, answer.headers.location]).toEqual([307, `http://127.0.0.1:${port}/?a=1`]);
  });

  it('the proper name and a plain fetch are answered', async () => {
    expect((await ask('/', { host: `127.0.0.1:${port}`, 'sec-fetch-mode': 'navigate' })).status).toBe(200);
    expect((await ask('/', { host: `localhost:${port}` })).status).toBe(200);
  });
});

it('a port that is taken is said to be taken', async () => {
  const second = await serve(folder, port);
  expect(second).toMatchObject({ ok: false, reason: 'taken' });
});
