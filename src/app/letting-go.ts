/** What a window does when its record is locked: it forgets every case, and goes on with the clocks alone. */
import type { Stores } from '../stores/stores.ts';
import type { CaseDesk } from './case-desk.ts';
import type { Files } from './files.ts';
import type { Keeping } from './keeping.ts';
import type { Standing } from './locking.ts';
import type { Devices } from './ports.ts';
import type { Ringing } from './ringing.ts';

export interface Holders {
  readonly desk: CaseDesk;
  readonly keeping: Keeping;
  readonly ringing: Ringing;
  readonly files: Pick<Files, 'letGo'>;
  readonly stores: Stores;
  readonly devices: Pick<Devices, 'voice' | 'time'>;
}

export function standing({ desk, stores }: Pick<Holders, 'desk' | 'stores'>): Standing {
  const { open } = desk;
  const { place } = stores.ui.getState();
  return { caseId: open?.id ?? '', place, waits: open?.session.context().pending !== undefined };
}

export function letGo({ desk, keeping, ringing, files, stores, devices }: Holders): void {
  for (const holder of [desk, keeping, ringing.others, files]) holder.letGo();
  const { turn } = stores.cases.getState();
  stores.cases.setState({ caseId: '', view: undefined, turn: turn + 1 });
  stores.ui.setState({ place: 'cases', said: '', trouble: '', keypadOpen: false });
  devices.voice.listen(false);
  devices.voice.setPhrases([]);
}

/** Back to where somebody stood, or to the list of cases. */
export async function goOn({ desk, keeping, stores }: Holders, back: Standing | undefined): Promise<void> {
  stores.ui.setState({ trouble: '' });
  await keeping.start();
  if (back === undefined || back.caseId === '') return;
  await desk.load(back.caseId);
  if (desk.open?.id === back.caseId) stores.ui.setState({ place: back.place });
}
