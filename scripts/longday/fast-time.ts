/**
 * A day in minutes: time in the page and in its workers runs at its true speed for a moment, then so many times as fast,
 * then, when it is told to, at its true speed again. Clocks and timers of both follow the same line.
 */

export interface TimePlan {
  /** Epoch ms of the real clock at which time begins to run fast. */
  readonly from: number;
  /** Epoch ms of the real clock at which it runs at its true speed again; endless until that is known. */
  readonly until: number;
  /** Simulated milliseconds in a real one, between the two. */
  readonly rate: number;
}

/** What the app takes the time for, epoch ms, at a moment of the real clock. */
export function simulated({ from, until, rate }: TimePlan, real: number): number {
  return real + (rate - 1) * (Math.min(Math.max(real, from), until) - from);
}

/** The moment of the real clock at which the app takes the time for this. */
export function realAt({ from, until, rate }: TimePlan, at: number): number {
  if (at <= from) return at;
  const fastUntil = from + (until - from) * rate;
  return at <= fastUntil ? from + (at - from) / rate : until + at - fastUntil;
}

/**
 * Put before the scripts of the page and of a worker: `Date`, `performance.now` and `setTimeout` on the time of the plan.
 * Audio, drawing and the disk stay on the real one. `rimwiseTrueSpeed(ms)` lets time run at its true speed from so many real
 * milliseconds on, in the workers too, and answers the real moment.
 */
export const fastTimeScript = ({ from, rate }: Pick<TimePlan, 'from' | 'rate'>): string => `(() => {
  const [from, rate] = ${JSON.stringify([from, rate])};
  let until = Infinity;
  const others = new BroadcastChannel('time of a long day');
  others.onmessage = ({ data }) => void (until = data);
  const origin = performance.timeOrigin;
  const steady = performance.now.bind(performance);
  const later = globalThis.setTimeout.bind(globalThis);
  const RealDate = Date;
  const real = () => origin + steady();
  const simulated = (at) => at + (rate - 1) * (Math.min(Math.max(at, from), until) - from);
  const realAt = (at) => {
    if (at <= from) return at;
    const fastUntil = from + (until - from) * rate;
    return at <= fastUntil ? from + (at - from) / rate : until + at - fastUntil;
  };
  const now = () => Math.floor(simulated(real()));
  globalThis.Date = class Date extends RealDate {
    constructor(...given) {
      if (given.length === 0) super(now());
      else super(...given);
    }
    static now() {
      return now();
    }
  };
  performance.now = () => simulated(real()) - simulated(origin);
  globalThis.setTimeout = (run, ms = 0, ...given) => {
    const at = real();
    return later(run, realAt(simulated(at) + Math.max(0, Number(ms) || 0)) - at, ...given);
  };
  globalThis.rimwiseTrueSpeed = (ms) => {
    until = real() + ms;
    others.postMessage(until);
    return until;
  };
})();
`;
