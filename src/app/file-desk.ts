/** Files of the open case that go out at somebody's wish. */
import type { FilesParts } from './files.ts';
import type { FilesRequest, FilesView } from './files.types.ts';
import { fetchOwn, makeCaseFile, makeFhir, type HandoffHost, type MadeFile } from './handoff.ts';
import type { Outcome } from '../handoff/case-file.types.ts';
import type { OpenCase } from './open-case.ts';
import { writerOf } from './papers.ts';

export class FileDesk {
  readonly #parts: FilesParts;
  #busy = false;
  readonly #lines: readonly string[] = [];

  constructor(parts: FilesParts) {
    this.#parts = parts;
  }

  view(): FilesView {
    return { busy: this.#busy, lines: this.#lines };
  }

  async ask(request: FilesRequest): Promise<void> {
    switch (request.ask) {
      case 'caseFile':
        return this.#out((open, host) => makeCaseFile(open, host, request.passphrase));
      case 'fhir':
        return this.#out((open, host) => makeFhir(open, host));
      default:
        return undefined;
    }
  }

  async #host(): Promise<HandoffHost> {
    const { devices } = this.#parts;
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
    return { now: () => devices.time.clock.now(), writer: await writerOf(devices), timeZone, read: fetchOwn };
  }

  async #out(make: (open: OpenCase, host: HandoffHost) => Promise<Outcome<MadeFile>>): Promise<void> {
    const open = this.#parts.open();
    if (open === undefined) return;
    this.#working(true);
    const made = await make(open, await this.#host()).finally(() => this.#working(false));
    if (!made.ok) return this.#parts.tell({ said: '', trouble: made.text });
    const { name, bytes, type, digest } = made.value;
    this.#parts.devices.download(name, bytes, type);
    return this.#parts.tell({ said: `File made: ${name}, case digest ${digest.slice(0, 8)}…`, trouble: '' });
  }

  #working(busy: boolean): void {
    this.#busy = busy;
    this.#parts.tell(busy ? { said: 'Making the file …', trouble: '' } : {});
  }
}
