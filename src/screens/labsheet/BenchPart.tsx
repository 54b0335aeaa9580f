/** What the laboratory did, asked and sent back, as it stands on the sheet; nothing while it wrote nothing. */
import type { Summary } from '../../domain/summary/types.ts';
import { moment } from '../format.ts';

export function BenchPart({ summary }: { readonly summary: Summary }) {
  const { bench } = summary;
  if (bench === undefined || bench.log.length === 0) return null;
  const open = bench.questions.filter((question) => question.answer === undefined).length;
  return (
    <section aria-labelledby="sheet-bench">
      <h2 id="sheet-bench">Between clinic and laboratory</h2>
      {open === 0 ? null : (
        <p>
          <strong>{open === 1 ? '1 question is not answered.' : `${open} questions are not answered.`}</strong>
        </p>
      )}
      <ul className="plain-list">
        {bench.log.map(({ seq, text, by, at, visit, struck }) => {
          const words = `${moment(at)}, ${by}, ${visit}: ${text}`;
          return (
            <li key={seq}>
              {struck ? <s>{words}</s> : words}
              {struck ? ' (taken back)' : ''}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
