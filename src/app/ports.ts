/** What the runtime asks of devices. The browser, the tests and the headless replay hand in their own. */
import type { Language } from '../domain/protocol/types.ts';
import type { FactLog } from '../storage/types.ts';
import type { Alarms, Clock, Sound, Ticker, WakeLock } from '../time/types.ts';
import type { EarState } from './model.ts';
import type { Alternative } from '../interpret/types.ts';

export interface Spoken {
  readonly text: string;
  readonly alternatives: readonly Alternative[];
  readonly at: number;
}

export interface VoicePort {
  listen(on: boolean): void;
  ear(): EarState;
  /** Reads aloud with the ear shut; resolves when it is open again. */
  say(text: string, language: Language): Promise<void>;
  canSpeak(): boolean;
  onSpoken(listener: (spoken: Spoken) => void): () => void;
  onEar(listener: () => void): () => void;
}

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
  newId(): string;
  download(name: string, text: string): void;
  print(): void;
}
