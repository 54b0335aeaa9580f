import { Listeners } from './listeners.ts';
import { Player } from './player.ts';
import { ALARM, BEEPS } from './tones.ts';
import type { Beep, Clock, Lifecycle, Pattern, Sound, SoundState, TimeHost } from './types.ts';

export interface SoundParts {
  readonly clock: Clock;
  readonly lifecycle: Lifecycle;
  readonly host: Pick<TimeHost, 'setTimeout'>;
  /** The browser's AudioContext; without it the state is `unavailable`. */
  readonly AudioContext?: (new () => AudioContext) | undefined;
  /** Shakes the device along with an alarm, where it can. */
  readonly vibrate?: ((pattern: number[]) => unknown) | undefined;
}

const RESUME_MS = 1000;
const LOOK_MS = 50;
const LOOKS = 6;
const SHAKE = [300, 150, 300, 150, 600];

class ArmedSound implements Sound {
  readonly #parts: SoundParts;
  readonly #listeners = new Listeners<SoundState>();
  readonly #stopWatching: () => void;
  #player: Player | undefined;
  #state: SoundState;
  #volume = 1;

  constructor(parts: SoundParts) {
    this.#parts = parts;
    this.#state = parts.AudioContext ? 'needsTouch' : 'unavailable';
    this.#stopWatching = parts.lifecycle.subscribe(() => void this.#lookAgain());
  }

  state(): SoundState {
    return this.#state;
  }

  subscribe(listener: (state: SoundState) => void): () => void {
    return this.#listeners.add(listener);
  }

  /** A context may say `running` while its clock stands still (after a telephone call); then a new one is built. */
  async arm(): Promise<SoundState> {
    if (this.#player && (await this.#wakes(this.#player))) return this.#become('armed');
    const player = this.#build();
    if (!player) return this.#become('unavailable');
    if (await this.#wakes(player)) return this.#become('armed');
    return this.#become(player.context.state === 'running' ? 'unavailable' : 'needsTouch');
  }

  schedule(tones: readonly { readonly id: string; readonly at: number }[]): void {
    if (!this.#player || this.#state !== 'armed') return;
    const now = this.#parts.clock.now();
    this.#player.schedule(tones.map(({ id, at }) => ({ id, inS: (at - now) / 1000 })));
  }

  ring(pattern: Pattern = ALARM, id = ''): boolean {
    this.#parts.vibrate?.(SHAKE);
    if (!this.#player || this.#state !== 'armed') return false;
    if (!this.#player.sounding(id)) this.#player.play(pattern);
    return true;
  }

  beep(which: Beep): boolean {
    if (!this.#player || this.#state !== 'armed') return false;
    this.#player.play(BEEPS[which]);
    return true;
  }

  silence(): void {
    this.#parts.vibrate?.([]);
    this.#player?.silence();
  }

  setVolume(volume: number): void {
    this.#volume = Math.min(1, Math.max(0, volume));
    this.#player?.setVolume(this.#volume);
  }

  stop(): void {
    this.#stopWatching();
    this.#listeners.clear();
    this.#player?.close();
    this.#player = undefined;
  }

  #build(): Player | undefined {
    this.#player?.close();
    this.#player = undefined;
    if (!this.#parts.AudioContext) return undefined;
    try {
      const player = new Player(new this.#parts.AudioContext(), this.#volume);
      this.#player = player;
      player.context.onstatechange = () => void this.#lookAgain();
      return player;
    } catch {
      return undefined;
    }
  }

  /** `resume` has to be called before anything is awaited, or the touch no longer counts. */
  async #wakes(player: Player): Promise<boolean> {
    const resumed = player.context.resume().catch(() => undefined);
    await Promise.race([resumed, this.#wait(RESUME_MS)]);
    return this.#runs(player);
  }

  async #runs({ context }: Player): Promise<boolean> {
    const from = context.currentTime;
    for (let look = 0; look < LOOKS && context.state === 'running'; look += 1) {
      await this.#wait(LOOK_MS);
      if (context.currentTime > from) return context.state === 'running';
    }
    return false;
  }

  /** On every change of the context or of the page: is it still the case that an alarm would be heard? */
  async #lookAgain(): Promise<void> {
    const player = this.#player;
    if (!player) return;
    if (player.context.state === 'suspended' && this.#parts.lifecycle.visible()) {
      player.context.resume().catch(() => undefined);
    }
    const runs = await this.#runs(player);
    if (this.#player === player) this.#become(runs ? 'armed' : 'needsTouch');
  }

  #wait(ms: number): Promise<void> {
    return new Promise((resolve) => this.#parts.host.setTimeout(resolve, ms));
  }

  #become(state: SoundState): SoundState {
    if (state === this.#state) return state;
    this.#state = state;
    if (state !== 'armed') this.#player?.schedule([]);
    this.#listeners.tell(state);
    return state;
  }
}

/** Alarm tones and beeps. Armed only when the audio clock has been seen to move; a page just loaded has to be touched first. */
export function createSound(parts: SoundParts): Sound {
  return new ArmedSound(parts);
}
