/** Several windows of one browser: its locks and its channel, as they behave there. */
import type { LockPort, WindowsPort } from '../../src/app/single-writer.ts';
import type { LifecycleEvent } from '../../src/time/types.ts';

interface Request {
  readonly steal: boolean;
  give(lock: unknown): void;
  fail(): void;
}

class FakeLocks implements LockPort {
  readonly #held = new Map<string, Request>();
  readonly #queues = new Map<string, Request[]>();

  request(
    name: string,
    options: { ifAvailable?: boolean; steal?: boolean; signal?: AbortSignal },
    work: (lock: unknown) => Promise<void> | undefined,
  ): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const fail = (): void => reject(new DOMException('', 'AbortError'));
      const give = (lock: unknown): void => {
        const done = (): void => {
          if (this.#held.get(name) === request) this.#free(name);
          resolve(undefined);
        };
        void Promise.resolve(work(lock)).finally(done);
      };
      const request: Request = { steal: options.steal === true, give, fail };
      options.signal?.addEventListener('abort', () => this.#leave(name, request));
      queueMicrotask(() => this.#arrive(name, request, options.ifAvailable === true));
    });
  }

  #arrive(name: string, request: Request, ifAvailable: boolean): void {
    const holder = this.#held.get(name);
    if (holder !== undefined && request.steal) holder.fail();
    if (holder === undefined || request.steal) {
      this.#held.set(name, request);
      request.give({ name });
    } else if (ifAvailable) request.give(null);
    else this.#queues.set(name, [...(this.#queues.get(name) ?? []), request]);
  }

  #leave(name: string, request: Request): void {
    const queue = this.#queues.get(name) ?? [];
    if (!queue.includes(request)) return;
    this.#queues.set(
      name,
      queue.filter((other) => other !== request),
    );
    request.fail();
  }

  #free(name: string): void {
    const [next, ...rest] = this.#queues.get(name) ?? [];
    this.#queues.set(name, rest);
    this.#held.delete(name);
    if (next === undefined) return;
    this.#held.set(name, next);
    next.give({ name });
  }
}

export interface FakeWindow extends WindowsPort {
  live(event: LifecycleEvent): void;
  /** Tells all the others. */
  postMessage(news: unknown): void;
}

export interface FakeBrowser {
  readonly locks: LockPort;
  open(): FakeWindow;
}

export function fakeBrowser(): FakeBrowser {
  const locks = new FakeLocks();
  const all = new Set<Set<(news: unknown) => void>>();
  return {
    locks,
    open: () => {
      const ears = new Set<(news: unknown) => void>();
      const lives = new Set<(event: LifecycleEvent) => void>();
      all.add(ears);
      return {
        locks,
        onNews: (listener) => {
          ears.add(listener);
          return () => ears.delete(listener);
        },
        onLife: (listener) => {
          lives.add(listener);
          return () => lives.delete(listener);
        },
        live: (event) => {
          for (const listener of lives) listener(event);
        },
        postMessage: (news) => {
          for (const other of all) if (other !== ears) for (const listener of other) listener(news);
        },
      };
    },
  };
}
