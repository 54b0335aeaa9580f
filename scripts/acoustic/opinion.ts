/** From what the recogniser heard to what a browser's recogniser would hand over: alternatives with confidence. */
import type { Alternative, Expectation } from '../../src/interpret/types.ts';
import { cluesOf } from './clues.ts';
import { fitOf } from './hearing.ts';
import type { Hearing } from './hearing.ts';
import { chanceOf } from './logistic.ts';
import type { Model } from './logistic.ts';

/** What was learnt on the tuning voices. */
export interface Calibration {
  /** The chance that the first sentence means what was said. */
  readonly model: Model;
  /** A loss of one of these, in thousands, divides an alternative's share of the rest by e. */
  readonly temperature: number;
  /** How often one of the others is right when the first one is not. */
  readonly listed: number;
}

const LEAST = 0.001;
const rounded = (x: number): number => Math.max(LEAST, Math.round(x * 1000) / 1000);

/** What each of the other sentences loses against the first, in thousands. */
export function lossesOf({ sentences }: Hearing): readonly number[] {
  const [top, ...others] = sentences;
  return top === undefined ? [] : others.map((other) => fitOf(top) - fitOf(other));
}

/** First one first. Its confidence is the chance that it is right; the others share what is left by how little they lose. */
export function alternativesOf(
  { hearing, scene }: { readonly hearing: Hearing; readonly scene: { readonly expectation: Expectation } },
  { model, temperature, listed }: Calibration,
): readonly Alternative[] {
  const clues = cluesOf(hearing, scene.expectation);
  const [top, ...others] = hearing.sentences;
  if (clues === undefined || top === undefined) return [];
  const confidence = chanceOf(clues, model);
  const shares = lossesOf(hearing).map((loss) => Math.exp(-loss / temperature));
  const all = shares.reduce((sum, share) => sum + share, 0);
  return [
    { transcript: top.text, confidence: rounded(confidence) },
    ...others.map(({ text }, i) => ({
      transcript: text,
      confidence: rounded(((1 - confidence) * listed * (shares[i] ?? 0)) / all),
    })),
  ];
}
