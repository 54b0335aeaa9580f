/** The drawing that belongs to a step, with the case's own numbers on it. */
import type { AppModel, StepView } from '../../app/model.ts';
import type { DrawingId } from '../../domain/protocol/types.ts';
import type { Summary } from '../../domain/summary/types.ts';
import { Face, Sulcus } from '../drawings/Face.tsx';
import { CaseHeights, CaseHinge, SetRuler } from '../drawings/fromSummary.tsx';
import { useDecided } from '../decided/Lazy.tsx';
import { LowerRidge, TrayPlan, UpperRidge } from '../drawings/Ridges.tsx';
import { digitsToMm } from '../format.ts';

interface DrawingProps {
  readonly model: AppModel;
  readonly step: StepView;
}

/** Latest live value of a reading, in millimetres. */
function latestMm(summary: Summary | undefined, reading: string): number | undefined {
  const row = summary?.readings.findLast((r) => r.reading === reading && r.struck === undefined);
  return row === undefined ? undefined : row.value / 100;
}

const given = <K extends string>(key: K, value: number | undefined) =>
  value === undefined ? {} : ({ [key]: value } as Record<K, number>);

function keptMm(step: StepView): number | undefined {
  const digits = step.reading?.kept.at(-1)?.digits;
  return digits === undefined ? undefined : digitsToMm(digits);
}

/** The set that the readings kept at this step belong to. */
function RulerHere({ model, step }: DrawingProps) {
  const { reading } = step;
  const first = reading?.kept[0]?.seq;
  const set = model.summary?.sets.find((s) => first !== undefined && s.seqs.includes(first));
  if (set === undefined || reading === undefined) return <Face what={reading?.label ?? 'height'} />;
  return <SetRuler set={set} plausibleMm={[reading.plausible[0] / 100, reading.plausible[1] / 100]} />;
}

interface DecidedProps {
  readonly drawing: DrawingId;
  readonly summary: Summary | undefined;
}

function Decided({ drawing, summary }: DecidedProps) {
  const parts = useDecided();
  if (parts === undefined) return null;
  const { SoreMap, ToothSizes, Tracing } = parts;
  if (drawing === 'tracing') return summary?.tracing === undefined ? null : <Tracing tracing={summary.tracing} />;
  if (drawing === 'tooth-sizes') return <ToothSizes teeth={summary?.teeth ?? []} />;
  return <SoreMap areas={summary?.sore ?? []} />;
}

export function StepDrawing({ model, step }: DrawingProps) {
  const repeated = (step.reading?.least ?? 1) > 1 && (step.reading?.kept.length ?? 0) > 0;
  if (repeated) return <RulerHere model={model} step={step} />;
  const { summary } = model;
  switch (step.drawing) {
    case undefined:
      return null;
    case 'caliper-upper':
      return <UpperRidge {...given('widthMm', latestMm(summary, 'upper-width'))} />;
    case 'caliper-lower':
      return (
        <LowerRidge
          measure={step.reading?.id === 'lower-length' ? 'length' : 'width'}
          {...given('widthMm', latestMm(summary, 'lower-width'))}
          {...given('lengthMm', latestMm(summary, 'lower-length'))}
        />
      );
    case 'caliper-face':
      return <Face what={step.reading?.label ?? 'nose to chin'} {...given('valueMm', keptMm(step))} />;
    case 'tray-upper':
    case 'tray-lower':
      return step.trays === undefined ? null : <TrayPlan {...step.trays} />;
    case 'readings-rest':
      return <RulerHere model={model} step={step} />;
    case 'height-stack':
      return summary === undefined ? null : <CaseHeights summary={summary} brief />;
    case 'hinge':
      // At the pin only what was read off it belongs: no other change stands beside that question.
      return summary === undefined || (step.step.id.startsWith('pin-') && summary.change?.from !== 'ground') ? null : (
        <CaseHinge summary={summary} />
      );
    case 'tracing':
    case 'tooth-sizes':
    case 'sore-map':
    case 'sore-upper':
    case 'sore-lower':
      return <Decided drawing={step.drawing} summary={summary} />;
    case 'sulcus':
      return <Sulcus {...given('depthMm', keptMm(step))} />;
  }
}
