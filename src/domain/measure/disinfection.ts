/** Disinfection of impressions before they leave the room, and soaking of dentures. The leaflet and local rules override. */
import { badAmount, badSize } from './check.ts';
import { known, refuse, type Measured } from './result.ts';

export type AgentKind = 'hypochlorite' | 'iodophor' | 'glutaraldehyde';

export interface DisinfectionWindow {
  /** Longest exposure, minutes. */
  readonly atMostMin: number;
  readonly agents: readonly AgentKind[];
  readonly note: string;
}

const ALL: readonly AgentKind[] = ['hypochlorite', 'iodophor', 'glutaraldehyde'];

/** By class of material; minutes. Source: disinfection. */
export const DISINFECTION: Readonly<Record<string, DisinfectionWindow>> = {
  alginate: {
    atMostMin: 10,
    agents: ALL,
    note: 'Rinse first; a rinse alone left about half of the count. 5 to 10 min were studied.',
  },
  'addition-silicone': {
    atMostMin: 30,
    agents: ALL,
    note: '10 min exposures were studied; 30 min is a handbook limit.',
  },
  polyether: {
    atMostMin: 10,
    agents: ALL,
    note: 'Short. The 10 min limit is widely repeated; no primary source was found.',
  },
  'zinc-oxide-eugenol': { atMostMin: 10, agents: ['iodophor', 'glutaraldehyde'], note: 'Chlorine is unsuitable.' },
  compound: { atMostMin: 30, agents: ['hypochlorite', 'iodophor'], note: 'Handbook; no study seen.' },
};

export interface DisinfectionCheck {
  readonly verdict: 'fits' | 'tooShort' | 'tooLong' | 'wrongAgent';
  readonly text: string;
}

export interface DisinfectionInput {
  readonly materialClass: string;
  readonly agent: AgentKind;
  readonly minutes: number;
  /** Contact time on the agent's own label, minutes. */
  readonly labelMinutes: number;
}

/**
 * Whether an exposure reaches the agent's label time and stays within what the material bears. Minutes. Refuses unknown
 * materials and agents and what is no time. The agent's label decides the lower end. Source: disinfection.
 */
export function disinfectionCheck({
  materialClass,
  agent,
  minutes,
  labelMinutes,
}: DisinfectionInput): Measured<DisinfectionCheck> {
  const window = Object.hasOwn(DISINFECTION, materialClass) ? DISINFECTION[materialClass] : undefined;
  if (window === undefined)
    return refuse(
      'unknown',
      `No window is known for “${materialClass}”; known: ${Object.keys(DISINFECTION).join(', ')}.`,
    );
  if (!ALL.includes(agent)) return refuse('unknown', `“${agent}” is no agent; known: ${ALL.join(', ')}.`);
  const bad = badAmount(minutes, 'Minutes') ?? badSize(labelMinutes, 'Label time');
  if (bad !== undefined) return bad;
  const inputs = [materialClass, agent, `${minutes} min`, `label ${labelMinutes} min`];
  const say = (verdict: DisinfectionCheck['verdict'], text: string) =>
    known({ value: { verdict, text }, inputs, source: 'disinfection' });
  if (!window.agents.includes(agent))
    return say('wrongAgent', `${agent} does not suit ${materialClass}: ${window.note}`);
  if (minutes < labelMinutes) return say('tooShort', `The label asks for ${labelMinutes} min.`);
  if (minutes > window.atMostMin)
    return say('tooLong', `More than ${window.atMostMin} min may change ${materialClass}. ${window.note}`);
  return say('fits', `Label time reached, within ${window.atMostMin} min. ${window.note}`);
}

export interface DisinfectionNote {
  readonly agent?: string | null;
  readonly concentration?: string | null;
  readonly minutes?: number | null;
  readonly byWhom?: string | null;
}

export interface LabRelease {
  readonly release: boolean;
  readonly missing: readonly string[];
}

/**
 * An impression goes to the lab only with agent, concentration, minutes and name on record. Says what is missing.
 * Refuses minutes that are no time. Source: disinfection (the lab is told what was done).
 */
export function labRelease(note: DisinfectionNote): Measured<LabRelease> {
  if (note.minutes !== undefined && note.minutes !== null) {
    const bad = badSize(note.minutes, 'Minutes');
    if (bad !== undefined) return bad;
  }
  const empty = (value: unknown) =>
    value === undefined || value === null || (typeof value === 'string' && value.trim() === '');
  const fields = ['agent', 'concentration', 'minutes', 'byWhom'] as const;
  const missing = fields.filter((field) => empty(note[field]));
  const inputs = fields.filter((field) => !missing.includes(field));
  return known({ value: { release: missing.length === 0, missing }, inputs, source: 'disinfection' });
}

/** Longest soak of a denture in hypochlorite, minutes. Source: denture-soak. */
const SOAK_LIMIT_MIN = 10;

export interface SoakAdvice {
  readonly warn: boolean;
  readonly text: string;
}

/** Soaking or storing a denture: hypochlorite at most 10 min, never stored dry. Minutes. Source: denture-soak. */
export function dentureSoak(how: 'hypochlorite' | 'water' | 'dry', minutes: number): Measured<SoakAdvice> {
  if (!['hypochlorite', 'water', 'dry'].includes(how))
    return refuse('unknown', `“${how}” is not hypochlorite, water or dry.`);
  const bad = badAmount(minutes, 'Minutes');
  if (bad !== undefined) return bad;
  const tooLong = how === 'hypochlorite' && minutes > SOAK_LIMIT_MIN;
  const warn = tooLong || how === 'dry';
  const text = tooLong
    ? `Longer than ${SOAK_LIMIT_MIN} min in hypochlorite may harm the denture.`
    : how === 'dry'
      ? 'A denture out of the mouth is kept in water, not dry.'
      : 'Within the guideline. Rinse well before it goes back in.';
  return known({ value: { warn, text }, inputs: [how, `${minutes} min`], source: 'denture-soak' });
}
