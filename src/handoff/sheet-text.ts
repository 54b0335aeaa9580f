/** The lab sheet as plain text, from the summary alone. */
import { formatHundredths } from '../domain/measure/length.ts';
import type { ClockRow, ReadingRow, Summary } from '../domain/summary/types.ts';

export interface SheetOptions {
  /** IANA name; times on the sheet are in this zone. */
  readonly timeZone: string;
}

type Print = (at: number) => string;

const rule = (title: string) => ['', title.toUpperCase(), '-'.repeat(title.length)];

function clockPrinter(timeZone: string): Print {
  const format = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  return (at) => format.format(at);
}

function datePrinter(timeZone: string): Print {
  const format = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  return (at) => format.format(at);
}

function readingLine(row: ReadingRow, time: Print): string {
  const struck =
    row.struck === undefined
      ? ''
      : `  [struck: ${row.struck.why === 'newAttempt' ? 'new attempt' : row.struck.why} ${time(row.struck.at)}]`;
  const set =
    row.markSet === undefined
      ? ''
      : `  (${row.markSet}${row.bases === undefined ? '' : `, bases in mouth: ${row.bases}`})`;
  const heard = row.source === 'voice' ? `voice “${row.text}”` : row.source;
  return `${time(row.at)}  ${row.label}: ${formatHundredths(row.value)} ${row.unit}${set}  ${heard}${struck}`;
}

function clockLine(clock: ClockRow, time: Print): string {
  const parts = [`${clock.label}, attempt ${clock.attempt}: ${clock.name}`, `started ${time(clock.startedAt)}`];
  if (clock.seatedAt !== undefined) parts.push(`seated ${time(clock.seatedAt)}`);
  if (clock.outAt !== undefined) parts.push(`${clock.flow === 'timed' ? 'ended' : 'removed'} ${time(clock.outAt)}`);
  const pour = clock.phases.find((phase) => phase.id === 'pourWithin');
  if (pour !== undefined && clock.outAt !== undefined && !clock.struck)
    parts.push(`${clock.clock === 'bite-record' ? 'use' : 'pour'} by ${time(pour.dueAt)}`);
  if (clock.takenAt !== undefined) parts.push(`poured or taken over ${time(clock.takenAt)}`);
  if (clock.struck) parts.push('given up');
  return parts.join('; ');
}

function verticalLines(summary: Summary): string[] {
  const v = summary.vertical;
  const lines: string[] = [];
  for (const set of [v.rest, v.closed, v.record]) {
    if (set?.medianMm === undefined) continue;
    const many = `median ${set.medianMm.toFixed(1)} mm of ${set.n} (range ${(set.rangeMm ?? 0).toFixed(1)} mm)`;
    lines.push(`${set.label}: ${set.n === 1 ? `${set.medianMm.toFixed(1)} mm, one reading` : many}`);
  }
  if (v.restSpaceMm !== undefined) {
    const give = v.uncertaintyMm === undefined ? '' : ` ± ${v.uncertaintyMm.toFixed(1)} mm`;
    lines.push(
      `Rest space: ${v.restSpaceMm.toFixed(1)} mm${give} (${v.verdict}; 2 to 4 mm is the usual teaching range)`,
    );
  }
  lines.push(
    `Record made at: ${v.convention === 'rest' ? 'rest height' : 'rest height less the chosen space'}; chosen space ${v.targetSpaceMm.toFixed(1)} mm`,
  );
  return lines;
}

function flagLines(summary: Summary): string[] {
  return summary.flags.flatMap((flag) => {
    const answer =
      flag.answer === undefined
        ? 'not answered'
        : flag.answer.answer === 'keep'
          ? `kept: ${flag.answer.reason}`
          : 'to be measured again';
    return [`* ${flag.what}`, `  ${flag.why}`, `  Answer: ${answer}`];
  });
}

const CAUTIONS = [
  'This sheet repeats what was measured and what follows from it by arithmetic. It diagnoses nothing.',
  "Local protocols, the material's instructions for use and licensed judgement come first.",
];

const orNone = (lines: readonly string[]) => (lines.length === 0 ? ['none'] : lines);

/** The whole sheet, lines joined by "\n", ending in one newline. */
export function sheetText(summary: Summary, options: SheetOptions): string {
  const time = clockPrinter(options.timeZone);
  const date = datePrinter(options.timeZone);
  const work = summary.labWork.map((line, i) => {
    const by = line.at === undefined ? '' : ` By ${time(line.at)}.`;
    return `${i + 1}. ${line.text}${by}${line.detail === undefined ? '' : `\n   ${line.detail}`}`;
  });
  const lines = [
    `LAB SHEET  case ${summary.caseCode}${summary.demo ? '  (DEMO, invented)' : ''}`,
    `${summary.visitTitle}, ${date(summary.openedAt)}; clinician ${summary.clinician}, assistant ${summary.assistant}; protocol ${summary.protocol}`,
    `times in ${options.timeZone}`,
    ...rule('Work'),
    ...work,
    ...rule('Cautions'),
    ...orNone(summary.cautions),
    ...rule('Vertical dimension'),
    ...verticalLines(summary),
    ...rule('Readings'),
    ...orNone(summary.readings.map((row) => readingLine(row, time))),
    ...rule('Impressions and clocks'),
    ...orNone(summary.clocks.map((clock) => clockLine(clock, time))),
    ...rule('Computed'),
    ...orNone(summary.computed.map((row) => `${row.label}: ${row.text}  [${row.source}; ${row.sourceStatus}]`)),
    ...rule('What does not agree'),
    ...orNone(flagLines(summary)),
    ...rule('Answers worth knowing'),
    ...orNone(
      summary.answers
        .filter((a) => a.struck === undefined && (a.tone === 'warn' || a.reason !== undefined))
        .map((a) => `${a.question}: ${a.answer}${a.reason === undefined ? '' : ` (${a.reason})`}`),
    ),
    ...rule('Notes'),
    ...orNone(summary.notes.filter((n) => !n.struck).map((n) => `${time(n.at)}  ${n.text}`)),
    ...rule('Skipped'),
    ...orNone(summary.skips.map((s) => `${s.title}: ${s.reason}`)),
    ...rule('Open before hand-over'),
    ...orNone(summary.open),
    ...rule('Signed'),
    ...orNone(
      summary.signed.map(
        (s) =>
          `${s.role} ${s.initials} ${time(s.at)}${s.overruled === undefined ? '' : `, open items overruled: ${s.overruled}`}`,
      ),
    ),
    '',
    ...CAUTIONS,
  ];
  return `${lines.join('\n')}\n`;
}
