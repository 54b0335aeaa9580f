/** The record at run time: entries are written, the list of cases is read, and what the disk and other windows do is told. */
import type { Fact } from '../domain/case/facts.ts';
import type { LogResult } from '../storage/types.ts';
import type { Stores } from '../stores/stores.ts';
import { localDate } from './dates.ts';
import type { CaseListRow, Safety } from './model.ts';
import type { OpenCase } from './open-case.ts';
import type { Devices } from './ports.ts';
import { ELSEWHERE, SingleWriter } from './single-writer.ts';

export interface KeepingParts {
  readonly devices: Pick<Devices, 'log' | 'download' | 'windows' | 'persistence' | 'updates'>;
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

export class Keeping {
  readonly writer: SingleWriter;
  readonly #parts: KeepingParts;
  #rows: readonly CaseListRow[] = [];
  casesRead = false;
  #persisted: Safety['persisted'] = 'unknown';
  #asked = false;
  #turn = 0;

  constructor(parts: KeepingParts) {
    this.#parts = parts;
    this.writer = new SingleWriter({
      windows: parts.devices.windows,
      changed: () => this.#writerChanged(),
      readAnew: (caseId) => parts.readAnew(caseId),
      listAnew: () => void this.refresh(),
    });
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

  /** Knows of no case any more, until the list is read again. */
  letGo(): void {
    this.#turn += 1;
    this.#rows = [];
    this.casesRead = false;
    this.writer.close();
  }

  /** Gives what had to be mended on the disk, in a sentence. */
  async refresh(): Promise<string> {
    const turn = this.#turn;
    const listed = await this.#parts.devices.log.cases();
    if (turn !== this.#turn) return '';
    this.casesRead = true;
    if (listed.ok) this.#rows = listed.rows.map((row) => ({ ...row, at: localDate(row.lastAt) }));
    this.#say(listed.ok ? {} : { trouble: listed.why });
    this.#parts.listed();
    return (listed.ok ? listed.recovered : undefined) ?? '';
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
    const written = await log.append(facts, open.row());
    if (written.ok) void this.#askToPersist();
    if (!written.ok && written.reason === 'memory' && written.cause === 'anotherWriter') this.#second(open.id, said);
    else this.#tell(written, said);
    void this.refresh();
    return written.ok;
  }

  saveFile(open: OpenCase | undefined): void {
    if (open === undefined) return;
    const { log, download } = this.#parts.devices;
    void log.exportFile(open.id).then((file) => {
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
    this.#say(written.ok ? {} : { trouble: written.why });
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
