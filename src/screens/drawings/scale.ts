/** From millimetres to drawing units, and back to nothing else. */

export interface Scale {
  readonly from: number;
  readonly to: number;
  at(value: number): number;
}

export function scale(domain: readonly [number, number], range: readonly [number, number]): Scale {
  const [from, to] = domain;
  const span = to - from;
  const at = (value: number): number =>
    span === 0 ? range[0] : range[0] + ((value - from) / span) * (range[1] - range[0]);
  return { from, to, at };
}

/** A stretch of whole millimetres that holds all values with room at both ends, never narrower than `least`. */
export function windowOf(values: readonly number[], room: number, least: number): readonly [number, number] {
  if (values.length === 0) return [0, least];
  const low = Math.floor(Math.min(...values) - room);
  const high = Math.ceil(Math.max(...values) + room);
  const missing = Math.max(0, least - (high - low));
  const start = Math.max(0, low - Math.floor(missing / 2));
  return [start, Math.max(high + Math.ceil(missing / 2), start + least)];
}

/** Marks from `from` to `to` at whole multiples of `step`. */
export function ticks(from: number, to: number, step: number): readonly number[] {
  const first = Math.ceil(from / step);
  const count = Math.floor(to / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step);
}

/** The smallest of 1, 2, 5, 10, 20 … that gives no more than `most` marks. */
export function tickStep(span: number, most: number): number {
  for (let power = 1; power <= 10000; power *= 10) {
    for (const base of [1, 2, 5]) if (span / (base * power) <= most) return base * power;
  }
  return span;
}

/** How high each mark must be stacked so that marks closer than `apart` do not cover each other. */
export function stackLevels(positions: readonly number[], apart: number): readonly number[] {
  const placed: { x: number; level: number }[] = [];
  return positions.map((x) => {
    let level = 0;
    while (placed.some((other) => other.level === level && Math.abs(other.x - x) < apart)) level += 1;
    placed.push({ x, level });
    return level;
  });
}
