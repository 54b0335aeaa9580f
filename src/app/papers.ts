/** The lab sheet leaves the app as a PDF at somebody's touch; and what this machine is called in case files. */
import type { AppModel } from './model.ts';
import type * as handoffModule from './handoff.ts';
import type { HandoffHost, MadeFile } from './handoff.ts';
import type { OpenCase } from './open-case.ts';
import type { Devices } from './ports.ts';

const WRITER_KEY = 'writer';

export type PaperWish = 'pdfA4' | 'pdfLetter';

interface Parts {
  readonly devices: Pick<Devices, 'settings' | 'download' | 'time' | 'newId'>;
  tell(said: Partial<Pick<AppModel, 'said' | 'trouble'>>): void;
}

type Handoff = typeof handoffModule;
type Made = Awaited<ReturnType<Handoff['makePdf']>>;

/** This machine's name in case files: made once, kept with the preferences. */
export async function writerOf({ settings, newId }: Parts['devices']): Promise<string> {
  const read = await settings.read(WRITER_KEY);
  if (read.ok && typeof read.value === 'string' && read.value !== '') return read.value;
  const fresh = `chair-${newId()
    .replaceAll(/[^a-z0-9]/g, '')
    .slice(0, 12)}`;
  await settings.write(WRITER_KEY, fresh);
  return fresh;
}

/** A disk in trouble is not waited for longer. */
const NAME_MS = 2000;

/** The name, if it is on the disk or can be put there in time: one that is forgotten must not go into a file. */
export async function keptWriter(devices: Parts['devices']): Promise<string | undefined> {
  const { settings, time } = devices;
  const until = time.clock.now() + NAME_MS;
  let stop = (): void => undefined;
  const late = new Promise<undefined>((resolve) => {
    stop = time.ticker.onSecond((now) => now >= until && resolve(undefined));
  });
  const kept = writerOf(devices).then(async (name) => {
    const read = await settings.read(WRITER_KEY);
    return read.ok && read.value === name ? name : undefined;
  });
  const name = await Promise.race([kept, late]);
  stop();
  return name;
}

async function make(wish: PaperWish, open: OpenCase, devices: Parts['devices']): Promise<Made> {
  const handoff: Handoff = await import('./handoff.ts');
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  const writer = await writerOf(devices);
  const host: HandoffHost = { now: () => devices.time.clock.now(), writer, timeZone, read: handoff.fetchOwn };
  return handoff.makePdf(open, wish === 'pdfA4' ? 'A4' : 'LETTER', host);
}

const words = ({ name, digest }: MadeFile) => `File made: ${name}, case digest ${digest.slice(0, 8)}…`;

/** Makes the file and hands it to the browser; says what was made, or why not. Nothing of the case changes. */
export async function savePaper(wish: PaperWish, open: OpenCase | undefined, { devices, tell }: Parts): Promise<void> {
  if (open === undefined) return;
  tell({ said: 'Making the file …', trouble: '' });
  const made = await make(wish, open, devices).catch(() => undefined);
  if (made === undefined) return tell({ said: '', trouble: 'The file could not be made. Print the page instead.' });
  if (!made.ok) return tell({ said: '', trouble: made.text });
  devices.download(made.value.name, made.value.bytes, made.value.type);
  return tell({ said: words(made.value) });
}
