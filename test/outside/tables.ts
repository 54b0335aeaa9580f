/** Every table of outside checks, in the order of the document. */
import type { Table } from './check.ts';
import { dixonTable } from './dixon.ts';
import { classTables } from './rows/classes.ts';
import { heightTables } from './rows/height.ts';
import { hingeTables } from './rows/hinge.ts';
import { materialTables } from './rows/materials.ts';
import { planeTables } from './rows/plane.ts';
import { reviewTables } from './rows/review.ts';
import { toothTables } from './rows/teeth.ts';
import { trayTables } from './rows/trays.ts';

export const tables: readonly Table[] = [
  ...heightTables,
  dixonTable,
  ...hingeTables,
  ...classTables,
  ...materialTables,
  ...trayTables,
  ...toothTables,
  ...planeTables,
  ...reviewTables,
];
