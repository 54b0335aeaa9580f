/** Cost of recomputing a case by the number of its readings. It should stay flat for each reading; nothing is asserted. */
import type { Hundredths } from '../../src/domain/measure/length.ts';
import { describeSet, pinChange, restSpace, suspects } from '../../src/domain/measure/vertical.ts';

const SIZES = [10, 100, 1_000, 10_000] as const;
const FACE = [4000, 11000] as const;
const SET = 5;
const ROUNDS = 9;
/** Each round recomputes as often as it takes to pass this many readings. */
const READINGS_A_ROUND = 50_000;

/** Heights around 70 mm; every fortieth has its decimal point moved. */
function readings(n: number): readonly Hundredths[] {
  return Array.from({ length: n }, (_, i) => (i % 40 === 39 ? 705 : 7000 + ((i * 37) % 5) * 50));
}

const sliced = (all: readonly Hundredths[]) =>
  Array.from({ length: Math.ceil(all.length / SET) }, (_, i) => all.slice(i * SET, (i + 1) * SET));

/** As in a visit: sets of five, each described and searched, each neighbouring pair taken as rest and closed. */
function visitLike(sets: readonly (readonly Hundredths[])[]): number {
  let sum = 0;
  sets.forEach((set, i) => {
    const figures = describeSet(set);
    const space = restSpace(set, sets[i + 1] ?? set);
    sum += suspects(set, FACE).length + (space.ok ? space.value.spaceMm : 0);
    if (!figures.ok) return;
    const change = pinChange({ restMm: figures.value.medianMm, recordedMm: 68, targetSpaceMm: 3 });
    sum += change.ok ? change.value.incisalMm : 0;
  });
  return sum;
}

/** The hardest shape: all readings in a single set. */
function oneSet(all: readonly Hundredths[]): number {
  const figures = describeSet(all);
  return suspects(all, FACE).length + (figures.ok ? figures.value.meanMm : 0);
}

/** Median over rounds of nanoseconds for each reading. */
function costOf(n: number, work: () => number): number {
  const times = Math.max(1, Math.round(READINGS_A_ROUND / n));
  const costs: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = performance.now();
    for (let i = 0; i < times; i += 1) work();
    costs.push(((performance.now() - start) * 1e6) / (times * n));
  }
  return costs.toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)]!;
}

function table(title: string, workFor: (n: number) => () => number): void {
  console.log(`${title}\n  readings   ns each   against 10`);
  let first = 0;
  for (const n of SIZES) {
    const cost = costOf(n, workFor(n));
    if (first === 0) first = cost;
    console.log(
      `  ${String(n).padStart(8)}  ${cost.toFixed(0).padStart(8)}   ${(cost / first).toFixed(2).padStart(10)}`,
    );
  }
}

export default function measure(): Promise<void> {
  costOf(1000, () => oneSet(readings(1000)) + visitLike(sliced(readings(1000))));
  table('sets of five, as in a visit', (n) => {
    const sets = sliced(readings(n));
    return () => visitLike(sets);
  });
  table('all readings in one set', (n) => {
    const all = readings(n);
    return () => oneSet(all);
  });
  return Promise.resolve();
}
