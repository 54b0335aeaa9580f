import { Listeners } from './listeners.ts';
import type { Lifecycle, LifecycleEvent } from './types.ts';

type Source = Pick<EventTarget, 'addEventListener' | 'removeEventListener'>;

export interface LifecycleWindow extends Source {
  readonly document: Source & { readonly visibilityState: DocumentVisibilityState };
}

/** Visibility, focus, freezing and the way in and out of the page, as one stream. */
export function createLifecycle(window: LifecycleWindow): Lifecycle {
  const listeners = new Listeners<LifecycleEvent>();
  const { document } = window;
  const visible = (): boolean => document.visibilityState === 'visible';
  const tell = (event: LifecycleEvent) => (): void => listeners.tell(event);
  const wires: readonly (readonly [Source, string, () => void])[] = [
    [document, 'visibilitychange', () => listeners.tell(visible() ? 'visible' : 'hidden')],
    [document, 'freeze', tell('frozen')],
    [document, 'resume', tell('resumed')],
    [window, 'pageshow', tell('shown')],
    [window, 'pagehide', tell('leaving')],
    [window, 'focus', tell('focus')],
  ];
  for (const [target, name, listener] of wires) target.addEventListener(name, listener);
  return {
    visible,
    subscribe: (listener) => listeners.add(listener),
    stop: () => {
      for (const [target, name, listener] of wires) target.removeEventListener(name, listener);
      listeners.clear();
    },
  };
}
