import type { TimerId, VoiceHost } from './types.ts';
import type { WebPhrase, WebRecognition, WebRecognitionMaker, WebResultEvent } from './web-types.ts';

export interface DeviceEvents {
  /** Any sign of life. */
  alive(): void;
  started(): void;
  speechStarted(): void;
  result(event: WebResultEvent): void;
  error(code: string): void;
  /** The session is over, and the next may start. */
  over(): void;
}

/** `finishing`: no more sound is taken, results still come. `ending`: nothing counts any more. */
export type Phase = 'idle' | 'running' | 'finishing' | 'ending';

export interface SessionSettings {
  readonly tag: string;
  readonly onDevice: boolean;
  readonly phrases: readonly WebPhrase[];
}

/** After an error or an abort the browser owes an `end`, but does not always give it. */
const END_MS = 1000;
/** So long the last words may take to come after the sound has been closed. */
const FINISH_MS = 3000;
const ALTERNATIVES = 5;

function drop(object: WebRecognition): void {
  object.onstart = object.onaudiostart = object.onsoundstart = object.onspeechstart = null;
  object.onspeechend = object.onaudioend = object.onend = null;
  object.onresult = null;
  object.onerror = null;
  try {
    object.abort();
  } catch {
    // it was not running
  }
}

/**
 * One recognition object and the session it is in. It guarantees what the browser does not: `over` comes exactly once
 * after each `begin`, nothing comes after it, and a new session never starts before the old one has ended.
 */
export class Device {
  readonly #maker: WebRecognitionMaker;
  readonly #host: VoiceHost;
  readonly #events: DeviceEvents;
  #object: WebRecognition | undefined;
  #phase: Phase = 'idle';
  #endTimer: TimerId | undefined;

  constructor(maker: WebRecognitionMaker, host: VoiceHost, events: DeviceEvents) {
    this.#maker = maker;
    this.#host = host;
    this.#events = events;
  }

  get phase(): Phase {
    return this.#phase;
  }

  begin({ tag, onDevice, phrases }: SessionSettings): void {
    this.#phase = 'running';
    try {
      const object = (this.#object ??= this.#make());
      object.lang = tag;
      if (onDevice || object.processLocally === true) object.processLocally = onDevice;
      this.phrases(phrases);
      object.start();
    } catch {
      this.#events.error('cannot-start');
      this.renew();
    }
  }

  /** Words likely to be said now, for this session and the next; browsers that know none are left alone. */
  phrases(phrases: readonly WebPhrase[]): void {
    const object = this.#object;
    if (object?.phrases === undefined || (phrases.length === 0 && object.phrases.length === 0)) return;
    try {
      object.phrases = phrases;
    } catch {
      // it listens without them
    }
  }

  /** Takes no more sound; what was said before still counts. */
  finish(): void {
    if (this.#phase !== 'running') return;
    this.#phase = 'finishing';
    this.#endTimer ??= this.#host.setTimeout(() => this.renew(), FINISH_MS);
    try {
      this.#object?.stop();
    } catch {
      this.renew();
    }
  }

  /** Asks the session to end; its results no longer count. */
  abort(): void {
    if (this.#phase !== 'running' && this.#phase !== 'finishing') return;
    this.#clearEndTimer();
    this.#owesAnEnd();
    try {
      this.#object?.abort();
    } catch {
      this.renew();
    }
  }

  /** Throws the object away, dead or alive. The next session gets a new one. */
  renew(): void {
    if (this.#object) drop(this.#object);
    this.#object = undefined;
    this.#over();
  }

  #owesAnEnd(): void {
    this.#phase = 'ending';
    this.#endTimer ??= this.#host.setTimeout(() => this.renew(), END_MS);
  }

  #clearEndTimer(): void {
    if (this.#endTimer !== undefined) this.#host.clearTimeout(this.#endTimer);
    this.#endTimer = undefined;
  }

  #over(): void {
    this.#clearEndTimer();
    if (this.#phase === 'idle') return;
    this.#phase = 'idle';
    this.#events.over();
  }

  #whileRunning(tell: () => void): void {
    if (this.#phase !== 'running' && this.#phase !== 'finishing') return;
    this.#events.alive();
    tell();
  }

  #make(): WebRecognition {
    const object = new this.#maker();
    const { started, speechStarted, result, error } = this.#events;
    const alive = (): void => this.#whileRunning(() => undefined);
    object.continuous = true;
    object.interimResults = true;
    object.maxAlternatives = ALTERNATIVES;
    object.onstart = () => this.#whileRunning(started);
    object.onspeechstart = () => this.#whileRunning(speechStarted);
    object.onaudiostart = object.onsoundstart = object.onspeechend = object.onaudioend = alive;
    object.onresult = (event) => this.#whileRunning(() => result(event));
    object.onerror = (event) =>
      this.#whileRunning(() => {
        this.#owesAnEnd();
        error(event.error);
      });
    object.onend = () => this.#over();
    return object;
  }
}
