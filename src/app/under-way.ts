/**
 * Cases whose clocks run while another case is open, or none: the impression of one patient waits to be poured while the
 * next one sits in the chair. They are read from the disk, followed, and written only for what their alarms need.
 */
import type { Deadline } from '../domain/summary/clocks.ts';
import type { CaseListRow, RingingView, RunningClock } from './model.ts';
import type { OpenCase, Opened } from './open-case.ts';
import type { Outcome } from './session.ts';

const DAY = 86_400_000;
/** Rows from before rows told whether a clock runs: as many of the newest are looked into, if they are not too old. */
const UNTOLD = { most: 20, days: 8 } as const;

export interface UnderWayParts {
  cases(): readonly CaseListRow[];
  openId(): string | undefined;
  now(): number;
  /** The case as it is on the disk. */
  read(id: string): Promise<Opened>;
  /** Does the work while nobody else may write the case; false when somebody else may, and nothing was done. */
  briefly(id: string, work: () => Promise<void>): Promise<boolean>;
  keep(outcome: Outcome, open: OpenCase): Promise<void>;
  /** What is followed has changed. */
  changed(): void;
}

/** `elsewhere`: another window has the right to write the case. `unread`: it cannot be read just now. */
export type Written = 'done' | 'elsewhere' | 'unread';

interface Followed {
  readonly open: OpenCase;
  readonly code: string;
  readonly lastSeq: number;
}

/** A clock of a case that is not open, by the name under which it is on the alarms. */
export interface Elsewhere {
  readonly caseId: string;
  readonly code: string;
  readonly due: Deadline;
}

export class UnderWay {
  readonly #parts: UnderWayParts;
  #followed: ReadonlyMap<string, Followed> = new Map();
  /** Cases of which nothing runs, and their last entry then. */
  readonly #quiet = new Map<string, number>();
  #looking: Promise<void> = Promise.resolve();
  /** A look that began before everything was let go of finds nothing. */
  #turn = 0;

  constructor(parts: UnderWayParts) {
    this.#parts = parts;
  }

  /** Looks at the list again; one look after another, so that a slow one cannot overwrite a later one. */
  look(): Promise<void> {
    this.#looking = this.#looking.then(() => this.#look());
    return this.#looking;
  }

  /** Follows nothing any more, until it looks again. */
  letGo(): void {
    this.#turn += 1;
    this.#followed = new Map();
    this.#quiet.clear();
  }

  get any(): boolean {
    return this.#others().length > 0;
  }

  clocks(now: number): readonly RunningClock[] {
    return this.#others().flatMap(([id, { open, code }]) =>
      open.running(now).clocks.map((row): RunningClock => ({ ...row, case: { id, code } })),
    );
  }

  ringing(now: number): readonly RingingView[] {
    return this.#others().flatMap(([id, { open, code }]) =>
      open.running(now).ringing.map((ring): RingingView => ({ ...ring, case: { id, code } })),
    );
  }

  deadlines(now: number): readonly Deadline[] {
    return this.#due(now).map(({ caseId, code, due }) => ({
      ...due,
      id: `${caseId}|${due.id}`,
      label: `${code}, ${due.label}`,
    }));
  }

  /** What runs, what rings and what has to, case by case. */
  ticking(now: number) {
    return this.#others().map(([caseId, { open }]) => ({ caseId, ...open.running(now), due: open.deadlines(now) }));
  }

  #due(now: number): readonly Elsewhere[] {
    return this.#others().flatMap(([caseId, { open, code }]) =>
      open.deadlines(now).map((due): Elsewhere => ({ caseId, code, due })),
    );
  }

  /** Whose deadline this is; undefined for one of the open case. */
  find(id: string, now: number): Elsewhere | undefined {
    return this.#due(now).find(({ caseId, due }) => `${caseId}|${due.id}` === id);
  }

  /** Writes what `act` says into a case that is not open; says when it could not. */
  async write(id: string, act: (open: OpenCase) => readonly Outcome[]): Promise<Written> {
    let written: Written = 'unread';
    const mine = await this.#parts.briefly(id, async () => {
      const read = await this.#parts.read(id);
      if (!read.ok) return;
      for (const outcome of act(read.open)) await this.#parts.keep(outcome, read.open);
      written = 'done';
    });
    await this.look();
    return mine ? written : 'elsewhere';
  }

  #others(): readonly (readonly [string, Followed])[] {
    const open = this.#parts.openId();
    return [...this.#followed].filter(([id]) => id !== open);
  }

  /** Rows that tell of a running clock, and the newest of those that tell nothing. */
  #candidates(): readonly CaseListRow[] {
    const rows = this.#parts.cases();
    const since = this.#parts.now() - UNTOLD.days * DAY;
    const untold = rows.filter((row) => row.ticks === undefined && (row.lastAt ?? 0) >= since).slice(0, UNTOLD.most);
    return [...rows.filter((row) => row.ticks === true), ...untold];
  }

  async #look(): Promise<void> {
    const before = this.#followed;
    const turn = this.#turn;
    const next = new Map<string, Followed>();
    for (const { id, code, lastSeq = 0 } of this.#candidates()) {
      const known = before.get(id);
      if (id === this.#parts.openId() || this.#quiet.get(id) === lastSeq) continue;
      // What cannot be read just now goes on as it was known: its alarms must not wait for the disk.
      const followed = known?.lastSeq === lastSeq ? known : await this.#read(id, { code, lastSeq }, known);
      if (followed !== undefined) next.set(id, followed);
    }
    const same = next.size === before.size && [...next].every(([id, followed]) => before.get(id) === followed);
    if (turn !== this.#turn) return;
    this.#followed = next;
    if (!same) this.#parts.changed();
  }

  async #read(
    id: string,
    { code, lastSeq }: Omit<Followed, 'open'>,
    known: Followed | undefined,
  ): Promise<Followed | undefined> {
    const read = await this.#parts.read(id);
    // Tried again with the next look.
    if (!read.ok) return known;
    if (read.open.running(this.#parts.now()).clocks.length > 0) return { open: read.open, code, lastSeq };
    this.#quiet.set(id, lastSeq);
    return undefined;
  }
}
