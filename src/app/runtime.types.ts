/** The app at run time, as main.tsx and the tests hold it. */
import type { StoreApi } from 'zustand/vanilla';
import type { Ring } from '../time/types.ts';
import type { AppActions, AppModel } from './model.ts';

export interface Runtime extends AppActions {
  readonly model: StoreApi<AppModel>;
  start(): Promise<void>;
  /** Consent that speech may leave this device. */
  mayLeaveDevice(): boolean;
  /** A phase is over: called by the alarms of time/. */
  ring(id: string, ring: Ring): void;
  /** Somebody has touched a key or the screen. */
  touched(): void;
  stop(): void;
}
