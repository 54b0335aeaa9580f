/**
 * The browser's recogniser behind our contract. It listens until stopped: sessions that the browser ends are begun anew,
 * with a growing pause while they fail; errors that a restart cannot cure close the ear with a sentence.
 */
import type { Language } from '../domain/protocol/types.ts';
import { Device } from './device.ts';
import { gate, type Gate, type GateParts } from './gate.ts';
import { Listeners } from './listeners.ts';
import { installOnDevice, onDeviceState } from './on-device.ts';
import { Phrases } from './phrases.ts';
import { RestartPolicy } from './restart-policy.ts';
import { ResultReader } from './results.ts';
import { blockedWhy } from './sentences.ts';
import { speechTag } from './tags.ts';
import { Timers } from './timers.ts';
import type { BlockCause, OnDevice, Recogniser, RecogniserEvent, RecogniserState, VoiceHost } from './types.ts';
import type { VoiceWindow, WebRecognitionMaker, WebResultEvent } from './web-types.ts';

export interface WebSpeechOptions {
  readonly host: VoiceHost;
  /** Whether somebody has agreed that speech may leave this device. Asked at every start, so that it can be revoked. */
  mayLeaveDevice(): boolean;
}

const WATCHDOG_MS = 15_000;
/** No start within this time: the browser is probably asking the person. */
const ASKING_MS = 1200;
/** After failures a session counts as listening once it has lasted this long. */
const PROOF_MS = 1000;

const FATAL: Readonly<Record<string, BlockCause>> = {
  'not-allowed': 'denied',
  'service-not-allowed': 'denied',
  'audio-capture': 'denied',
  'language-not-supported': 'language',
};

class WebSpeech implements Recogniser {
  readonly #window: VoiceWindow;
  readonly #host: VoiceHost;
  readonly #device: Device;
  readonly #gate: GateParts;
  readonly #reader: ResultReader;
  readonly #phrases: Phrases;
  readonly #policy = new RestartPolicy();
  readonly #listeners = new Listeners<RecogniserEvent>();
  readonly #timers: Timers<'restart' | 'watchdog' | 'asking' | 'proof'>;
  #state: RecogniserState = { state: 'off' };
  #language: Language = 'en';
  #wanted = false;
  /** Takes no more sound; the last words may still come. */
  #finishing = false;
  /** Grows with every start and stop, so that an answer to an older question is recognised as such. */
  #turn = 0;
  #onDevice = false;
  #prompting = false;
  #since: number | undefined;

  constructor(window: VoiceWindow, maker: WebRecognitionMaker, options: WebSpeechOptions) {
    this.#window = window;
    this.#host = options.host;
    this.#timers = new Timers(options.host);
    this.#reader = new ResultReader({ android: /android/i.test(window.navigator.userAgent) });
    this.#phrases = new Phrases(window);
    this.#gate = {
      window,
      maker,
      host: options.host,
      places: new Map(),
      mayLeaveDevice: () => options.mayLeaveDevice(),
    };
    this.#device = new Device(maker, options.host, {
      alive: () => this.#alive(),
      started: () => this.#started(),
      speechStarted: () => (this.#since ??= this.#host.now()),
      result: (event) => this.#result(event),
      error: (code) => this.#error(code),
      over: () => this.#over(),
    });
  }

  state(): RecogniserState {
    return this.#state;
  }

  onEvent(listener: (event: RecogniserEvent) => void): () => void {
    return this.#listeners.add(listener);
  }

  askAgain(): void {
    this.#reader.askAgain();
  }

  start(language: Language): void {
    const same = this.#wanted && language === this.#language;
    if (same && (this.#device.phase === 'running' || this.#state.state !== 'blocked')) return;
    this.#wanted = true;
    this.#finishing = false;
    this.#language = language;
    this.#turn += 1;
    this.#timers.clearAll();
    this.#becomeStarting();
    if (this.#device.phase === 'idle') void this.#begin();
    else {
      this.#policy.forgive();
      this.#device.abort();
    }
  }

  stop(): void {
    this.#wanted = this.#finishing = false;
    this.#turn += 1;
    this.#timers.clearAll();
    this.#policy.forgive();
    this.#device.abort();
    this.#become({ state: 'off' });
  }

  finish(): void {
    if (this.#device.phase !== 'running' || this.#state.state !== 'listening') return this.stop();
    this.#wanted = false;
    this.#finishing = true;
    this.#turn += 1;
    this.#timers.clearAll();
    this.#policy.forgive();
    this.#device.finish();
  }

  setPhrases(phrases: readonly string[]): void {
    if (this.#phrases.set(phrases) && this.#onDevice && this.#device.phase === 'running')
      this.#device.phrases(this.#phrases.made());
  }

  onDevice(language: Language): Promise<OnDevice> {
    return onDeviceState(this.#gate.maker, this.#tagOf(language));
  }

  async fetchOnDevice(language: Language): Promise<OnDevice> {
    const tag = this.#tagOf(language);
    const state = await installOnDevice(this.#gate.maker, tag);
    // What was found out before is out of date now.
    this.#gate.places.delete(tag);
    return state;
  }

  #tagOf(language: Language): string {
    return speechTag(language, this.#window.navigator.languages);
  }

  get #tag(): string {
    return this.#tagOf(this.#language);
  }

  async #begin(): Promise<void> {
    this.#turn += 1;
    const turn = this.#turn;
    const answer = await gate(this.#gate, this.#tag);
    if (turn !== this.#turn || !this.#wanted) return;
    if (answer.open) this.#open(answer);
    else this.#block(answer.cause);
  }

  #open({ onDevice, microphone }: Extract<Gate, { open: true }>): void {
    this.#onDevice = onDevice;
    this.#prompting = microphone === 'prompting';
    this.#since = undefined;
    this.#policy.begin(this.#host.now());
    this.#reader.newSession();
    this.#watch();
    if (this.#prompting) this.#become({ state: 'asking' });
    if (microphone === 'unknown' && !this.#policy.struggling)
      this.#timers.set('asking', ASKING_MS, () => this.#become({ state: 'asking' }));
    this.#device.begin({ tag: this.#tag, onDevice, phrases: onDevice ? this.#phrases.made() : [] });
  }

  #alive(): void {
    this.#policy.life();
    this.#watch();
  }

  #started(): void {
    this.#prompting = false;
    this.#timers.clear('asking');
    if (!this.#policy.struggling) this.#become({ state: 'listening' });
    else this.#timers.set('proof', PROOF_MS, () => this.#proven());
  }

  #proven(): void {
    this.#timers.clear('proof');
    this.#policy.useful();
    this.#become({ state: 'listening' });
  }

  #result(event: WebResultEvent): void {
    const { finals, interim } = this.#reader.read(event, this.#host.now(), this.#since);
    if (finals.length > 0) this.#since = undefined;
    if (finals.length > 0 || interim !== '') this.#proven();
    if (interim !== '') this.#listeners.tell({ kind: 'interim', text: interim });
    for (const spoken of finals) this.#listeners.tell({ kind: 'heard', spoken });
  }

  #error(code: string): void {
    const cause = FATAL[code];
    if (cause === 'language' && this.#onDevice) {
      this.#gate.places.set(this.#tag, 'elsewhere');
      this.#policy.forgive();
      this.#device.renew();
    } else if (code === 'phrases-not-supported') {
      this.#phrases.refuse();
      this.#policy.forgive();
      this.#device.renew();
    } else if (cause) this.#block(cause);
    else if (code !== 'no-speech') this.#policy.fail();
  }

  #over(): void {
    for (const name of ['watchdog', 'asking', 'proof'] as const) this.#timers.clear(name);
    if (this.#finishing) this.#become({ state: 'off' });
    this.#finishing = false;
    if (!this.#wanted) return;
    const pause = this.#policy.over(this.#host.now());
    this.#becomeStarting();
    this.#timers.set('restart', pause, () => void this.#begin());
  }

  #watch(): void {
    this.#timers.set('watchdog', WATCHDOG_MS, () => {
      if (this.#prompting) return this.#watch();
      if (this.#policy.noSign()) this.#block('silent');
      else this.#device.renew();
    });
  }

  #becomeStarting(): void {
    this.#become(this.#policy.struggling ? this.#blocked('unreachable', true) : { state: 'starting' });
  }

  #blocked(cause: BlockCause, trying: boolean): RecogniserState {
    return { state: 'blocked', cause, why: blockedWhy(cause, this.#language), trying };
  }

  #block(cause: BlockCause): void {
    this.#wanted = false;
    this.#turn += 1;
    this.#timers.clearAll();
    this.#policy.reset();
    this.#device.renew();
    this.#become(this.#blocked(cause, false));
  }

  #become(state: RecogniserState): void {
    const { state: before } = this.#state;
    if (before === state.state && state.state !== 'blocked') return;
    this.#state = state;
    this.#listeners.tell({ kind: 'state', state });
  }
}

/** For browsers without a recogniser: says so, and lets everything else go on. */
function absent(): Recogniser {
  const listeners = new Listeners<RecogniserEvent>();
  let state: RecogniserState = { state: 'off' };
  return {
    state: () => state,
    start: (language) => {
      state = { state: 'blocked', cause: 'absent', why: blockedWhy('absent', language), trying: false };
      listeners.tell({ kind: 'state', state });
    },
    stop: () => {
      state = { state: 'off' };
      listeners.tell({ kind: 'state', state });
    },
    finish: () => undefined,
    setPhrases: () => undefined,
    onDevice: () => Promise.resolve('unavailable'),
    fetchOnDevice: () => Promise.resolve('unavailable'),
    askAgain: () => undefined,
    onEvent: (listener) => listeners.add(listener),
  };
}

export function createWebSpeech(window: VoiceWindow, options: WebSpeechOptions): Recogniser {
  const maker = window.SpeechRecognition ?? window.webkitSpeechRecognition;
  return maker ? new WebSpeech(window, maker, options) : absent();
}
