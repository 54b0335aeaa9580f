/** Values computed from readings and answers, each with what it was computed from and by whose rule. */
import type { CaseView } from '../case/fold.ts';
import type { Practice } from '../protocol/types.ts';
import type { ComputedRow, ReadingRow, VerticalDimension } from './types.ts';

export interface ComputeFrom {
  readonly view: CaseView;
  readonly rows: readonly ReadingRow[];
  readonly vertical: VerticalDimension;
  readonly practice: Practice;
}

export function computedRows(_from: ComputeFrom): readonly ComputedRow[] {
  return [];
}
