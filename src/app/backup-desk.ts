/** Backups made and read: every case by itself, so that one that cannot be read keeps no other from being saved. */
import { MOST_BACKUP_BYTES } from '../domain/case/fileSize.ts';
import { parseFacts } from '../domain/case/parse.ts';
import { BackupMaker, readBackup } from '../handoff/backup.ts';
import type { ReadBackup } from '../handoff/backup.types.ts';
import type { CaseFile, Refused } from '../handoff/case-file.types.ts';
import { caseText } from '../handoff/chain.ts';
import type { CaseRow } from '../storage/types.ts';
import type { Backups, BackupParts } from './backing-up.ts';
import { settingsChanges, settingsHere, soundBackupSettings, type SoundBackupSettings } from './backup-settings.ts';
import type { BackupRequest, BackupView, FoundBackup } from './backup.types.ts';
import { localDate, localDay } from './dates.ts';
import { writerOf } from './papers.ts';
import { refusalText, takeIn } from './take-in.ts';

interface Found {
  readonly shown: FoundBackup;
  readonly cases: readonly CaseFile[];
  readonly settings: SoundBackupSettings | undefined;
}

const many = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`;
/** "a case" → 1 case, 2 cases; "an entry" → entries. */
const entries = (count: number) => (count === 1 ? '1 new entry' : `${count} new entries`);

export class BackupDesk {
  readonly #parts: BackupParts;
  readonly #door: Backups;
  #busy = '';
  #lines: readonly string[] = [];
  #locked: { readonly name: string; readonly bytes: Uint8Array } | undefined;
  #found: Found | undefined;

  constructor(parts: BackupParts, door: Backups) {
    this.#parts = parts;
    this.#door = door;
  }

  view(): Pick<BackupView, 'busy' | 'lines' | 'locked' | 'found'> {
    return {
      busy: this.#busy,
      lines: this.#lines,
      ...(this.#locked === undefined ? {} : { locked: { name: this.#locked.name } }),
      ...(this.#found === undefined ? {} : { found: this.#found.shown }),
    };
  }

  async ask(request: BackupRequest): Promise<void> {
    await this.#do(request).finally(() => this.#working(''));
  }

  #do(request: BackupRequest): Promise<void> {
    switch (request.do) {
      case 'make':
        return this.#make(request.passphrase);
      case 'read':
        return this.#read(request.name, request.bytes);
      case 'open':
        return this.#locked === undefined
          ? Promise.resolve()
          : this.#read(this.#locked.name, this.#locked.bytes, request.passphrase);
      case 'restore':
        return this.#restore(request.settings);
      case 'leave':
        this.#locked = undefined;
        this.#found = undefined;
        return Promise.resolve();
    }
  }

  #working(what: string): void {
    this.#busy = what;
    this.#parts.tell({});
  }

  #refuse(trouble: string): void {
    this.#parts.tell({ said: '', trouble });
  }

  async #make(passphrase: string | undefined): Promise<void> {
    const { devices } = this.#parts;
    this.#lines = [];
    if (passphrase === undefined && this.#door.mustSeal())
      return this.#refuse('The record is under a passphrase: a backup of it needs one too.');
    this.#working('The backup is being made …');
    const listed = await devices.log.cases();
    if (!listed.ok) return this.#refuse(`No backup was made: ${listed.why}`);
    const at = devices.time.clock.now();
    const settings = await settingsHere(devices.settings);
    const maker = new BackupMaker({ at, writer: await writerOf(devices), settings });
    const left = await this.#addAll(maker, listed.rows);
    const made = await maker.text();
    const text = made.ok && passphrase !== undefined ? await sealed(made.value, passphrase) : made;
    if (!text.ok) return this.#refuse(`No backup was made: ${refusalText(text)}`);
    const name = `rimwise-backup-${localDay(at)}.json`;
    devices.download(name, text.value);
    const kept = listed.rows.filter(({ id }) => !left.some((row) => row.id === id));
    await this.#door.made({ at, ends: kept.map(({ id, lastSeq }) => [id, lastSeq]) });
    this.#lines = [
      `Backup made: ${name}, ${many(kept.length, 'case')}, settings, visits. Keep it on another device.`,
      ...left.map(({ code }) => `Not in it, because it cannot be read here: ${code}.`),
    ];
    return this.#parts.tell({ said: this.#lines[0] ?? '', trouble: '' });
  }

  /** Gives the rows of cases that could not be read. */
  async #addAll(maker: BackupMaker, rows: readonly CaseRow[]): Promise<readonly CaseRow[]> {
    const left: CaseRow[] = [];
    for (const [i, row] of rows.entries()) {
      if (i % 20 === 19) this.#working(`The backup is being made: case ${i + 1} of ${rows.length} …`);
      // One after the other: a long list must not lie in memory at once.
      // oxlint-disable-next-line no-await-in-loop
      const loaded = await this.#parts.devices.log.open(row.id);
      const parsed = loaded.ok ? parseFacts(loaded.facts) : undefined;
      // oxlint-disable-next-line no-await-in-loop
      const added = parsed?.ok === true ? await maker.add(parsed.facts) : undefined;
      if (added?.ok === true) continue;
      left.push(row);
      maker.leave({ id: row.id, code: row.code });
    }
    return left;
  }

  async #read(name: string, bytes: Uint8Array, passphrase?: string): Promise<void> {
    this.#lines = [];
    this.#found = undefined;
    this.#working('The backup is being read …');
    const text = await plain(bytes, passphrase);
    this.#locked =
      !text.ok && (text.reason === 'locked' || text.reason === 'wrongPassphrase') ? { name, bytes } : undefined;
    if (!text.ok) return this.#refuse(text.reason === 'locked' ? '' : refusalText(text));
    const read = await readBackup(text.value);
    if (!read.ok) return this.#refuse(refusalText(read));
    this.#found = await this.#weigh(name, read.value);
    return this.#parts.tell({ said: '', trouble: '' });
  }

  async #weigh(name: string, { head, cases, faults }: ReadBackup): Promise<Found> {
    const { preferences, own } = this.#parts;
    const settings = head === undefined ? undefined : soundBackupSettings(head.settings, preferences.now);
    const here = { preferences: preferences.now, ...(await own.now()) };
    const all = head?.cases.length ?? cases.length + faults.length - 1;
    const made = head === undefined ? '' : ` Made ${localDate(head.at)}.`;
    const lines = [
      faults.length === 0
        ? `${many(cases.length, 'case')}, whole and unchanged.${made}`
        : `This backup is damaged. ${cases.length} of ${many(all, 'case')} can be read.${made}`,
      ...(head?.left ?? []).map(({ code }) => `Not in it, because it could not be read when it was made: ${code}.`),
      ...(settings?.refused ?? []).map((why) => `Not used of its settings: ${why}`),
    ];
    const changes = settings === undefined ? [] : settingsChanges(settings, here);
    const shown = { name, lines, faults: faults.map(refusalText), cases: cases.length, settings: changes };
    return { shown, cases, settings };
  }

  /** Versions of visits and the practice first: cases may run under them. */
  async #restore(withSettings: boolean): Promise<void> {
    const found = this.#found;
    if (found === undefined) return;
    this.#lines = [];
    this.#working('What is not here yet is being added …');
    const lines = withSettings && found.settings !== undefined ? await this.#takeSettings(found.settings) : [];
    this.#lines = [...(await this.#takeCases(found.cases)), ...lines];
    this.#found = undefined;
    this.#parts.tell({ said: this.#lines[0] ?? '', trouble: '' });
  }

  async #takeSettings({ preferences, practice, protocols }: SoundBackupSettings): Promise<readonly string[]> {
    const why = await this.#parts.own.takeBack(practice, protocols);
    this.#parts.preferences.change(preferences);
    return [why === '' ? 'Settings taken from the backup.' : `Settings not taken whole: ${why}`];
  }

  async #takeCases(cases: readonly CaseFile[]): Promise<readonly string[]> {
    let brought = 0;
    let fresh = 0;
    const refused: string[] = [];
    for (const [i, file] of cases.entries()) {
      if (i % 20 === 19) this.#working(`What is not here yet is being added: case ${i + 1} of ${cases.length} …`);
      // One after the other: each takes the right to write its case.
      // oxlint-disable-next-line no-await-in-loop
      const taken = await takeIn(new TextEncoder().encode(caseText(file)), this.#parts);
      if (!taken.ok) refused.push(`Case ${codeOf(file)} was not taken in: ${taken.text}`);
      else if (taken.fresh > 0) {
        brought += 1;
        fresh += taken.fresh;
      }
    }
    const rest = cases.length - brought - refused.length;
    const here = rest === 0 ? '' : ` ${many(rest, 'case')}: nothing new.`;
    return [`Restored: ${many(brought, 'case')}, ${entries(fresh)}.${here}`, ...refused];
  }
}

function codeOf({ caseId, entries: all }: CaseFile): string {
  const code = all.find(({ fact }) => fact.body['kind'] === 'caseOpened')?.fact.body['code'];
  return typeof code === 'string' ? code : caseId;
}

async function sealed(text: string, passphrase: string) {
  const { seal } = await import('../handoff/sealed.ts');
  return seal(text, passphrase);
}

const unread = (reason: Refused['reason'], text: string): Refused => ({ ok: false, reason, where: '', text });

/** The text in the file, opened where it was sealed. */
async function plain(bytes: Uint8Array, passphrase?: string): Promise<{ ok: true; value: string } | Refused> {
  if (bytes.length > MOST_BACKUP_BYTES) return unread('malformed', 'This file is larger than 250 MB and was not read.');
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return unread('notACaseFile', 'This file is not text: it is no backup.');
  }
  // Sealed files are one object, whose head is short but for the sealed part itself.
  if (!text.slice(0, 200).includes('{"cipher":')) return { ok: true, value: text };
  const { isSealed, unseal } = await import('../handoff/sealed.ts');
  const { readJson } = await import('../domain/case/plainJson.ts');
  const json = readJson(text, MOST_BACKUP_BYTES);
  if (!json.ok || !isSealed(json.value)) return { ok: true, value: text };
  if (passphrase === undefined) return unread('locked', 'This backup is under a passphrase.');
  return unseal(json.value, passphrase);
}
