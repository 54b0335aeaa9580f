/** The record at run time: entries are written, the list of cases is read, and what the disk and other windows do is told. */
import type { Fact } from '../domain/case/facts.ts';
import type { CaseRow, ListResult, LogResult } from '../storage/types.ts';
import type { Stores } from '../stores/stores.ts';
import { localDate } from './dates.ts';
import type { CaseListRow, Safety } from './model.ts';
import type { OpenCase } from './open-case.ts';
import type { Devices } from './ports.ts';
import { keptWriter } from './papers.ts';
import { ELSEWHERE, SingleWriter } from './single-writer.ts';

export interface KeepingParts {
  readonly devices: Pick<
    Devices,
    'log' | 'download' | 'windows' | 'persistence' | 'updates' | 'settings' | 'time' | 'newId'
  >;
  readonly stores: Pick<Stores, 'ui'>;
  /** Something changed that is to be seen. */
  changed(): void;
  /** The open case has to be read from the disk again. */
  readAnew(caseId: string): void;
  /** The list of cases has been read again. */
  listed(): void;
}

/** Who comes second is told what was not taken, so that it can be done again. */
function notTaken(count: number, said: string): string {
  const entries = count === 1 ? '1 entry' : `${count} entries`;
  const what = said === '' ? '' : `: ${said}`;
  return `Another window wrote to this case first. Not kept: ${entries} made here${what}. Do it again where the case is being written.`;
}

/** The day and time are put into words when they are drawn: of thousands of rows twenty are. */
const shown = (row: CaseRow): CaseListRow => ({
  ...row,
  get at() {
    return localDate(row.lastAt);
  },
});

export class Keeping {
  readonly writer: SingleWriter;
  readonly #parts: KeepingParts;
  #rows: readonly CaseListRow[] = [];
  casesRead = false;
  #persisted: Safety['persisted'] = 'unknown';
  #asked = false;
  #turn = 0;
  /** Why something was in memory only, as it stands on screen. */
  #unsafe = '';
  #reading: Promise<unknown> = Promise.resolve();
  /** The reading that has not begun yet: whoever asks meanwhile is answered by it. */
  #next: Promise<string> | undefined;
  /** Rows written since the reading began that is under way; it may not know of them. */
  readonly #since = new Map<string, CaseRow>();

  constructor(parts: KeepingParts) {
    this.#parts = parts;
    this.writer = new SingleWriter({
      windows: parts.devices.windows,
      changed: () => this.#writerChanged(),
      readAnew: (caseId) => parts.readAnew(caseId),
      listAnew: () => void this.refresh(),
    });
    parts.devices.log.subscribe(() => this.#safeAgain());
  }

  get cases(): readonly CaseListRow[] {
    return this.#rows;
  }

  safety(): Safety {
    const status = this.#parts.devices.log.status();
    const oneCopy = status.state === 'kept' ? status.oneCopy : undefined;
    return { persisted: this.#persisted, ...(oneCopy === undefined ? {} : { oneCopy }) };
  }

  async start(): Promise<void> {
    if ((await this.#parts.devices.persistence?.persisted()) === true) this.#persisted = 'yes';
    const recovered = await this.refresh();
    if (recovered !== '') this.#say({ said: recovered });
  }

  /** Everything is on the disk again: what kept it from there is not said any longer. */
  #safeAgain(): void {
    const { ui } = this.#parts.stores;
    if (this.#unsafe === '' || this.#parts.devices.log.status().state !== 'kept') return;
    if (ui.getState().trouble === this.#unsafe) ui.setState({ trouble: '' });
    this.#unsafe = '';
  }

  /** Knows of no case any more, until the list is read again. */
  letGo(): void {
    this.#turn += 1;
    this.#rows = [];
    this.#reading = Promise.resolve();
    this.#next = undefined;
    this.#since.clear();
    this.casesRead = false;
    this.writer.close();
  }

  /** Reads the list again, one reading after the other. Gives what had to be mended on the disk, in a sentence. */
  refresh(): Promise<string> {
    if (this.#next !== undefined) return this.#next;
    const turn = this.#turn;
    const next = this.#reading.then(() => this.#read(turn));
    this.#next = next;
    this.#reading = next;
    return next;
  }

  async #read(turn: number): Promise<string> {
    if (turn !== this.#turn) return '';
    this.#next = undefined;
    this.#since.clear();
    const listed = await this.#parts.devices.log.cases();
    if (turn !== this.#turn) return '';
    this.casesRead = true;
    this.#list(listed);
    this.#say(listed.ok ? {} : { trouble: listed.why });
    this.#parts.listed();
    return (listed.ok ? listed.recovered : undefined) ?? '';
  }

  #list(listed: ListResult): void {
    if (!listed.ok) return;
    this.#rows = listed.rows.map(shown);
    for (const row of this.#since.values()) this.#put(row);
  }

  /** One row is new: the others are what they were, and thousands of them are not read again for it. */
  #put(row: CaseRow): void {
    const others = this.#rows.filter(({ id }) => id !== row.id);
    const at = others.findIndex(({ lastAt }) => (lastAt ?? 0) <= row.lastAt);
    this.#rows = others.toSpliced(at === -1 ? others.length : at, 0, shown(row));
  }

  /** True when this window may write the open case; otherwise it is said why not. */
  mayWrite(): boolean {
    if (this.writer.state() === 'here') return true;
    this.#say({ trouble: ELSEWHERE });
    return false;
  }

  /** Durable first; only then does the screen say it is kept. */
  async keep(facts: readonly Fact[], said: string, open: OpenCase | undefined): Promise<boolean> {
    if (facts.length === 0 || open === undefined) return true;
    const { log } = this.#parts.devices;
    const row = open.row();
    const turn = this.#turn;
    const written = await log.append(facts, row);
    if (written.ok) void this.#askToPersist();
    if (!written.ok && written.reason === 'memory' && written.cause === 'anotherWriter') {
      this.#second(open.id, said);
      void this.refresh();
      return false;
    }
    if (written.ok || written.reason === 'memory') this.#wrote(row, turn);
    this.#tell(written, said);
    return written.ok;
  }

  #wrote(row: CaseRow, turn: number): void {
    if (turn !== this.#turn) return;
    this.#since.set(row.id, row);
    this.#put(row);
    this.#parts.listed();
  }

  saveFile(open: OpenCase | undefined): void {
    if (open === undefined) return;
    const { devices } = this.#parts;
    const { log, download } = devices;
    const exported = keptWriter(devices).then((writer) => log.exportFile(open.id, writer));
    void exported.then((file) => {
      download(file.name, file.text);
      const whole = file.complete ? '' : ` ${file.why}`;
      this.#say({ said: `File saved: ${file.facts} entries.${whole}` });
    });
  }

  /** Reloads the page, or says why not now. */
  async takeUpdate(ownCase: string): Promise<void> {
    const why = (await this.#parts.devices.updates?.take(ownCase)) ?? '';
    if (why !== '') this.#say({ trouble: why });
  }

  #writerChanged(): void {
    if (this.#parts.stores.ui.getState().trouble === ELSEWHERE) this.#say({ trouble: '' });
    else this.#parts.changed();
  }

  #tell(written: LogResult, said: string): void {
    if (said !== '') this.#say({ said: written.ok ? said : `In memory only: ${said}` });
    const trouble = written.ok ? written.recovered : written.why;
    if (!written.ok && written.reason === 'memory') this.#unsafe = written.why;
    this.#say(trouble === undefined ? {} : { trouble });
  }

  #second(caseId: string, said: string): void {
    const { log } = this.#parts.devices;
    const count = log.takeBack(caseId).length;
    if (count > 0) this.#say({ said: '', trouble: notTaken(count, said) });
    this.#parts.readAnew(caseId);
  }

  /** Once a session, right after something was kept that is worth keeping: browsers weigh when they are asked. */
  async #askToPersist(): Promise<void> {
    const { persistence } = this.#parts.devices;
    if (persistence === undefined || this.#asked || this.#persisted === 'yes') return;
    this.#asked = true;
    this.#persisted = (await persistence.persist()) ? 'yes' : 'no';
    this.#parts.changed();
  }

  #say(change: { said?: string; trouble?: string }): void {
    this.#parts.stores.ui.setState(change);
    this.#parts.changed();
  }
}
