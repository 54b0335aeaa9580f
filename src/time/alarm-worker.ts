/** The worker's own end: the loop, its clock, and two messages. */
import { AlarmLoop, type AlarmOrder, type DueAt } from './alarm-loop.ts';

const scope = globalThis as unknown as {
  onmessage: ((event: MessageEvent<AlarmOrder>) => void) | null;
  postMessage(message: DueAt): void;
};

const loop = new AlarmLoop(
  {
    now: () => Date.now(),
    setTimeout: (run, ms) => globalThis.setTimeout(run, ms),
    clearTimeout: (id) => globalThis.clearTimeout(id),
  },
  (deadline) => scope.postMessage(deadline),
);

scope.onmessage = (event) => loop.set(event.data);
