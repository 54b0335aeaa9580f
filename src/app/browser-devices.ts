/** The page's own devices, put together once. */
import type { Language } from '../domain/protocol/types.ts';
import { createFactLog } from '../storage/fact-log.ts';
import { createDeviceStore } from '../storage/device-store.ts';
import { sealedSettings } from '../storage/sealed-settings.ts';
import { createSettings } from '../storage/settings.ts';
import { createTime } from '../time/real.ts';
import type { Lifecycle, OnRing } from '../time/types.ts';
import { createBrowserVoice } from '../voice/real.ts';
import type { Keys } from '../storage/keys.types.ts';
import type { LockDevices } from './locking.ts';
import type { Devices, VoicePort } from './ports.ts';
import type { LockPort, WindowsPort } from './single-writer.ts';
import { createUpdates, namesOfLocks, othersAmong } from './updates.ts';
import { SEALED_SETTINGS } from './sealed-names.ts';
import { CHANNEL, tellingLog } from './window-news.ts';

function download(name: string, content: string | Uint8Array<ArrayBuffer>, type = 'application/json'): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** `crypto.randomUUID` exists only on secure pages; a plain address in the practice's network must work too. */
function newId(): string {
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

function windowsPort(channel: BroadcastChannel, lifecycle: Lifecycle): WindowsPort {
  const locks: LockPort | undefined = navigator.locks;
  return {
    locks,
    onNews: (listener) => {
      const hear = ({ data }: MessageEvent<unknown>): void => listener(data);
      channel.addEventListener('message', hear);
      return () => channel.removeEventListener('message', hear);
    },
    onLife: (listener) => lifecycle.subscribe(listener),
  };
}

/** A browser that cannot be asked, or fails to answer, has promised nothing. */
function persistencePort(): Pick<Devices, 'persistence'> {
  const storage: StorageManager | undefined = navigator.storage;
  if (typeof storage?.persist !== 'function') return {};
  const no = (): boolean => false;
  return {
    persistence: { persisted: () => storage.persisted().catch(no), persist: () => storage.persist().catch(no) },
  };
}

function lockDevices(keys: Keys, channel: BroadcastChannel): LockDevices {
  return {
    keys,
    // No word of a key goes this way: each window is unlocked by whoever sits at it.
    tell: (news) => channel.postMessage(news),
    busyElsewhere: async (own) => othersAmong(await namesOfLocks(navigator.locks), own).length > 0,
  };
}

/** Only the built app has a worker that serves it. */
function updatePort(): Pick<Devices, 'updates'> {
  if (!import.meta.env.PROD) return {};
  const workers: ServiceWorkerContainer | undefined = navigator.serviceWorker;
  const lockNames = () => namesOfLocks(navigator.locks);
  return { updates: createUpdates({ workers, lockNames, reload: () => window.location.reload() }) };
}

export interface DeviceOptions {
  readonly onRing: OnRing;
  readonly mayLeaveDevice: () => boolean;
  readonly language: Language;
}

export function browserDevices({ onRing, mayLeaveDevice, language }: DeviceOptions): Devices {
  const time = createTime(window, { onRing });
  const voice: VoicePort = createBrowserVoice(window, { mayLeaveDevice });
  voice.setLanguage(language);
  const channel = new BroadcastChannel(CHANNEL);
  const { store, keys } = createDeviceStore(newId);
  return {
    time,
    voice,
    log: tellingLog(createFactLog({ storage: store }), channel),
    lock: lockDevices(keys, channel),
    windows: windowsPort(channel, time.lifecycle),
    ...persistencePort(),
    ...updatePort(),
    settings: sealedSettings(createSettings(), keys, SEALED_SETTINGS),
    newId,
    download,
    print: () => window.print(),
  };
}
