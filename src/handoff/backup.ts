/** Making and reading a backup. Nothing here throws; what cannot be read is a fault with its place and a sentence. */
import * as v from 'valibot';
import type { Fact } from '../domain/case/facts.ts';
import { MOST_BACKUP_BYTES, MOST_FILE_BYTES } from '../domain/case/fileSize.ts';
import { readJson } from '../domain/case/plainJson.ts';
import type { BackupHead, BackupSettings, LeftCase, ReadBackup } from './backup.types.ts';
import { readCaseText, refuse, toCaseFile } from './case-file.ts';
import type { CaseFile, Outcome, Refused } from './case-file.types.ts';
import { canonical, caseText, sha256 } from './chain.ts';
import { WRITER } from './origin.ts';

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/));
/** More cases than a practice sees in a lifetime; our choice. */
const MOST_CASES = 100_000;

const headSchema = v.strictObject({
  format: v.literal('rimwise-backup'),
  v: v.literal(1),
  at: v.pipe(v.number(), v.minValue(0), v.maxValue(8.64e15)),
  writer: v.pipe(v.string(), v.regex(WRITER)),
  cases: v.pipe(v.array(v.strictObject({ id, digest: hash })), v.maxLength(MOST_CASES)),
  left: v.pipe(v.array(v.strictObject({ id, code: v.pipe(v.string(), v.maxLength(4000)) })), v.maxLength(MOST_CASES)),
  settings: v.strictObject({
    preferences: v.exactOptional(v.unknown()),
    practice: v.exactOptional(v.unknown()),
    protocols: v.exactOptional(v.unknown()),
  }),
  digest: hash,
});

export interface BackupInput {
  readonly at: number;
  readonly writer: string;
  readonly settings: BackupSettings;
}

/** Takes cases one after the other, so that a long list need not lie in memory twice. */
export class BackupMaker {
  readonly #input: BackupInput;
  readonly #cases: { id: string; digest: string }[] = [];
  readonly #left: LeftCase[] = [];
  readonly #lines: string[] = [];

  constructor(input: BackupInput) {
    this.#input = input;
  }

  /** Refused as toCaseFile does; the case is then to be named by `leave`. */
  async add(facts: readonly Fact[]): Promise<Outcome<CaseFile>> {
    const made = await toCaseFile(facts, this.#input.writer);
    if (!made.ok) return made;
    this.#cases.push({ id: made.value.caseId, digest: made.value.digest });
    this.#lines.push(caseText(made.value));
    return made;
  }

  leave(left: LeftCase): void {
    this.#left.push(left);
  }

  /** The whole file. Refuses `malformed` for settings that JSON cannot say. */
  async text(): Promise<Outcome<string>> {
    const { at, writer, settings } = this.#input;
    const open = {
      format: 'rimwise-backup',
      v: 1,
      at,
      writer,
      cases: this.#cases,
      left: this.#left,
      settings,
    } as const;
    try {
      const head: BackupHead = { ...open, digest: await sha256(canonical(open)) };
      return { ok: true, value: `${canonical(head)}\n${this.#lines.join('')}` };
    } catch {
      return refuse('malformed', 'settings', 'The settings hold something that cannot be written to a file.');
    }
  }
}

const place = (line: number) => `line ${line}`;

function headFault(where: string, text: string): Refused {
  return refuse('malformed', where === '' ? place(1) : `${place(1)}, ${where}`, text);
}

async function readHead(line: string): Promise<Outcome<BackupHead>> {
  const json = readJson(line, MOST_FILE_BYTES);
  if (!json.ok) return headFault(json.path, `The head of the backup cannot be read: ${json.text}`);
  const parsed = v.safeParse(headSchema, json.value, { abortEarly: true });
  if (!parsed.success) {
    const issue = parsed.issues[0];
    return headFault(v.getDotPath(issue) ?? '', `The head of the backup is damaged: ${issue.message}`);
  }
  const { digest, ...open } = parsed.output;
  if ((await sha256(canonical(open))) === digest) return { ok: true, value: parsed.output };
  return refuse('changed', place(1), 'The head of the backup was changed.');
}

/** What kind of file a text says it is, by its first line; '' when it says nothing. */
function formatOf(first: string): { readonly format: unknown; readonly v: unknown } {
  const json = readJson(first, MOST_FILE_BYTES);
  const head = json.ok && typeof json.value === 'object' && json.value !== null ? json.value : {};
  const { format, v: version } = head as { format?: unknown; v?: unknown };
  return { format, v: version };
}

/** A text that is no backup at all, as opposed to a damaged one. */
function foreign(text: string, first: string): Refused | undefined {
  const { format, v: version } = formatOf(first);
  if (format === 'rimwise-case')
    return refuse('notACaseFile', '', 'This is a case file, not a backup. Take it in as a file.');
  if (format === 'rimwise-backup' && typeof version === 'number' && version > 1)
    return refuse('newerFormat', '', 'This backup was written by a newer version of the app.');
  if (format === 'rimwise-backup' || text.includes('"rimwise-backup"') || text.includes('"rimwise-case"'))
    return undefined;
  return refuse('notACaseFile', '', 'This is not a backup.');
}

async function readLine(line: string, at: number): Promise<Outcome<CaseFile>> {
  const read = await readCaseText(line);
  if (read.ok) return read;
  const where = read.where === '' ? place(at) : `${place(at)}, ${read.where}`;
  const cut = read.reason === 'notJson' ? 'This case is cut off or damaged.' : read.text;
  return refuse(read.reason === 'notJson' ? 'cut' : read.reason, where, cut);
}

/** Each case that the head names, on its own line, whole and with the digest it was written with. */
async function readCases(head: BackupHead, lines: readonly string[]): Promise<Pick<ReadBackup, 'cases' | 'faults'>> {
  const cases: CaseFile[] = [];
  const faults: Refused[] = [];
  for (const [i, named] of head.cases.entries()) {
    const line = lines[i] ?? '';
    // One after the other: verifying keeps a whole case in memory.
    // oxlint-disable-next-line no-await-in-loop
    const read = line === '' ? refuse('cut', place(i + 2), 'This case is missing.') : await readLine(line, i + 2);
    if (!read.ok) faults.push(read);
    else if (read.value.caseId !== named.id || read.value.digest !== named.digest)
      faults.push(refuse('changed', place(i + 2), 'This case is not the one the backup was made with.'));
    else cases.push(read.value);
  }
  if (lines.length > head.cases.length)
    faults.push(refuse('changed', place(head.cases.length + 2), 'Lines were added behind the last case.'));
  return { cases, faults };
}

/** Without a head that can be trusted: whatever lines are whole cases by themselves. */
async function salvaged(lines: readonly string[], fault: Refused): Promise<ReadBackup> {
  const cases: CaseFile[] = [];
  const faults: Refused[] = [fault];
  for (const [i, line] of lines.entries()) {
    // oxlint-disable-next-line no-await-in-loop
    const read = await readLine(line, i + 2);
    if (read.ok) cases.push(read.value);
    else faults.push(read);
  }
  return { head: undefined, cases, faults };
}

/**
 * The text of a backup. Refused when it is no backup, is longer than MOST_BACKUP_BYTES, or nothing of it can be read; a
 * damaged one gives the cases that are whole, and its faults with their places.
 */
export async function readBackup(text: string): Promise<Outcome<ReadBackup>> {
  if (text.length > MOST_BACKUP_BYTES) return refuse('malformed', '', 'This file is too long for a backup.');
  const [first = '', ...lines] = text.split('\n', MOST_CASES + 3);
  if (lines.at(-1) === '') lines.pop();
  const head = await readHead(first);
  if (!head.ok) {
    const other = foreign(text, first);
    if (other !== undefined) return other;
    const read = await salvaged(lines, head);
    return read.cases.length === 0 ? head : { ok: true, value: read };
  }
  const { digest: _digest, ...open } = head.value;
  return { ok: true, value: { head: open, ...(await readCases(head.value, lines)) } };
}
