/** One visit, step by step, to be put in another order, worded anew, cut or added to; saved as a new version. */
import { useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import type { ProtocolView } from '../../app/own.types.ts';
import type { Step } from '../../domain/protocol/types.ts';
import { PageHead, SaidLine } from '../parts/Lines.tsx';
import { Target } from '../parts/Target.tsx';
import { FileTargets } from './FileTargets.tsx';
import { Form, type Written } from '../parts/Form.tsx';

interface StepProps {
  readonly step: Step;
  readonly actions: AppActions;
}

const KIND: Readonly<Record<Step['kind'], string>> = {
  inform: 'to do',
  check: 'question',
  decision: 'decision',
  reading: 'reading',
  clock: 'clock',
  signoff: 'signature',
};

const LINES = ['line1', 'line2', 'line3', 'line4'] as const;

/** At most four lines can be read from afar. */
function wordingFields(step: Step | undefined) {
  return [
    { key: 'title', label: 'Title', hint: 'verb first, at most 42 letters', value: step?.title ?? '' },
    ...LINES.map((key, at) => ({ key, label: `Line ${at + 1}`, value: step?.lines[at] ?? '' })),
    { key: 'caution', label: 'Caution', hint: 'empty when there is none', value: step?.caution ?? '' },
  ];
}

const wordingOf = (written: Written) => ({
  title: written['title'] ?? '',
  lines: LINES.map((key) => written[key] ?? ''),
  caution: written['caution'] ?? '',
});

type Writing = 'reword' | 'add' | undefined;

function StepTools({ step, actions }: StepProps) {
  const [writing, setWriting] = useState<Writing>(undefined);
  if (writing !== undefined) {
    const keep = (written: Written): string => {
      if ((written['title'] ?? '').trim() === '') return 'Title: some words are wanted.';
      actions.askOwn({ ask: writing, step: step.id, wording: wordingOf(written) });
      return '';
    };
    const name = writing === 'add' ? `New step after ${step.title}` : `Words of ${step.title}`;
    const fields = wordingFields(writing === 'add' ? undefined : step);
    return <Form name={name} fields={fields} onKeep={keep} onClose={() => setWriting(undefined)} />;
  }
  return (
    <div className="step-tools" role="group" aria-label={`Change ${step.title}`}>
      <Target onPress={() => actions.askOwn({ ask: 'move', step: step.id, by: -1 })}>Up</Target>
      <Target onPress={() => actions.askOwn({ ask: 'move', step: step.id, by: 1 })}>Down</Target>
      <Target onPress={() => setWriting('reword')}>Reword</Target>
      <Target onPress={() => setWriting('add')}>Add after</Target>
      <Target look="warn" onPress={() => actions.askOwn({ ask: 'drop', step: step.id })}>
        Drop
      </Target>
    </div>
  );
}

function Steps({ protocol, actions }: { readonly protocol: ProtocolView; readonly actions: AppActions }) {
  const [chosen, setChosen] = useState('');
  const { steps, chapters } = protocol.draft;
  return (
    <ol className="protocol-steps">
      {steps.map((step, at) => (
        <li key={step.id}>
          {step.chapter === steps[at - 1]?.chapter ? null : (
            <h2>{chapters.find((chapter) => chapter.number === step.chapter)?.title}</h2>
          )}
          <Target chosen={step.id === chosen} onPress={() => setChosen(step.id === chosen ? '' : step.id)}>
            {at + 1}. {step.title} <span className="step-kind">{KIND[step.kind]}</span>
          </Target>
          {step.id === chosen ? <StepTools step={step} actions={actions} /> : null}
        </li>
      ))}
    </ol>
  );
}

interface LinesProps {
  readonly title: string;
  readonly lines: readonly string[];
}

function Lines({ title, lines }: LinesProps) {
  if (lines.length === 0) return null;
  return (
    <>
      <h2>{title}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

/** Asks once more: what is given up here is not on any record. */
function GiveUp({ changed, actions }: { readonly changed: number; readonly actions: AppActions }) {
  const [asked, setAsked] = useState(false);
  if (!asked)
    return (
      <Target size="big" onPress={() => setAsked(true)}>
        Give up the changes
      </Target>
    );
  return (
    <>
      <Target size="big" onPress={() => setAsked(false)}>
        Go on working
      </Target>
      <Target size="big" onPress={() => actions.askOwn({ ask: 'dropChanges' })}>
        Yes, give up {changed === 1 ? 'the change' : `all ${changed}`}
      </Target>
    </>
  );
}

function Changes({ protocol, actions }: { readonly protocol: ProtocolView; readonly actions: AppActions }) {
  const { difference, warnings, problems, version } = protocol;
  if (difference.length === 0) return <p className="setting-note">Nothing is changed. Choose a step.</p>;
  return (
    <section className="changes" id="changes" aria-label="Changes">
      <Lines title="Changed" lines={difference} />
      <Lines title="What this costs" lines={warnings} />
      <Lines title="Cannot be used like this" lines={problems} />
      <div className="entry-ends">
        <Target
          look="main"
          size="big"
          refused={problems.length > 0}
          onPress={() => actions.askOwn({ ask: 'saveProtocol' })}
        >
          Save as version {version}
        </Target>
        <GiveUp changed={difference.length} actions={actions} />
      </div>
    </section>
  );
}

/** Always in view: how much is changed, and the way to where it is said and saved. */
function ToChanges({ protocol }: { readonly protocol: ProtocolView }) {
  const { difference, warnings, problems } = protocol;
  if (difference.length === 0) return null;
  const words = [
    `${difference.length} changed`,
    ...(warnings.length === 0 ? [] : [`${warnings.length} at a cost`]),
    ...(problems.length === 0 ? [] : [`${problems.length} not possible`]),
  ];
  return (
    <div className="to-changes">
      <Target look="main" onPress={() => document.getElementById('changes')?.scrollIntoView()}>
        {words.join(', ')}: look and save
      </Target>
    </div>
  );
}

interface ProtocolScreenProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

export function ProtocolScreen({ model, actions }: ProtocolScreenProps) {
  const protocol = model.own?.protocol;
  const name = protocol === undefined ? 'A visit' : `Visit ${protocol.before.visit}: ${protocol.before.title}`;
  return (
    <main className="page settings protocol">
      <PageHead title={name}>
        <FileTargets
          what="this visit"
          onExport={() => actions.askOwn({ ask: 'exportProtocol' })}
          onImport={(text) => actions.askOwn({ ask: 'importProtocol', text })}
        />
        <Target look="main" onPress={() => actions.go('practice')}>
          Back to the practice
        </Target>
      </PageHead>
      <SaidLine said={model.said} trouble={model.trouble} />
      {protocol === undefined ? (
        <p role="status">No visit is being worked on.</p>
      ) : (
        <>
          <Changes protocol={protocol} actions={actions} />
          <Steps protocol={protocol} actions={actions} />
          <ToChanges protocol={protocol} />
        </>
      )}
    </main>
  );
}
