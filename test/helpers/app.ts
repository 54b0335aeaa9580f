/** The whole runtime on fakes: time that stands still, a disk that can fail, an ear that can be spoken to. */
import type { Devices } from '../../src/app/ports.ts';
import { createRuntime } from '../../src/app/runtime.ts';
import type { Runtime } from '../../src/app/runtime.types.ts';
import { createFactLog } from '../../src/storage/fact-log.ts';
import type { Keys } from '../../src/storage/keys.types.ts';
import type { FactStore } from '../../src/storage/types.ts';
import { createMemoryDisk, createMemoryStore, type MemoryDisk, type MemoryStore } from '../../src/storage/fake.ts';
import { createFakeTime, type FakeTime } from '../../src/time/fake.ts';
import { createFakeWindow, type FakeSpeech, type FakeSpeechOptions } from '../../src/voice/fake.ts';
import { createBrowserVoice } from '../../src/voice/real.ts';
import { START } from './visit.ts';

export interface FakeApp {
  readonly runtime: Runtime;
  readonly time: FakeTime;
  readonly store: MemoryStore;
  readonly disk: MemoryDisk;
  readonly speech: FakeSpeech;
  readonly settings: Map<string, unknown>;
  readonly files: { name: string; text: string }[];
  /** Lets promises and the clock run. */
  pass(ms?: number): Promise<void>;
  /** Stops this page and opens another on the same disk and clock, `ms` later. */
  reload(ms?: number): Promise<FakeApp>;
}

export interface FakeAppOptions {
  readonly time?: FakeTime;
  readonly disk?: MemoryDisk;
  readonly settings?: Map<string, unknown>;
  readonly speech?: FakeSpeechOptions;
  /** The other windows, where a test has several. */
  readonly windows?: Devices['windows'];
  readonly persistence?: Devices['persistence'];
  /** A record that can be under a passphrase, in place of the one in memory; asked for anew by each page. */
  readonly sealed?: () => { readonly store: FactStore; readonly keys: Keys };
  /** Done while the start is still under way. */
  readonly early?: (runtime: Runtime) => void;
  /** What is told to the other windows of the lock. */
  readonly tellLock?: (news: unknown) => void;
}

const lockDevices = (keys: Keys, tell: FakeAppOptions['tellLock']): NonNullable<Devices['lock']> => ({
  keys,
  tell: (news) => tell?.(news),
  busyElsewhere: () => Promise.resolve(false),
});

const settle = async () => {
  for (let i = 0; i < 20; i += 1) await Promise.resolve();
  await new Promise((resolve) => setImmediate(resolve));
};

export async function fakeApp(options: FakeAppOptions = {}): Promise<FakeApp> {
  const time = options.time ?? createFakeTime(START);
  const disk = options.disk ?? createMemoryDisk();
  const settings = options.settings ?? new Map<string, unknown>();
  const store = createMemoryStore(disk);
  const sealed = options.sealed?.();
  const { window, speech } = createFakeWindow({ host: time.host, ...options.speech });
  const files: { name: string; text: string }[] = [];
  const late: { runtime?: Runtime } = {};
  const page = time.open({ onRing: (id, ring) => late.runtime?.ring(id, ring) });
  const voice = createBrowserVoice(window, {
    mayLeaveDevice: () => late.runtime?.mayLeaveDevice() ?? false,
    host: time.host,
  });
  let ids = disk.rows.size;
  const devices: Devices = {
    time: page,
    voice,
    ...(options.windows === undefined ? {} : { windows: options.windows }),
    ...(options.persistence === undefined ? {} : { persistence: options.persistence }),
    log: createFactLog({ storage: sealed?.store ?? store, host: time.host }),
    ...(sealed === undefined ? {} : { lock: lockDevices(sealed.keys, options.tellLock) }),
    settings: {
      read: (name) => Promise.resolve({ ok: true, value: settings.get(name) }),
      write: (name, value) => {
        settings.set(name, value);
        return Promise.resolve({ ok: true });
      },
    },
    newId: () => `case-${(ids += 1)}`,
    download: (name, content) =>
      files.push({ name, text: typeof content === 'string' ? content : new TextDecoder('latin1').decode(content) }),
    print: () => undefined,
  };
  const runtime = createRuntime(devices);
  late.runtime = runtime;
  const started = runtime.start();
  options.early?.(runtime);
  await started;
  const pass = async (ms = 0) => {
    await settle();
    if (ms > 0) time.advance(ms);
    await settle();
  };
  const reload = async (ms = 0) => {
    runtime.stop();
    time.close();
    time.advance(ms);
    return fakeApp({ ...options, time, disk, settings });
  };
  return { runtime, time, store, disk, speech, settings, files, pass, reload };
}

/** With the demo case open at its first step. */
export async function demoOpen(options: FakeAppOptions = {}): Promise<FakeApp> {
  const app = await fakeApp(options);
  app.runtime.newCase({ code: 'DEMO-01', clinician: 'KV', assistant: 'BR', demo: true });
  for (let i = 0; i < 50 && app.runtime.model.getState().step === undefined; i += 1) await app.pass();
  return app;
}
