/** A visit as mermaid text: its steps in order, by chapter, with every branch and every way back. */
import { answersOf } from '../../src/domain/protocol/validate.ts';
import type { Condition, Step, VisitProtocol } from '../../src/domain/protocol/types.ts';

const idOf = (step: string) => `s_${step.replaceAll('-', '_')}`;
const quoted = (text: string) => text.replaceAll('"', '#quot;');
const said = ({ step, answer }: Condition) => `${step}: ${answer}`;

function conditionOf({ onlyIf, notIf = [], optional }: Step): readonly string[] {
  return [
    ...(onlyIf === undefined ? [] : [`only if ${said(onlyIf)}`]),
    ...(notIf.length === 0 ? [] : [`not if ${notIf.map(said).join(' or ')}`]),
    ...(optional === true ? ['may be passed by'] : []),
  ];
}

/** Shape by kind: questions are diamonds, readings slanted, clocks round, signatures doubled. */
function shaped(step: Step): string {
  const text = `"${quoted([step.title, ...conditionOf(step)].join('<br/>'))}"`;
  switch (step.kind) {
    case 'check':
    case 'decision':
      return `{{${text}}}`;
    case 'reading':
      return `[/${text}/]`;
    case 'clock':
      return `([${text}])`;
    case 'signoff':
      return `[[${text}]]`;
    case 'inform':
      return `[${text}]`;
  }
}

function onward(step: Step, next: Step | undefined): readonly string[] {
  const answers = answersOf(step);
  const branches = answers.flatMap(({ label, goto, retake }) =>
    goto === undefined
      ? []
      : [
          `  ${idOf(step.id)} ${retake === true ? '-. "' : '== "'}${quoted(label)}${retake === true ? '" .-> ' : '" ==> '}${idOf(goto)}`,
        ],
  );
  const stays = answers.filter(({ goto, retake }) => goto === undefined || retake === true);
  const goesOn = next !== undefined && (answers.length === 0 || stays.length > 0);
  return [...(goesOn ? [`  ${idOf(step.id)} --> ${idOf(next.id)}`] : []), ...branches];
}

export function protocolDiagram(protocol: VisitProtocol): string {
  const { steps, chapters, title, visit, id, version } = protocol;
  const groups = chapters.flatMap(({ number, title: name }) => [
    `  subgraph c${number}["${number}. ${quoted(name)}"]`,
    ...steps.filter((step) => step.chapter === number).map((step) => `    ${idOf(step.id)}${shaped(step)}`),
    '  end',
  ]);
  return [
    `# Visit ${visit}: ${title} (${id}, version ${version})`,
    '',
    'Written by `npm run diagrams` from the protocol; not by hand. A step whose condition does not hold is passed by. Thick: a branch',
    'taken by that answer. Dotted: taken again from there, the earlier attempt stays on record.',
    '',
    '```mermaid',
    'flowchart TD',
    ...groups,
    ...steps.flatMap((step, at) => onward(step, steps[at + 1])),
    '```',
    '',
  ].join('\n');
}
