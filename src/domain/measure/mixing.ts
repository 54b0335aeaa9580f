/** Powder, water and temperature of alginate: warnings beside the leaflet's clock, never a clock of their own. */
import { badNumber, badSize, badWithin, firstBad } from './check.ts';
import { known, refuse, type Measured } from './result.ts';
import type { SourceId } from './sources.ts';

/** Off the leaflet by this share of the powder to water ratio is warned (our choice). */
const RATIO_LIMIT = 0.05;
/** Off the leaflet's temperature by this many degrees is warned (our choice). */
const TEMPERATURE_LIMIT = 3;

export interface Mix {
  readonly powderG: number;
  readonly waterMl: number;
}

export interface RatioCheck {
  /** Powder per water, g/ml. */
  readonly ratio: number;
  readonly leafletRatio: number;
  /** ratio / leaflet − 1: +0.11 means 11 % thicker. */
  readonly off: number;
  readonly warn: boolean;
  readonly text: string;
}

function badMix(mix: Mix, name: string) {
  return firstBad(badSize(mix.powderG, `${name}: powder`), badSize(mix.waterMl, `${name}: water`));
}

/** Powder to water ratio, g/ml. Refuses what is no amount above zero. Source: leaflet. */
export function mixRatio(mix: Mix): Measured<number> {
  const bad = badMix(mix, 'Mix');
  if (bad !== undefined) return bad;
  return known({
    value: mix.powderG / mix.waterMl,
    inputs: [`${mix.powderG} g`, `${mix.waterMl} ml`],
    source: 'leaflet',
  });
}

/**
 * A mix against the leaflet's; warned beyond 5 %. Thicker: shorter working time, poorer flow and detail; too much or too
 * little water weakens the gel. No published figure for how much shorter was found, so none is given. Grams and
 * millilitres. Source: ratio-limit.
 */
export function ratioCheck(mix: Mix, leaflet: Mix): Measured<RatioCheck> {
  const bad = firstBad(badMix(mix, 'Mix'), badMix(leaflet, 'Leaflet'));
  if (bad !== undefined) return bad;
  const ratio = mix.powderG / mix.waterMl;
  const leafletRatio = leaflet.powderG / leaflet.waterMl;
  const off = ratio / leafletRatio - 1;
  const warn = Math.abs(off) > RATIO_LIMIT + 1e-9;
  const percent = `${Math.abs(off * 100).toFixed(0)} %`;
  const text = !warn
    ? 'Within 5 % of the leaflet.'
    : off > 0
      ? `${percent} thicker than the leaflet: less time to work, poorer flow and detail.`
      : `${percent} thinner than the leaflet: a weaker impression.`;
  const inputs = [`${mix.powderG} g : ${mix.waterMl} ml`, `leaflet ${leaflet.powderG} g : ${leaflet.waterMl} ml`];
  return known({ value: { ratio, leafletRatio, off, warn, text }, inputs, source: 'ratio-limit' });
}

export interface MixPlan extends Mix {
  readonly ratio: number;
  /** Ratio against the leaflet's, as in RatioCheck. */
  readonly off: number;
  readonly text: string;
}

export interface MixOrder {
  readonly leaflet: Mix;
  /** How many times the leaflet's powder; 1 unless said. */
  readonly portions?: number;
  /** Water taken away as a share of the leaflet's, 0 to 0.5: 0.1 for a mix with 10 % less water. */
  readonly lessWater?: number;
}

/**
 * Powder and water for a number of leaflet portions, with less water for a stiffer mix. Grams and millilitres. Refuses
 * amounts of zero or less and more than half the water taken away. Source: leaflet; the reduction is the clinician's.
 */
export function mixPlan({ leaflet, portions = 1, lessWater = 0 }: MixOrder): Measured<MixPlan> {
  const bad = firstBad(
    badMix(leaflet, 'Leaflet'),
    badSize(portions, 'Portions'),
    badWithin(lessWater, 'Share of water taken away', [0, 0.5]),
  );
  if (bad !== undefined) return bad;
  const mix = { powderG: leaflet.powderG * portions, waterMl: leaflet.waterMl * portions * (1 - lessWater) };
  const checked = ratioCheck(mix, leaflet);
  if (!checked.ok) return checked;
  const { ratio, off, text } = checked.value;
  const inputs = [
    `leaflet ${leaflet.powderG} g : ${leaflet.waterMl} ml`,
    `${portions} portions`,
    `${lessWater * 100} % less water`,
  ];
  return known({ value: { ...mix, ratio, off, text }, inputs, source: 'leaflet' });
}

export interface TemperatureStudy {
  readonly id: string;
  readonly source: SourceId;
  /** Degrees and seconds to set, as published. */
  readonly points: readonly (readonly [number, number])[];
}

/** Setting time by temperature in three published studies; seconds. */
export const TEMPERATURE_STUDIES: readonly TemperatureStudy[] = [
  {
    id: 'room, regular',
    source: 'alginate-room-temperature',
    points: [
      [23, 149.6],
      [31, 96.4],
    ],
  },
  {
    id: 'room, fast',
    source: 'alginate-room-temperature',
    points: [
      [23, 122],
      [31, 69.6],
    ],
  },
  {
    id: 'water',
    source: 'alginate-water-temperature',
    points: [
      [13, 119.4],
      [28, 87],
    ],
  },
  {
    id: 'wide',
    source: 'alginate-wide-temperature',
    points: [
      [7, 5.56 * 60],
      [19.5, 3.78 * 60],
      [45, 2.39 * 60],
    ],
  },
];

/** Seconds a degree between neighbouring points of a study; negative: warmer sets faster. */
export function studySlopes({ points }: TemperatureStudy): readonly number[] {
  return points.slice(1).map(([degrees, seconds], i) => {
    const [before, then] = points[i]!;
    return (seconds - then) / (degrees - before);
  });
}

/** Regression lines as printed, seconds = a − b·°C, room 23 to 31 °C. Source: alginate-room-temperature. */
const ROOM_LINES = { regular: { a: 257.6, b: 5.5 }, fast: { a: 237.7, b: 5.6 } } as const;

/**
 * Setting time of the studied alginates by room temperature, seconds, from the regression as printed. For a sense of
 * size only: it under-reads the study's own end points. Refuses temperatures outside 15 to 35 °C. Source:
 * alginate-room-temperature.
 */
export function roomSetting(kind: 'regular' | 'fast', degrees: number): Measured<number> {
  const line = Object.hasOwn(ROOM_LINES, kind) ? ROOM_LINES[kind] : undefined;
  if (line === undefined) return refuse('unknown', `“${kind}” is not regular or fast.`);
  const bad = badWithin(degrees, 'Temperature', [15, 35]);
  if (bad !== undefined) return bad;
  const beyond = degrees < 23 || degrees > 31 ? ['outside the studied 23 to 31 °C'] : [];
  return known({
    value: line.a - line.b * degrees,
    inputs: [kind, `${degrees} °C`, ...beyond],
    source: 'alginate-room-temperature',
  });
}

export interface TemperatureCheck {
  /** Water temperature less the leaflet's, °C. */
  readonly offC: number;
  readonly warn: boolean;
  /** Change of the setting time that the studies' smallest and largest slope would give, seconds, low to high. */
  readonly shiftS: readonly [number, number];
  readonly text: string;
}

/**
 * Water temperature against the leaflet's: warned from 3 °C off. The shift in seconds spans the slopes of three studies
 * and is a warning, never added to a clock. Degrees Celsius, 0 to 60. Sources: temperature-limit and the studies.
 */
export function temperatureCheck(waterC: number, leafletC: number): Measured<TemperatureCheck> {
  const bad = firstBad(
    badWithin(waterC, 'Water temperature', [0, 60]),
    badWithin(leafletC, 'Leaflet temperature', [0, 60]),
    badNumber(waterC - leafletC, 'Difference'),
  );
  if (bad !== undefined) return bad;
  const offC = waterC - leafletC;
  const slopes = TEMPERATURE_STUDIES.flatMap(studySlopes);
  const ends = [Math.min(...slopes) * offC, Math.max(...slopes) * offC].toSorted((a, b) => a - b);
  const shiftS = [ends[0]!, ends[1]!] as const;
  const warn = Math.abs(offC) >= TEMPERATURE_LIMIT - 1e-9;
  const size = shiftS.map((s) => Math.abs(s)).toSorted((a, b) => a - b);
  const text = warn
    ? `Sets ${offC > 0 ? 'faster' : 'slower'} than the leaflet: ${size[0]!.toFixed(0)} to ${size[1]!.toFixed(0)} s in three studies.`
    : 'Within 3 °C of the leaflet.';
  const inputs = [`water ${waterC} °C`, `leaflet ${leafletC} °C`];
  return known({ value: { offC, warn, shiftS, text }, inputs, source: 'temperature-limit' });
}
