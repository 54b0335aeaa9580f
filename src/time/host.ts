import type { TimeHost } from './types.ts';

/** The browser's own clocks and timers. */
export function browserTimeHost(): TimeHost {
  return {
    now: () => Date.now(),
    monotonic: () => performance.now(),
    setTimeout: (run, ms) => globalThis.setTimeout(run, ms),
    clearTimeout: (id) => globalThis.clearTimeout(id),
  };
}
