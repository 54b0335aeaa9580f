/** What belongs to the practice and travels with every case opened from then on. */
import { useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import type { OwnView } from '../../app/own.types.ts';
import type { LabDays, Practice } from '../../domain/protocol/types.ts';
import { LAB_DAYS } from '../../domain/summary/lab-standing.ts';
import { PageHead, SaidLine } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { OneOf, Section } from '../settings/parts.tsx';
import { firstWhy, readMm, readWhole, showMm } from './fields.ts';
import { FileTargets } from './FileTargets.tsx';
import { Form, type FieldSpec, type Written } from '../parts/Form.tsx';
import { Cautions } from './cautions.tsx';
import { Disinfectants, People, Trays, type ListProps } from './lists.tsx';
import { Materials } from './materials.tsx';
import { Ranges } from './ranges.tsx';
import { Reasons } from './reasons.tsx';
import { whyNot } from './whyNot.ts';

const LENGTHS: readonly (readonly [key: 'restSpaceTarget' | 'trayClearance' | 'borderShort', label: string])[] = [
  ['restSpaceTarget', 'Rest space aimed at, mm'],
  ['trayClearance', 'Tray clearance on each side, mm'],
  ['borderShort', 'Tray border short of the sulcus, mm'],
];

interface FiguresProps {
  readonly fields: readonly FieldSpec[];
  /** What is written on the target that opens the form. */
  readonly change: string;
  onChange(): void;
}

/** Figures as they stand, and the way to change them. */
function Figures({ fields, change, onChange }: FiguresProps) {
  return (
    <>
      <ul className="entries">
        {fields.map(({ key, label, value }) => (
          <li key={key} className="entry">
            {label}: <strong>{value}</strong>
          </li>
        ))}
      </ul>
      <Target onPress={onChange}>{change}</Target>
    </>
  );
}

function Conventions({ practice, onChange }: ListProps) {
  const [editing, setEditing] = useState(false);
  const keep = (written: Written): string => {
    const reads = LENGTHS.map(([key, label]) => [key, readMm(written[key] ?? '', label)] as const);
    const why = firstWhy(reads.map(([, one]) => one));
    if (why !== undefined) return why;
    return onChange(Object.fromEntries(reads.map(([key, one]) => [key, one.ok ? one.value : practice[key]])));
  };
  const fields = LENGTHS.map(([key, label]) => ({ key, label, value: showMm(practice[key]) }));
  return (
    <Section id="conventions" title="Conventions">
      <OneOf
        name="The preliminary record is made at"
        options={[
          { value: 'rest', label: 'Record at rest height' },
          { value: 'restLessSpace', label: 'Record at rest less the rest space' },
        ]}
        chosen={practice.recordAt}
        onChoose={(recordAt) => void onChange({ recordAt })}
      />
      {editing ? (
        <Form name="Conventions" fields={fields} onKeep={keep} onClose={() => setEditing(false)} />
      ) : (
        <Figures fields={fields} change="Change the lengths" onChange={() => setEditing(true)} />
      )}
    </Section>
  );
}

const DAYS: readonly (readonly [key: keyof LabDays, label: string])[] = [
  ['customTrays', 'Custom trays, days'],
  ['setUp', 'Set-up for the try-in, days'],
  ['finish', 'Finished dentures, days'],
];

/** How long the laboratory wants: what is due follows from it where no day was agreed. */
function LabTimes({ practice, onChange }: ListProps) {
  const [editing, setEditing] = useState(false);
  const days = practice.labDays ?? LAB_DAYS;
  const keep = (written: Written): string => {
    const reads = DAYS.map(([key, label]) => [key, readWhole(written[key] ?? '', label)] as const);
    const why = firstWhy(reads.map(([, one]) => one));
    if (why !== undefined) return why;
    return onChange({
      labDays: { ...days, ...Object.fromEntries(reads.map(([key, one]) => [key, one.ok ? one.value : days[key]])) },
    });
  };
  const fields = DAYS.map(([key, label]) => ({ key, label, value: String(days[key]) }));
  return (
    <Section id="lab-days" title="Days for lab work">
      {editing ? (
        <Form name="Days for lab work" fields={fields} onKeep={keep} onClose={() => setEditing(false)} />
      ) : (
        <Figures fields={fields} change="Change the days" onChange={() => setEditing(true)} />
      )}
      <p className="setting-note">
        Calendar days from the order to the work, where no day was agreed.
        {practice.labDays === undefined ? ' Starting figures: common practice, no source.' : ''}
      </p>
    </Section>
  );
}

function Visits({ own, actions }: { readonly own: OwnView; readonly actions: AppActions }) {
  return (
    <Section id="visits" title="Visits">
      {own.visits.map(({ visit, title, version }) => (
        <Target key={visit} size="big" onPress={() => actions.askOwn({ ask: 'edit', visit })}>
          Visit {visit}: {title}
          <span className="option-more">{version}</span>
        </Target>
      ))}
      <p className="setting-note">A visit that is open keeps the version it was opened with.</p>
    </Section>
  );
}

interface PracticeScreenProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

function All({ own, actions }: { readonly own: OwnView; readonly actions: AppActions }) {
  const { practice } = own;
  const onChange = (change: Partial<Practice>): string => {
    const next = { ...practice, ...change };
    const why = whyNot(next);
    if (why === '') actions.askOwn({ ask: 'savePractice', practice: next });
    return why;
  };
  const list = { practice, onChange };
  return (
    <div className="settings-all">
      <Conventions {...list} />
      <LabTimes {...list} />
      <Visits own={own} actions={actions} />
      <Materials {...list} />
      <Disinfectants {...list} />
      <Trays {...list} />
      <People {...list} />
      <Reasons {...list} own={own} />
      <Cautions {...list} own={own} />
      <Ranges {...list} own={own} />
    </div>
  );
}

export function PracticeScreen({ model, actions }: PracticeScreenProps) {
  const { own } = model;
  return (
    <main className="page settings practice">
      <PageHead title="The practice">
        <FileTargets
          what="the settings"
          onExport={() => actions.askOwn({ ask: 'exportPractice' })}
          onImport={(text) => actions.askOwn({ ask: 'importPractice', text })}
        />
        <Target look="main" onPress={() => actions.go('settings')}>
          Back to the settings
        </Target>
      </PageHead>
      <SaidLine said={model.said} trouble={model.trouble} />
      <p className="setting-note">
        Holds for cases opened from now on; lots and leaflet figures also for the next visit of a case.
      </p>
      {own === undefined ? <p role="status">Being read …</p> : <All own={own} actions={actions} />}
    </main>
  );
}
