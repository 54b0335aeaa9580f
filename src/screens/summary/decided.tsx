/** What was computed where the visits decided: drawings with their words, shared by the summary and the lab sheet. */
import { lookFirst } from '../../domain/protocol/sore-causes.ts';
import type { HoldRow, ReviewRow, SoreArea } from '../../domain/summary/decided.types.ts';
import { soreWords } from '../../domain/summary/decided-words.ts';
import type { Summary } from '../../domain/summary/types.ts';
import { numbered, SoreMap } from '../drawings/SoreMap.tsx';
import { ToothSizes } from '../drawings/ToothSizes.tsx';
import { Tracing } from '../drawings/Tracing.tsx';

interface PartProps {
  readonly summary: Summary;
}

/** Tracings and tooth sizes, as far as they were measured. */
export function TracingsAndTeeth({ summary }: PartProps) {
  const { tracing, teeth } = summary;
  if (tracing === undefined && teeth === undefined) return null;
  return (
    <section aria-labelledby="sum-tracing">
      <h2 id="sum-tracing">Tracings and tooth sizes</h2>
      <div className="drawings">
        {tracing === undefined ? null : <Tracing tracing={tracing} />}
        {teeth === undefined ? null : <ToothSizes teeth={teeth} />}
      </div>
    </section>
  );
}

function SoreLine({ number, area }: { readonly number: number; readonly area: SoreArea }) {
  const look = area.current && area.what === 'sore' ? lookFirst(area.region) : undefined;
  return (
    <li className={area.current ? '' : 'sore-earlier'}>
      <strong>{number}</strong> {area.visit}: {soreWords(area)}
      {look === undefined ? null : (
        <>
          {' '}
          Look at {look.at} first <span className="figure-status">({look.status})</span>
        </>
      )}
    </li>
  );
}

/** The map of this and earlier visits, and the same as a list. */
export function SoreAreas({ summary }: PartProps) {
  const { sore } = summary;
  if (sore === undefined) return null;
  return (
    <section aria-labelledby="sum-sore">
      <h2 id="sum-sore">Sore and relieved places</h2>
      <div className="sore-summary">
        <SoreMap areas={sore} />
        <ul>
          {numbered(sore).map(({ number, area }) => (
            <SoreLine key={number} number={number} area={area} />
          ))}
        </ul>
      </div>
    </section>
  );
}

const score = (scores: HoldRow['upper']) =>
  scores === undefined ? '–' : `${scores.retention} and ${scores.stability}`;

/** Retention and stability, one line for each visit that scored them. */
export function Hold({ summary }: PartProps) {
  const { hold } = summary;
  if (hold === undefined) return null;
  return (
    <section aria-labelledby="sum-hold">
      <h2 id="sum-hold">Retention and stability</h2>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Visit</th>
            <th scope="col">Upper, of 3 and 2</th>
            <th scope="col">Lower, of 3 and 2</th>
            <th scope="col">Sum</th>
          </tr>
        </thead>
        <tbody>
          {hold.map((row) => (
            <tr key={row.visit}>
              <th scope="row">{row.visit}</th>
              <td>{score(row.upper)}</td>
              <td>{score(row.lower)}</td>
              <td className="cell-value">
                {row.sum} of {row.most}
                {row.band === undefined ? '' : `, ${row.band}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const STATES: Readonly<Record<ReviewRow['state'], string>> = {
  seen: 'seen',
  due: 'due now',
  past: 'past, no review then',
  later: 'later',
};

/** Review days after the dentures were handed over, with how each stands. */
export function ReviewDays({ summary }: PartProps) {
  const { reviews } = summary;
  if (reviews === undefined) return null;
  return (
    <section aria-labelledby="sum-reviews">
      <h2 id="sum-reviews">Reviews</h2>
      <ul className="reviews">
        {reviews.rows.map(({ id, label, from, to, state }) => (
          <li key={id} className={`review-${state}`}>
            {label}: <strong>{from === to || id === 'ulcer' ? to : `${from} to ${to}`}</strong> ({STATES[state]})
          </li>
        ))}
      </ul>
      <p>
        Delivered {reviews.delivered}. {reviews.source} ({reviews.sourceStatus}) Weekends and holidays are the
        practice’s to move.
      </p>
    </section>
  );
}
