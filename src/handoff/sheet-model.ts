/** Summary → lab sheet as data, in the order in which the bench needs it. Pure: times come in as words. */
import type { Summary } from '../domain/summary/types.ts';
import { benchSections } from './sheet-bench.ts';
import { decidedSections, toldApart } from './sheet-decided.ts';
import { drawingBlocks } from './sheet-drawings.ts';
import type { Section, SheetModel, SheetTimes } from './sheet-model.types.ts';
import {
  allHeightLines,
  clockBlock,
  computedBlock,
  findingBlocks,
  flagBlock,
  lines,
  readingBlock,
  setBlocks,
  signedLines,
  workBlock,
  type Moment,
} from './sheet-parts.ts';

export type { SheetModel, SheetTimes } from './sheet-model.types.ts';

const FOOT = [
  'This sheet repeats what was measured and what follows from it by arithmetic. It diagnoses nothing.',
  'Local protocols, the material’s instructions for use and licensed judgement come first.',
];

function momentOf(summary: Summary, times: SheetTimes): Moment {
  const day = times.date(summary.openedAt);
  return (at) => (times.date(at) === day ? times.time(at) : `${times.date(at)} ${times.time(at)}`);
}

function head(summary: Summary, times: SheetTimes): SheetModel['head'] {
  const until = summary.closedAt === undefined ? ', not closed' : ` to ${momentOf(summary, times)(summary.closedAt)}`;
  return [
    { label: 'Visit', value: `${summary.visitName}: ${summary.visitTitle}` },
    {
      label: 'Date',
      value: `${times.date(summary.openedAt)}, ${times.time(summary.openedAt)}${until} (${times.zone})`,
    },
    { label: 'Clinician', value: summary.clinician },
    { label: 'Assistant', value: summary.assistant },
    { label: 'Protocol', value: summary.protocol },
  ];
}

function sections(summary: Summary, moment: Moment): readonly Section[] {
  return [
    { id: 'cautions', title: 'Cautions', blocks: [lines(summary.cautions)] },
    { id: 'open', title: 'Open before hand-over', blocks: [lines(summary.open)] },
    { id: 'work', title: 'Work', blocks: [workBlock(summary, moment)] },
    { id: 'clocks', title: 'Impressions and clocks', blocks: [clockBlock(summary, moment)] },
    {
      id: 'heights',
      title: 'Height and pin',
      blocks: [lines(allHeightLines(summary)), ...drawingBlocks(summary)],
    },
    ...decidedSections(summary),
    { id: 'flags', title: 'What does not agree', blocks: [flagBlock(summary, moment)] },
    { id: 'findings', title: 'Findings, wishes and notes', blocks: findingBlocks(summary, moment) },
    { id: 'readings', title: 'Readings', blocks: [...setBlocks(summary), readingBlock(summary, moment)] },
    { id: 'computed', title: 'Computed', blocks: [computedBlock(summary, toldApart)] },
    ...benchSections(summary, moment),
    { id: 'signed', title: 'Signed', blocks: [lines(signedLines(summary, moment))] },
  ];
}

/**
 * The whole sheet. Everything of the summary that the bench works from stands on it; what is empty says "none", so that
 * a missing part is seen to be missing. `digest` is the case's SHA-256 in lower-case hex.
 */
export function sheetModel(summary: Summary, times: SheetTimes, digest?: string): SheetModel {
  return {
    title: `Lab sheet: case ${summary.caseCode}`,
    mark: summary.demo ? 'demo, invented data' : '',
    head: head(summary, times),
    sections: sections(summary, momentOf(summary, times)),
    foot: FOOT,
    ...(digest === undefined ? {} : { digest }),
  };
}
