/** Questions with their answers, and everything written at the bench: taken-back entries stay, struck. */
import type { BenchEntry, BenchSummary } from '../../domain/summary/bench.types.ts';
import { moment } from '../format.ts';
import { SignIcon, ToneIcon } from '../parts/Icons.tsx';
import { Target } from '../parts/Target.tsx';

export function BenchQuestions({ bench }: { readonly bench: BenchSummary }) {
  if (bench.questions.length === 0) return null;
  return (
    <section aria-labelledby="bench-asked" className="from-lab">
      <h2 id="bench-asked">Questions</h2>
      <ul className="lab-questions">
        {bench.questions.map(({ seq, text, about, by, at, answer }) => (
          <li key={seq} className={answer === undefined ? 'lab-question lab-question-open' : 'lab-question'}>
            <p className="lab-asked">
              {answer === undefined ? <ToneIcon tone="warn" /> : <SignIcon sign="kept" />}
              <span>
                {text}
                <span className="cell-more">
                  {by}, {moment(at)}
                  {about === '' ? '' : `; about: ${about}`}
                </span>
              </span>
            </p>
            <p className="bench-answer">
              {answer === undefined ? (
                'No answer yet.'
              ) : (
                <>
                  <strong>{answer.text}</strong>{' '}
                  <span className="cell-more">
                    {answer.by}, {moment(answer.at)}
                  </span>
                </>
              )}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface LogProps {
  readonly bench: BenchSummary;
  readonly onTakeBack: (act: number) => void;
}

function Entry({ entry, onTakeBack }: { readonly entry: BenchEntry; readonly onTakeBack: LogProps['onTakeBack'] }) {
  const { text, by, at, visit, struck, act } = entry;
  const words = `${text} (${by}, ${moment(at)}, ${visit})`;
  return (
    <li className={struck ? 'bench-entry struck' : 'bench-entry'}>
      <p>
        {struck ? <s>{words}</s> : words}
        {struck ? ' taken back' : ''}
      </p>
      {struck ? null : (
        <Target look="quiet" name={`Take back: ${text}`} onPress={() => onTakeBack(act)}>
          Take back
        </Target>
      )}
    </li>
  );
}

export function BenchLog({ bench, onTakeBack }: LogProps) {
  if (bench.log.length === 0) return null;
  return (
    <section aria-labelledby="bench-log">
      <h2 id="bench-log">Written between clinic and laboratory</h2>
      <ul className="plain-list">
        {bench.log.map((entry) => (
          <Entry key={entry.seq} entry={entry} onTakeBack={onTakeBack} />
        ))}
      </ul>
    </section>
  );
}
