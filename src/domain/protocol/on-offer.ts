/** What a clock step lets be chosen. Apart from the visits themselves, so that asking it brings no visit along. */
import type { Disinfectant, Material, Practice, Step } from './types.ts';

/**
 * What the practice has for a step that runs a clock: materials of the step's classes (or named by their id) for an
 * impression; for a bath the disinfectants it names, or all of the practice's when it names none that the practice has.
 * Empty for every other kind of step. Source: the practice's lists and the protocol.
 */
export function onOffer(
  step: Step | undefined,
  practice: Pick<Practice, 'materials' | 'disinfectants'>,
): readonly (Material | Disinfectant)[] {
  if (step?.kind !== 'clock') return [];
  if (step.flow === 'timed') {
    const named = practice.disinfectants.filter((agent) => step.materials.includes(agent.id));
    return named.length > 0 ? named : practice.disinfectants;
  }
  return practice.materials.filter((m) => step.materials.includes(m.class) || step.materials.includes(m.id));
}
