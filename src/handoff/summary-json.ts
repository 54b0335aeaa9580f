/** The summary for other programs: the same model, with lengths as decimals in their own unit. */
import type { ReadingRow, SetRow, Summary } from '../domain/summary/types.ts';

const decimal = (hundredths: number) => hundredths / 100;

function setJson(set: SetRow) {
  return {
    ...set,
    values: set.values.map(decimal),
    suspects: set.suspects.map((s) => ({
      ...s,
      value: decimal(s.value),
      ...(s.perhaps === undefined ? {} : { perhaps: decimal(s.perhaps) }),
    })),
  };
}

const readingJson = (row: ReadingRow) => ({ ...row, value: decimal(row.value) });

/** Plain JSON; every `value` is in its `unit`, every `…Mm` in millimetres, every `…At`/`at` in ms since 1970 UTC. */
export function summaryJson(summary: Summary) {
  const { rest, closed, record } = summary.vertical;
  return {
    ...summary,
    readings: summary.readings.map(readingJson),
    sets: summary.sets.map(setJson),
    vertical: {
      ...summary.vertical,
      ...(rest === undefined ? {} : { rest: setJson(rest) }),
      ...(closed === undefined ? {} : { closed: setJson(closed) }),
      ...(record === undefined ? {} : { record: setJson(record) }),
    },
  };
}
