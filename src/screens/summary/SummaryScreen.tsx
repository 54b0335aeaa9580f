/** What the visit comes to: open items first, then the work for the lab, the numbers, the clocks, the flags. */
import type { AppActions, AppModel } from '../../app/model.ts';
import type { Summary } from '../../domain/summary/types.ts';
import { CaseHeights, CaseHinge, SetRuler } from '../drawings/fromSummary.tsx';
import { FromLab } from '../bench/FromLab.tsx';
import { TakeIn } from '../files/TakeIn.tsx';
import { CaseLine } from '../parts/CaseLine.tsx';
import { SignIcon, ToneIcon } from '../parts/Icons.tsx';
import { FlagsPanel } from '../parts/Flags.tsx';
import { CautionLine, PageHead, SaidLine } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import type { VisitUi } from '../useVisitUi.ts';
import { ReviewLater, TracingsLater } from '../decided/Lazy.tsx';
import { ClockTable, ComputedTable, FlagList, LabWork } from './parts.tsx';

interface SummaryProps {
  readonly model: AppModel;
  readonly actions: AppActions;
  readonly ui: VisitUi;
}

function Open({ summary, onFlags }: { readonly summary: Summary; readonly onFlags: (() => void) | undefined }) {
  return (
    <section aria-labelledby="sum-open" className={summary.open.length === 0 ? 'open-clear' : 'open-items'}>
      <h2 id="sum-open">{summary.open.length === 0 ? 'Nothing is open' : `Still open: ${summary.open.length}`}</h2>
      <ul>
        {summary.open.map((item) => (
          <li key={item}>
            <ToneIcon tone="warn" />
            <span>{item}</span>
          </li>
        ))}
      </ul>
      {onFlags === undefined ? null : (
        <Target size="big" icon={<SignIcon sign="flag" />} onPress={onFlags}>
          Answer the flags
        </Target>
      )}
    </section>
  );
}

function Drawings({ summary }: { readonly summary: Summary }) {
  return (
    <section aria-labelledby="sum-drawings">
      <h2 id="sum-drawings">Heights</h2>
      <div className="drawings">
        {summary.sets.map((set) => (
          <SetRuler key={`${set.reading}:${set.markSet}:${set.bases ?? ''}`} set={set} />
        ))}
        <CaseHeights summary={summary} />
        <CaseHinge summary={summary} />
      </div>
    </section>
  );
}

function Head({ summary, actions }: { readonly summary: Summary | undefined; readonly actions: AppActions }) {
  return (
    <PageHead title={`Summary${summary === undefined ? '' : ` of ${summary.caseCode}, ${summary.visitName}`}`}>
      <Target look="main" onPress={() => actions.go('visit')}>
        Back to the visit
      </Target>
      <Target onPress={() => actions.go('labSheet')}>Lab sheet</Target>
      <Target onPress={() => actions.go('bench')}>Bench</Target>
      <Target onPress={() => actions.go('record')}>Record</Target>
      <Target onPress={actions.saveFile}>Save file</Target>
    </PageHead>
  );
}

export function SummaryScreen({ model, actions, ui }: SummaryProps) {
  const { summary } = model;
  const answers = ui.panel === 'flags';
  return (
    <main className="page summary">
      <Head summary={summary} actions={actions} />
      <SaidLine said={model.said} trouble={model.trouble} />
      {summary === undefined ? <p className="step-line">No case is open.</p> : null}
      {answers ? <FlagsPanel model={model} actions={actions} onClose={() => ui.show('none')} /> : null}
      {summary === undefined || answers ? null : (
        <>
          <CaseLine model={model} actions={actions} />
          <FromLab model={model} actions={actions} />
          <CautionLine cautions={summary.cautions} />
          <Open summary={summary} onFlags={model.flags.length === 0 ? undefined : () => ui.show('flags')} />
          <Waiting model={model} actions={actions} />
          <LabWork summary={summary} />
          <ComputedTable summary={summary} />
          <Drawings summary={summary} />
          <TracingsLater summary={summary} />
          <ReviewLater summary={summary} />
          <ClockTable summary={summary} />
          <FlagList summary={summary} />
          <TakeIn model={model} actions={actions} />
        </>
      )}
    </main>
  );
}
