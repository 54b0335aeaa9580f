/** The order as the technician works it: line by line, ticked with initials and time, with questions back to the clinic. */
import { useEffect, useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import type { BenchDeed } from '../../app/files.types.ts';
import type { BenchSummary } from '../../domain/summary/bench.types.ts';
import type { Summary } from '../../domain/summary/types.ts';
import { SaveCase } from '../files/SaveCase.tsx';
import { CautionLine, PageHead, SaidLine } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { BenchLine } from './BenchLine.tsx';
import { BenchFigures } from './Figures.tsx';
import { HandedOver } from './HandedOver.tsx';
import { BenchLog, BenchQuestions } from './Log.tsx';
import { useBenchKeys } from './useBenchKeys.ts';
import { Words } from './Words.tsx';

interface BenchProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

/** What is being written now: nothing, a question about a line ('' = the whole), the return, or the file for the clinic. */
type Panel = { readonly kind: 'none' | 'returned' | 'save' } | { readonly kind: 'ask'; readonly line: string };
const NONE: Panel = { kind: 'none' };

/** Whoever wrote last at this bench is most likely to write next. */
const lastBy = (bench: BenchSummary): string => bench.log.findLast((entry) => entry.kind !== 'answer')?.by ?? '';

const firstOpen = ({ lines }: BenchSummary): number =>
  Math.max(
    0,
    lines.findIndex((line) => line.done === undefined),
  );

interface OrderProps extends BenchProps {
  readonly bench: BenchSummary;
  readonly place: number;
  readonly onPlace: (place: number) => void;
  readonly onDeed: (deed: BenchDeed) => void;
  readonly onAsk: (line: string) => void;
}

function Order({ model, bench, place, onPlace, onDeed, onAsk }: OrderProps) {
  return (
    <ol className="bench-order" aria-label="The order">
      {bench.lines.map((line, i) => (
        <BenchLine
          key={line.id}
          line={line}
          place={i}
          clock={model.clocks.find((one) => one.case === undefined && one.clock === line.clock)}
          now={model.now}
          current={i === place}
          onTick={() => {
            onPlace(i);
            onDeed({ do: 'done', line: line.id });
          }}
          onTaken={(clock) => onDeed({ do: 'taken', clock })}
          onTakeBack={(act) => onDeed({ do: 'takeBack', act })}
          onAsk={() => onAsk(line.id)}
        />
      ))}
    </ol>
  );
}

function Initials({ by, onBy }: { readonly by: string; readonly onBy: (by: string) => void }) {
  return (
    <label className="field bench-by">
      <span>Your initials</span>
      <input
        type="text"
        value={by}
        maxLength={6}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => onBy(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
        }}
      />
    </label>
  );
}

interface PanelProps {
  readonly panel: Panel;
  readonly bench: BenchSummary;
  readonly by: string;
  readonly actions: AppActions;
  readonly onPanel: (panel: Panel) => void;
  readonly onDeed: (deed: BenchDeed) => void;
}

/** A question or a return is written down first, then goes out with the file. */
function Open({ panel, bench, by, actions, onPanel, onDeed }: PanelProps) {
  const close = () => onPanel(NONE);
  if (panel.kind === 'save') return <SaveCase actions={actions} title="Case file for the clinic" onClose={close} />;
  const send = (deed: BenchDeed) => {
    onDeed(deed);
    if (by.trim() !== '') onPanel({ kind: 'save' });
  };
  if (panel.kind === 'returned')
    return (
      <Words
        title="Work returned: a word with it, if wanted"
        give="Work returned"
        mayBeEmpty
        onGive={(text) => send({ do: 'returned', text })}
        onClose={close}
      />
    );
  if (panel.kind !== 'ask') return null;
  const about = bench.lines.find((line) => line.id === panel.line)?.text;
  return (
    <Words
      title={about === undefined ? 'Question to the clinic' : `Question about: ${about}`}
      give="Send the question"
      onGive={(text) => send({ do: 'ask', line: panel.line, text })}
      onClose={close}
    />
  );
}

function Targets({ actions, onPanel }: { readonly actions: AppActions; readonly onPanel: (panel: Panel) => void }) {
  return (
    <div className="page-targets no-print">
      <Target onPress={() => onPanel({ kind: 'ask', line: '' })}>Ask the clinic</Target>
      <Target onPress={() => onPanel({ kind: 'returned' })}>Work returned</Target>
      <Target onPress={() => onPanel({ kind: 'save' })}>Case file</Target>
      <Target onPress={() => actions.go('labSheet')}>Lab sheet</Target>
      <Target onPress={() => actions.go('cases')}>Cases</Target>
    </div>
  );
}

function Bench({
  model,
  actions,
  summary,
  bench,
}: BenchProps & { readonly summary: Summary; readonly bench: BenchSummary }) {
  const [by, setBy] = useState(() => lastBy(bench));
  const [place, setPlace] = useState(() => firstOpen(bench));
  const [panel, setPanel] = useState<Panel>(NONE);
  const onDeed = (deed: BenchDeed) => actions.askFiles({ ask: 'bench', deed, by });
  const to = (next: number) => {
    setPlace(next);
    document.getElementById(`bench-line-${next}`)?.scrollIntoView({ block: 'nearest' });
  };
  useBenchKeys(place, bench.lines.length, (key) => {
    if (key.do === 'to') return to(key.place);
    const line = bench.lines[place];
    if (line !== undefined && panel.kind === 'none') onDeed({ do: 'done', line: line.id });
  });
  const left = bench.lines.filter((line) => line.done === undefined).length;
  return (
    <main className="page bench">
      <PageHead title={`At the bench: ${summary.caseCode}, ${summary.visitName}`}>
        <Initials by={by} onBy={setBy} />
      </PageHead>
      <Targets actions={actions} onPanel={setPanel} />
      <SaidLine said={model.said} trouble={model.trouble} />
      <CautionLine cautions={summary.cautions} />
      <HandedOver summary={summary} />
      <Open panel={panel} bench={bench} by={by} actions={actions} onPanel={setPanel} onDeed={onDeed} />
      <BenchQuestions bench={bench} />
      <h2>
        {left === 0 ? 'Every line is ticked' : `${left} of ${bench.lines.length} lines to do`}
        <span className="bench-keys"> Page Down and Page Up move, Enter ticks</span>
      </h2>
      <Order
        model={model}
        actions={actions}
        bench={bench}
        place={place}
        onPlace={setPlace}
        onDeed={onDeed}
        onAsk={(line) => setPanel({ kind: 'ask', line })}
      />
      <section aria-labelledby="bench-numbers">
        <h2 id="bench-numbers">All numbers of this visit</h2>
        <BenchFigures figures={bench.numbers} />
      </section>
      <BenchLog bench={bench} onTakeBack={(act) => onDeed({ do: 'takeBack', act })} />
      <p className="bench-foot">
        The order repeats what was measured and what follows from it by arithmetic. Local protocols, the material’s
        instructions for use and licensed judgement come first.
      </p>
    </main>
  );
}

export function BenchScreen({ model, actions }: BenchProps) {
  const { summary } = model;
  // Browsers differ in what scrolling gives back; an effect may give back only what undoes it.
  useEffect(() => {
    window.scrollTo(0, 0);
  }, []);
  if (summary?.bench === undefined)
    return (
      <main className="page">
        <h1>No case is open</h1>
        <Target look="main" size="big" onPress={() => actions.go('cases')}>
          To the cases
        </Target>
      </main>
    );
  return (
    <Bench
      key={`${summary.caseCode}:${summary.bench.order}`}
      model={model}
      actions={actions}
      summary={summary}
      bench={summary.bench}
    />
  );
}
