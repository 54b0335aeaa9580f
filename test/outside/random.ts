/** Repeatable chance: the same seed gives the same cases on every machine (mulberry32). */
export interface Chance {
  /** 0 up to, not including, 1. */
  readonly unit: () => number;
  readonly between: (low: number, high: number) => number;
  /** Both ends included. */
  readonly whole: (low: number, high: number) => number;
  /** Mean 0, SD 1. */
  readonly normal: () => number;
}

export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const unit = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number) => low + (high - low) * unit();
  const whole = (low: number, high: number) => low + Math.floor(unit() * (high - low + 1));
  const normal = () => Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit());
  return { unit, between, whole, normal };
}
