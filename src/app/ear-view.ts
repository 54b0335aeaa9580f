/** What the ear shows: the recogniser's own state, and for a moment what became of the words just heard. */
import type { Language } from '../domain/protocol/types.ts';
import { blockedWhy } from '../voice/sentences.ts';
import type { Ear } from '../voice/types.ts';
import type { EarState } from './model.ts';
import type { Outcome } from './session.ts';

/** So long the ear shows what it heard before it shows again that it listens. */
const SHOWN_MS = 4000;

export class EarView {
  #note: EarState | undefined;
  #since = 0;

  /** Talk that was not meant for the machine leaves no trace; what was not taken is shown with the reason. */
  heard(text: string, outcome: Outcome, now: number): void {
    this.#since = now;
    if (outcome.trouble !== '') this.#note = { state: 'notUnderstood', text, hint: outcome.trouble };
    else this.#note = outcome.heard?.kind === 'none' ? undefined : { state: 'heard', text };
  }

  tick(now: number): void {
    if (now - this.#since > SHOWN_MS) this.#note = undefined;
  }

  state(ear: Ear, settings: { readonly language: Language; readonly mayLeaveDevice: boolean }): EarState {
    if (ear.state === 'listening') return this.#note ?? ear;
    if (ear.state !== 'blocked') return ear;
    const asks = !settings.mayLeaveDevice && ear.why === blockedWhy('consent', settings.language);
    return asks ? { ...ear, consent: true } : ear;
  }
}
