/** The parts of the browser's speech interfaces that are used. The type library does not hold the recogniser. */
export interface WebResult {
  readonly isFinal: boolean;
  readonly length: number;
  readonly [index: number]: { readonly transcript: string; readonly confidence: number } | undefined;
}

export interface WebResultEvent {
  readonly resultIndex: number;
  readonly results: { readonly length: number; readonly [index: number]: WebResult | undefined };
}

export interface WebRecognition {
  lang: string;
  continuous: boolean;
  interimResults: boolean;
  maxAlternatives: number;
  processLocally?: boolean;
  /** Only where the browser knows phrases. */
  phrases?: readonly WebPhrase[];
  start(): void;
  /** Takes no more sound; what was said before is still told. */
  stop(): void;
  abort(): void;
  onstart: (() => void) | null;
  onaudiostart: (() => void) | null;
  onsoundstart: (() => void) | null;
  onspeechstart: (() => void) | null;
  onspeechend: (() => void) | null;
  onaudioend: (() => void) | null;
  onresult: ((event: WebResultEvent) => void) | null;
  onerror: ((event: { readonly error: string }) => void) | null;
  onend: (() => void) | null;
}

export interface WebPhrase {
  readonly phrase: string;
  readonly boost: number;
}

interface OnDevice {
  readonly langs: readonly string[];
  readonly processLocally: boolean;
}

export interface WebRecognitionMaker {
  new (): WebRecognition;
  available?(options: OnDevice): Promise<string>;
  install?(options: OnDevice): Promise<boolean>;
}

export interface WebUtterance {
  lang: string;
  volume: number;
  rate: number;
  voice: WebVoice | null;
  onstart: (() => void) | null;
  onend: (() => void) | null;
  onerror: ((event: { readonly error: string }) => void) | null;
}

export interface WebVoice {
  readonly lang: string;
  readonly localService: boolean;
}

export interface WebSynthesis {
  speak(utterance: WebUtterance): void;
  cancel(): void;
  getVoices(): readonly WebVoice[];
}

/** The window, as far as the ear and the voice look at it. */
export interface VoiceWindow {
  readonly SpeechRecognition?: WebRecognitionMaker | undefined;
  readonly webkitSpeechRecognition?: WebRecognitionMaker | undefined;
  readonly SpeechRecognitionPhrase?: (new (phrase: string, boost?: number) => WebPhrase) | undefined;
  readonly speechSynthesis?: WebSynthesis | undefined;
  readonly SpeechSynthesisUtterance?: (new (text: string) => WebUtterance) | undefined;
  readonly navigator: {
    readonly userAgent: string;
    readonly languages?: readonly string[];
    readonly permissions?: { query(what: { name: 'microphone' }): Promise<{ readonly state: string }> } | undefined;
  };
}

/**
 * A browser's `window` as a VoiceWindow. The library's types are stricter than what is used (read-only voices, nameable
 * events) or do not know the recogniser at all.
 */
export function voiceWindow(window: object): VoiceWindow {
  return window as VoiceWindow;
}
