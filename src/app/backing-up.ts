/** The door to backups: how old the last one is, and what makes and reads them, fetched when first wanted. */
import type { BackupDesk } from './backup-desk.ts';
import type { BackupAsked, BackupRequest, BackupView } from './backup.types.ts';
import { Files, type FilesParts } from './files.ts';
import type { FilesRequest, FilesView } from './files.types.ts';
import type { CaseListRow } from './model.ts';
import type { OwnThings } from './own-things.ts';
import type { Devices } from './ports.ts';
import type { Preferences } from './preferences.ts';

export interface BackupParts extends FilesParts {
  readonly devices: FilesParts['devices'] & Pick<Devices, 'lock'>;
  readonly own: OwnThings;
  readonly preferences: Preferences;
}

export const LAST_BACKUP_KEY = 'lastBackup';
const DAY = 86_400_000;

/** When it was made, and how far each case went then. */
export interface LastBackup {
  readonly at: number;
  readonly ends: readonly (readonly [caseId: string, lastSeq: number])[];
}

/** As stored; whatever does not fit counts as no backup. */
export function lastBackupIn(stored: unknown): LastBackup | undefined {
  if (typeof stored !== 'object' || stored === null) return undefined;
  const { at, ends } = stored as { at?: unknown; ends?: unknown };
  if (typeof at !== 'number' || !Number.isFinite(at) || !Array.isArray(ends)) return undefined;
  const pairs = (ends as unknown[]).filter(
    (one): one is readonly [string, number] =>
      Array.isArray(one) && typeof one[0] === 'string' && typeof one[1] === 'number',
  );
  return { at, ends: pairs };
}

/** Cases with entries that the backup has not. Rows that do not tell their end count as changed. */
export function changedSince(last: LastBackup | undefined, rows: readonly CaseListRow[]): number {
  const ends = new Map(last?.ends ?? []);
  return rows.filter((row) => !row.demo && (row.lastSeq ?? Infinity) > (ends.get(row.id) ?? 0)).length;
}

const QUIET = { busy: '', lines: [] as readonly string[] };

export class Backups {
  readonly #parts: BackupParts;
  #last: LastBackup | undefined;
  #read = false;
  #counted: { readonly rows: readonly CaseListRow[]; readonly last: LastBackup | undefined; readonly changed: number } =
    {
      rows: [],
      last: undefined,
      changed: 0,
    };
  /** One thing at a time. */
  #asked = false;
  #coming: Promise<BackupDesk> | undefined;
  #desk: BackupDesk | undefined;

  constructor(parts: BackupParts) {
    this.#parts = parts;
  }

  view(): BackupView {
    if (!this.#read) void this.#readLast();
    const { devices, preferences } = this.#parts;
    const { backupEveryDays: every } = preferences.now;
    const changed = this.#changed();
    const age = devices.time.clock.now() - (this.#last?.at ?? -Infinity);
    const desk = this.#desk?.view() ?? QUIET;
    return {
      ...desk,
      busy: this.#asked && desk.busy === '' ? 'One moment …' : desk.busy,
      ...(this.#last === undefined ? {} : { lastAt: this.#last.at }),
      changed,
      due: every > 0 && changed > 0 && age >= every * DAY,
      mustSeal: this.mustSeal(),
    };
  }

  mustSeal(): boolean {
    const state = this.#parts.devices.lock?.keys.state();
    return state !== undefined && state !== 'none';
  }

  /** What was read is let go of. */
  letGo(): void {
    this.#coming = undefined;
    this.#desk = undefined;
  }

  ask(request: BackupRequest): void {
    if (this.#asked) return;
    this.#asked = true;
    this.#coming ??= this.#fetch();
    this.#parts.tell({});
    void this.#coming
      .then((desk) => desk.ask(request))
      .catch(() => this.#parts.tell({ said: '', trouble: 'That did not work. Nothing that is here was overwritten.' }))
      .finally(() => {
        this.#asked = false;
        this.#parts.tell({});
      });
  }

  /** Kept beside the preferences: the next start knows it too. */
  async made(last: LastBackup): Promise<void> {
    this.#last = last;
    this.#read = true;
    await this.#parts.devices.settings.write(LAST_BACKUP_KEY, last);
  }

  /** Counted once for each list: it may be long, and the view is asked for every second. */
  #changed(): number {
    const rows = this.#parts.keeping.cases;
    if (this.#counted.rows !== rows || this.#counted.last !== this.#last)
      this.#counted = { rows, last: this.#last, changed: changedSince(this.#last, rows) };
    return this.#counted.changed;
  }

  async #readLast(): Promise<void> {
    this.#read = true;
    const read = await this.#parts.devices.settings.read(LAST_BACKUP_KEY);
    this.#last ??= lastBackupIn(read.ok ? read.value : undefined);
    if (this.#last !== undefined) this.#parts.tell({});
  }

  async #fetch(): Promise<BackupDesk> {
    const { BackupDesk: Desk } = await import('./backup-desk.ts');
    this.#desk = new Desk(this.#parts, this);
    return this.#desk;
  }
}

/** Both doors as one: files of a case, and backups of everything. */
export class FilesAndBackups {
  readonly #files: Files;
  readonly #backups: Backups;

  constructor(parts: BackupParts) {
    this.#files = new Files(parts);
    this.#backups = new Backups(parts);
  }

  view(): FilesView {
    return { ...this.#files.view(), backup: this.#backups.view() };
  }

  ask(request: FilesRequest | BackupAsked): void {
    if (request.ask === 'backup') this.#backups.ask(request.backup);
    else this.#files.ask(request);
  }

  letGo(): void {
    this.#files.letGo();
    this.#backups.letGo();
  }
}
