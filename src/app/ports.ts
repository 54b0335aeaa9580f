/** What the runtime asks of devices. The browser, the tests and the headless replay hand in their own. */
import type { FactLog } from '../storage/types.ts';
import type { Settings as SettingsStore } from '../storage/settings.ts';
import type { Alarms, Clock, Sound, Ticker, WakeLock } from '../time/types.ts';
import type { Voice } from '../voice/types.ts';
import type { LockDevices } from './locking.ts';
import type { WindowsPort } from './single-writer.ts';
import type { UpdatePort } from './updates.ts';

export type VoicePort = Voice;

export interface TimePort {
  readonly clock: Clock;
  readonly ticker: Ticker;
  readonly alarms: Alarms;
  readonly sound: Sound;
  readonly wakeLock: WakeLock;
}

export interface Devices {
  readonly time: TimePort;
  readonly log: FactLog;
  readonly voice: VoicePort;
  readonly settings: Pick<SettingsStore, 'read' | 'write'>;
  /** Absent where there is only one window: tests, the headless replay. */
  readonly windows?: WindowsPort;
  /** The browser's promise not to clear the record by itself; absent where it cannot be asked. */
  readonly persistence?: { persisted(): Promise<boolean>; persist(): Promise<boolean> };
  /** Absent where the record can be under no passphrase: tests, the headless replay. */
  readonly lock?: LockDevices;
  /** Absent where the app is not installed from anywhere. */
  readonly updates?: UpdatePort;
  newId(): string;
  /** `type` is JSON unless said. */
  download(name: string, content: string | Uint8Array<ArrayBuffer>, type?: string): void;
  print(): void;
}
