/** Logistic regression: the chance that something is so, from a few numbers. Small, plain, and the same in every run. */

export interface Model {
  readonly means: readonly number[];
  readonly scales: readonly number[];
  readonly weights: readonly number[];
  readonly bias: number;
}
export interface Row {
  readonly x: readonly number[];
  readonly y: 0 | 1;
}

const STEPS = 15;
/** Keeps weights small where there is little to learn from. */
const SHRINK = 0.002;

const sigmoid = (z: number): number => 1 / (1 + Math.exp(-z));
const sum = (list: readonly number[]): number => list.reduce((total, x) => total + x, 0);
const mean = (list: readonly number[]): number => sum(list) / Math.max(1, list.length);
const dot = (a: readonly number[], b: readonly number[]): number => sum(a.map((x, i) => x * (b[i] ?? 0)));

/** The numbers of a row as multiples of their usual spread, after a 1 for the bias. */
const standard = (x: readonly number[], { means, scales }: Pick<Model, 'means' | 'scales'>): readonly number[] => [
  1,
  ...means.map((m, i) => ((x[i] ?? 0) - m) / (scales[i] ?? 1)),
];

/** 0…1. */
export function chanceOf(x: readonly number[], model: Model): number {
  return sigmoid(dot([model.bias, ...model.weights], standard(x, model)));
}

/** Solves a small symmetric positive definite system, given as rows with the right side at their end. */
function solve(rows: readonly (readonly number[])[]): readonly number[] {
  let rest = rows;
  const reduced: (readonly number[])[] = [];
  while (rest.length > 0) {
    const [first = [], ...others] = rest;
    reduced.push(first);
    rest = others.map((row) => row.map((x, i) => x - ((row[0] ?? 0) / (first[0] ?? 1)) * (first[i] ?? 0)).slice(1));
  }
  return reduced.reduceRight<readonly number[]>((found, row) => {
    const [own = 1, ...more] = row;
    const right = more[more.length - 1] ?? 0;
    return [(right - dot(found, more)) / own, ...found];
  }, []);
}

/** One step of Newton's method towards the weights that make the rows likeliest. */
function step(rows: readonly Row[], weights: readonly number[]): readonly number[] {
  const shrink = (i: number): number => (i === 0 ? 0 : SHRINK);
  const slope = weights.map((w, i) => w * shrink(i));
  const bend = weights.map((_, i) => weights.map((_w, j): number => (i === j ? shrink(i) : 0)));
  for (const { x, y } of rows) {
    const p = sigmoid(dot(weights, x));
    const width = (p * (1 - p)) / rows.length;
    x.forEach((xi, i) => {
      slope[i] = (slope[i] ?? 0) + ((p - y) * xi) / rows.length;
      const line = bend[i] ?? [];
      x.forEach((xj, j) => (line[j] = (line[j] ?? 0) + width * xi * xj));
    });
  }
  const change = solve(bend.map((line, i) => [...line, slope[i] ?? 0]));
  return weights.map((w, i) => w - (change[i] ?? 0));
}

/** Fitted to standardised numbers. */
export function fit(rows: readonly Row[]): Model {
  const width = rows[0]?.x.length ?? 0;
  const columns = Array.from({ length: width }, (_, i) => rows.map((row) => row.x[i] ?? 0));
  const means = columns.map(mean);
  const scales = columns.map((c, i) => Math.sqrt(mean(c.map((x) => (x - (means[i] ?? 0)) ** 2))) || 1);
  const ready = rows.map(({ x, y }) => ({ x: standard(x, { means, scales }), y }));
  let weights: readonly number[] = Array.from({ length: width + 1 }, () => 0);
  for (let n = 0; n < STEPS; n += 1) weights = step(ready, weights);
  const [bias = 0, ...others] = weights;
  return { means, scales, weights: others, bias };
}
