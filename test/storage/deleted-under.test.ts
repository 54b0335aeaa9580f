/** Site data cleared, or evicted by the browser, while a case is open in a window. */
import { describe, expect, it } from 'vitest';
import { createFactLog } from '../../src/storage/fact-log.ts';
import { onDisk, openUnlocked, turnedOn } from './locked-device.ts';
import { facts, note, row } from './samples.ts';
import { createDevice, openOn, raw } from './two-copies.ts';

describe('a database that is deleted while a window is open', () => {
  it('gets the case back from the second copy with the next entry, and that is said', async () => {
    const device = createDevice();
    const store = openOn(device);
    await store.append(facts(1, 3), row(3));
    await raw(device, (tx) => {
      for (const name of ['facts', 'cases']) tx.objectStore(name).clear();
    });
    const written = await store.append([note(4, 'after it')], row(4));
    expect(written).toMatchObject({ ok: true, recovered: expect.stringMatching(/restored from the second copy/) });
    expect(await openOn(device).load('case-a')).toMatchObject({
      ok: true,
      facts: [...facts(1, 3), note(4, 'after it')],
    });
  });

  it('together with the second copy is written again from what the window has, and that is said', async () => {
    const device = createDevice();
    const log = createFactLog({ storage: openOn(device) });
    await log.append(facts(1, 3), row(3));
    await raw(device, (tx) => {
      for (const name of ['facts', 'cases']) tx.objectStore(name).clear();
    });
    device.journal.bytes = new Uint8Array(0);
    const written = await log.append([note(4, 'after it')], row(4));
    expect(written).toMatchObject({ ok: true, recovered: expect.stringMatching(/written again from this window/) });
    expect(await openOn(device).load('case-a')).toMatchObject({
      ok: true,
      facts: [...facts(1, 3), note(4, 'after it')],
    });
    log.stop();
  });

  it('and of which the window has not all, does not take an entry that hangs in the air: not safe, and in the file', async () => {
    const device = createDevice();
    await openOn(device).append(facts(1, 3), row(3));
    const log = createFactLog({ storage: openOn(device, { journal: true }) });
    await raw(device, (tx) => {
      for (const name of ['facts', 'cases']) tx.objectStore(name).clear();
    });
    const written = await log.append([note(4, 'after it')], row(4));
    expect(written).toMatchObject({ ok: false, cause: 'refused', why: expect.stringMatching(/deleted/) });
    expect(log.status()).toMatchObject({ state: 'memory', unsaved: 1 });
    expect((await log.exportFile('case-a')).text).toContain('after it');
    log.stop();
  });

  it('and was under a passphrase is sealed again, with the record of the key', async () => {
    const device = createDevice();
    const page = await turnedOn(device);
    const log = createFactLog({ storage: page.store });
    await log.append(facts(1, 3), row(3));
    await raw(device, (tx) => {
      for (const name of tx.objectStoreNames) tx.objectStore(name).clear();
    });
    device.journal.bytes = new Uint8Array(0);
    expect(await log.append([note(4, 'after it')], row(4))).toMatchObject({ ok: true, recovered: expect.any(String) });
    log.stop();
    expect(await onDisk(device)).not.toContain('after it');
    const next = await openUnlocked(device);
    expect(next.keys.state()).toBe('open');
    expect(await next.store.load('case-a')).toMatchObject({ ok: true, facts: [...facts(1, 3), note(4, 'after it')] });
  });
});
