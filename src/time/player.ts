import { ALARM, samplesOf } from './tones.ts';
import type { Pattern } from './types.ts';

interface Playing {
  readonly node: AudioBufferSourceNode;
  readonly from: number;
  readonly until: number;
}

/** A tone that starts within this time is left alone when the others are set anew. */
const HANDS_OFF_S = 0.1;

/** One audio context and what is on its clock: tones scheduled by id, and tones that sound now. */
export class Player {
  readonly context: AudioContext;
  readonly #volume: GainNode;
  readonly #buffers = new Map<Pattern, AudioBuffer>();
  readonly #scheduled = new Map<string, Playing>();
  readonly #now = new Set<Playing>();

  constructor(context: AudioContext, volume: number) {
    this.context = context;
    this.#volume = context.createGain();
    this.#volume.gain.value = volume;
    this.#volume.connect(context.destination);
  }

  setVolume(volume: number): void {
    this.#volume.gain.value = volume;
  }

  /** Tones by id, each so many seconds from now. What was scheduled before and has not begun is taken back. */
  schedule(tones: readonly { readonly id: string; readonly inS: number }[]): void {
    const now = this.context.currentTime;
    for (const [id, playing] of this.#scheduled) {
      if (playing.from > now + HANDS_OFF_S) this.#end(playing, () => this.#scheduled.delete(id));
      else if (playing.until < now) this.#scheduled.delete(id);
    }
    for (const { id, inS } of tones) {
      if (inS > 0 && !this.#scheduled.has(id)) this.#scheduled.set(id, this.#start(ALARM, now + inS));
    }
  }

  /** True while the tone scheduled for `id` can be heard, or will be within the blink of an eye. */
  sounding(id: string): boolean {
    const playing = this.#scheduled.get(id);
    const now = this.context.currentTime;
    return playing !== undefined && playing.from <= now + HANDS_OFF_S && playing.until > now;
  }

  play(pattern: Pattern): void {
    const playing = this.#start(pattern, this.context.currentTime);
    this.#now.add(playing);
    playing.node.onended = () => this.#now.delete(playing);
  }

  silence(): void {
    const now = this.context.currentTime;
    for (const playing of this.#now) this.#end(playing, () => this.#now.delete(playing));
    for (const [id, playing] of this.#scheduled) {
      if (playing.from <= now) this.#end(playing, () => this.#scheduled.delete(id));
    }
  }

  close(): void {
    for (const playing of [...this.#now, ...this.#scheduled.values()]) this.#end(playing, () => undefined);
    this.#now.clear();
    this.#scheduled.clear();
    this.context.close().catch(() => undefined);
  }

  #start(pattern: Pattern, from: number): Playing {
    const node = this.context.createBufferSource();
    node.buffer = this.#buffer(pattern);
    node.loop = pattern.rounds > 1;
    node.connect(this.#volume);
    const until = from + (pattern.roundMs / 1000) * pattern.rounds;
    node.start(from);
    node.stop(until);
    return { node, from, until };
  }

  #end({ node }: Playing, forget: () => void): void {
    node.onended = null;
    node.stop();
    node.disconnect();
    forget();
  }

  #buffer(pattern: Pattern): AudioBuffer {
    const known = this.#buffers.get(pattern);
    if (known) return known;
    const samples = samplesOf(pattern, this.context.sampleRate);
    const buffer = this.context.createBuffer(1, samples.length, this.context.sampleRate);
    buffer.copyToChannel(samples, 0);
    this.#buffers.set(pattern, buffer);
    return buffer;
  }
}
