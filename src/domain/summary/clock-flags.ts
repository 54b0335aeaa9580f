/** Rules about materials on the clock: phases missed, water off the leaflet, lots out of date. */
import { dayOf, printDay } from '../measure/calendar.ts';
import { temperatureCheck } from '../measure/mixing.ts';
import { isExpired, lotText } from '../protocol/lots.ts';
import { formatHundredths, toMm } from '../measure/length.ts';
import type { Rule } from './flags.ts';
import type { ClockRow, Flag } from './types.ts';

/** "4:05" */
function minutes(ms: number): string {
  const seconds = Math.round(ms / 1000);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

const CLOCK_WORDS: Readonly<Record<ClockRow['findings'][number]['id'], readonly [string, string, string]>> = {
  notSeated: [
    'out of the mouth, but no moment of seating is on record',
    'Whether it was seated within the working time cannot be said.',
    'Take again if in doubt, or keep with a reason.',
  ],
  seatedLate: [
    'seated after the working time had ended, by',
    'The material was already setting: borders and detail may be drawn or folded.',
    'Look at the impression with this in mind; take again if in doubt.',
  ],
  removedEarly: [
    'removed before the set time of the leaflet, by',
    'Not fully set: the impression may be distorted though it looks whole.',
    'Take again, or keep with a reason; tell the lab.',
  ],
  pourLate: [
    'not yet poured within its time, over by',
    'The impression changes size the longer it waits.',
    'Pour at once and check, take again, or keep with a reason.',
  ],
  disinfectShort: [
    'taken out of the disinfectant early, by',
    'The time on the label is the shortest that disinfects.',
    'Put it back for the full time.',
  ],
};

/** What is said of a late pour depends on whether it is still waiting. */
function findingWords(clock: ClockRow, id: ClockRow['findings'][number]['id']): readonly [string, string, string] {
  if (id !== 'pourLate' || clock.takenAt === undefined) return CLOCK_WORDS[id];
  const [, why] = CLOCK_WORDS.pourLate;
  return [
    'poured or taken over after its time, late by',
    why,
    'Check the cast with this in mind, or keep with a reason.',
  ];
}

/** Findings of the clocks, each with its time. */
export const clockFindings: Rule = ({ clocks }) =>
  clocks.flatMap((clock) =>
    clock.findings.map((finding): Flag => {
      const [what, why, todo] = findingWords(clock, finding.id);
      const by = finding.id === 'notSeated' ? '.' : ` ${minutes(finding.byMs)} min.`;
      return {
        id: `clock:${clock.id}:${finding.id}`,
        // A given-up attempt is only looked back on; nothing has to be answered for it.
        level: clock.struck ? 'look' : 'disagrees',
        ...(clock.struck ? { settled: true } : {}),
        what: `${clock.label}, attempt ${clock.attempt} (${clock.name}): ${what}${by}`,
        why,
        todo,
      };
    }),
  );

/** The water of the mix against the temperature that the leaflet's times are given for. */
export const waterTemperature: Rule = ({ rows, clocks }) =>
  clocks.flatMap((clock): Flag[] => {
    const wanted = clock.material?.waterC;
    const read = rows.findLast(
      (row) => row.reading === 'water-temperature' && row.struck === undefined && row.at <= clock.startedAt,
    );
    if (wanted === undefined || read === undefined || clock.struck) return [];
    const check = temperatureCheck(toMm(read.value), wanted);
    if (!check.ok || !check.value.warn) return [];
    return [
      {
        id: `water:${clock.id}`,
        level: 'look',
        what: `${clock.label}: water at ${formatHundredths(read.value)} °C, the leaflet's times are for ${wanted} °C.`,
        why: `${check.value.text} The clock still counts by the leaflet.`,
        todo: 'Watch the material itself; use water at the temperature of the leaflet next time.',
      },
    ];
  });

/**
 * A lot past its last day when it was mixed. Lot and day travel in the entry, so a later package or another time zone
 * changes nothing; entries from before the day was written are judged by the universal day.
 */
export const expiredLots: Rule = ({ clocks }) =>
  clocks.flatMap((clock): Flag[] => {
    const { material, startedAt, day, struck } = clock;
    if (material === undefined || struck || !isExpired(material, day ?? printDay(dayOf(startedAt)))) return [];
    return [
      {
        id: `expired:${clock.id}`,
        level: 'disagrees',
        what: `${clock.label}, attempt ${clock.attempt} (${clock.name}): ${lotText(material)}; that day had passed.`,
        why: 'The leaflet promises its times and its accuracy only until the last day of use.',
        todo: 'Take it again from a package in date, or keep it with a reason.',
      },
    ];
  });
