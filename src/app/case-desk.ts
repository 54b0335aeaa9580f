/** The open case: how one is opened, begun, read again from the disk, and what the screen turns to then. */
import type { Stores } from '../stores/stores.ts';
import type { Keeping } from './keeping.ts';
import { whyNotBegun, type KitHost, type OpenCase, type Opened } from './open-case.ts';
import type { OwnThings } from './own-things.ts';
import type { Devices } from './ports.ts';
import { wordsMissing, type Preferences } from './preferences.ts';
import type * as visitKit from './visit-kit.ts';

type Kit = typeof visitKit;

export interface CaseDeskParts {
  readonly devices: Pick<Devices, 'log' | 'time' | 'updates' | 'newId'>;
  readonly stores: Stores;
  readonly keeping: Keeping;
  readonly own: OwnThings;
  readonly preferences: Preferences;
  /** What runs a visit has come: the ear comes with it. */
  arrived(kit: Kit): void;
  /** The open case is another, or has new facts. */
  changed(): void;
  redraw(): void;
}

export class CaseDesk {
  readonly #parts: CaseDeskParts;
  #open: OpenCase | undefined;
  /** What was being opened when everything was let go of is not opened. */
  #turn = 0;

  constructor(parts: CaseDeskParts) {
    this.#parts = parts;
  }

  get open(): OpenCase | undefined {
    return this.#open;
  }

  async fromLog(id: string): Promise<Opened> {
    return (await this.#kit()).openFromLog(id, this.#parts.devices.log, await this.#parts.own.host());
  }

  /** A session on facts that may not be on the disk yet. */
  async fromFacts(id: string, facts: readonly unknown[]): Promise<Opened> {
    return (await this.#kit()).openStored(id, facts, await this.#parts.own.host());
  }

  /** The right to write comes first: what is read after it cannot be overtaken. */
  async load(id: string): Promise<void> {
    const turn = this.#turn;
    await this.#parts.keeping.writer.open(id);
    const opened = await this.fromLog(id);
    if (turn === this.#turn) this.#adopt(opened);
  }

  /** No case is open any more. */
  letGo(): void {
    this.#turn += 1;
    this.#open = undefined;
    this.#parts.devices.updates?.setIdle(true);
  }

  /** Another window has written, or may have: the case as it is on the disk now, with the screen where it was. */
  async readAnew(id: string): Promise<void> {
    if (this.#open?.id !== id) return;
    const opened = await this.fromLog(id);
    if (!opened.ok || this.#open?.id !== id) return;
    this.#open = opened.open;
    this.#parts.changed();
  }

  begin(input: { code: string; clinician: string; assistant: string; demo: boolean }): void {
    const { devices, preferences } = this.#parts;
    const why = whyNotBegun(input);
    if (why !== '') return this.#say({ trouble: why });
    const { language } = preferences.now;
    const made = { ...input, code: input.code.trim(), id: devices.newId(), language };
    void this.#begin((kit, host) => kit.openNew(made, host));
  }

  openVisit(input: { visit: number; clinician: string; assistant: string }): void {
    const open = this.#open;
    const { language } = this.#parts.preferences.now;
    if (open !== undefined && this.#parts.keeping.mayWrite())
      void this.#begin((kit, host) => kit.openVisit(open, { ...input, language }, host));
  }

  async #begin(begun: (kit: Kit, host: KitHost) => ReturnType<Kit['openNew']>): Promise<void> {
    const { keeping, own } = this.#parts;
    const turn = this.#turn;
    const { opened, facts } = await begun(await this.#kit(), await own.host());
    if (turn !== this.#turn) return;
    if (opened.ok) await keeping.writer.open(opened.open.id);
    this.#adopt(opened);
    if (opened.ok) await keeping.keep(facts, '', this.#open);
  }

  async #kit(): Promise<Kit> {
    const kit = await import('./visit-kit.ts');
    this.#parts.arrived(kit);
    return kit;
  }

  #adopt(opened: Opened): void {
    const { devices, stores, changed } = this.#parts;
    if (!opened.ok) return this.#say({ trouble: opened.text });
    this.#open = opened.open;
    devices.updates?.setIdle(false);
    devices.time.wakeLock.want(true);
    const closed = opened.open.session.view().closed !== undefined;
    const place = this.#parts.preferences.now.standsAt === 'lab' ? 'bench' : closed ? 'summary' : 'visit';
    const said = opened.recovered ?? '';
    stores.ui.setState({ place, said, trouble: '', keypadOpen: false });
    if (!opened.open.hasWords) stores.ui.setState({ trouble: wordsMissing(opened.open.language) });
    return changed();
  }

  #say(change: { trouble: string }): void {
    this.#parts.stores.ui.setState(change);
    this.#parts.redraw();
  }
}
