import { createServer, type Server } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { readArgs, serveSomewhere } from '../../scripts/lib/start.mjs';

describe('the words after npm start --', () => {
  it('name a port or none', () => {
    expect(readArgs([])).toEqual({ ok: true, port: undefined });
    expect(readArgs(['--no-open'])).toEqual({ ok: true, port: undefined });
    expect(readArgs(['--port', '5000'])).toEqual({ ok: true, port: 5000 });
    expect(readArgs(['--port=1'])).toEqual({ ok: true, port: 1 });
  });

  it.each([
    [['--port', '0']],
    [['--port', '65536']],
    [['--port', '80a']],
    [['--port', '1e3']],
    [['--port']],
    [['--open']],
    [['x']],
  ])('are explained when they make no sense: %s', (args) => {
    const read = readArgs(args);
    expect(read.ok).toBe(false);
    expect(read).toHaveProperty('why', expect.stringContaining('--port NUMBER'));
  });
});

describe('where the app is served', () => {
  let blocker: Server | undefined;
  afterEach(() => new Promise((closed) => (blocker === undefined ? closed(undefined) : blocker.close(closed))));

  function block(): Promise<number> {
    const server = createServer();
    blocker = server;
    return new Promise((done) => {
      server.listen(0, '127.0.0.1', () => {
        const address = server.address();
        done(typeof address === 'object' && address !== null ? address.port : 0);
      });
    });
  }

  it('not on the port that was asked for when another program has it, and a sentence says so', async () => {
    const port = await block();
    const served = await serveSomewhere(port);
    expect(served).toEqual({ ok: false, why: expect.stringMatching(`Port ${port} is taken by another program`) });
  });

  it('on the port that was asked for when it is free', async () => {
    const port = await block();
    await new Promise((closed) => blocker?.close(closed));
    blocker = undefined;
    const served = await serveSomewhere(port);
    if (!served.ok) throw new Error(served.why);
    expect(served.address).toBe(`http://127.0.0.1:${port}/`);
    await served.close();
  });
});
