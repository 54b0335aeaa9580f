import { createAlarms } from './alarms.ts';
import { createWorkerPort, type AlarmPort } from './alarm-port.ts';
import { createClock } from './clock.ts';
import { browserTimeHost } from './host.ts';
import { createLifecycle, type LifecycleWindow } from './lifecycle.ts';
import { createSound } from './sound.ts';
import { createTicker } from './ticker.ts';
import type { Time, TimeOptions } from './types.ts';
import { createWakeLock, type WakeLockSource } from './wake-lock.ts';

/** The part of `window` that is used. */
export interface TimeWindow extends LifecycleWindow {
  readonly AudioContext?: new () => AudioContext;
  readonly navigator: { readonly wakeLock?: WakeLockSource; vibrate?(pattern: number[]): unknown };
}

/** Time as the page has it. `port` is the alarm worker, made here unless one is handed in. */
export function createTime(window: TimeWindow, options: TimeOptions & { readonly port?: AlarmPort }): Time {
  const host = browserTimeHost();
  const clock = createClock(host, options.onJump);
  const ticker = createTicker({ clock, host });
  const lifecycle = createLifecycle(window);
  const { AudioContext, navigator } = window;
  const vibrate = navigator.vibrate ? (pattern: number[]): unknown => navigator.vibrate?.(pattern) : undefined;
  const sound = createSound({ clock, lifecycle, host, AudioContext, vibrate });
  const wakeLock = createWakeLock(navigator.wakeLock, lifecycle);
  const port = options.port ?? createWorkerPort();
  const alarms = createAlarms({ clock, ticker, lifecycle, sound, port, onRing: options.onRing });
  const stop = (): void => {
    for (const part of [alarms, sound, wakeLock, ticker, lifecycle]) part.stop();
  };
  return { clock, ticker, lifecycle, alarms, sound, wakeLock, stop };
}
