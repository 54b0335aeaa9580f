/** What every part of the bundle draws on. */
import type { Reference, Resource } from '@medplum/fhirtypes';
import type { CaseView } from '../domain/case/fold.ts';
import { visitName } from '../domain/summary/rows.ts';
import type { ReadingRow, Summary } from '../domain/summary/types.ts';
import type { IdOf } from './fhir-ids.ts';
import type { SheetModel } from './sheet-model.types.ts';

export interface FhirInput {
  readonly summary: Summary;
  readonly view: CaseView;
  /** Readings of all visits, struck ones included. */
  readonly rows: readonly ReadingRow[];
  readonly sheet: SheetModel;
  /** When the bundle was made, ms since 1970. */
  readonly madeAt: number;
  /** Digest of the case file it was made from. */
  readonly digest?: string;
  readonly pdf?: Uint8Array;
}

export interface Context extends FhirInput {
  readonly idOf: IdOf;
  /** "visit 2" → key of its encounter. */
  readonly visits: readonly string[];
}

export function contextOf(input: FhirInput, idOf: IdOf): Context {
  return { ...input, idOf, visits: input.view.visits.map((_, place) => visitName(input.view.visits, place)) };
}

/** A resource beside its key. */
export interface Keyed<R extends Resource = Resource> {
  readonly key: string;
  readonly resource: R & { id?: string };
}

export const refTo = <R extends Resource>({ idOf }: Pick<Context, 'idOf'>, key: string): Reference<R> => ({
  reference: `urn:uuid:${idOf(key)}`,
});

/** An instant in UTC. Throws RangeError outside the calendar; fhirBundle turns that into a refusal. */
export const instant = (at: number): string => new Date(at).toISOString();

/** A key within the visit that is handed over: another visit's clock of the same name is another thing. */
export const inVisit = ({ summary }: Pick<Context, 'summary'>, key: string): string => `${summary.visitName}|${key}`;

export const encounterKey = (visit: string): string => `encounter:${visit}`;
export const readingKey = (seq: number): string => `reading:${seq}`;
