import type { AlarmPort } from './alarm-port.ts';
import type { Alarms, Clock, Deadline, Lifecycle, OnRing, Ring, Sound, Ticker } from './types.ts';

/** A ring later than this says so. */
const LATE_AFTER_MS = 2000;
/** The audio clock and the wall clock drift apart; the tones are set anew this often. */
const RESCHEDULE_MS = 10_000;

export interface AlarmParts {
  readonly clock: Clock;
  readonly ticker: Ticker;
  readonly lifecycle: Lifecycle;
  readonly onRing: OnRing;
  /** Without it, the ticker and the lifecycle still ring. */
  readonly port?: AlarmPort | undefined;
  /** Without it, alarms are silent. */
  readonly sound?: Sound | undefined;
}

/** One ring: the same id at another moment is another one, and a ring too many is better than one too few. */
function nameOf({ id, at }: Deadline): string {
  return `${id}@${at}`;
}

class ThreeWayAlarms implements Alarms {
  readonly #parts: AlarmParts;
  readonly #stops: (() => void)[];
  readonly #rung = new Set<string>();
  #deadlines: readonly Deadline[] = [];
  #scheduledAt = -Infinity;
  #skewMs = 0;

  constructor(parts: AlarmParts) {
    this.#parts = parts;
    parts.port?.onDue(({ id }) => this.#look('worker', id));
    const { ticker, lifecycle, sound } = parts;
    this.#stops = [
      ticker.subscribe(() => this.#tick()),
      lifecycle.subscribe(() => this.#look('check')),
      sound?.subscribe((state) => state === 'armed' && this.#schedule()) ?? (() => undefined),
    ];
  }

  setDeadlines(list: readonly Deadline[]): void {
    this.#deadlines = list.filter(({ at }) => Number.isFinite(at));
    this.#look('check');
    this.#order();
    this.#schedule();
  }

  waiting(): readonly Deadline[] {
    return this.#deadlines.filter((deadline) => !this.#hasRung(deadline)).sort((a, b) => a.at - b.at);
  }

  stop(): void {
    for (const stop of this.#stops) stop();
    this.#parts.port?.close();
    this.#parts.sound?.schedule([]);
    this.#deadlines = [];
  }

  #hasRung(deadline: Deadline): boolean {
    return this.#rung.has(nameOf(deadline));
  }

  #tick(): void {
    this.#look('check');
    const { clock } = this.#parts;
    if (clock.skewMs() !== this.#skewMs) this.#order();
    if (clock.monotonic() - this.#scheduledAt >= RESCHEDULE_MS) this.#schedule();
  }

  /**
   * Rings what is over, looking afresh after each: whoever hears a ring may hand in a new list at once. The worker names the
   * one it saw, so that the log can say who was first.
   */
  #look(by: Ring['by'], seen?: string): void {
    const now = this.#parts.clock.now();
    const next = (): Deadline | undefined => this.waiting().find(({ at }) => at <= now);
    for (let over = next(); over; over = next()) this.#ring(over, now, over.id === seen ? by : 'check');
  }

  #ring(deadline: Deadline, rangAt: number, by: Ring['by']): void {
    const { id, at, label } = deadline;
    const lateMs = rangAt - at;
    const ring: Ring = { label, dueAt: at, rangAt, lateMs, late: lateMs > LATE_AFTER_MS, by };
    this.#rung.add(nameOf(deadline));
    this.#parts.sound?.ring(undefined, id);
    this.#parts.onRing(id, ring);
  }

  #order(): void {
    const { port, clock } = this.#parts;
    this.#skewMs = clock.skewMs();
    port?.set({ deadlines: this.waiting().map(({ id, at }) => ({ id, at })), skewMs: this.#skewMs });
  }

  #schedule(): void {
    const { sound, clock } = this.#parts;
    this.#scheduledAt = clock.monotonic();
    sound?.schedule(this.waiting().map(({ id, at }) => ({ id, at })));
  }
}

/**
 * Alarms with three independent triggers: a worker that compares wall clocks, a tone already on the audio clock, and a look
 * at every tick and lifecycle event. Whichever is first rings; the others find it rung.
 */
export function createAlarms(parts: AlarmParts): Alarms {
  return new ThreeWayAlarms(parts);
}
