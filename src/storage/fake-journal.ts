/** The journal over bytes in memory, with the same file format as the real one. Several windows may share one disk. */
import { JournalFile, type ByteFile } from './journal-file.ts';
import type { Answered, Journal } from './journal.ts';

export interface JournalDisk {
  bytes: Uint8Array;
  /** While true, everything asked of the journal fails. */
  broken: boolean;
  /** Writes and cuts until the device dies; without it, it does not. */
  writesLeft?: number | undefined;
}

export function createJournalDisk(): JournalDisk {
  return { bytes: new Uint8Array(0), broken: false };
}

function fileOn(disk: JournalDisk): ByteFile {
  const lives = (): void => {
    if (disk.writesLeft === undefined) return;
    if (disk.writesLeft === 0) throw new Error('the device died');
    disk.writesLeft -= 1;
  };
  const resize = (size: number): void => {
    const next = new Uint8Array(size);
    next.set(disk.bytes.subarray(0, size));
    disk.bytes = next;
  };
  return {
    getSize: () => disk.bytes.length,
    read: (into, { at }) => {
      const part = disk.bytes.subarray(at, at + into.length);
      into.set(part);
      return part.length;
    },
    write: (bytes, { at }) => {
      lives();
      if (at + bytes.length > disk.bytes.length) resize(at + bytes.length);
      disk.bytes.set(bytes, at);
      return bytes.length;
    },
    truncate: (size) => {
      lives();
      resize(size);
    },
    flush: () => undefined,
    close: () => undefined,
  };
}

async function answered<T>(work: Promise<T>): Promise<Answered<T>> {
  try {
    return { ok: true, value: await work };
  } catch (error) {
    return { ok: false, why: String(error) };
  }
}

export function createMemoryJournal(disk: JournalDisk = createJournalDisk()): Journal {
  const file = new JournalFile(async (work) => {
    if (disk.broken) throw new Error('the journal is broken');
    return work(fileOn(disk));
  });
  return {
    open: (dbId) => answered(file.open(dbId)),
    append: (batch) => answered(file.append(batch)),
    read: (caseIds) => answered(file.read(caseIds)),
    keep: (keyring) => answered(file.keep(keyring)),
    rewrite: () => answered(file.rewrite()),
    close: () => undefined,
  };
}
