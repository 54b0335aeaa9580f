/** What was measured, as tables in plain text. */
import { isSure, outcomeOf } from './outcome.ts';
import type { Outcome } from './outcome.ts';
import type { Judged } from './judge.ts';
import { NOISES } from './noises.ts';
import { LEVELS, noiseOf } from './studio.ts';
import type { Level } from './studio.ts';

export const share = (part: number, of: number): number => (of === 0 ? 0 : part / of);
const percent = (x: number): string => `${(100 * x).toFixed(1)} %`;
/** How many had each outcome. */
export function pooled(list: readonly Judged[]): Readonly<Record<Outcome, number>> {
  return {
    right: count(list, 'right'),
    asked: count(list, 'asked'),
    nothing: count(list, 'nothing'),
    wrong: count(list, 'wrong'),
  };
}

const count = (list: readonly Judged[], outcome: Outcome): number => list.filter((j) => j.outcome === outcome).length;

/** Columns padded to their widest cell, the first to the left, the others to the right. */
export function table(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  const line = (row: readonly string[]): string =>
    row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join('  ');
  return rows.map(line).join('\n');
}

const levelName = (level: Level): string => (level === 'clean' ? 'clean' : `${level} dB`);

/** One line for a level, then one for each noise it was heard under. */
function byLevel(judged: readonly Judged[], row: (list: readonly Judged[]) => readonly string[]): readonly string[][] {
  return LEVELS.flatMap((level) => {
    const all = judged.filter((j) => j.level === level);
    const whole = [levelName(level), ...row(all)];
    if (level === 'clean') return [whole];
    return [whole, ...NOISES.map((noise) => [`  ${noise}`, ...row(all.filter((j) => noiseOf(j.scene) === noise))])];
  });
}

const shareOf = (list: readonly Judged[], outcome: Outcome): string =>
  percent(share(count(list, outcome), list.length));

export function readingsTable(judged: readonly Judged[]): string {
  const head = [
    'readings',
    'heard',
    'top right',
    'sure and right',
    'asked or checked',
    'say again',
    'wrong though sure',
    'wrong of sure',
  ];
  const rows = byLevel(judged, (list) => [
    String(list.length),
    percent(share(list.filter((j) => j.topRight).length, list.length)),
    shareOf(list, 'right'),
    shareOf(list, 'asked'),
    shareOf(list, 'nothing'),
    shareOf(list, 'wrong'),
    percent(share(count(list, 'wrong'), count(list, 'wrong') + count(list, 'right'))),
  ]);
  return table([head, ...rows]);
}

export function commandsTable(judged: readonly Judged[]): string {
  const head = ['commands and answers', 'heard', 'top right', 'done', 'asked', 'say again', 'another thing done'];
  const rows = byLevel(judged, (list) => [
    String(list.length),
    percent(share(list.filter((j) => j.topRight).length, list.length)),
    ...(['right', 'asked', 'nothing', 'wrong'] as const).map((outcome) => shareOf(list, outcome)),
  ]);
  return table([head, ...rows]);
}

export function nothingTable(judged: readonly Judged[]): string {
  const head = ['talk and noise', 'heard', 'let pass', 'asked or checked', 'taken'];
  const rows = byLevel(judged, (list) => [
    String(list.length),
    ...(['nothing', 'asked', 'wrong'] as const).map((outcome) => shareOf(list, outcome)),
  ]);
  return table([head, ...rows]);
}

/** Sure, or nothing against it but the confidence. */
function sureButForConfidence({ got }: Judged): boolean {
  if (got.kind !== 'reading') return false;
  return isSure(got) || (got.why.length === 1 && got.why[0] === 'heard faintly');
}

export interface Point {
  readonly threshold: number;
  readonly sure: number;
  readonly wrong: number;
  readonly of: number;
}

/** What would be kept, and how much of it wrongly, if a number had to be heard with at least this confidence. */
export function pointAt(threshold: number, readings: readonly Judged[]): Point {
  const kept = readings.filter((j) => {
    const confidence = j.got.kind === 'reading' ? (j.got.confidence ?? 0) : 0;
    return sureButForConfidence(j) && confidence >= threshold;
  });
  const wrong = kept.filter((j) => outcomeOf(j.scene, j.got, true) === 'wrong').length;
  return { threshold, sure: kept.length, wrong, of: readings.length };
}

export function curveTable(readings: readonly Judged[], thresholds: readonly number[]): string {
  const rows = thresholds.map((threshold) => {
    const { sure, wrong, of } = pointAt(threshold, readings);
    return [threshold.toFixed(2), percent(share(sure, of)), percent(share(wrong, sure)), `${wrong} of ${sure}`];
  });
  return table([['confidence at least', 'share sure', 'wrong among sure', ''], ...rows]);
}
