/** The practice's own settings and protocols: kept beside the preferences, checked when read, never half taken. */
import { problemText } from '../domain/case/fileFormat.ts';
import { readPractice, readPracticeFile, practiceFileText } from '../domain/case/practiceFile.ts';
import { readProtocolFile, readProtocolShape, protocolFileText } from '../domain/case/protocolFile.ts';
import { newVersion, type NewVersion } from '../domain/protocol/edit.ts';
import { clocksWithout } from '../domain/protocol/own.ts';
import { defaultPractice } from '../domain/protocol/practice.ts';
import { readingDefs } from '../domain/protocol/readings.ts';
import type { Practice, VisitProtocol } from '../domain/protocol/types.ts';
import { PRACTICE_KEY } from './people.ts';
import type { Devices } from './ports.ts';
import { latestProtocol, visit1 } from './protocols.ts';

export const PROTOCOLS_KEY = 'protocols';

export const VISITS = [1, 2, 3, 4, 5] as const;

/** Kept, or a sentence saying why it is not. */
export type Kept = { readonly ok: true } | { readonly ok: false; readonly text: string };

const kept: Kept = { ok: true };
const refused = (text: string): Kept => ({ ok: false, text });

export class PracticeStore {
  readonly #settings: Devices['settings'];
  #practice: Practice = defaultPractice;
  #protocols: readonly VisitProtocol[] = [];

  constructor(settings: Devices['settings']) {
    this.#settings = settings;
  }

  get practice(): Practice {
    return this.#practice;
  }

  /** Every version the practice has ever saved, oldest first. */
  get protocols(): readonly VisitProtocol[] {
    return this.#protocols;
  }

  /** Empty when all is well; otherwise what could not be used, in a sentence. Nothing stored is changed. */
  async read(): Promise<string> {
    const practice = await this.#settings.read(PRACTICE_KEY);
    const protocols = await this.#settings.read(PROTOCOLS_KEY);
    if (!practice.ok) return practice.why;
    if (!protocols.ok) return protocols.why;
    return [this.#takePractice(practice.value), this.#takeProtocols(protocols.value)].filter((t) => t !== '').join(' ');
  }

  #takePractice(stored: unknown): string {
    if (stored === undefined) return '';
    const read = readPractice(stored);
    if (!read.ok)
      return `The settings of the practice cannot be used: ${problemText(read)} The starting ones are in force.`;
    this.#practice = read.value;
    return '';
  }

  #takeProtocols(stored: unknown): string {
    if (stored === undefined) return '';
    const read = (Array.isArray(stored) ? (stored as unknown[]) : [stored]).map((one) => readProtocolShape(one));
    this.#protocols = read.flatMap((one) => (one.ok ? [one.value] : []));
    const bad = read.find((one) => !one.ok);
    return bad === undefined || bad.ok ? '' : `A protocol of the practice cannot be used: ${problemText(bad)}`;
  }

  /** Cases opened from now on work with it; a case keeps the settings it was opened under. */
  async savePractice(practice: Practice): Promise<Kept> {
    const checked = readPractice(practice);
    if (!checked.ok) return refused(problemText(checked));
    const newest = await Promise.all(VISITS.map((visit) => this.latest(visit)));
    const bare = clocksWithout(newest, checked.value)[0];
    if (bare !== undefined) return refused(`Not saved. ${bare}`);
    const written = await this.#settings.write(PRACTICE_KEY, checked.value);
    if (!written.ok) return refused(written.why);
    this.#practice = checked.value;
    return kept;
  }

  /** The newest version of a visit, as it will be used for the next one opened. */
  async latest(visit: number): Promise<VisitProtocol> {
    return (await latestProtocol(visit, this.#protocols)) ?? visit1;
  }

  /** What a draft would become, without keeping it. */
  proposed(before: VisitProtocol, draft: VisitProtocol): NewVersion {
    return newVersion({ before, draft, kept: this.#protocols, readings: readingDefs, practice: this.#practice });
  }

  /** Keeps a draft as the next version. Versions before stay, for the visits that run under them. */
  async saveProtocol(before: VisitProtocol, draft: VisitProtocol): Promise<Kept> {
    const { protocol, problems } = this.proposed(before, draft);
    const problem = problems[0];
    if (problem !== undefined) return refused(problemText(problem));
    const all = [...this.#protocols, protocol];
    const written = await this.#settings.write(PROTOCOLS_KEY, all);
    if (!written.ok) return refused(written.why);
    this.#protocols = all;
    return kept;
  }

  /** Versions from elsewhere beside those that are here; one that is here already is never replaced. */
  async addVersions(versions: readonly VisitProtocol[]): Promise<Kept> {
    const name = ({ id, version }: VisitProtocol) => `${id}@${version}`;
    const known = new Set(this.#protocols.map(name));
    const added = versions.filter((one) => !known.has(name(one)));
    if (added.length === 0) return kept;
    const all = [...this.#protocols, ...added].toSorted((a, b) => a.version - b.version);
    const written = await this.#settings.write(PROTOCOLS_KEY, all);
    if (!written.ok) return refused(written.why);
    this.#protocols = all;
    return kept;
  }

  practiceFile(): string {
    return practiceFileText(this.#practice);
  }

  protocolFile(protocol: VisitProtocol): string {
    return protocolFileText(protocol);
  }

  async importPractice(text: string): Promise<Kept> {
    const read = readPracticeFile(text);
    return read.ok ? this.savePractice(read.value) : refused(`The file was not taken: ${problemText(read)}`);
  }

  /** A protocol from a file becomes the next version of its visit. */
  async importProtocol(text: string): Promise<Kept> {
    const read = readProtocolFile(text, this.#practice);
    if (!read.ok) return refused(`The file was not taken: ${problemText(read)}`);
    return this.saveProtocol(await this.latest(read.value.visit), read.value);
  }
}
