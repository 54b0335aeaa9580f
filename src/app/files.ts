/** The door for files that come in and go out: what makes and reads them is fetched when the first one is wanted. */
import type { Fact } from '../domain/case/facts.ts';
import type { FileDesk } from './file-desk.ts';
import type { FilesRequest, FilesView } from './files.types.ts';
import type { Keeping } from './keeping.ts';
import type { AppModel } from './model.ts';
import type { OpenCase, Opened } from './open-case.ts';
import type { Devices } from './ports.ts';

export interface FilesParts {
  readonly devices: Pick<Devices, 'settings' | 'download' | 'time' | 'newId' | 'log'>;
  readonly keeping: Keeping;
  open(): OpenCase | undefined;
  /** Facts of a case, as a session that may run: its row in the list comes from it. */
  opened(id: string, facts: readonly Fact[]): Promise<Opened>;
  /** The case was written to behind the open session: it is read again if it is the open one. */
  readAnew(id: string): Promise<void>;
  /** A case file was taken in. */
  took(id: string): Promise<void>;
  /** The open case has new facts. */
  changed(): void;
  /** What was last refused, in words. */
  trouble(): string;
  /** Says it on the screen and draws again. */
  tell(said: Partial<Pick<AppModel, 'said' | 'trouble' | 'place'>>): void;
}

const NOTHING: FilesView = { busy: false, lines: [] };

export class Files {
  readonly #parts: FilesParts;
  #coming: Promise<FileDesk> | undefined;
  #desk: FileDesk | undefined;
  #underWay = 0;

  constructor(parts: FilesParts) {
    this.#parts = parts;
  }

  view(): FilesView {
    return { ...(this.#desk?.view() ?? NOTHING), busy: this.#underWay > 0 };
  }

  /** What was read or made is let go of. */
  letGo(): void {
    this.#coming = undefined;
    this.#desk = undefined;
  }

  ask(request: FilesRequest): void {
    this.#coming ??= this.#fetch();
    this.#underWay += 1;
    this.#parts.tell({});
    void this.#coming
      .then((desk) => desk.ask(request))
      .catch(() => this.#parts.tell({ said: '', trouble: 'That did not work. Nothing of the case was changed.' }))
      .finally(() => {
        this.#underWay -= 1;
        this.#parts.tell({});
      });
  }

  async #fetch(): Promise<FileDesk> {
    const { FileDesk: Desk } = await import('./file-desk.ts');
    this.#desk = new Desk(this.#parts);
    return this.#desk;
  }
}
