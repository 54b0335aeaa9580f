/** Clocks that ring: what is written of it, what is said, and the sound that has to be armed by a touch first. */
import type { VisitEvent } from '../../machines/visit.types.ts';
import type { Language } from '../domain/protocol/types.ts';
import { phaseLabel, type Deadline } from '../domain/summary/clocks.ts';
import type { Ring } from '../time/types.ts';
import type { Aloud } from './aloud.ts';
import { alarmText, howLongText } from './clock-words.ts';
import type { Keeping } from './keeping.ts';
import type { LockedAlarm } from './locking.types.ts';
import type { AppModel, CaseName, RingingView, RunningClock } from './model.ts';
import type { OpenCase, Opened } from './open-case.ts';
import type { Devices } from './ports.ts';
import type { Outcome } from './session.ts';
import { UnderWay, type Elsewhere } from './under-way.ts';

export interface RingingParts {
  readonly devices: Pick<Devices, 'time'>;
  readonly aloud: Aloud;
  readonly keeping: Keeping;
  open(): OpenCase | undefined;
  ringing(): AppModel['ringing'];
  /** The open case has new facts, or other cases are followed. */
  changed(): void;
  redraw(): void;
  send(event: VisitEvent): void;
  fromLog(id: string): Promise<Opened>;
  tell(said: { trouble: string }): void;
}

interface Said {
  readonly due: Deadline;
  readonly ring: Ring;
  readonly language: Language;
  readonly code?: string;
}

/** That it rang, on the record of its case. */
function rangOn(open: OpenCase, { clock, phase }: Deadline, { dueAt, late }: Pick<Ring, 'dueAt' | 'late'>): Outcome {
  return open.session.record({ kind: 'rang', clock, phase, dueAt, late });
}

interface Ticking {
  readonly caseId: string;
  readonly clocks: readonly RunningClock[];
  readonly due: readonly Deadline[];
  readonly ringing: readonly RingingView[];
}

/** What has to ring while nothing of the case may be shown: which impression, of what, which phase. */
function alarmsOf({ caseId, clocks, due, ringing }: Ticking, now: number): readonly LockedAlarm[] {
  const of = (clock: string): string => clocks.find((row) => row.id === clock)?.name ?? '';
  const said = (label: string, clock: string): string => (of(clock) === '' ? label : `${label} (${of(clock)})`);
  const rung = ringing.filter(({ clock, phase }) => !due.some((one) => one.clock === clock && one.phase === phase));
  return [
    ...due.map(({ id, clock, phase, label, at }) => ({ caseId, due: id, clock, phase, label: said(label, clock), at })),
    ...rung.map(({ clock, phase, label, lateMs }) => ({
      caseId,
      due: `${clock}:${phase}`,
      clock,
      phase,
      at: now - lateMs,
      label: said(`${label}: ${phaseLabel[phase]} over`, clock),
      rang: { at: now, late: false },
    })),
  ];
}

const inAnother = (code: string) => `${code} is being written in another window. Acknowledge its alarm there.`;
const unread = (code: string) =>
  `${code} cannot be read just now. Its alarm is acknowledged once it can: touch “Seen” again.`;

export class Ringing {
  readonly #parts: RingingParts;
  /** Cases that are not open and whose clocks run. */
  readonly others: UnderWay;
  #openId: string | undefined;
  /** Rings that are not on record yet, by case and deadline. */
  readonly #owed = new Map<string, () => Promise<void>>();
  readonly #told = new WeakSet<Ring>();
  #rings = false;

  constructor(parts: RingingParts) {
    this.#parts = parts;
    const { keeping, devices } = parts;
    this.others = new UnderWay({
      cases: () => keeping.cases,
      openId: () => parts.open()?.id,
      now: () => devices.time.clock.now(),
      read: (id) => parts.fromLog(id),
      briefly: (id, work) => keeping.writer.briefly(id, work),
      keep: async (outcome, open) => void (await keeping.keep(outcome.facts, '', open)),
      changed: () => this.#followed(),
    });
  }

  /** The open case is another, or something has happened: what has to ring now, of all cases. */
  attend(): void {
    const { devices, open } = this.#parts;
    const now = devices.time.clock.now();
    const opened = open();
    devices.time.alarms.setDeadlines([...(opened?.deadlines(now) ?? []), ...this.others.deadlines(now)]);
    this.#quieten((opened?.running(now).ringing.length ?? 0) + this.others.ringing(now).length > 0);
    if (opened?.id === this.#openId) return;
    this.#openId = opened?.id;
    void this.others.look();
  }

  /** Of all cases, in words that do not tell whose it is. */
  lockedAlarms(): readonly LockedAlarm[] {
    const now = this.#parts.devices.time.clock.now();
    const open = this.#parts.open();
    const own = open === undefined ? [] : [{ caseId: open.id, ...open.running(now), due: open.deadlines(now) }];
    return [...own, ...this.others.ticking(now)].flatMap((one) => alarmsOf(one, now));
  }

  /** That it rang while nothing could be written. */
  async rangLocked({ caseId, due, at, rang }: LockedAlarm): Promise<void> {
    if (rang === undefined) return;
    await this.others.write(caseId, (open) => {
      const found = open.deadlines(rang.at).find((one) => one.id === due);
      return found === undefined ? [] : [rangOn(open, found, { dueAt: at, late: rang.late })];
    });
  }

  /** What rang has been seen, or done: here, or in the window that writes the case. */
  #quieten(rings: boolean): void {
    if (this.#rings && !rings) this.#parts.devices.time.sound.silence();
    this.#rings = rings;
  }

  /** Asked how long, all clocks are told, those of other cases by the code of their case. */
  told(outcome: Outcome | undefined): Outcome | undefined {
    const { open, devices } = this.#parts;
    const [opened, heard] = [open(), outcome?.heard];
    if (outcome === undefined || opened === undefined || heard?.kind !== 'command' || heard.command !== 'howLong')
      return outcome;
    const now = devices.time.clock.now();
    const clocks = [...opened.running(now).clocks, ...this.others.clocks(now)];
    return { ...outcome, speak: howLongText(clocks, { language: opened.language, now: () => now }) };
  }

  armSound(): void {
    const { sound } = this.#parts.devices.time;
    void sound.arm().then((state) => {
      // An alarm that was already ringing without a sound is heard now.
      if (state === 'armed' && this.#parts.ringing().length > 0) sound.ring();
      this.#parts.redraw();
    });
  }

  silence(): void {
    this.#parts.devices.time.sound.silence();
    const elsewhere = new Map<string, CaseName>();
    for (const { clock, phase, case: other } of this.#parts.ringing()) {
      if (other === undefined) this.#parts.send({ type: 'ALARM_SEEN', clock, phase });
      else elsewhere.set(other.id, other);
    }
    for (const other of elsewhere.values()) void this.#seen(other);
  }

  ring(id: string, ring: Ring): void {
    const open = this.#parts.open();
    const elsewhere = this.others.find(id, ring.rangAt);
    if (elsewhere !== undefined) return void this.#rangElsewhere(elsewhere, ring);
    // The window that writes also writes down that it rang; the tone is heard from all.
    if (open === undefined || this.#parts.keeping.writer.state() === 'elsewhere') return;
    const due = open.deadlines(ring.rangAt).find((d) => d.id === id);
    if (due === undefined) return;
    void this.#parts.keeping.keep(rangOn(open, due, ring).facts, '', open);
    this.#parts.changed();
    this.#say({ due, ring, language: open.language });
  }

  /** `code`: of a case that is not the open one. */
  #say({ due, ring, language, code }: Said): void {
    const name = code === undefined ? '' : `${code}, `;
    const said = alarmText({ ...due, lateMs: ring.late ? ring.lateMs : 0 }, language);
    void this.#parts.aloud.say(`${name}${said}`, language);
  }

  /** A screen that shows running clocks stays on. */
  #followed(): void {
    if (this.others.any) this.#parts.devices.time.wakeLock.want(true);
    this.#parts.changed();
  }

  /** Written once, whichever of several windows comes first; that one also says it. */
  async #rangElsewhere({ caseId, code, due: known }: Elsewhere, ring: Ring): Promise<void> {
    this.#parts.redraw();
    const said: Said[] = [];
    const written = await this.others.write(caseId, (open) => {
      const due = open.deadlines(ring.rangAt).find((one) => one.id === known.id);
      if (due === undefined) return [];
      said.push({ due, ring, language: open.language, code });
      return [rangOn(open, due, ring)];
    });
    // Heard at once; written as soon as its case can be read again.
    if (written === 'unread') {
      this.#owed.set(`${caseId}|${known.id}`, () => this.#rangElsewhere({ caseId, code, due: known }, ring));
      if (!this.#told.has(ring)) said.push({ due: known, ring, language: this.#parts.open()?.language ?? 'en', code });
    }
    for (const one of this.#told.has(ring) ? [] : said) this.#say(one);
    if (said.length > 0) this.#told.add(ring);
  }

  /** Once a second: what could not be written down when it rang is tried again. */
  again(): void {
    const owed = [...this.#owed.values()];
    this.#owed.clear();
    for (const write of owed) void write();
  }

  async #seen({ id, code }: CaseName): Promise<void> {
    const now = this.#parts.devices.time.clock.now();
    const wrote = await this.others.write(id, (open) =>
      open.running(now).ringing.map(({ clock, phase }) => open.session.send({ type: 'ALARM_SEEN', clock, phase })),
    );
    if (wrote !== 'done') this.#parts.tell({ trouble: wrote === 'unread' ? unread(code) : inAnother(code) });
  }
}
