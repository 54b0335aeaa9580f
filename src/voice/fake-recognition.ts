/**
 * A made-up recogniser that keeps the order of events of a real one, its refusals included. What a browser was seen to do:
 * `start, audiostart, soundstart, speechstart, result, speechend, soundend, audioend, end`; no network: `audioend, error,
 * end`; a language that is not installed: `error` and nothing after it; aborted: `end` without an error.
 */
import type { VoiceHost } from './types.ts';
import type { WebPhrase, WebRecognition, WebRecognitionMaker, WebResult, WebResultEvent } from './web-types.ts';

export type Said = string | readonly { readonly transcript: string; readonly confidence?: number }[];

export interface FakeConditions {
  microphone: 'granted' | 'prompt' | 'denied';
  online: boolean;
  /** Languages that are recognised on the device, as tags. */
  onDevice: readonly string[];
  /** What becomes of a request to fetch a language for the device. */
  install: 'works' | 'does nothing' | 'throws';
  /** Words likely to be said: `absent` in most browsers; `refused` by recognisers that take none. */
  phrases: 'absent' | 'taken' | 'refused';
  /** Finals come first without confidence, then once more, and every session hears one utterance. */
  android: boolean;
  /** Starts without a sound, as an installed page on some systems does. */
  mute: boolean;
  /** Never tells of its end. */
  endless: boolean;
  /** Gives results until its end, after an abort too. */
  lateResults: boolean;
}

export interface Session {
  readonly tag: string;
  readonly onDevice: boolean;
  readonly startedAt: number;
  readonly alternatives: number;
  readonly phrases: readonly string[];
}

type Handler =
  `on${'start' | 'audiostart' | 'soundstart' | 'speechstart' | 'speechend' | 'soundend' | 'audioend' | 'end'}`;

/** The world that all recognition objects of a window live in. */
export class FakeWorld {
  readonly host: VoiceHost;
  readonly conditions: FakeConditions;
  readonly sessions: Session[] = [];
  /** Everything that was emitted, by name, for tests of the order. */
  readonly log: string[] = [];
  running: FakeRecognition | undefined;
  readonly prompts: ((allowed: boolean) => void)[] = [];

  constructor(host: VoiceHost, conditions: FakeConditions) {
    this.host = host;
    this.conditions = conditions;
  }

  answerPrompt(allowed: boolean): void {
    this.conditions.microphone = allowed ? 'granted' : 'denied';
    for (const answer of this.prompts.splice(0)) answer(allowed);
  }
}

function invalidState(): Error {
  const error = new Error('recognition has already started');
  error.name = 'InvalidStateError';
  return error;
}

function asResult(said: Said, isFinal: boolean, confidence?: number): WebResult {
  const given = typeof said === 'string' ? [{ transcript: said, confidence: 0.9 }] : said;
  const alternatives = given.map((one) => ({
    transcript: one.transcript,
    confidence: confidence ?? one.confidence ?? 0,
  }));
  return { ...alternatives, isFinal, length: alternatives.length };
}

export class FakeRecognition implements WebRecognition {
  lang = '';
  continuous = false;
  interimResults = false;
  maxAlternatives = 1;
  processLocally = false;
  phrases?: readonly WebPhrase[];
  onstart: (() => void) | null = null;
  onaudiostart: (() => void) | null = null;
  onsoundstart: (() => void) | null = null;
  onspeechstart: (() => void) | null = null;
  onspeechend: (() => void) | null = null;
  onsoundend: (() => void) | null = null;
  onaudioend: (() => void) | null = null;
  onresult: ((event: WebResultEvent) => void) | null = null;
  onerror: ((event: { readonly error: string }) => void) | null = null;
  onend: (() => void) | null = null;
  readonly #world: FakeWorld;
  #phase: 'idle' | 'starting' | 'running' | 'ending' = 'idle';
  #results: WebResult[] = [];
  /** What is being said and not yet final. */
  #half = '';

  constructor(world: FakeWorld) {
    this.#world = world;
    if (world.conditions.phrases !== 'absent') this.phrases = [];
  }

  get isRunning(): boolean {
    return this.#phase === 'running' || (this.#phase === 'ending' && this.#world.conditions.lateResults);
  }

  start(): void {
    if (this.#phase !== 'idle') throw invalidState();
    const { host, conditions, sessions } = this.#world;
    const session = {
      tag: this.lang,
      onDevice: this.processLocally,
      startedAt: host.now(),
      alternatives: this.maxAlternatives,
      phrases: (this.phrases ?? []).map(({ phrase }) => phrase),
    };
    sessions.push(session);
    this.#phase = 'starting';
    this.#results = [];
    this.#half = '';
    if (conditions.mute) return;
    if (session.phrases.length > 0 && conditions.phrases === 'refused')
      return this.#later(() => this.fail('phrases-not-supported'));
    if (this.processLocally && !conditions.onDevice.includes(this.lang)) {
      return this.#later(() => {
        this.#phase = 'idle';
        this.#error('language-not-supported');
      });
    }
    if (conditions.microphone !== 'prompt') return this.#later(() => this.#run(conditions.microphone === 'granted'));
    this.#world.prompts.push((allowed) => this.#later(() => this.#run(allowed)));
  }

  abort(): void {
    if (this.#phase === 'idle' || this.#phase === 'ending') return;
    const ran = this.#phase === 'running';
    this.#phase = 'ending';
    if (this.#world.conditions.mute || this.#world.conditions.endless) return;
    this.#later(() => {
      if (ran) this.#emit('onaudioend');
      this.#end();
    });
  }

  /** No more sound; what was being said becomes final first. */
  stop(): void {
    if (this.#phase !== 'running') return this.abort();
    this.#phase = 'ending';
    if (this.#world.conditions.endless) return;
    this.#later(() => {
      if (this.#half !== '') this.#final(this.#half);
      this.#emit('onaudioend');
      this.#end();
    });
  }

  /** Somebody says something. */
  hear(said: Said): void {
    this.#half = '';
    this.#emit('onsoundstart', 'onspeechstart');
    const top = typeof said === 'string' ? said : (said[0]?.transcript ?? '');
    if (this.#phase === 'ending') return this.#final(said);
    const half = top.split(' ').slice(0, -1).join(' ');
    if (this.interimResults && half !== '') this.#result(asResult(half, false, 0));
    this.#final(typeof said === 'string' ? said : said.slice(0, this.maxAlternatives));
    this.#emit('onspeechend', 'onsoundend');
    if (this.continuous && !this.#world.conditions.android) return;
    this.#emit('onaudioend');
    this.#end();
  }

  /** Not final, and nothing comes of it. */
  murmur(text: string): void {
    this.#half = text;
    if (this.interimResults) this.#result(asResult(text, false, 0));
  }

  fail(error: string): void {
    if (this.#phase === 'running') this.#emit('onaudioend');
    this.#error(error);
    if (!this.#world.conditions.endless) this.#end();
  }

  /** The browser ends the session by itself. */
  finish(): void {
    this.#emit('onaudioend');
    this.#end();
  }

  #run(allowed: boolean): void {
    if (this.#phase !== 'starting') return;
    if (!allowed) return this.fail('not-allowed');
    this.#phase = 'running';
    this.#world.running = this;
    this.#emit('onstart', 'onaudiostart');
    if (this.#world.conditions.online || this.processLocally) return;
    this.#later(() => this.isRunning && this.fail('network'));
  }

  #final(said: Said): void {
    const index = this.#results.filter(({ isFinal }) => isFinal).length;
    if (this.#world.conditions.android) this.#result(asResult(said, true, 0), index);
    this.#result(asResult(said, true), index);
    if (this.#world.conditions.android) this.#result(asResult(said, true), index);
  }

  /** Finals stay in the list; an interim result stands behind them until the next one takes its place. */
  #result(result: WebResult, index = this.#results.filter(({ isFinal }) => isFinal).length): void {
    this.#results = [...this.#results.slice(0, index), result];
    this.#world.log.push(result.isFinal ? 'result' : 'interim');
    const resultIndex = this.#world.conditions.android ? 0 : index;
    this.onresult?.({ resultIndex, results: [...this.#results] });
  }

  #error(error: string): void {
    this.#world.log.push(`error ${error}`);
    this.onerror?.({ error });
  }

  #end(): void {
    if (this.#phase === 'idle') return;
    this.#phase = 'idle';
    if (this.#world.running === this) this.#world.running = undefined;
    this.#emit('onend');
  }

  #emit(...handlers: readonly Handler[]): void {
    for (const handler of handlers) {
      this.#world.log.push(handler.slice(2));
      this[handler]?.();
    }
  }

  #later(run: () => unknown): void {
    this.#world.host.setTimeout(() => void run(), 0);
  }
}

/** The constructor that a page finds on its window. */
export function makerIn(world: FakeWorld): WebRecognitionMaker {
  return class extends FakeRecognition {
    constructor() {
      super(world);
    }

    static available({
      langs,
      processLocally,
    }: {
      langs: readonly string[];
      processLocally: boolean;
    }): Promise<string> {
      if (!processLocally) return Promise.resolve('available');
      const here = langs.every((tag) => world.conditions.onDevice.includes(tag));
      return Promise.resolve(here ? 'available' : 'downloadable');
    }

    static install({ langs }: { langs: readonly string[] }): Promise<boolean> {
      const { install, onDevice } = world.conditions;
      if (install === 'throws') return Promise.reject(new Error('not now'));
      if (install === 'works') world.conditions.onDevice = [...onDevice, ...langs];
      return Promise.resolve(install === 'works');
    }
  };
}
