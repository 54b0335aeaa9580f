/** The sheet on which the technician works from nothing else. On screen as on paper. */
import { useEffect, useState } from 'react';
import type { PlaceProps } from '../cases/CasesScreen.tsx';
import { SaveCase } from '../files/SaveCase.tsx';
import { SaidLine } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { BeforeHandover } from './BeforeHandover.tsx';
import { LabSheet } from './LabSheet.tsx';

function Targets({ actions, onSave }: Pick<PlaceProps, 'actions'> & { readonly onSave: () => void }) {
  return (
    <div className="page-targets no-print">
      <Target look="main" size="big" onPress={actions.print}>
        Print
      </Target>
      <Target onPress={() => actions.go('summary')}>Summary</Target>
      <Target onPress={() => actions.go('visit')}>Back to the visit</Target>
      <Target onPress={() => actions.go('bench')}>Bench</Target>
      <Target onPress={() => actions.savePaper('pdfA4')}>PDF, A4</Target>
      <Target onPress={() => actions.savePaper('pdfLetter')}>PDF, Letter</Target>
      <Target onPress={onSave}>Case file</Target>
      <Target name="FHIR file, with the PDF inside" onPress={() => actions.askFiles({ ask: 'fhir' })}>
        FHIR
      </Target>
    </div>
  );
}

/** Asks for the digest of the case as it stands whenever there is none. */
function useDigest({ model, actions }: PlaceProps) {
  const code = model.files?.digest;
  const missing = model.summary !== undefined && code === undefined;
  useEffect(() => {
    if (missing) actions.askFiles({ ask: 'digest' });
  }, [missing, actions]);
  return code;
}

export function LabSheetScreen({ model, actions }: PlaceProps) {
  const { summary } = model;
  const [saving, setSaving] = useState(false);
  const code = useDigest({ model, actions });
  return (
    <main className="page sheet-page">
      <Targets actions={actions} onSave={() => setSaving(!saving)} />
      {saving ? <SaveCase actions={actions} title="Case file" onClose={() => setSaving(false)} /> : null}
      <div className="no-print">
        <SaidLine said={model.said} trouble={model.trouble} />
      </div>
      <Waiting model={model} actions={actions} />
      <BeforeHandover model={model} actions={actions} />
      {summary === undefined ? (
        <h1>No case is open</h1>
      ) : (
        <LabSheet summary={summary} {...(code === undefined ? {} : { code })} />
      )}
    </main>
  );
}
