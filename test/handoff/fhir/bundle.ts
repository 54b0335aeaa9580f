/** A bundle with readings, struck ones, an order and flags, as loose JSON for planting mistakes in. */
import type { Bundle } from '@medplum/fhirtypes';
import type { Fact } from '../../../src/domain/case/facts.ts';
import { foldCase } from '../../../src/domain/case/fold.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import { readingRows } from '../../../src/domain/summary/rows.ts';
import type { Summary } from '../../../src/domain/summary/types.ts';
import { fhirBundle, type FhirInput } from '../../../src/handoff/fhir.ts';
import { sheetModel } from '../../../src/handoff/sheet-model.ts';
import { sheetTimes } from '../../../src/handoff/sheet-times.ts';
import { DIGEST } from '../cases.ts';
import { good } from '../tamper.ts';

export const MADE = Date.parse('2026-03-04T15:00:00Z');

export interface Made {
  readonly summary: Summary;
  readonly facts: readonly Fact[];
}

export async function bundleOf({ summary, facts }: Made, more: Partial<FhirInput> = {}): Promise<Bundle> {
  const view = foldCase(facts[0]?.caseId ?? '', facts);
  const rows = readingRows(view, readingDefs);
  const sheet = sheetModel(summary, sheetTimes('UTC'), DIGEST);
  return good(await fhirBundle({ summary, view, rows, sheet, madeAt: MADE, digest: DIGEST, ...more }));
}

export type Loose = Record<string, unknown>;

export class Bench {
  readonly bundle: Loose;
  constructor(bundle: Bundle) {
    this.bundle = JSON.parse(JSON.stringify(bundle)) as Loose;
  }
  entries(): Loose[] {
    return this.bundle['entry'] as Loose[];
  }
  /** The first resource of a type. */
  first(type: string): Loose {
    const found = this.entries()
      .map((entry) => entry['resource'] as Loose)
      .find((r) => r['resourceType'] === type);
    if (found === undefined) throw new Error(`there is no ${type}`);
    return found;
  }
}
