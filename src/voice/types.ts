/**
 * Contract of the ear and the voice. What is heard is handed on as evidence, with every alternative; nobody in here
 * decides what a word means. While the app itself speaks the ear is shut.
 */
import type { Language } from '../domain/protocol/types.ts';

export interface Alternative {
  readonly transcript: string;
  /** 0…1 as the recogniser gave it. 0 or absent says nothing. */
  readonly confidence?: number;
}

/** One thing said. `text` is the top transcript; `alternatives` holds all, the top one included. */
export interface Spoken {
  readonly text: string;
  readonly alternatives: readonly Alternative[];
  /** Wall clock when it was understood, ms. */
  readonly at: number;
  /** Wall clock when the speaking began, where the recogniser tells. */
  readonly since?: number;
}

/**
 * `absent`: this browser cannot. `denied`: not allowed, or no microphone. `consent`: speech would leave the device and
 * nobody has agreed to that. `language`: not this one. `unreachable`: fails again and again. `silent`: no sign of life.
 */
export type BlockCause = 'absent' | 'denied' | 'consent' | 'language' | 'unreachable' | 'silent';

/**
 * `ready`: recognised on this device. `fetchable`: the browser says that it could be. `fetching`: under way.
 * `unavailable`: not in this browser. `failed`: it was tried and the browser did not do it.
 */
export type OnDevice = 'ready' | 'fetchable' | 'fetching' | 'unavailable' | 'failed';

export type RecogniserState =
  | { readonly state: 'off' | 'asking' | 'starting' | 'listening' }
  /** `trying`: it goes on trying by itself; otherwise it waits to be started again. */
  | { readonly state: 'blocked'; readonly cause: BlockCause; readonly why: string; readonly trying: boolean };

export type RecogniserEvent =
  | { readonly kind: 'state'; readonly state: RecogniserState }
  | { readonly kind: 'heard'; readonly spoken: Spoken }
  /** Not final: to show that something is heard, never to act on. */
  | { readonly kind: 'interim'; readonly text: string };

export interface Recogniser {
  state(): RecogniserState;
  /** Listens until stopped, through all the pauses the browser makes. */
  start(language: Language): void;
  /** Ends at once; what was being said is not told any more. */
  stop(): void;
  /** Takes no more sound, tells what was said before, and is then off. */
  finish(): void;
  /** Words likely to be said now. Used only on the device, and only where the recogniser takes them. */
  setPhrases(phrases: readonly string[]): void;
  /** Whether this language is, or could be, recognised without speech leaving the device. */
  onDevice(language: Language): Promise<OnDevice>;
  /** Fetches the language for use on the device. Call inside a touch. Answers how it stands afterwards. */
  fetchOnDevice(language: Language): Promise<OnDevice>;
  /** The app has asked for a repeat: the same words again are an answer, not an echo. */
  askAgain(): void;
  onEvent(listener: (event: RecogniserEvent) => void): () => void;
}

export type SayFailure = 'silent' | 'unavailable' | 'noVoice' | 'needsTouch' | 'failed' | 'timedOut' | 'cut';
export type SayResult =
  { readonly ok: true } | { readonly ok: false; readonly reason: SayFailure; readonly why: string };

export interface SpeakerSettings {
  readonly silent: boolean;
  /** 0…1 */
  readonly volume: number;
  /** 1 is the voice's own pace; kept between 0.5 and 2. */
  readonly rate: number;
}

export interface Speaker {
  /** Whether anything would be heard. */
  willSpeak(language: Language): boolean;
  canSpeak(): boolean;
  /** Settles when the words are over, or when they should long have been. Never rejects. */
  say(text: string, language: Language): Promise<SayResult>;
  cut(): void;
  set(settings: Partial<SpeakerSettings>): void;
  /** Call inside a touch: some devices let a page speak only after it has spoken in one. */
  unlock(): void;
}

export type Ear =
  /** `finishing`: takes no more sound; what was said before may still come. */
  | { readonly state: 'off' | 'asking' | 'starting' | 'listening' | 'finishing' }
  | { readonly state: 'heard'; readonly text: string }
  | { readonly state: 'speaking'; readonly text: string }
  | { readonly state: 'blocked'; readonly cause: BlockCause; readonly why: string; readonly trying: boolean };

/** Ear and voice together, as the app has them. */
export interface Voice {
  listen(on: boolean): void;
  /** As `listen(false)`, but what was said before is still told. */
  finish(): void;
  setPhrases(phrases: readonly string[]): void;
  onDevice(language: Language): Promise<OnDevice>;
  fetchOnDevice(language: Language): Promise<OnDevice>;
  setLanguage(language: Language): void;
  ear(): Ear;
  /** Reads aloud with the ear shut; settles when the ear may open again. At most two texts wait; older ones give way. */
  say(text: string, language: Language): Promise<void>;
  /** Shuts the ear for a beep of this length. */
  hush(ms: number): void;
  canSpeak(): boolean;
  setSpeaker(settings: Partial<SpeakerSettings>): void;
  askAgain(): void;
  /** Call inside a touch. */
  unlock(): void;
  onSpoken(listener: (spoken: Spoken) => void): () => void;
  onEar(listener: () => void): () => void;
  /** Read-back failed, in a sentence. */
  onTrouble(listener: (why: string) => void): () => void;
  stop(): void;
}

export type TimerId = ReturnType<typeof setTimeout> | number;

export interface VoiceHost {
  now(): number;
  setTimeout(run: () => void, ms: number): TimerId;
  clearTimeout(id: TimerId): void;
}
