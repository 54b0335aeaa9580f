/**
 * Clocks go on and ring while the record is locked, after a reload as well. For that their moments lie in clear beside
 * the settings: the impression, the material and the phase, by the case's random name; never its code.
 */
import * as v from 'valibot';
import type { Ring } from '../time/types.ts';
import type { LockedAlarm } from './locking.types.ts';
import type { Devices } from './ports.ts';

export const ALARMS_KEY = 'alarms';

const shape = v.array(
  v.object({
    caseId: v.string(),
    due: v.string(),
    clock: v.string(),
    phase: v.picklist(['mix', 'working', 'inMouth', 'pourFrom', 'pourWithin', 'disinfect']),
    label: v.string(),
    at: v.number(),
    rang: v.optional(v.object({ at: v.number(), late: v.boolean() })),
    seen: v.optional(v.literal(true)),
  }),
);

const nameOf = ({ caseId, due }: Pick<LockedAlarm, 'caseId' | 'due'>): string => `${caseId}|${due}`;

export class LockedAlarms {
  readonly #devices: Pick<Devices, 'settings' | 'time'>;
  #list: readonly LockedAlarm[] = [];
  #written = '';

  constructor(devices: Pick<Devices, 'settings' | 'time'>) {
    this.#devices = devices;
  }

  get list(): readonly LockedAlarm[] {
    return this.#list;
  }

  async read(): Promise<void> {
    const read = await this.#devices.settings.read(ALARMS_KEY);
    const parsed = v.safeParse(shape, read.ok ? read.value : undefined);
    this.#list = parsed.success ? (parsed.output as readonly LockedAlarm[]) : [];
  }

  /** What stands to ring now; kept on the disk in the background, each time it is another. */
  note(list: readonly LockedAlarm[]): void {
    this.#list = list;
    const text = JSON.stringify(list);
    if (text === this.#written) return;
    this.#written = text;
    void this.#devices.settings.write(ALARMS_KEY, list);
  }

  /** Hands over to the alarms what has not rung. */
  attend(): void {
    const waiting = this.#list.filter((alarm) => alarm.rang === undefined);
    this.#devices.time.alarms.setDeadlines(
      waiting.map((alarm) => ({ id: nameOf(alarm), at: alarm.at, label: alarm.label })),
    );
  }

  rang(id: string, { rangAt, late }: Ring): void {
    this.note(this.#list.map((alarm) => (nameOf(alarm) === id ? { ...alarm, rang: { at: rangAt, late } } : alarm)));
  }

  seen(): void {
    this.#devices.time.sound.silence();
    this.note(this.#list.map((alarm) => (alarm.rang === undefined ? alarm : { ...alarm, seen: true })));
  }
}
