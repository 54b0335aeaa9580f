/** Sections of the lab sheet, each from its own part of the summary. */
import { formatHundredths } from '../domain/measure/length.ts';
import { saidIn } from '../domain/summary/said.ts';
import type {
  ClockRow,
  ComputedRow,
  Flag,
  ReadingRow,
  SetRow,
  Summary,
  VerticalDimension,
} from '../domain/summary/types.ts';
import type { Block, NumberedLine, TableRow } from './sheet-model.types.ts';

/** A moment in words: the time, and the date too when it is another day than the visit's. */
export type Moment = (at: number) => string;

const NONE = 'none';

export const lines = (items: readonly string[]): Block => ({
  kind: 'lines',
  lines: items.length === 0 ? [NONE] : items,
});

/** "67.5", at most two decimals: for medians and spreads, which may leave the grid of hundredths. */
export const mm = (value: number): string => formatHundredths(Math.round(value * 100));

/** One decimal, always written: for what is computed and not known to the hundredth. */
export const tenths = (value: number): string => `${value < -0.049 ? '−' : ''}${Math.abs(value).toFixed(1)}`;

const withUnit = (row: Pick<ReadingRow, 'value' | 'unit'>) =>
  row.unit === '°' ? `${formatHundredths(row.value)}°` : `${formatHundredths(row.value)} ${row.unit}`;

/** The order to the bench, with the time by which each line is due. */
export function workBlock(summary: Summary, moment: Moment): Block {
  const numbered = summary.labWork.map((line): NumberedLine => {
    const by = line.at === undefined ? '' : ` By ${moment(line.at)}.`;
    return { text: `${line.text}${by}`, ...(line.detail === undefined ? {} : { detail: line.detail }) };
  });
  return numbered.length === 0 ? lines([]) : { kind: 'numbered', lines: numbered };
}

function stateOf(clock: ClockRow): string {
  if (clock.struck) return 'given up';
  if (clock.outAt === undefined) return 'not ended';
  const found = clock.findings.map((one) => FINDING[one.id]);
  if (found.length > 0) return found.join(', ');
  return clock.flow === 'timed' ? 'done' : 'kept';
}

const FINDING: Readonly<Record<ClockRow['findings'][number]['id'], string>> = {
  notSeated: 'seating not recorded',
  seatedLate: 'seated late',
  removedEarly: 'removed early',
  pourLate: 'poured late',
  disinfectShort: 'disinfected too short',
};

function dueOf(clock: ClockRow, moment: Moment): string {
  if (clock.takenAt !== undefined) return `poured or taken over ${moment(clock.takenAt)}`;
  const phase = (id: string) => clock.phases.find((one) => one.id === id)?.dueAt;
  const [from, until] = [phase('pourFrom'), phase('pourWithin')];
  if (until === undefined || clock.outAt === undefined || clock.struck) return '–';
  const verb = clock.clock === 'bite-record' ? 'use' : 'pour';
  return from === undefined ? `${verb} by ${moment(until)}` : `${verb} from ${moment(from)}, by ${moment(until)}`;
}

/** Impressions and baths: material, when each was in and out, and until when it may be poured. */
export function clockBlock(summary: Summary, moment: Moment): Block {
  if (summary.clocks.length === 0) return lines([]);
  const at = (value: number | undefined) => (value === undefined ? '–' : moment(value));
  const row = (clock: ClockRow): TableRow => ({
    cells: [
      `${clock.label}, attempt ${clock.attempt}`,
      clock.name,
      at(clock.startedAt),
      at(clock.seatedAt),
      at(clock.outAt),
      dueOf(clock, moment),
      stateOf(clock),
    ],
    ...(clock.struck ? { struck: true } : {}),
  });
  return {
    kind: 'table',
    caption: 'Impressions, records and disinfection',
    columns: ['What', 'Material', 'Started', 'Seated', 'Out', 'Pour', 'State'],
    shares: [0.26, 0.19, 0.08, 0.08, 0.07, 0.21, 0.11],
    rows: summary.clocks.map(row),
  };
}

const VERDICT: Readonly<Record<VerticalDimension['verdict'], string>> = {
  usual: 'within the usual teaching range of 2 to 4 mm',
  small: 'smaller than the usual teaching range of 2 to 4 mm',
  large: 'larger than the usual teaching range of 2 to 4 mm',
  impossible: 'not possible: the readings contradict each other',
  notYet: 'not measured',
};

const range = ([low, high]: readonly [number, number]) => `${tenths(low)} to ${tenths(high)} mm`;

function targetLines({ targetHeightMm, lab }: VerticalDimension): string[] {
  return [
    ...(targetHeightMm === undefined ? [] : [`Height wanted between the marks: ${tenths(targetHeightMm)} mm.`]),
    ...(lab === undefined
      ? []
      : [
          `${lab.text} Chin ${tenths(lab.chinMm)} mm, incisors ${range(lab.incisalMm)}, pin ${range(lab.pinMm)}, first molar ${range(lab.molarMm)} (minus closes).`,
        ]),
  ];
}

/** What was measured between one set of marks, in sentences. */
function measuredLines(vertical: VerticalDimension): string[] {
  const sets = [vertical.rest, vertical.closed, vertical.record].flatMap((set) => {
    if (set?.medianMm === undefined) return [];
    const median = `${set.label}: ${set.n === 1 ? '' : 'median '}${mm(set.medianMm)} mm`;
    return [
      set.n === 1 ? `${median}, one reading.` : `${median} of ${set.n} readings, spread ${mm(set.rangeMm ?? 0)} mm.`,
    ];
  });
  const give = vertical.uncertaintyMm === undefined ? '' : ` ± ${tenths(vertical.uncertaintyMm)}`;
  const space = vertical.restSpaceMm === undefined ? '' : `${tenths(vertical.restSpaceMm)}${give} mm, `;
  const verdict = vertical.doubt === undefined ? `${VERDICT[vertical.verdict]}.` : vertical.doubt;
  return [...sets, `Space between rest and closed: ${space}${verdict}`];
}

/** Later visits are mounted at the height that was kept; a wanted height would read like an order. */
export const keptAsMeasured = ({ vertical, visit }: Summary): boolean => visit > 1 && vertical.lab === undefined;

/** Heights of this visit in sentences, and what follows from them for the mounting. */
function heightLines(summary: Summary): string[] {
  const { vertical } = summary;
  if (keptAsMeasured(summary)) return measuredLines(vertical);
  const chosen = `chosen space ${tenths(vertical.targetSpaceMm)} mm`;
  return [
    ...measuredLines(vertical),
    `Record to be made at ${vertical.convention === 'rest' ? 'rest height' : 'rest height less the chosen space'}; ${chosen}.`,
    ...targetLines(vertical),
  ];
}

/** Heights of this visit and of earlier ones, each within its own marks; of earlier ones only what was measured. */
export function allHeightLines(summary: Summary): string[] {
  const earlier = summary.earlier.flatMap(({ visit, vertical }) =>
    vertical.rest === undefined && vertical.closed === undefined && vertical.record === undefined
      ? []
      : measuredLines(vertical).map((line) => `Earlier, ${visit}: ${line}`),
  );
  const marks = summary.vertical.markSet === '' ? 'this visit' : summary.vertical.markSet;
  return [
    ...heightLines(summary),
    ...earlier,
    `Heights are distances between the marks of ${marks} only; compare them with no others.`,
  ];
}

function suspectText(set: SetRow): string {
  return set.suspects
    .map(({ value, perhaps, why }) => {
      const meant = perhaps === undefined ? '' : `, perhaps ${formatHundredths(perhaps)}`;
      return `${formatHundredths(value)} stands apart${meant}: ${why}`;
    })
    .join(' ');
}

/** Repeated readings with their spread, and what stands apart. */
export function setBlocks(summary: Summary): Block[] {
  if (summary.sets.length === 0) return [];
  const row = (set: SetRow): TableRow => ({
    cells: [
      set.label,
      `${set.markSet}${set.bases === undefined ? '' : `; bases in the mouth: ${set.bases}`}`,
      set.values.map(formatHundredths).join(', '),
      set.medianMm === undefined ? '–' : `${mm(set.medianMm)} mm`,
      set.rangeMm === undefined || set.n < 2 ? '–' : `${mm(set.rangeMm)} mm`,
      suspectText(set) || '–',
    ],
  });
  return [
    {
      kind: 'table',
      caption: 'Repeated readings',
      columns: ['What', 'Between', 'Readings, mm', 'Median', 'Spread', 'Stands apart'],
      shares: [0.17, 0.31, 0.18, 0.1, 0.08, 0.16],
      rows: summary.sets.map(row),
    },
  ];
}

const STRUCK = { corrected: 'corrected', undone: 'taken back', newAttempt: 'new attempt' } as const;

/** Every kept reading, struck ones marked in words. */
export function readingBlock(summary: Summary, moment: Moment): Block {
  if (summary.readings.length === 0) return lines([]);
  const row = (reading: ReadingRow): TableRow => {
    const { struck } = reading;
    const heard = reading.source === 'voice' ? `voice “${reading.text}”` : reading.source;
    const note = struck === undefined ? '' : `; struck: ${STRUCK[struck.why]} ${moment(struck.at)}`;
    return {
      cells: [moment(reading.at), reading.label, withUnit(reading), `${heard}${note}`],
      ...(struck === undefined ? {} : { struck: true }),
    };
  };
  return {
    kind: 'table',
    caption: 'All readings in the order kept',
    columns: ['When', 'What', 'Value', 'How'],
    shares: [0.12, 0.33, 0.14, 0.41],
    rows: summary.readings.map(row),
  };
}

/** Values computed from readings, each with whose rule it follows; those of `told` stand in a section of their own. */
export function computedBlock(summary: Summary, told: (row: ComputedRow) => boolean): Block {
  const computed = summary.computed.filter((row) => !told(row));
  if (computed.length === 0) return lines(summary.computed.length === 0 ? [] : ['Nothing but what stands above.']);
  return {
    kind: 'table',
    caption: 'Computed values',
    columns: ['What', 'Value', 'By whose rule'],
    shares: [0.17, 0.29, 0.54],
    rows: computed.map((row) => ({ cells: [row.label, row.text, `${row.source} (${row.sourceStatus})`] })),
  };
}

function answerOf(flag: Flag, moment: Moment): string {
  if (flag.answer === undefined) return 'not answered';
  const { answer, reason, at } = flag.answer;
  return answer === 'keep' ? `kept ${moment(at)}: ${reason}` : `to be measured again (${moment(at)})`;
}

/** What does not agree, why, and how it was answered. */
export function flagBlock(summary: Summary, moment: Moment): Block {
  if (summary.flags.length === 0) return lines([]);
  return {
    kind: 'table',
    caption: 'What does not agree, and the answers',
    columns: ['What', 'Why it matters', 'Answer'],
    shares: [0.4, 0.34, 0.26],
    rows: summary.flags.map((flag) => ({ cells: [flag.what, flag.why, answerOf(flag, moment)] })),
  };
}

/** Answers other than the hoped-for one, notes, and what was passed over. */
export function findingBlocks(summary: Summary, moment: Moment): Block[] {
  const said = saidIn(summary);
  const written = (note: Summary['notes'][number]) => `Note ${moment(note.at)}: “${note.text}”`;
  const answers = said.answers
    .filter(({ row }) => row.tone !== 'good' || row.reason !== undefined)
    .map(({ row, notes: meant }) => {
      const answer = meant.length === 0 ? row.answer : meant.map(written).join('; ');
      return `${row.question}: ${answer}${row.reason === undefined ? '' : ` (${row.reason})`}`;
    });
  const notes = said.notes.map(written);
  const skips = summary.skips.map((skip) => `Passed over: ${skip.title} (${skip.reason})`);
  return [lines([...answers, ...notes, ...skips])];
}

/** Who signed, when, and what was overruled. */
export function signedLines(summary: Summary, moment: Moment): string[] {
  if (summary.signed.length === 0) return ['Not signed.'];
  return summary.signed.map(({ role, initials, at, overruled }) => {
    const over = overruled === undefined ? '' : `; open items overruled: ${overruled}`;
    return `${role} ${initials}, ${moment(at)}${over}`;
  });
}
