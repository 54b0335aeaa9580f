/** The sheet on which the technician works from nothing else. On screen as on paper. */
import type { PlaceProps } from '../cases/CasesScreen.tsx';
import { SaidLine } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { LabSheet } from './LabSheet.tsx';

export function LabSheetScreen({ model, actions }: PlaceProps) {
  const { summary } = model;
  return (
    <main className="page sheet-page">
      <div className="page-targets no-print">
        <Target look="main" size="big" onPress={actions.print}>
          Print
        </Target>
        <Target onPress={() => actions.go('summary')}>Summary</Target>
        <Target onPress={() => actions.go('visit')}>Back to the visit</Target>
        <Target onPress={() => actions.savePaper('pdfA4')}>PDF, A4</Target>
        <Target onPress={() => actions.savePaper('pdfLetter')}>PDF, Letter</Target>
        <Target onPress={() => actions.savePaper('caseFile')}>Case file</Target>
      </div>
      <div className="no-print">
        <SaidLine said={model.said} trouble={model.trouble} />
      </div>
      {summary === undefined ? <h1>No case is open</h1> : <LabSheet summary={summary} />}
    </main>
  );
}
