/** The door to the practice's own settings and visits: fetched and read when they are first wanted. */
import type { Stores } from '../stores/stores.ts';
import type { Desk, Done } from './desk.ts';
import type { AppModel } from './model.ts';
import type { KitHost } from './open-case.ts';
import type { Person, Practice, VisitProtocol } from '../domain/protocol/types.ts';
import type { OwnRequest } from './own.types.ts';
import { peopleIn, PRACTICE_KEY } from './people.ts';
import type { Devices } from './ports.ts';
import type { PracticeStore } from './practice-store.ts';

export interface OwnParts {
  readonly devices: Pick<Devices, 'settings' | 'download' | 'time'>;
  readonly stores: Pick<Stores, 'ui'>;
  /** Something changed that is to be seen. */
  changed(): void;
}

export class OwnThings {
  readonly #parts: OwnParts;
  #store: Promise<PracticeStore> | undefined;
  #coming: Promise<Desk> | undefined;
  #desk: Desk | undefined;
  #people: readonly Person[] | undefined;

  constructor(parts: OwnParts) {
    this.#parts = parts;
  }

  /** Comes with what runs a visit. */
  #stored(): Promise<PracticeStore> {
    this.#store ??= this.#read();
    return this.#store;
  }

  async #read(): Promise<PracticeStore> {
    const kit = await import('./visit-kit.ts');
    const store = new kit.PracticeStore(this.#parts.devices.settings);
    const trouble = await store.read();
    if (trouble !== '') this.#parts.stores.ui.setState({ trouble });
    return store;
  }

  #fetch(): Promise<Desk> {
    this.#coming ??= this.#sitDown();
    return this.#coming;
  }

  async #sitDown(): Promise<Desk> {
    const { devices } = this.#parts;
    const [store, { Desk: At }] = await Promise.all([this.#stored(), import('./desk.ts')]);
    const desk = new At({ store, download: (name, text) => devices.download(name, text) });
    await desk.sitDown();
    this.#desk = desk;
    return desk;
  }

  /** What a visit is opened with: the clock, and the practice as it is now. */
  async host(): Promise<KitHost> {
    const store = await this.#stored();
    const { clock } = this.#parts.devices.time;
    const { settings } = this.#parts.devices;
    return { now: () => clock.now(), practice: store.practice, protocols: store.protocols, waiting: settings };
  }

  /** The practice as it is now, and all its versions of visits. */
  async now(): Promise<Pick<PracticeStore, 'practice' | 'protocols'>> {
    const { practice, protocols } = await this.#stored();
    return { practice, protocols };
  }

  /** From a backup: versions of visits beside those that are here, then the practice. Empty, or why not, in a sentence. */
  async takeBack(practice: Practice | undefined, protocols: readonly VisitProtocol[]): Promise<string> {
    const store = await this.#stored();
    const added = await store.addVersions(protocols);
    const kept = practice === undefined ? added : await store.savePractice(practice);
    await this.#desk?.refresh();
    await this.#readPeople();
    return added.ok ? (kept.ok ? '' : kept.text) : added.text;
  }

  /** For the two screens that show it; elsewhere only who may be offered. */
  parts(place: AppModel['place']): Partial<AppModel> {
    if (place !== 'practice' && place !== 'protocol') return { people: this.#peopleNow() };
    if (this.#desk === undefined) {
      void this.#fetch().then(() => this.#parts.changed());
      return {};
    }
    return { own: this.#desk.view() };
  }

  /** The list of people alone is wanted long before the rest, and is read by itself. */
  #peopleNow(): readonly Person[] {
    if (this.#people === undefined) {
      this.#people = [];
      void this.#readPeople();
    }
    return this.#people;
  }

  async #readPeople(): Promise<void> {
    const stored = await this.#parts.devices.settings.read(PRACTICE_KEY);
    this.#people = peopleIn(stored.ok ? stored.value : undefined);
    this.#parts.changed();
  }

  ask(request: OwnRequest): void {
    void this.#fetch()
      .then((desk) => desk.ask(request))
      .then((done: Done) => {
        this.#parts.stores.ui.setState({ ...done, ...(request.ask === 'edit' ? { place: 'protocol' } : {}) });
        return this.#readPeople();
      });
  }
}
