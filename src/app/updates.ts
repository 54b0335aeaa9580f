/**
 * A newer version of the app: fetched in the background, held back until somebody takes it, and never taken while a case
 * is open in any window. Taking it reloads this window; others reload only when they stand at the list of cases.
 */

type WorkerHost = Pick<ServiceWorkerContainer, 'controller' | 'register' | 'addEventListener' | 'removeEventListener'>;

export interface UpdateParts {
  /** Absent where there are none: an old browser, a page that is not served securely. */
  readonly workers: WorkerHost | undefined;
  /** Names of the locks that any window holds or waits for. */
  readonly lockNames: () => Promise<readonly string[]>;
  readonly reload: () => void;
}

export interface UpdatePort {
  start(changed: () => void): void;
  /** A newer version is here and waits. */
  available(): boolean;
  /** Asks whether there is one. */
  look(): void;
  /** Takes it, unless a case is open in another window; gives why not, in a sentence. */
  take(ownCase: string): Promise<string>;
  /** Whether this window may be reloaded when another one has taken it. */
  setIdle(idle: boolean): void;
}

const BUSY = 'A case is open in another window. Close that window first; then the new version can be taken.';
const CASE_LOCK = 'rimwise-case-';

/** Cases that other windows hold or wait for; `own` is the one that is open here. */
export function othersAmong(names: readonly string[], own: string): readonly string[] {
  const seen = names.filter((name) => name.startsWith(CASE_LOCK));
  // One of this name is ours; a second one waits in another window.
  const ours = seen.indexOf(`${CASE_LOCK}${own}`);
  return seen.filter((_, index) => index !== ours);
}

class Updates implements UpdatePort {
  readonly #parts: UpdateParts;
  #registration: ServiceWorkerRegistration | undefined;
  #waiting: ServiceWorker | undefined;
  #idle = true;
  #taking = false;

  constructor(parts: UpdateParts) {
    this.#parts = parts;
  }

  start(changed: () => void): void {
    const { workers, reload } = this.#parts;
    if (workers === undefined) return;
    // The first worker of all takes over a page that had none: that is no update.
    let served = workers.controller !== null;
    workers.addEventListener('controllerchange', () => {
      if (served && (this.#taking || this.#idle)) reload();
      served = true;
    });
    workers.register('./sw.js').then(
      (registration) => this.#watch(registration, changed),
      () => undefined,
    );
  }

  available(): boolean {
    return this.#waiting !== undefined;
  }

  look(): void {
    void this.#registration?.update().catch(() => undefined);
  }

  async take(ownCase: string): Promise<string> {
    if (othersAmong(await this.#parts.lockNames(), ownCase).length > 0) return BUSY;
    this.#taking = true;
    this.#waiting?.postMessage({ type: 'SKIP_WAITING' });
    return '';
  }

  setIdle(idle: boolean): void {
    this.#idle = idle;
  }

  #watch(registration: ServiceWorkerRegistration, changed: () => void): void {
    this.#registration = registration;
    const found = (worker: ServiceWorker | null): void => {
      if (worker === null || this.#parts.workers?.controller === null) return;
      this.#waiting = worker;
      changed();
    };
    if (registration.waiting !== null) found(registration.waiting);
    registration.addEventListener('updatefound', () => {
      const { installing } = registration;
      installing?.addEventListener('statechange', () => {
        if (installing.state === 'installed') found(registration.waiting);
      });
    });
  }
}

export function createUpdates(parts: UpdateParts): UpdatePort {
  return new Updates(parts);
}

/** Held and waited for, in all windows of this browser. */
export async function namesOfLocks(locks: Pick<LockManager, 'query'> | undefined): Promise<readonly string[]> {
  const { held = [], pending = [] } = (await locks?.query()) ?? {};
  return [...held, ...pending].flatMap(({ name }) => (name === undefined ? [] : [name]));
}
