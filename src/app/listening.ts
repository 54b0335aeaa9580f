/**
 * The ear at run time: what the voice reports becomes events of the listening machine, and the machine's state decides
 * whether the recogniser is open. The screen's ear is drawn from that state and from nothing else.
 */
import { createActor, type Actor } from 'xstate';
import type { Language } from '../domain/protocol/types.ts';
import { earWish, listeningMachine, type EarWish } from '../../machines/listening.ts';
import type { EarMode, ListeningEvent } from '../../machines/listening.types.ts';
import type { Ear } from '../voice/types.ts';
import { EarView } from './ear-view.ts';
import type { EarState } from './model.ts';
import type { OpenCase } from './open-case.ts';
import type { VoicePort } from './ports.ts';
import type { Outcome } from './session.ts';

/** What the ear must know of the visit. */
interface Scene {
  /** The visit's screen, on which the ear can be seen, is there. */
  readonly visible: boolean;
  readonly reading: boolean;
  /** A number waits for its yes, or one of several is to be chosen. */
  readonly waits: boolean;
}

const NOTHING = { reading: false, waits: false };

const isOpen = ({ state }: Ear): boolean => state === 'listening' || state === 'heard';

/** What a change of the voice's own ear means to the machine. */
export function earEvents(before: Ear, now: Ear): readonly ListeningEvent[] {
  const spoken: ListeningEvent[] = before.state === 'speaking' && now.state !== 'speaking' ? [{ type: 'SPOKEN' }] : [];
  // Said again and again while it lasts: a machine that was told to try once more must hear that it failed once more.
  if (now.state === 'blocked') return [...spoken, { type: 'FAILED', cause: now.cause, trying: now.trying }];
  if (before.state === now.state || (isOpen(before) && isOpen(now))) return spoken;
  if (isOpen(now)) return [...spoken, { type: 'STARTED' }];
  if (now.state === 'speaking') return [{ type: 'SPEAK' }];
  if (now.state === 'asking') return [...spoken, { type: 'PROMPTED' }];
  return now.state === 'finishing' ? spoken : [...spoken, { type: 'ENDED' }];
}

export class Listening {
  readonly #voice: VoicePort;
  readonly #changed: () => void;
  readonly #view = new EarView();
  readonly #actor: Actor<typeof listeningMachine>;
  #ear: Ear = { state: 'off' };
  #wish: EarWish = 'closed';
  #scene: Scene = { visible: false, ...NOTHING };
  #following = false;
  #again = false;

  constructor(voice: VoicePort, mode: EarMode, changed: () => void) {
    this.#voice = voice;
    this.#changed = changed;
    this.#actor = createActor(listeningMachine, { input: { mode } });
    this.#actor.subscribe({
      next: (snapshot) => this.#obey(earWish(snapshot)),
      error: () => this.#obey('closed'),
    });
    this.#actor.start();
  }

  /** Follows the voice until the returned function is called. */
  start(): () => void {
    const stop = this.#voice.onEar(() => this.#follow());
    return () => {
      this.#send({ type: 'DROP' });
      stop();
    };
  }

  want(on: boolean): void {
    // It goes on trying by itself: a person who asks wants it tried now.
    const trying = on && this.#wish === 'open' && this.#actor.getSnapshot().matches('blocked');
    this.#send({ type: on ? 'WANT' : 'DROP' });
    if (trying && this.#wish === 'open') this.#voice.listen(true);
  }

  /** What stood in the way may be gone. */
  retry(): void {
    this.#send({ type: 'RETRY' });
  }

  talk(down: boolean): void {
    this.#send({ type: down ? 'PUSH_DOWN' : 'PUSH_UP' });
  }

  consent(given: boolean): void {
    this.#send({ type: given ? 'CONSENT_GIVEN' : 'CONSENT_REFUSED' });
  }

  /** How the ear is to be open, and the visit on screen, if there is one. */
  attend(mode: EarMode, visit: Pick<OpenCase, 'listensFor'> | undefined): void {
    if (mode !== this.#actor.getSnapshot().context.mode) this.#send({ type: 'MODE', mode });
    const before = this.#scene;
    this.#scene = { visible: visit !== undefined, ...(visit?.listensFor() ?? NOTHING) };
    const { visible, reading, waits } = this.#scene;
    if (reading !== before.reading) this.#send({ type: reading ? 'READING' : 'NO_READING' });
    if (waits !== before.waits) this.#send({ type: waits ? 'PROPOSED' : 'SETTLED' });
    if (visible !== before.visible) this.#send({ type: visible ? 'CAME' : 'LEFT' });
  }

  /** Something was said. False: the ear was not open for it, and it counts for nothing. */
  takes(text: string): boolean {
    this.#send({ type: 'HEARD' });
    this.#view.hears(text);
    return this.#actor.getSnapshot().matches('thinking');
  }

  became(text: string, outcome: Outcome, now: number): void {
    this.#view.heard(text, outcome, now);
  }

  /** What came of the words is on record. */
  understood(): void {
    this.#send({ type: 'UNDERSTOOD' });
  }

  tick(now: number): void {
    this.#view.tick(now);
  }

  state(language: Language): EarState {
    return this.#view.state(this.#actor.getSnapshot(), this.#voice.ear(), language);
  }

  #send(event: ListeningEvent): void {
    const before = this.#actor.getSnapshot();
    this.#actor.send(event);
    if (this.#actor.getSnapshot() !== before) this.#changed();
  }

  #obey(wish: EarWish): void {
    if (wish === this.#wish) return;
    this.#wish = wish;
    if (wish === 'finish') this.#voice.finish();
    else this.#voice.listen(wish === 'open');
  }

  /** The voice may report again while its last report is being worked out: one after the other. */
  #follow(): void {
    this.#again = true;
    if (this.#following) return;
    this.#following = true;
    while (this.#again) {
      this.#again = false;
      const before = this.#ear;
      this.#ear = this.#voice.ear();
      for (const event of earEvents(before, this.#ear)) this.#actor.send(event);
    }
    this.#following = false;
    this.#changed();
  }
}
