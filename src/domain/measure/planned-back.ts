/** When to load and when to seat, planned back from the end of a material's working time. */
import { materialPhases } from './windows.ts';
import { known, type Measured } from './result.ts';
import type { Material } from '../protocol/types.ts';

/** Whole seconds from the start of mixing; none lies before the one above it. */
export interface PlannedBack {
  /** Mixed by, as the leaflet has it. */
  readonly mixByS: number;
  /** The tray loaded, at the patient. */
  readonly loadByS: number;
  /** In place and at rest. */
  readonly seatByS: number;
  /** Out of the mouth not before, as the leaflet has it. */
  readonly outFromS: number;
}

/** Seated so long before the working time ends, seconds (our choice): nobody seats to the second. */
const SEAT_MARGIN_S = 15;
/** From the loaded tray to the seated one, seconds (our choice): turn, draw back the cheek, bring it in, seat it. */
const CARRY_S = 20;
/** Neither may take more of the time between mixing and the end of working: a fast material leaves room for loading. */
const SHARE = 1 / 4;

/**
 * When a material must be on the tray and when the tray must be seated, counted back from the end of the working time of
 * its own leaflet; mixing and removal are the leaflet's. Seconds from the start of mixing (ISO 21563 counts working and
 * setting time from there), rounded down to the earlier second. Refuses what the leaflet's figures refuse. Source:
 * planned-back; the order of the acts is common practice, the two margins are our choice and no published figure.
 */
export function plannedBack(material: Material): Measured<PlannedBack> {
  const phases = materialPhases(material);
  if (!phases.ok) return phases;
  const { name, mixS, workingS, removeS, generic } = material;
  const most = (workingS - mixS) * SHARE;
  const seatBy = workingS - Math.min(SEAT_MARGIN_S, most);
  const loadBy = seatBy - Math.min(CARRY_S, most);
  const value = { mixByS: mixS, loadByS: Math.floor(loadBy), seatByS: Math.floor(seatBy), outFromS: removeS };
  const inputs = [name, generic ? 'generic figures, not the leaflet’s' : 'figures of the leaflet'];
  return known({ value, inputs, source: 'planned-back' });
}
