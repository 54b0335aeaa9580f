/** Every computation that can be called by name. */
import { assessmentComputations } from './assessment.ts';
import { heightComputations } from './height.ts';
import type { Computation } from './inputs.ts';
import { materialComputations } from './materials.ts';
import { toothComputations } from './teeth.ts';

export const computations: readonly Computation[] = [
  ...heightComputations,
  ...assessmentComputations,
  ...materialComputations,
  ...toothComputations,
];
