/** Files of the open case that go out at somebody's wish, case files that come in, and what the bench writes. */
import { benchFact } from './bench-desk.ts';
import type { FilesParts } from './files.ts';
import type { BenchDeed, CaseCode, FilesRequest, FilesView } from './files.types.ts';
import { caseCode, fetchOwn, makeCaseFile, makeFhir, makePdf, type HandoffHost, type MadeFile } from './handoff.ts';
import type { Outcome } from '../handoff/case-file.types.ts';
import type { OpenCase } from './open-case.ts';
import { writerOf } from './papers.ts';
import { refusalText, takeIn } from './take-in.ts';

/** The case a code was made of: it holds only while no entry came behind it. */
interface CodeOf extends CaseCode {
  readonly id: string;
  readonly entries: number;
}

const entriesOf = ({ session }: OpenCase): number => session.view().log.facts.length;

export class FileDesk {
  readonly #parts: FilesParts;
  #lines: readonly string[] = [];
  #refused = false;
  #locked: { readonly name: string; readonly bytes: Uint8Array } | undefined;
  #code: CodeOf | undefined;
  #coding = false;

  constructor(parts: FilesParts) {
    this.#parts = parts;
  }

  view(): Omit<FilesView, 'busy'> {
    const code = this.#codeNow();
    return {
      lines: this.#lines,
      ...(this.#refused ? { refused: true as const } : {}),
      ...(this.#locked === undefined ? {} : { locked: { name: this.#locked.name } }),
      ...(code === undefined ? {} : { digest: { value: code.value, path: code.path, size: code.size } }),
    };
  }

  ask(request: FilesRequest): Promise<void> {
    switch (request.ask) {
      case 'caseFile':
        return this.#out((open, host) => makeCaseFile(open, host, request.passphrase));
      case 'fhir':
        return this.#out(withPdf);
      case 'digest':
        return this.#makeCode();
      case 'takeIn':
        return this.#in(request.name, request.bytes);
      case 'open':
        return this.#unlock(request.passphrase);
      case 'bench':
        return this.#write(request.deed, request.by);
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
    this.#parts.tell({ said: 'Making the file …', trouble: '' });
    const made = await make(open, await this.#host());
    if (!made.ok) return this.#parts.tell({ said: '', trouble: refusalText(made) });
    const { name, bytes, type, digest } = made.value;
    this.#parts.devices.download(name, bytes, type);
    return this.#parts.tell({ said: `File made: ${name}, case digest ${digest.slice(0, 8)}…`, trouble: '' });
  }

  async #in(name: string, bytes: Uint8Array, passphrase?: string): Promise<void> {
    this.#lines = [];
    this.#refused = false;
    this.#parts.tell({ said: 'Reading the file …', trouble: '' });
    const taken = await takeIn(bytes, this.#parts, passphrase);
    this.#locked = !taken.ok && taken.locked ? { name, bytes } : undefined;
    if (!taken.ok) {
      const asked = taken.locked && passphrase === undefined;
      this.#refused = !asked;
      this.#lines = asked ? [] : [taken.text];
      return this.#parts.tell({ said: '', trouble: asked ? '' : taken.text });
    }
    this.#lines = taken.lines;
    this.#parts.tell({ said: taken.lines[0] ?? '', trouble: '' });
    return this.#parts.took(taken.id);
  }

  async #unlock(passphrase: string): Promise<void> {
    const waiting = this.#locked;
    if (waiting === undefined) return;
    if (passphrase !== '') return this.#in(waiting.name, waiting.bytes, passphrase);
    this.#locked = undefined;
    this.#refused = false;
    this.#lines = [];
    this.#parts.tell({ said: 'The sealed file was left alone.', trouble: '' });
  }

  /** Done once, or again while entries come in between. */
  async #makeCode(): Promise<void> {
    if (this.#coding) return;
    this.#coding = true;
    try {
      for (let open = this.#parts.open(); open !== undefined && this.#codeNow() === undefined;) {
        const entries = entriesOf(open);
        // One after the other: the next is made only when an entry came meanwhile.
        // oxlint-disable-next-line no-await-in-loop
        const made = await caseCode(open, await this.#host());
        if (!made.ok) break;
        this.#code = { ...made.value, id: open.id, entries };
        open = this.#parts.open();
      }
    } finally {
      this.#coding = false;
    }
    this.#parts.tell({});
  }

  #codeNow(): CodeOf | undefined {
    const open = this.#parts.open();
    const code = this.#code;
    return open !== undefined && code?.id === open.id && code.entries === entriesOf(open) ? code : undefined;
  }

  async #write(deed: BenchDeed, by: string): Promise<void> {
    const { keeping, devices, tell, changed } = this.#parts;
    const open = this.#parts.open();
    const bench = open?.parts(devices.time.clock.now()).summary?.bench;
    if (open === undefined || bench === undefined || !keeping.mayWrite()) return;
    const written = benchFact(deed, { open, bench, by });
    if (!written.ok) return tell({ trouble: written.text });
    const { facts } = open.session.record(written.body);
    tell({ trouble: '' });
    changed();
    await keeping.keep(facts, written.said, open);
  }
}

/** The bundle carries the printed sheet; where that cannot be made, there is no bundle that claims to be whole. */
async function withPdf(open: OpenCase, host: HandoffHost): Promise<Outcome<MadeFile>> {
  const pdf = await makePdf(open, 'A4', host);
  return pdf.ok ? makeFhir(open, host, pdf.value.bytes) : pdf;
}
