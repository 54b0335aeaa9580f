/** Parts of the summary that the screen and the lab sheet share. Drawn from the summary alone. */
import type { ClockRow, ComputedRow, Flag, Summary } from '../../domain/summary/types.ts';
import { findingText, moment, tenths, timeOfDay } from '../format.ts';
import { LEVEL } from '../parts/Flags.tsx';

export function LabWork({ summary }: { readonly summary: Summary }) {
  return (
    <section aria-labelledby="sum-work">
      <h2 id="sum-work">Work for the lab</h2>
      {summary.labWork.length === 0 ? <p>Nothing ordered yet.</p> : null}
      <ol className="work">
        {summary.labWork.map((line) => (
          <li key={line.id}>
            <strong>{line.text}</strong>
            {line.at === undefined ? null : <span className="pour-by">by {moment(line.at)}</span>}
            {line.detail === undefined ? null : <span className="cell-more">{line.detail}</span>}
          </li>
        ))}
      </ol>
    </section>
  );
}

function rangeOf(row: ComputedRow): string {
  if (row.rangeMm !== undefined) return `${tenths(row.rangeMm[0])} to ${tenths(row.rangeMm[1])}`;
  return row.uncertaintyMm === undefined ? '' : `± ${tenths(row.uncertaintyMm)}`;
}

export function ComputedTable({ summary }: { readonly summary: Summary }) {
  if (summary.computed.length === 0) return null;
  return (
    <section aria-labelledby="sum-computed">
      <h2 id="sum-computed">Computed</h2>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Value</th>
            <th scope="col">Range</th>
            <th scope="col">From</th>
            <th scope="col">By whose rule</th>
          </tr>
        </thead>
        <tbody>
          {summary.computed.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.label}</th>
              <td className="cell-value">{row.text}</td>
              <td>{rangeOf(row)}</td>
              <td>{row.inputs.join('; ')}</td>
              <td>
                {row.source} <span className="cell-more">{row.sourceStatus}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Until when the cast must be poured; absent for what is not poured. */
export function pourBy(clock: ClockRow): number | undefined {
  if (clock.outAt === undefined) return undefined;
  return clock.phases.find((phase) => phase.id === 'pourWithin')?.dueAt;
}

/** How an impression was disinfected, in words; a gap is named. */
export function disinfectedHow(clock: ClockRow, all: readonly ClockRow[]): string {
  const bath = all.findLast((c) => c.flow === 'timed' && !c.struck && c.of === clock.clock);
  if (bath === undefined) return 'not recorded';
  const until = bath.outAt === undefined ? 'still in' : `to ${timeOfDay(bath.outAt)}`;
  const short = bath.findings.map((finding) => `, ${findingText(finding)}`).join('');
  return `${bath.name}, ${timeOfDay(bath.startedAt)} ${until}${short}`;
}

/** By when, until it is; then, when it was. */
function pourWords({ takenAt }: ClockRow, due: number | undefined): string {
  if (takenAt !== undefined) return `poured or taken over ${moment(takenAt)}`;
  return due === undefined ? '–' : moment(due);
}

function ClockLine({ clock, all }: { readonly clock: ClockRow; readonly all: readonly ClockRow[] }) {
  const due = pourBy(clock);
  const notes = [...(clock.struck ? ['given up, taken again'] : []), ...clock.findings.map(findingText)];
  const time = (at: number | undefined) => (at === undefined ? '–' : timeOfDay(at));
  return (
    <tr className={clock.struck ? 'struck' : ''}>
      <th scope="row">
        {clock.label}
        {clock.attempt > 1 ? `, attempt ${clock.attempt}` : ''}
      </th>
      <td>{clock.name}</td>
      <td className="cell-time">{time(clock.startedAt)}</td>
      <td className="cell-time">{time(clock.seatedAt)}</td>
      <td className="cell-time">{time(clock.outAt)}</td>
      <td>{clock.struck ? '–' : disinfectedHow(clock, all)}</td>
      <td className="cell-value cell-moment">{clock.struck ? '–' : pourWords(clock, due)}</td>
      <td>{notes.length === 0 ? '–' : notes.join('; ')}</td>
    </tr>
  );
}

export function ClockTable({ summary }: { readonly summary: Summary }) {
  const impressions = summary.clocks.filter((clock) => clock.flow === 'impression');
  if (impressions.length === 0) return null;
  const heads = ['Impression', 'Material', 'Mixed', 'Seated', 'Out', 'Disinfected', 'Pour by', 'Notes'];
  return (
    <section aria-labelledby="sum-clocks">
      <h2 id="sum-clocks">Impressions and clocks</h2>
      <table className="table">
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {impressions.map((clock) => (
            <ClockLine key={`${clock.id}:${clock.startedAt}`} clock={clock} all={summary.clocks} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function flagAnswer(flag: Flag): string {
  if (flag.answer === undefined) return 'Not answered yet.';
  const { answer, reason, at } = flag.answer;
  if (answer === 'measureAgain') return `To be measured again (${timeOfDay(at)}).`;
  return `Kept as it is: ${reason} (${timeOfDay(at)}).`;
}

interface FlagListProps {
  readonly summary: Summary;
  /** On paper: what disagrees and how it was answered, without the reason why it matters. */
  readonly brief?: boolean;
}

export function FlagList({ summary, brief = false }: FlagListProps) {
  return (
    <section aria-labelledby="sum-flags">
      <h2 id="sum-flags">Flags and answers</h2>
      {summary.flags.length === 0 ? <p>None.</p> : null}
      <ul className="flag-list">
        {summary.flags.map((flag) => (
          <li key={flag.id} className={`flag-${flag.level}`}>
            <strong>{LEVEL[flag.level]}:</strong> {flag.what} {brief ? '' : `${flag.why} `}
            <strong className="flag-answer">{flagAnswer(flag)}</strong>
          </li>
        ))}
      </ul>
    </section>
  );
}
