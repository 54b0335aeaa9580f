/** The worker's own end of the journal: one file of this origin, opened for each turn under a lock that all windows share. */
import { JournalFile, type ByteFile, type WithFile } from './journal-file.ts';
import type { JournalAnswer, JournalQuestion } from './journal.ts';

const FILE = 'rimwise-journal.log';
const LOCK = 'rimwise-journal';

const scope = globalThis as unknown as {
  onmessage: ((event: MessageEvent<JournalQuestion>) => void) | null;
  postMessage(message: JournalAnswer): void;
};

interface SyncFileHandle {
  createSyncAccessHandle(): Promise<ByteFile>;
}

let made: Promise<SyncFileHandle> | undefined;

async function fileHandle(): Promise<SyncFileHandle> {
  const folder = await navigator.storage.getDirectory();
  return folder.getFileHandle(FILE, { create: true });
}

/** A handle that has failed once is asked for anew: the folder may have been cleared under us. */
const withFile: WithFile = (work) =>
  navigator.locks.request(LOCK, async () => {
    made ??= fileHandle();
    try {
      const file = await (await made).createSyncAccessHandle();
      try {
        return work(file);
      } finally {
        file.close();
      }
    } catch (error) {
      made = undefined;
      throw error;
    }
  });

const journal = new JournalFile(withFile);

function answer(question: JournalQuestion): Promise<unknown> {
  if (question.op === 'open') return journal.open(question.dbId);
  if (question.op === 'append') return journal.append(question.batch);
  if (question.op === 'keep') return journal.keep(question.keyring);
  if (question.op === 'rewrite') return journal.rewrite();
  return journal.read(question.caseIds);
}

scope.onmessage = ({ data }) => {
  answer(data).then(
    (value) => scope.postMessage({ id: data.id, ok: true, value }),
    (error: unknown) => scope.postMessage({ id: data.id, ok: false, why: String(error) }),
  );
};
