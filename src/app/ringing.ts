/** Clocks that ring: what is written of it, what is said, and the sound that has to be armed by a touch first. */
import type { VisitEvent } from '../../machines/visit.types.ts';
import type { Ring } from '../time/types.ts';
import type { Aloud } from './aloud.ts';
import type { Keeping } from './keeping.ts';
import type { AppModel } from './model.ts';
import type { OpenCase, Opened } from './open-case.ts';
import type { Devices } from './ports.ts';
import { caseOnTheClock } from './under-way.ts';

export interface RingingParts {
  readonly devices: Pick<Devices, 'time'>;
  readonly aloud: Aloud;
  readonly keeping: Keeping;
  open(): OpenCase | undefined;
  ringing(): AppModel['ringing'];
  /** The open case has new facts. */
  changed(): void;
  redraw(): void;
  send(event: VisitEvent): void;
  fromLog(id: string): Promise<Opened>;
  /** Opens a case behind the list of cases. */
  load(id: string): Promise<void>;
}

export class Ringing {
  readonly #parts: RingingParts;

  constructor(parts: RingingParts) {
    this.#parts = parts;
  }

  /** After a reload: the case whose clocks run is followed before anybody opens it. */
  async resume(): Promise<void> {
    const { keeping, devices, fromLog, open, load } = this.#parts;
    const id = await caseOnTheClock(keeping.cases, fromLog, devices.time.clock.now());
    if (id !== undefined && open() === undefined) await load(id);
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
    for (const { clock, phase } of this.#parts.ringing()) this.#parts.send({ type: 'ALARM_SEEN', clock, phase });
  }

  ring(id: string, ring: Ring): void {
    const { keeping, aloud } = this.#parts;
    const open = this.#parts.open();
    // The window that writes also writes down that it rang; the tone is heard from all.
    if (open === undefined || keeping.writer.state() === 'elsewhere') return;
    const due = open.deadlines(ring.rangAt).find((d) => d.id === id);
    if (due === undefined) return;
    const { clock, phase } = due;
    const outcome = open.session.record({ kind: 'rang', clock, phase, dueAt: ring.dueAt, late: ring.late });
    void keeping.keep(outcome.facts, '', open);
    this.#parts.changed();
    const late = ring.late ? `, rang ${Math.round(ring.lateMs / 1000)} seconds late` : '';
    void aloud.say(`${ring.label}${late}`, 'en');
  }
}
