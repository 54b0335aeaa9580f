/** The tables and lists of the lab sheet. */
import type { Summary } from '../../domain/summary/types.ts';
import { saidIn } from '../../domain/summary/said.ts';
import { formatHundredths } from '../../domain/measure/length.ts';
import { mm, moment, valueWithUnit } from '../format.ts';

interface SheetProps {
  readonly summary: Summary;
}

interface Line {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  readonly more: string;
}

/** Repeated readings as sets, all others singly; struck ones only counted. */
export function measurementLines(summary: Summary): readonly Line[] {
  const inSets = new Set(summary.sets.flatMap((set) => set.seqs));
  const sets = summary.sets.map((set): Line => {
    const parts = [set.values.map(formatHundredths).join(', ')];
    if (set.rangeMm !== undefined) parts.push(`spread ${mm(set.rangeMm)}`);
    if (set.bases !== undefined) parts.push(`bases in the mouth: ${set.bases}`);
    parts.push(set.markSet);
    return {
      key: `${set.reading}:${set.markSet}:${set.bases ?? ''}`,
      label: set.label,
      value: set.medianMm === undefined ? '–' : `${mm(set.medianMm)} mm`,
      more: parts.join('; '),
    };
  });
  const single = summary.readings
    .filter((row) => row.struck === undefined && !inSets.has(row.seq))
    .map((row): Line => ({
      key: String(row.seq),
      label: row.label,
      value: valueWithUnit(row.value, row.unit),
      more: row.source,
    }));
  return [...sets, ...single];
}

export function Measurements({ summary }: SheetProps) {
  const lines = measurementLines(summary);
  const struck = summary.readings.filter((row) => row.struck !== undefined).length;
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby="sheet-measured">
      <h2 id="sheet-measured">Measured</h2>
      <ul className="columns">
        {lines.map((line) => (
          <li key={line.key}>
            {line.label}: <strong>{line.value}</strong> <span className="measured-how">({line.more})</span>
          </li>
        ))}
      </ul>
      <p>The value of a set is its median.</p>
      {struck === 0 ? null : (
        <p>
          {struck === 1 ? '1 reading is' : `${struck} readings are`} struck through on the record and not used here.
        </p>
      )}
    </section>
  );
}

const quoted = ({ text }: { readonly text: string }) => `“${text}”`;

/** What was answered other than as hoped, and all wishes; the rest is counted. */
export function Findings({ summary }: SheetProps) {
  const { answers, notes } = saidIn(summary);
  const shown = answers.filter(({ row }) => row.tone !== 'good');
  const good = answers.length - shown.length;
  return (
    <section aria-labelledby="sheet-findings" className="sheet-findings">
      <h2 id="sheet-findings">Findings, wishes and notes</h2>
      <ul className="columns">
        {shown.map(({ row, notes: meant }) => (
          <li key={row.seq}>
            {row.question}: <strong>{meant.length === 0 ? row.answer : meant.map(quoted).join('; ')}</strong>
            {row.reason === undefined ? '' : ` (${row.reason})`}
          </li>
        ))}
        {notes.map((note) => (
          <li key={`${note.at}:${note.text}`}>Note: {quoted(note)}</li>
        ))}
        {summary.skips.map((skip) => (
          <li key={`${skip.at}:${skip.title}`}>
            Skipped: {skip.title} ({skip.reason})
          </li>
        ))}
      </ul>
      <p>{good === 1 ? '1 other check was' : `${good} other checks were`} answered without a remark.</p>
    </section>
  );
}

function signedText({ role, initials, at, overruled }: Summary['signed'][number]): string {
  const over = overruled === undefined ? '' : `, open items overruled: ${overruled}`;
  return `Signed for the ${role}: ${initials}, ${moment(at)}${over}`;
}

export function Signatures({ summary }: SheetProps) {
  return (
    <footer className="sheet-foot">
      <p>{summary.signed.length === 0 ? 'Not signed yet.' : summary.signed.map((one) => signedText(one)).join('. ')}</p>
      <p>
        Computed values name their rule on the summary. Local protocols, the material’s instructions for use and
        licensed judgement come first. Made by protocol {summary.protocol}.
      </p>
    </footer>
  );
}
