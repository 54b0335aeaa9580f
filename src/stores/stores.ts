/** Vanilla stores: values that many components read. Order and permission live in the machine, meaning in the domain. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { CaseView } from '../domain/case/fold.ts';
import type { Language } from '../domain/protocol/types.ts';

export interface CaseState {
  readonly caseId: string;
  readonly view: CaseView | undefined;
  /** Rises with every change, also when only the machine's memory changed (a number waits, a reason is asked). */
  readonly turn: number;
}

export interface ClockState {
  /** Wall clock, ms since 1970, as of the last tick. */
  readonly now: number;
}

export type Place =
  'cases' | 'visit' | 'summary' | 'labSheet' | 'record' | 'settings' | 'practice' | 'protocol' | 'bench';

/** Whether the language is, or could be, recognised without speech leaving the device. */
export type OnDeviceState = 'unknown' | 'ready' | 'fetchable' | 'fetching' | 'unavailable' | 'failed';

export interface UiState {
  readonly place: Place;
  readonly said: string;
  readonly trouble: string;
  readonly keypadOpen: boolean;
  readonly onDevice: OnDeviceState;
}

/** When the ear is open: always while it is on, only while a number is asked for, or only while held. */
export type EarMode = 'always' | 'readings' | 'push';

export interface Settings {
  /** Of visits begun from now on; a visit keeps the one it was opened in. */
  readonly language: Language;
  readonly earMode: EarMode;
  /** With one set, commands must begin with it; empty = none is needed. */
  readonly addressWord: string;
  /** Of reading aloud, 0…1. */
  readonly volume: number;
  /** Pace of reading aloud, 0.5…2. */
  readonly rate: number;
  /** Read numbers and alarms aloud. */
  readonly speech: boolean;
  /** Keep an undoubted number by itself after so many ms; 0 = only by a yes or by moving on. */
  readonly keepAfterMs: number;
  /** Consent that speech may be sent off this device to be recognised. */
  readonly mayLeaveDevice: boolean;
  /** Where this device stands: in the laboratory, cases open at the bench. */
  readonly standsAt: 'chair' | 'lab';
  /** With a passphrase set: lock after so many minutes without a touch; 0 = never. */
  readonly lockAfterMin: 0 | 2 | 5 | 15;
  /** With a passphrase set: lock when another page or program comes to the front. */
  readonly lockOnHide: boolean;
  /** Remind of a backup when the last one is so many days old; 0 = never. */
  readonly backupEveryDays: 0 | 1 | 7 | 30;
}

export const SETTINGS_KEY = 'preferences';

export const defaultSettings: Settings = {
  language: 'en',
  earMode: 'always',
  addressWord: '',
  speech: true,
  volume: 1,
  rate: 1,
  keepAfterMs: 0,
  mayLeaveDevice: false,
  standsAt: 'chair',
  lockAfterMin: 5,
  lockOnHide: false,
  backupEveryDays: 7,
};

export interface Stores {
  readonly cases: StoreApi<CaseState>;
  readonly clock: StoreApi<ClockState>;
  readonly ui: StoreApi<UiState>;
  readonly settings: StoreApi<Settings>;
}

export function createStores(now: number): Stores {
  return {
    cases: createStore<CaseState>()(() => ({ caseId: '', view: undefined, turn: 0 })),
    clock: createStore<ClockState>()(() => ({ now })),
    ui: createStore<UiState>()(() => ({
      place: 'cases',
      said: '',
      trouble: '',
      keypadOpen: false,
      onDevice: 'unknown',
    })),
    settings: createStore<Settings>()(() => defaultSettings),
  };
}
