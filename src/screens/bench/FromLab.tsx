/** What came from the laboratory, for the clinic: questions first, then what was done and sent back. */
import { useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import type { BenchQuestion, BenchSummary } from '../../domain/summary/bench.types.ts';
import { moment } from '../format.ts';
import { SignIcon, ToneIcon } from '../parts/Icons.tsx';
import { OwnWords } from '../parts/OwnWords.tsx';
import { Target } from '../parts/Target.tsx';

interface FromLabProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

export const openQuestions = (bench: BenchSummary | undefined): readonly BenchQuestion[] =>
  (bench?.questions ?? []).filter((question) => question.answer === undefined);

interface QuestionProps {
  readonly question: BenchQuestion;
  readonly by: string;
  readonly actions: AppActions;
}

function Question({ question, by, actions }: QuestionProps) {
  const { seq, text, about, visit, at, answer } = question;
  const give = (words: string) =>
    actions.askFiles({ ask: 'bench', by, deed: { do: 'answer', question: seq, text: words } });
  return (
    <li className={answer === undefined ? 'lab-question lab-question-open' : 'lab-question'}>
      <p className="lab-asked">
        {answer === undefined ? <ToneIcon tone="warn" /> : <SignIcon sign="kept" />}
        <span>
          <strong>{text}</strong>
          <span className="cell-more">
            {question.by}, {moment(at)}, {visit}
            {about === '' ? '' : `; about: ${about}`}
          </span>
        </span>
      </p>
      {answer === undefined ? (
        <OwnWords label={`Answer as ${by}`} give="Answer" maxLength={600} onGive={give} />
      ) : (
        <div className="lab-answer">
          <p>
            Answered: <strong>{answer.text}</strong>{' '}
            <span className="cell-more">
              {answer.by}, {moment(answer.at)}
            </span>
          </p>
          <Target
            look="quiet"
            name={`Take back: ${answer.text}`}
            onPress={() => actions.askFiles({ ask: 'bench', by, deed: { do: 'takeBack', act: answer.act } })}
          >
            Take back
          </Target>
        </div>
      )}
    </li>
  );
}

/** Everything that stands; what was taken back is on the lab sheet, struck. */
export function FromLab({ model, actions }: FromLabProps) {
  const { summary } = model;
  const [by, setBy] = useState('');
  const bench = summary?.bench;
  if (summary === undefined || bench === undefined || bench.log.length === 0) return null;
  const { questions, returned, log } = bench;
  const who = by.trim() === '' ? summary.clinician : by.trim();
  const done = log.filter(({ struck, kind }) => !struck && (kind === 'done' || kind === 'taken'));
  return (
    <section className="from-lab" aria-labelledby="from-lab">
      <h2 id="from-lab">From the laboratory</h2>
      {returned.map((one) => (
        <p key={one.seq} className="lab-asked">
          <SignIcon sign="kept" />
          <span>
            <strong>Work returned</strong> by {one.by}, {moment(one.at)}, {one.visit}
            {one.text === '' ? '.' : `: ${one.text}`}
          </span>
        </p>
      ))}
      {questions.length === 0 ? null : (
        <label className="field lab-who">
          <span>Answers as</span>
          <input
            type="text"
            value={by}
            maxLength={6}
            placeholder={summary.clinician}
            autoComplete="off"
            onChange={(event) => setBy(event.target.value)}
          />
        </label>
      )}
      <ul className="lab-questions">
        {questions.map((question) => (
          <Question key={question.seq} question={question} by={who} actions={actions} />
        ))}
      </ul>
      <ul className="plain-list">
        {done.map((entry) => (
          <li key={entry.seq}>
            {entry.text}{' '}
            <span className="cell-more">
              {entry.by}, {moment(entry.at)}, {entry.visit}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** At the first step of a visit: what the laboratory still wants to know, and what came back since the last one. */
export function LabAtStart({ model, actions }: FromLabProps) {
  const bench = model.summary?.bench;
  const { step } = model;
  const first = step !== undefined && step.chapter.number === 1 && step.place === 1;
  const open = openQuestions(bench);
  const before = model.caseLine?.findLast((visit) => visit.state === 'done')?.name;
  const back = bench?.returned.findLast((one) => one.visit === before);
  if (!first || bench === undefined || (open.length === 0 && back === undefined)) return null;
  const [one] = open;
  return (
    <section className="flag-bar lab-bar" aria-label="From the laboratory">
      <SignIcon sign="flag" />
      <p>
        {back === undefined ? null : (
          <span className="lab-bar-line">
            <strong>Work returned</strong> by {back.by}, {moment(back.at)}
            {back.text === '' ? '.' : `: ${back.text}`}
          </span>
        )}
        {one === undefined ? null : (
          <span className="lab-bar-line">
            <strong>The laboratory asks:</strong> {one.text}
            {open.length > 1 ? ` (and ${open.length - 1} more)` : ''}
          </span>
        )}
      </p>
      <Target onPress={() => actions.go('summary')}>{one === undefined ? 'Look' : 'Answer'}</Target>
    </section>
  );
}
