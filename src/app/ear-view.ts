/** What the ear shows: the state of the listening machine, and for a moment what became of the words just heard. */
import type { Language } from '../domain/protocol/types.ts';
import type { ListeningSnapshot } from '../../machines/listening.ts';
import { blockedWhy } from '../voice/sentences.ts';
import type { Ear } from '../voice/types.ts';
import type { EarState } from './model.ts';
import type { Outcome } from './session.ts';

/** So long the ear shows what it heard before it shows again that it listens. */
const SHOWN_MS = 4000;

const SHUT = {
  elsewhere: 'Opens again on the screen of the visit.',
  noReading: 'Opens when a number is asked for.',
  notHeld: 'Hold this, or the key F8, and talk.',
} as const;

function shutWhy(snapshot: ListeningSnapshot): string {
  if (snapshot.matches({ shut: 'elsewhere' })) return SHUT.elsewhere;
  return snapshot.matches({ shut: 'noReading' }) ? SHUT.noReading : SHUT.notHeld;
}

function blocked({ context }: ListeningSnapshot, language: Language): EarState {
  const cause = context.cause ?? 'silent';
  const why = blockedWhy(cause, language);
  return cause === 'consent' ? { state: 'blocked', why, consent: true } : { state: 'blocked', why };
}

const saidNow = (ear: Ear): string => (ear.state === 'heard' ? ear.text : '');

export class EarView {
  #note: EarState | undefined;
  #since = 0;
  #last = '';

  /** Words that are being worked out. */
  hears(text: string): void {
    this.#note = undefined;
    this.#last = text;
  }

  /** Talk that was not meant for the machine leaves no trace; what was not taken is shown with the reason. */
  heard(text: string, outcome: Outcome, now: number): void {
    this.#since = now;
    if (outcome.trouble !== '') this.#note = { state: 'notUnderstood', text, hint: outcome.trouble };
    else this.#note = outcome.heard?.kind === 'none' ? undefined : { state: 'heard', text };
  }

  tick(now: number): void {
    if (now - this.#since > SHOWN_MS) this.#note = undefined;
  }

  /** `ear` gives only the words of the moment: half heard, or being read aloud. */
  state(snapshot: ListeningSnapshot, ear: Ear, language: Language): EarState {
    // Nobody need switch it on first: to hold the key is to want it.
    if (snapshot.matches('off'))
      return snapshot.context.mode === 'push' ? { state: 'shut', why: SHUT.notHeld } : { state: 'off' };
    if (snapshot.matches({ shut: 'speaking' }))
      return { state: 'speaking', text: ear.state === 'speaking' ? ear.text : '' };
    if (snapshot.matches('shut')) return { state: 'shut', why: shutWhy(snapshot) };
    if (snapshot.matches('blocked') || snapshot.matches({ asking: 'consent' })) return blocked(snapshot, language);
    if (snapshot.matches('asking')) return { state: 'asking' };
    if (snapshot.matches('starting')) return { state: 'starting' };
    if (snapshot.matches('thinking')) return this.#note ?? { state: 'heard', text: this.#last };
    if (this.#note !== undefined) return this.#note;
    if (saidNow(ear) !== '') return { state: 'heard', text: saidNow(ear) };
    return snapshot.matches('confirming') ? { state: 'listening', waits: true } : { state: 'listening' };
  }
}
