/**
 * A number that waits for its yes is no fact and is gone with the page. That one waited is noted beside the settings, so
 * that whoever opens the case again is told it was not kept.
 */
import * as v from 'valibot';
import type { Fact, FactKind } from '../domain/case/facts.ts';
import type { Pending } from '../../machines/visit.types.ts';
import type { Devices } from './ports.ts';
import { WAITING_KEY } from './sealed-names.ts';
import { readingLabel, withUnit, type Names } from './wording.ts';

export type WaitingPort = Devices['settings'];

const shape = v.object({ caseId: v.string(), after: v.number(), what: v.string() });
type Waiting = v.InferOutput<typeof shape>;

/** What may be written while a number still waits; anything else answered it or went on without it. */
const MEANWHILE: ReadonlySet<FactKind> = new Set([
  'rang',
  'alarmSeen',
  'note',
  'clockOut',
  'takenOver',
  'flagAnswered',
  'held',
  'carriedOn',
]);

const lower = (label: string) => label.charAt(0).toLowerCase() + label.slice(1);

interface Standing {
  readonly caseId: string;
  /** How many facts the case has while the number waits. */
  readonly facts: number;
  readonly names: Names;
}

/** Best effort and in the background: a note that cannot be written takes nothing away from the record. */
export function noteWaiting(port: WaitingPort | undefined, pending: Pending, { caseId, facts, names }: Standing): void {
  const what = `${lower(readingLabel(names, pending.reading))} ${withUnit(pending.value, pending.unit)}`;
  void port?.write(WAITING_KEY, { caseId, after: facts, what } satisfies Waiting);
}

/** The sentence for a number of this case that waited and was lost; empty when there is none. */
export async function lostWhileWaiting(port: WaitingPort | undefined, facts: readonly Fact[]): Promise<string> {
  const read = await port?.read(WAITING_KEY);
  const noted = v.safeParse(shape, read?.ok === true ? read.value : undefined);
  if (!noted.success || noted.output.caseId !== facts[0]?.caseId) return '';
  const { after, what } = noted.output;
  if (facts.slice(after).some((fact) => !MEANWHILE.has(fact.body.kind))) return '';
  return `Not kept: ${what}, which waited for its yes. Measure again, or say it again.`;
}
