/** Retention and stability of finished dentures, scored at insertion and at every review. */
import { NO_LOWER, NO_UPPER } from './common.ts';
import type { Step } from './types.ts';

const RETENTION = ['0 none, 1 slight, 2 moderate, 3 good', 'Pull straight away from the ridge'] as const;
const STABILITY = ['0 none, 1 some, 2 enough', 'Press from side to side and rock'] as const;

/** Retention and stability scored for both dentures. */
export function holdSteps(chapter: number): readonly Step[] {
  return [
    {
      kind: 'reading',
      id: 'retention-upper',
      chapter,
      title: 'Score the upper retention',
      lines: RETENTION,
      reading: 'retention-upper',
      ...NO_UPPER,
    },
    {
      kind: 'reading',
      id: 'stability-upper',
      chapter,
      title: 'Score the upper stability',
      lines: STABILITY,
      reading: 'stability-upper',
      ...NO_UPPER,
    },
    {
      kind: 'reading',
      id: 'retention-lower',
      chapter,
      title: 'Score the lower retention',
      lines: RETENTION,
      reading: 'retention-lower',
      ...NO_LOWER,
    },
    {
      kind: 'reading',
      id: 'stability-lower',
      chapter,
      title: 'Score the lower stability',
      lines: STABILITY,
      reading: 'stability-lower',
      ...NO_LOWER,
    },
  ];
}
