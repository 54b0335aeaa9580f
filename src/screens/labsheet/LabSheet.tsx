/** Lab sheet: everything from the summary, in the order in which the bench needs it. Reads in black and white. */
import type { CaseCode as Code } from '../../app/files.types.ts';
import type { Summary } from '../../domain/summary/types.ts';
import { CaseHeights, CaseHinge, SetRuler } from '../drawings/fromSummary.tsx';
import { changeRange, day, mm, tenths, timeOfDay } from '../format.ts';
import { ReviewLater, TracingsLater } from '../decided/Lazy.tsx';
import { ClockTable, FlagList, LabWork } from '../summary/parts.tsx';
import { BenchPart } from './BenchPart.tsx';
import { CaseCode } from './CaseCode.tsx';
import { Findings, Measurements, Signatures } from './sections.tsx';

interface SheetProps {
  readonly summary: Summary;
}

function Head({ summary }: SheetProps) {
  const { caseCode, demo, visitName, visitTitle, openedAt, closedAt, clinician, assistant } = summary;
  return (
    <header className="sheet-head">
      <h1>
        Lab sheet: {caseCode}
        {demo ? <span className="demo-tag"> demo, invented data</span> : null}
      </h1>
      <dl>
        <div>
          <dt>Visit</dt>
          <dd>
            {visitName.replace('visit ', '')}, {visitTitle}
          </dd>
        </div>
        <div>
          <dt>Date</dt>
          <dd>
            {day(openedAt)}, {timeOfDay(openedAt)}
            {closedAt === undefined ? ' (not closed)' : ` to ${timeOfDay(closedAt)}`}
          </dd>
        </div>
        <div>
          <dt>Clinician</dt>
          <dd>{clinician}</dd>
        </div>
        <div>
          <dt>Assistant</dt>
          <dd>{assistant}</dd>
        </div>
      </dl>
    </header>
  );
}

/** Open items that no flag further down names already, and how many flags still wait for an answer. */
export function openLines({ open, flags }: Pick<Summary, 'open' | 'flags'>): readonly string[] {
  const named = new Set(flags.map((flag) => flag.what));
  const waiting = flags.filter((flag) => flag.answer === undefined).length;
  const others = open.filter((item) => !named.has(item));
  if (waiting === 0) return others;
  return [
    ...others,
    waiting === 1 ? '1 flag is not answered, see below.' : `${waiting} flags are not answered, see below.`,
  ];
}

function Warnings({ summary }: SheetProps) {
  const open = openLines(summary);
  if (summary.cautions.length === 0 && open.length === 0) return null;
  return (
    <section className="sheet-box" aria-labelledby="sheet-cautions">
      <h2 id="sheet-cautions">Cautions{open.length === 0 ? '' : ' and open items'}</h2>
      <ul>
        {summary.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
        {open.map((item) => (
          <li key={item}>
            <strong>Open:</strong> {item}
          </li>
        ))}
      </ul>
    </section>
  );
}

const VERDICT: Readonly<Record<Summary['vertical']['verdict'], string>> = {
  usual: 'within the usual range',
  small: 'smaller than usual',
  large: 'larger than usual',
  impossible: 'not possible: readings contradict each other',
  notYet: 'not measured',
};

function HeightWords({ summary }: SheetProps) {
  const { vertical, visit } = summary;
  // Later visits are mounted at the height that was kept; a wanted height would read like an order.
  const ordered = visit === 1 || vertical.lab !== undefined;
  const give = vertical.uncertaintyMm === undefined ? '' : ` ± ${tenths(vertical.uncertaintyMm)}`;
  const space = vertical.restSpaceMm === undefined ? '' : `${tenths(vertical.restSpaceMm)}${give} mm, `;
  const at = vertical.convention === 'rest' ? 'at rest height' : `at rest height less ${mm(vertical.targetSpaceMm)} mm`;
  return (
    <ul className="plain-list">
      <li>
        Space between rest and closed: <strong>{`${space}${vertical.doubt ?? VERDICT[vertical.verdict]}`}</strong>
      </li>
      {ordered ? (
        <li>
          Record to be made {at}
          {vertical.record?.medianMm === undefined
            ? '; its height was not read'
            : `; made at ${mm(vertical.record.medianMm)} mm`}
        </li>
      ) : null}
      {vertical.targetHeightMm === undefined || !ordered ? null : (
        <li>
          Height wanted between the marks: <strong>{tenths(vertical.targetHeightMm)} mm</strong>
        </li>
      )}
      {vertical.lab === undefined ? null : (
        <li>
          <strong>{vertical.lab.text}</strong> At the first molar {changeRange(vertical.lab.molarMm)}.
        </li>
      )}
      <li>
        Heights are distances between the marks of {vertical.markSet === '' ? 'this visit' : vertical.markSet} only;
        compare them with no others.
      </li>
    </ul>
  );
}

function Heights({ summary }: SheetProps) {
  return (
    <section aria-labelledby="sheet-heights">
      <h2 id="sheet-heights">Height and pin</h2>
      <HeightWords summary={summary} />
      <div className="drawings">
        <div className="rulers">
          {[summary.vertical.rest, summary.vertical.closed].map((set) =>
            set === undefined ? null : <SetRuler key={set.reading} set={set} />,
          )}
        </div>
        <CaseHeights summary={summary} ordered />
        <CaseHinge summary={summary} />
      </div>
    </section>
  );
}

interface WholeProps extends SheetProps {
  /** The digest of the case as it stands; absent until it has been worked out. */
  readonly code?: Code;
}

export function LabSheet({ summary, code }: WholeProps) {
  return (
    <article className="sheet">
      <Head summary={summary} />
      <Warnings summary={summary} />
      <LabWork summary={summary} />
      <ClockTable summary={summary} />
      <Heights summary={summary} />
      <TracingsLater summary={summary} />
      <Measurements summary={summary} />
      <ReviewLater summary={summary} />
      <FlagList summary={summary} brief />
      <Findings summary={summary} />
      <BenchPart summary={summary} />
      {code === undefined ? null : <CaseCode code={code} />}
      <Signatures summary={summary} />
    </article>
  );
}
