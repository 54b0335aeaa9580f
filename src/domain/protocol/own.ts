/** The practice's own wording and ranges, laid over the protocol and the readings it works with. */
import { answersOf } from './validate.ts';
import type { Practice, ReadingDef, Step, VisitProtocol } from './types.ts';

type Own = Pick<Practice, 'cautions'>;

function worded(step: Step, cautions: Readonly<Record<string, string>>): Step {
  const caution = cautions[step.id] ?? step.caution;
  const own = caution === undefined ? step : { ...step, caution };
  if (own.kind !== 'check' && own.kind !== 'decision') return own;
  const answers = own.answers.map((answer) => {
    const said = cautions[`${step.id}:${answer.id}`];
    return said === undefined ? answer : { ...answer, caution: said };
  });
  return { ...own, answers };
}

/** The protocol with the practice's wording of cautions; the same protocol where it has none. Nothing else changes. */
export function withOwnCautions(protocol: VisitProtocol, { cautions }: Own): VisitProtocol {
  if (cautions === undefined || Object.keys(cautions).length === 0) return protocol;
  return { ...protocol, steps: protocol.steps.map((step) => worded(step, cautions)) };
}

/** Keys under which a protocol's cautions may be worded anew, with the words that stand now. */
export function cautionsIn(protocol: VisitProtocol): Readonly<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const step of protocol.steps) {
    if (step.caution !== undefined) found[step.id] = step.caution;
    for (const answer of answersOf(step))
      if (answer.caution !== undefined) found[`${step.id}:${answer.id}`] = answer.caution;
  }
  return found;
}

/** A caution that may be worded anew. */
export interface CautionPlace {
  /** "STEP" or "STEP:ANSWER". */
  readonly key: string;
  /** "Make two marks", "Ask for changes: Something changed". */
  readonly where: string;
  /** As the visits have it. */
  readonly words: string;
  /** Visits in which it stands; one wording holds in all of them. */
  readonly visits: readonly number[];
}

function placesIn({ steps, visit }: VisitProtocol): readonly CautionPlace[] {
  return steps.flatMap((step) => [
    ...(step.caution === undefined ? [] : [{ key: step.id, where: step.title, words: step.caution, visits: [visit] }]),
    ...answersOf(step).flatMap((answer) =>
      answer.caution === undefined
        ? []
        : [
            {
              key: `${step.id}:${answer.id}`,
              where: `${step.title}${/[.?]$/.test(step.title) ? '' : ':'} ${answer.label}`,
              words: answer.caution,
              visits: [visit],
            },
          ],
    ),
  ]);
}

/** Every caution of these visits, once each, in the order in which they first stand. */
export function cautionPlaces(protocols: readonly VisitProtocol[]): readonly CautionPlace[] {
  const places = new Map<string, CautionPlace>();
  for (const place of protocols.flatMap(placesIn)) {
    const known = places.get(place.key);
    places.set(place.key, known === undefined ? place : { ...known, visits: [...known.visits, ...place.visits] });
  }
  return [...places.values()];
}

/** Clocks that nothing could be started at any more with these materials and disinfectants, one sentence each. */
export function clocksWithout(
  protocols: readonly VisitProtocol[],
  { materials, disinfectants }: Pick<Practice, 'materials' | 'disinfectants'>,
): readonly string[] {
  const classes = new Set(materials.map((material) => material.class));
  const agents = new Set(disinfectants.map((agent) => agent.id));
  return protocols.flatMap(({ steps, visit }) =>
    steps.flatMap((step) => {
      if (step.kind !== 'clock') return [];
      const timed = step.flow === 'timed';
      const left = timed
        ? step.materials.length === 0
          ? agents.size > 0
          : step.materials.some((id) => agents.has(id))
        : step.materials.some((name) => classes.has(name));
      if (left) return [];
      return [`No ${timed ? 'disinfectant' : 'material'} would be left for “${step.title}”, visit ${visit}.`];
    }),
  );
}

/** Readings with the practice's own ranges (hundredths of each unit); units, names and sets stay as they are. */
export function withOwnRanges(
  readings: readonly ReadingDef[],
  { ranges }: Pick<Practice, 'ranges'>,
): readonly ReadingDef[] {
  if (ranges === undefined || Object.keys(ranges).length === 0) return readings;
  return readings.map((def) => {
    const own = ranges[def.id];
    return own === undefined ? def : { ...def, ...own, source: `The practice's own range. ${def.source}` };
  });
}
