import { AlarmLoop, type AlarmOrder, type DueAt } from './alarm-loop.ts';
import type { TimeHost } from './types.ts';

/** The page's end of the alarm worker. */
export interface AlarmPort {
  set(order: AlarmOrder): void;
  onDue(listener: (deadline: DueAt) => void): void;
  close(): void;
}

/** A dedicated worker, or nothing where there are none: the other triggers then carry on alone. */
export function createWorkerPort(): AlarmPort | undefined {
  try {
    const worker = new Worker(new URL('./alarm-worker.ts', import.meta.url), { type: 'module' });
    return {
      set: (order) => worker.postMessage(order),
      onDue: (listener) => {
        worker.onmessage = (event: MessageEvent<DueAt>) => listener(event.data);
      },
      close: () => worker.terminate(),
    };
  } catch {
    return undefined;
  }
}

/** The same loop without a worker, on the timers given. */
export function createLocalPort(host: TimeHost): AlarmPort {
  let tell: (deadline: DueAt) => void = () => undefined;
  const loop = new AlarmLoop(host, (deadline) => tell(deadline));
  return {
    set: (order) => loop.set(order),
    onDue: (listener) => {
      tell = listener;
    },
    close: () => loop.stop(),
  };
}
