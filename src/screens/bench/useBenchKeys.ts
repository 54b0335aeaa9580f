/** Keys and pedal at the bench: forward and back along the order, a tick for the line that stands out, a digit for a line. */
import { useEffect, useRef } from 'react';

export type BenchKey = { readonly do: 'to'; readonly place: number } | { readonly do: 'tick' } | undefined;

const FORWARD = new Set(['PageDown', 'ArrowDown', 'ArrowRight']);
const BACK = new Set(['PageUp', 'ArrowUp', 'ArrowLeft']);

/** What a key means when line `place` of `count` stands out; undefined = the browser's own meaning stays. */
export function benchKey(key: string, place: number, count: number): BenchKey {
  const to = (wanted: number): BenchKey => ({ do: 'to', place: Math.min(Math.max(wanted, 0), Math.max(0, count - 1)) });
  if (FORWARD.has(key)) return to(place + 1);
  if (BACK.has(key)) return to(place - 1);
  if (/^[1-9]$/.test(key)) return Number(key) <= count ? to(Number(key) - 1) : undefined;
  return key === 'Enter' || key === ' ' ? { do: 'tick' } : undefined;
}

const BUSY = 'input, textarea, select, button, a[href]';

/** Listens while the bench is shown. A field or a target that has the focus keeps its keys; a held key repeats nothing. */
export function useBenchKeys(place: number, count: number, onKey: (key: NonNullable<BenchKey>) => void): void {
  const latest = useRef({ place, count, onKey });
  useEffect(() => {
    latest.current = { place, count, onKey };
  });
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey) return;
      if (document.activeElement?.closest(BUSY) !== null && document.activeElement !== null) return;
      const now = latest.current;
      const meant = benchKey(event.key, now.place, now.count);
      if (meant === undefined) return;
      event.preventDefault();
      if (!event.repeat) now.onKey(meant);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);
}
