/**
 * Clocks go on and ring while the record is locked, after a reload as well. For that their moments lie in clear beside
 * the settings: the impression, the material and the phase, by the case's random name; never its code.
 */
import type { Ring } from '../time/types.ts';
import type { LockedAlarm } from './locking.types.ts';
import type { Devices } from './ports.ts';

export const ALARMS_KEY = 'alarms';

const PHASES: readonly unknown[] = ['mix', 'working', 'inMouth', 'pourFrom', 'pourWithin', 'disinfect'];

function isRang(raw: unknown): boolean {
  if (raw === undefined) return true;
  if (typeof raw !== 'object' || raw === null) return false;
  const { at, late } = raw as Record<string, unknown>;
  return Number.isFinite(at) && typeof late === 'boolean';
}

function isAlarm(raw: unknown): raw is LockedAlarm {
  if (typeof raw !== 'object' || raw === null) return false;
  const { caseId, due, clock, label, phase, at, rang } = raw as Record<string, unknown>;
  const texts = [caseId, due, clock, label].every((text) => typeof text === 'string');
  return texts && PHASES.includes(phase) && Number.isFinite(at) && isRang(rang);
}

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
    const stored: readonly unknown[] = read.ok && Array.isArray(read.value) ? read.value : [];
    this.#list = stored.filter(isAlarm);
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
