/** Learns from the tuning voices how far a hearing can be believed. */
import { lessons, topIsRight } from './judge.ts';
import type { Heard } from './listen.ts';
import { fit } from './logistic.ts';
import type { Calibration } from './opinion.ts';
import { lossesOf } from './opinion.ts';
import type { Scene } from './scenes.ts';

const TEMPERATURES = [0.05, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2, 3];

/** Another sentence meant what was said, in a case where the first one did not. */
interface Second {
  readonly losses: readonly number[];
  /** Its place in the list, or -1 when none of the list was right. */
  readonly right: number;
}

const wanted = ({ truth }: Scene): string => {
  switch (truth.kind) {
    case 'reading':
      return `${truth.reading} ${truth.value}`;
    case 'command':
      return truth.command;
    case 'answer':
      return `answer ${truth.answer}`;
    case 'nothing':
      return 'nothing';
  }
};

function secondOf({ scene, hearing }: Heard): Second {
  const meant = wanted(scene);
  return { losses: lossesOf(hearing), right: hearing.sentences.slice(1).findIndex(({ meaning }) => meaning === meant) };
}

/** Mean logarithm of the share that the right one gets. */
function likelihood(seconds: readonly Second[], temperature: number): number {
  const logs = seconds.map(({ losses, right }) => {
    const shares = losses.map((loss) => Math.exp(-loss / temperature));
    return Math.log((shares[right] ?? 0) / shares.reduce((sum, s) => sum + s, 0) + 1e-6);
  });
  return logs.reduce((sum, x) => sum + x, 0) / Math.max(1, logs.length);
}

/** Chance of the top sentence, chance that the list holds the right one otherwise, and how a loss divides it. */
export function calibrate(heard: readonly Heard[]): Calibration {
  const missed = heard.filter(
    (h) => h.scene.truth.kind !== 'nothing' && h.hearing.sentences.length > 1 && !topIsRight(h),
  );
  const seconds = missed.map(secondOf);
  const found = seconds.filter(({ right }) => right >= 0);
  const temperature = TEMPERATURES.reduce((best, t) => (likelihood(found, t) > likelihood(found, best) ? t : best));
  return { model: fit(lessons(heard)), temperature, listed: found.length / Math.max(1, seconds.length) };
}
