/**
 * A browser's speech, made up: the real wrapper runs on top of it, in unit tests on a made-up window and in a real browser
 * on the page's own (`installFakeSpeech(window)`, before the voice is created).
 */
import { FakeWorld, makerIn, type FakeConditions, type Said, type Session } from './fake-recognition.ts';
import { FakeSynthesis, FakeUtterance, type SpokenAloud, type SynthesisConditions } from './fake-synthesis.ts';
import type { VoiceHost } from './types.ts';
import type { VoiceWindow } from './web-types.ts';

export interface FakeSpeech {
  /** What may be changed at any time: permission, network, languages on the device, quirks, voices. */
  readonly conditions: FakeConditions &
    SynthesisConditions & { /** The microphone hears the loudspeaker. */ echo: boolean };
  /** Somebody speaks. False when no recogniser is listening, so that nobody heard it. */
  say(said: Said): boolean;
  /** Something half heard, of which nothing comes. */
  murmur(text: string): boolean;
  /** The running session fails: 'network', 'no-speech', 'not-allowed', 'audio-capture', 'aborted' … */
  fail(error: string): boolean;
  /** The browser ends the running session by itself. */
  finish(): boolean;
  /** The person answers the browser's question about the microphone. */
  answerPrompt(allowed: boolean): void;
  readonly listening: boolean;
  /** Every session that was begun. */
  readonly sessions: readonly Session[];
  /** Everything read aloud. */
  readonly spoken: readonly SpokenAloud[];
  /** Names of all events in order. */
  readonly log: readonly string[];
}

export interface FakeSpeechOptions extends Partial<FakeSpeech['conditions']> {
  readonly host?: VoiceHost;
}

interface Made {
  readonly fake: FakeSpeech;
  readonly parts: Required<Pick<VoiceWindow, 'SpeechRecognition' | 'speechSynthesis' | 'SpeechSynthesisUtterance'>> &
    Pick<VoiceWindow, 'SpeechRecognitionPhrase'>;
  readonly permissions: NonNullable<VoiceWindow['navigator']['permissions']>;
}

function pageHost(): VoiceHost {
  return {
    now: () => Date.now(),
    setTimeout: (run, ms) => globalThis.setTimeout(run, ms),
    clearTimeout: (id) => globalThis.clearTimeout(id),
  };
}

const LOCAL_VOICES = ['en-US', 'de-DE', 'es-ES', 'fr-FR'].map((lang) => ({ lang, localService: true }));

const USUAL: FakeSpeech['conditions'] = {
  microphone: 'granted',
  online: true,
  onDevice: [],
  install: 'does nothing',
  phrases: 'absent',
  android: false,
  mute: false,
  endless: false,
  lateResults: false,
  voices: LOCAL_VOICES,
  speech: 'works',
  msPerCharacter: 20,
  echo: false,
};

/** A phrase as the page makes it. */
class FakePhrase {
  readonly phrase: string;
  readonly boost: number;

  constructor(phrase: string, boost = 1) {
    this.phrase = phrase;
    this.boost = boost;
  }
}

function make({ host = pageHost(), ...wanted }: FakeSpeechOptions): Made {
  const conditions = { ...USUAL, ...wanted };
  const world = new FakeWorld(host, conditions);
  const withRunning = (act: (running: NonNullable<FakeWorld['running']>) => void): boolean => {
    const { running } = world;
    if (!running?.isRunning) return false;
    act(running);
    return true;
  };
  const say = (said: Said): boolean => withRunning((running) => running.hear(said));
  const synthesis = new FakeSynthesis(host, conditions, (text) => conditions.echo && say(text));
  const fake: FakeSpeech = {
    conditions,
    say,
    murmur: (text) => withRunning((running) => running.murmur(text)),
    fail: (error) => withRunning((running) => running.fail(error)),
    finish: () => withRunning((running) => running.finish()),
    answerPrompt: (allowed) => world.answerPrompt(allowed),
    get listening() {
      return world.running?.isRunning ?? false;
    },
    sessions: world.sessions,
    spoken: synthesis.spoken,
    log: world.log,
  };
  const parts = {
    SpeechRecognition: makerIn(world),
    speechSynthesis: synthesis,
    SpeechSynthesisUtterance: FakeUtterance,
    ...(conditions.phrases === 'absent' ? {} : { SpeechRecognitionPhrase: FakePhrase }),
  };
  return { fake, parts, permissions: { query: () => Promise.resolve({ state: conditions.microphone }) } };
}

/** A window that has nothing but made-up speech. `userAgent` and the preferred languages can be set. */
export function createFakeWindow(
  options: FakeSpeechOptions & { readonly userAgent?: string; readonly languages?: readonly string[] } = {},
): { readonly window: VoiceWindow; readonly speech: FakeSpeech } {
  const { userAgent = 'made up', languages = ['en-US'], ...rest } = options;
  const { fake, parts, permissions } = make(rest);
  return { window: { ...parts, navigator: { userAgent, languages, permissions } }, speech: fake };
}

/** Puts made-up speech in the place of a real window's own. Other permissions are still asked of the browser. */
export function installFakeSpeech(window: object, options: FakeSpeechOptions = {}): FakeSpeech {
  const { fake, parts, permissions } = make(options);
  const put = (target: object, name: string, value: unknown): void => {
    Object.defineProperty(target, name, { value, configurable: true, writable: true });
  };
  for (const [name, value] of Object.entries(parts)) put(window, name, value);
  put(window, 'webkitSpeechRecognition', parts.SpeechRecognition);
  const { navigator } = window as { navigator?: { permissions?: { query(what: { name: string }): Promise<unknown> } } };
  if (!navigator) return fake;
  const real = navigator.permissions?.query.bind(navigator.permissions);
  const query = (what: { name: string }): Promise<unknown> =>
    what.name === 'microphone' || !real ? permissions.query({ name: 'microphone' }) : real(what);
  if (navigator.permissions) put(navigator.permissions, 'query', query);
  else put(navigator, 'permissions', { query });
  return fake;
}
