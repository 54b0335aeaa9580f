/** Chance that is the same in every run: a small generator started from a word. */

export interface Chance {
  /** 0 ≤ x < 1. */
  next(): number;
  /** A whole number, both ends included. */
  whole(low: number, high: number): number;
  pick<T>(list: readonly T[]): T;
}

function seedOf(word: string): number {
  let seed = 2_166_136_261;
  for (const letter of word) seed = Math.imul(seed ^ (letter.codePointAt(0) ?? 0), 16_777_619);
  return seed >>> 0;
}

/** The generator is mulberry32 (public domain), the seed a 32-bit FNV-1a hash of the word. */
export function chanceFrom(word: string): Chance {
  let state = seedOf(word);
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return {
    next,
    whole,
    pick<T>(list: readonly T[]): T {
      if (list.length === 0) throw new RangeError('nothing to pick from');
      return list[whole(0, list.length - 1)] as T;
    },
  };
}
