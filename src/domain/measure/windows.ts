/** Time windows of a material as pure functions of its leaflet's figures and of times given in milliseconds. */
import { badAmount, badNumber, badSize, firstBad } from './check.ts';
import { known, refuse, type Measured } from './result.ts';
import type { Material } from '../protocol/types.ts';

export type MaterialPhaseId = 'mix' | 'working' | 'inMouth' | 'pourFrom' | 'pourWithin';

export interface MaterialPhase {
  readonly id: MaterialPhaseId;
  /** What the seconds are counted from: start of mixing, or removal from the mouth. */
  readonly countedFrom: 'mix' | 'removal';
  readonly startS: number;
  readonly endS: number;
  /** When to warn that the end is near; working time only. */
  readonly warnS?: number;
}

/** Warning before the end of working time, seconds (our choice). */
const WARN_BEFORE_S = 15;

/**
 * The phases a material goes through by its own leaflet. Working and setting time count from the start of mixing, as the
 * standard defines them; pour times from removal. Seconds. Refuses figures that contradict each other (`inconsistent`):
 * mixing must end before working time does, working time before removal, waiting before the latest pour. Source: leaflet.
 */
export function materialPhases(material: Material): Measured<readonly MaterialPhase[]> {
  const { name, mixS, workingS, removeS, pourFromMin, pourWithinMin } = material;
  const bad = firstBad(
    badSize(mixS, `${name}: mixing time`),
    badSize(workingS, `${name}: working time`),
    badSize(removeS, `${name}: removal`),
    badAmount(pourFromMin, `${name}: earliest pour`),
    badSize(pourWithinMin, `${name}: latest pour`),
  );
  if (bad !== undefined) return bad;
  if (mixS >= workingS) return refuse('inconsistent', `${name}: mixing must end before the working time does.`);
  if (workingS >= removeS) return refuse('inconsistent', `${name}: working time must end before removal.`);
  if (pourFromMin >= pourWithinMin)
    return refuse('inconsistent', `${name}: the earliest pour must come before the latest.`);
  const value: MaterialPhase[] = [
    { id: 'mix', countedFrom: 'mix', startS: 0, endS: mixS },
    {
      id: 'working',
      countedFrom: 'mix',
      startS: mixS,
      endS: workingS,
      warnS: Math.max(mixS, workingS - WARN_BEFORE_S),
    },
    { id: 'inMouth', countedFrom: 'mix', startS: workingS, endS: removeS },
    { id: 'pourFrom', countedFrom: 'removal', startS: 0, endS: pourFromMin * 60 },
    { id: 'pourWithin', countedFrom: 'removal', startS: pourFromMin * 60, endS: pourWithinMin * 60 },
  ];
  const inputs = [name, material.generic ? 'generic figures, not the leaflet’s' : 'figures of the leaflet'];
  return known({ value, inputs, source: 'leaflet' });
}

export interface PourState {
  readonly state: 'wait' | 'pour' | 'soon' | 'expired';
  readonly fromMs: number;
  readonly dueMs: number;
  /** Until the latest pour; negative once it has passed. */
  readonly leftMs: number;
  readonly text: string;
}

export interface PourInput {
  /** Milliseconds on the same clock as `now`. */
  readonly removedAt: number;
  readonly now: number;
  readonly pourFromMin: number;
  readonly pourWithinMin: number;
}

/** Minutes before the latest pour from which it is called soon (our choice). */
const SOON_MIN = 5;
const MINUTE = 60_000;

/**
 * Where an impression stands between removal and pouring. Milliseconds on one clock, minutes for the limits. The last
 * instant still counts as in time. Refuses a time before removal and limits in the wrong order. Source: leaflet.
 */
export function pourState({ removedAt, now, pourFromMin, pourWithinMin }: PourInput): Measured<PourState> {
  const bad = firstBad(
    badNumber(removedAt, 'Time of removal'),
    badNumber(now, 'Time now'),
    badAmount(pourFromMin, 'Earliest pour'),
    badSize(pourWithinMin, 'Latest pour'),
  );
  if (bad !== undefined) return bad;
  if (now < removedAt) return refuse('inconsistent', 'The time now lies before removal.');
  if (pourFromMin >= pourWithinMin) return refuse('inconsistent', 'The earliest pour must come before the latest.');
  const [fromMs, dueMs] = [removedAt + pourFromMin * MINUTE, removedAt + pourWithinMin * MINUTE];
  const leftMs = dueMs - now;
  const state = now < fromMs ? 'wait' : leftMs < 0 ? 'expired' : leftMs <= SOON_MIN * MINUTE ? 'soon' : 'pour';
  const minutes = Math.floor(leftMs / MINUTE);
  const text = {
    wait: `Wait ${Math.ceil((fromMs - now) / MINUTE)} min before pouring.`,
    pour: `${minutes} min left to pour.`,
    soon: `${minutes} min left: pour now.`,
    expired: 'The time to pour has passed: take again, or note the risk.',
  }[state];
  const inputs = [`pour from ${pourFromMin} min`, `within ${pourWithinMin} min of removal`];
  return known({ value: { state, fromMs, dueMs, leftMs, text }, inputs, source: 'leaflet' });
}

export interface PourWindow {
  readonly fromMin: number;
  readonly withinMin: number;
  readonly bestWithinMin?: number;
  readonly note: string;
}

const DAY = 24 * 60;

/** Published or handbook pour windows by class, minutes after removal; the leaflet overrides. Source: pour-windows. */
export const POUR_WINDOWS: Readonly<Record<string, PourWindow>> = {
  alginate: {
    fromMin: 0,
    withinMin: 30,
    bestWithinMin: 10,
    note: 'Damp, sealed, not soaked and not wrapped in wet towels.',
  },
  'alginate-extended': {
    fromMin: 0,
    withinMin: 48 * 60,
    note: 'Maker’s limit; 48 to 100 h were tested, one of two products suited both short and long storage.',
  },
  'condensation-silicone': {
    fromMin: 0,
    withinMin: 30,
    note: 'As soon as possible; significant change by 30 min. Handbooks allow 60 min.',
  },
  'addition-silicone': {
    fromMin: 60,
    withinMin: 7 * DAY,
    note: 'Wait 30 to 60 min for gas. Studies disagree: stable to 24 h in one, differences at 2 to 12 h in another.',
  },
  polyether: {
    fromMin: 0,
    withinMin: 7 * DAY,
    note: 'Keep dry. Studies disagree: unchanged to 15 days in one, expanded in another.',
  },
  polysulfide: { fromMin: 0, withinMin: 60, note: 'Best at once.' },
  'zinc-oxide-eugenol': { fromMin: 0, withinMin: 8 * 60, note: 'Same day.' },
};

/** Pour window of a class of material where no leaflet is at hand, minutes after removal. Refuses an unknown class. Source: pour-windows. */
export function pourWindow(materialClass: string): Measured<PourWindow> {
  const value = Object.hasOwn(POUR_WINDOWS, materialClass) ? POUR_WINDOWS[materialClass] : undefined;
  if (value === undefined)
    return refuse(
      'unknown',
      `No pour window is known for “${materialClass}”; known: ${Object.keys(POUR_WINDOWS).join(', ')}.`,
    );
  return known({ value, inputs: [materialClass, 'the leaflet overrides'], source: 'pour-windows' });
}
