/** What does not agree among tracings and scores. */
import { formatHundredths } from '../measure/length.ts';
import type { Rule } from './flags.ts';
import type { TracingView } from './decided.types.ts';
import { mmText } from './latest.ts';
import type { Flag } from './types.ts';

const NAMES = { 1: 'first', 2: 'second', 3: 'third' } as const;
const READY = 'tracing-ready';

function scatterFlags({ apexes, scatter }: TracingView): readonly Flag[] {
  if (scatter === undefined || scatter.verdict === 'accept') return [];
  const repeat = scatter.verdict === 'repeat';
  return [
    {
      id: `tracing-scatter:${scatter.largestPairMm.toFixed(2)}mm:n${apexes.length}`,
      level: 'disagrees',
      what: `The points of ${apexes.length} tracings lie up to ${mmText(scatter.largestPairMm)} apart; up to 0.5 mm is accepted.`,
      why: 'The point is taken for the place of the jaw: points this far apart are two places.',
      todo: repeat
        ? 'Make one more tracing and read it again, or keep with a reason.'
        : 'Make the tracings again: plates, height and stability first.',
      step: READY,
    },
  ];
}

function bluntFlags({ apexes }: TracingView): readonly Flag[] {
  return apexes
    .filter((apex) => apex.sharp === false)
    .map((apex) => ({
      id: `tracing-blunt:${apex.n}`,
      level: 'look',
      what: `The ${NAMES[apex.n]} tracing was called blunt or double, and its point was read all the same.`,
      why: 'A blunt or double point has no one place to be read from.',
      todo: 'Make this tracing again, or keep with a reason.',
      step: `tracing-${apex.n}-sharp`,
    }));
}

const ANGLES = {
  sharp: ['under 90°', 'Check that the side paths were drawn to the end.'],
  wide: ['over 140°', 'Look at the point: is it sharp?'],
  blunt: ['over 150°', 'Look at the point; a tracing as flat as this is made again.'],
} as const;

function angleFlags({ arch }: TracingView): readonly Flag[] {
  if (arch === undefined) return [];
  const angle = `${arch.angleDeg.toFixed(0)}°`;
  const odd = arch.verdict === 'usual' ? undefined : ANGLES[arch.verdict];
  const uneven = `legs ${arch.rightDeg.toFixed(0)}° right, ${arch.leftDeg.toFixed(0)}° left`;
  const flags: Flag[] = [];
  if (odd !== undefined)
    flags.push({
      id: `tracing-angle:${angle}`,
      level: 'look',
      what: `The legs of the tracing meet at ${angle}, ${odd[0]}; 90 to 140° is usual.`,
      why: 'The angle says nothing about the joint; it shows whether the tracing was drawn out.',
      todo: odd[1],
      step: READY,
    });
  if (arch.asymmetric)
    flags.push({
      id: `tracing-uneven:${arch.asymmetryDeg.toFixed(0)}°`,
      level: 'look',
      what: `The tracing is uneven: ${uneven} to the midline, over 10° apart.`,
      why: 'Uneven legs come from a stop on one side, a tilted plate or a short path.',
      todo: 'Check that the plates are clear of each other, then look at the paths.',
      step: READY,
    });
  return flags;
}

/** Tracings whose points or legs ask for another look. Limits as in the tracing itself. */
export const tracingFlags: Rule = ({ decided }) => {
  const { tracing } = decided;
  return tracing === undefined ? [] : [...scatterFlags(tracing), ...bluntFlags(tracing), ...angleFlags(tracing)];
};

/** Scores are whole numbers; a half one enters no sum. */
export const halfScores: Rule = ({ rows }) =>
  rows
    .filter((row) => row.struck === undefined && row.unit === 'points' && row.value % 100 !== 0)
    .map((row) => ({
      id: `score:${row.seq}`,
      level: 'disagrees',
      what: `${row.label}: ${formatHundredths(row.value)} is no whole score.`,
      why: 'The scale knows whole numbers only; a half one enters no sum.',
      todo: 'Decide for one of the two and say it again.',
      step: row.step,
    }));
