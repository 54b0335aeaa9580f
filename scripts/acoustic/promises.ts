/** What must hold, whatever else is measured. */
import type { Judged } from './judge.ts';
import { pooled, share } from './tables.ts';

export interface Kept {
  readonly ok: boolean;
  readonly says: string;
}

const MOST_WRONG = 0.03;
const LEAST_SURE = 0.4;
const MOST_TAKEN = 0.03;

const percent = (x: number): string => `${(100 * x).toFixed(1)} %`;

/** Readings at clean and 20 dB; talk and noise at every level. */
export function promises(judged: readonly Judged[]): readonly Kept[] {
  const quiet = judged.filter((j) => j.scene.kind === 'reading' && (j.level === 'clean' || j.level === 20));
  const idle = judged.filter((j) => j.scene.truth.kind === 'nothing');
  const { right, wrong } = pooled(quiet);
  const sure = share(right + wrong, quiet.length);
  const wrongOfSure = share(wrong, right + wrong);
  const taken = share(pooled(idle).wrong, idle.length);
  return [
    {
      ok: quiet.length > 0 && wrongOfSure <= MOST_WRONG,
      says: `wrong among sure, clean and 20 dB: ${percent(wrongOfSure)} (${wrong} of ${right + wrong}), at most ${percent(MOST_WRONG)}`,
    },
    {
      ok: sure >= LEAST_SURE,
      says: `readings sure, clean and 20 dB: ${percent(sure)} of ${quiet.length}, at least ${percent(LEAST_SURE)}`,
    },
    {
      ok: idle.length > 0 && taken <= MOST_TAKEN,
      says: `talk and noise taken without a question: ${percent(taken)} of ${idle.length}, at most ${percent(MOST_TAKEN)}`,
    },
  ];
}
