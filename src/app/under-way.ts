/** A visit whose clocks run while its screen is not open: after a reload they tick and ring all the same. */
import type { CaseListRow } from './model.ts';
import type { Opened } from './open-case.ts';

/** The newest case not closed, if any of its clocks still runs at `now`. */
export async function caseOnTheClock(
  list: readonly CaseListRow[],
  open: (id: string) => Promise<Opened>,
  now: number,
): Promise<string | undefined> {
  const row = list.find((one) => !one.closed);
  if (row === undefined) return undefined;
  const opened = await open(row.id);
  return opened.ok && (opened.open.parts(now).clocks ?? []).length > 0 ? row.id : undefined;
}
