/** What the app lets be heard of an act: words read aloud, a beep, and the pause after them. */
import type { Language } from '../domain/protocol/types.ts';
import type { Devices } from './ports.ts';
import type { Outcome } from './session.ts';

const BEEP_MS = 200;

export class Aloud {
  readonly #devices: Pick<Devices, 'voice' | 'time'>;
  readonly #wanted: () => boolean;
  /** When what waits had been read out; 0 = not yet. */
  #quietSince = 0;

  constructor(devices: Pick<Devices, 'voice' | 'time'>, wanted: () => boolean) {
    this.#devices = devices;
    this.#wanted = wanted;
  }

  async say(text: string, language: Language): Promise<void> {
    const { voice, time } = this.#devices;
    if (this.#wanted() && voice.canSpeak()) await voice.say(text, language);
    this.#quietSince = time.clock.now();
  }

  /** Something new is to be said: the pause begins after it. */
  restart(): void {
    this.#quietSince = 0;
  }

  /** It has been quiet for so long since the words were over; never when the pause is switched off. */
  quietFor(ms: number, now: number): boolean {
    return ms > 0 && this.#quietSince > 0 && now - this.#quietSince >= ms;
  }

  /**
   * A beep is heard by the recogniser too: the ear is shut for it, and a while longer. So while somebody speaks to the
   * app only a refusal beeps; what was taken is seen, and numbers are read back anyway.
   */
  beep({ trouble, facts }: Outcome, waits: boolean): void {
    const { state } = this.#devices.voice.ear();
    if (trouble === '' && (state === 'listening' || state === 'heard')) return;
    const beep = trouble !== '' ? 'warn' : waits ? 'ask' : facts.length > 0 ? 'kept' : undefined;
    if (beep !== undefined && this.#devices.time.sound.beep(beep)) this.#devices.voice.hush(BEEP_MS);
  }
}
