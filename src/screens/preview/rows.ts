/** Invented rows of the list of cases, and what rings of them. */
import { NOW } from './clocks.ts';

export const caseRow = (id: string, code: string, where: string) => ({
  id,
  code,
  demo: false,
  openedAt: NOW - 86_400_000,
  at: where,
  visit: 1,
  closed: false,
});

/** Twelve cases that ring at once. */
export const ringingMany = Array.from({ length: 12 }, (_, i) => ({
  clock: 'upper-impression/1',
  label: 'upper impression',
  phase: 'pourWithin' as const,
  lateMs: 5000 + i * 1000,
  case: { id: `r${i}`, code: `K-31${10 + i}` },
}));
