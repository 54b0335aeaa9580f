/** What the app says it did, and what it asks for. Short, exact, no blame. */
import type { FactBody } from '../domain/case/facts.ts';
import { formatHundredths, type Hundredths } from '../domain/measure/length.ts';
import { answerOf, stepOf } from '../domain/protocol/path.ts';
import type { ReadingDef, Unit, VisitProtocol } from '../domain/protocol/types.ts';
import { shortDay } from '../domain/measure/calendar.ts';
import type { UnclearReason } from '../interpret/types.ts';

export interface Names {
  readonly protocol: VisitProtocol;
  readonly readings: readonly ReadingDef[];
}

/** "62.5 mm" */
export function withUnit(value: Hundredths, unit: Unit): string {
  return unit === '°' ? `${formatHundredths(value)}°` : `${formatHundredths(value)} ${unit}`;
}

export function readingLabel(names: Names, id: string): string {
  return names.readings.find((def) => def.id === id)?.label ?? id;
}

function stepTitle(names: Names, id: string): string {
  return stepOf(names.protocol, id)?.title ?? id;
}

function clockLabel(names: Names, clock: string): string {
  const step = names.protocol.steps.find((s) => s.kind === 'clock' && s.clock === clock);
  return step?.kind === 'clock' ? (step.clockLabel ?? step.title) : clock.replaceAll('-', ' ');
}

type Describe = { readonly [K in FactBody['kind']]?: (body: Extract<FactBody, { kind: K }>, names: Names) => string };

const describe: Describe = {
  reading: (b, n) =>
    `${b.corrects === undefined ? '' : 'corrected: '}${readingLabel(n, b.reading)} ${withUnit(b.value, b.unit)}`,
  proposalDropped: (b, n) => `not kept: ${readingLabel(n, b.reading)} ${formatHundredths(b.value)}`,
  answered: (b, n) => `${stepTitle(n, b.step)}: ${answerOf(stepOf(n.protocol, b.step), b.answer)?.label ?? b.answer}`,
  attemptStarted: (b, n) => `taken again from: ${stepTitle(n, b.goto)}`,
  skipped: (b, n) => `skipped: ${stepTitle(n, b.step)} (${b.reason})`,
  note: (b) => `note: ${b.text}`,
  clockStarted: (b, n) =>
    `clock started: ${clockLabel(n, b.clock)}, ${b.flow === 'impression' ? b.material.name : b.agent.name}`,
  clockSeated: (b, n) => `seated: ${clockLabel(n, b.clock)}`,
  clockOut: (b, n) => `ended: ${clockLabel(n, b.clock)}`,
  takenOver: (b, n) => `poured or taken over: ${clockLabel(n, b.clock)}`,
  flagAnswered: (b) => (b.answer === 'keep' ? `kept as it is: ${b.reason}` : 'to be measured again'),
  held: () => 'on hold',
  carriedOn: () => 'carried on',
  signed: (b) => `signed: ${b.initials}`,
  visitClosed: () => 'visit closed',
  benchDone: (b) => `done: ${b.what}, ${b.by}`,
  labDue: (b) => `work due back ${shortDay(b.day)}`,
  benchQuestion: (b) => `question: ${b.text}`,
  benchAnswer: (b) => `answer: ${b.text}`,
  workReturned: (b) => `work returned, ${b.by}`,
};

/** One act in words: "rest height 62.5 mm". Moves alone are named by where they led. */
export function describeAct(facts: readonly FactBody[], names: Names): string {
  const parts: string[] = [];
  for (const body of facts) {
    const words = describe[body.kind] as ((b: FactBody, n: Names) => string) | undefined;
    if (words !== undefined) parts.push(words(body, names));
  }
  const moved = facts.find((body) => body.kind === 'moved');
  if (parts.length === 0 && moved !== undefined)
    return `${moved.why === 'back' ? 'back to' : 'on to'}: ${stepTitle(names, moved.to)}`;
  return parts.join('; ');
}

const UNCLEAR: Readonly<Record<UnclearReason, string>> = {
  noise: 'Not understood.',
  twoNumbers: 'More than one number was heard. Say one number.',
  lostPoint: 'The point may be missing. Say it again with “point”.',
  malformed: 'That is not one number. Say it again.',
  outOfRange: 'That number is out of range. Say it again.',
  negative: 'A distance cannot be negative. Say it again.',
  unit: 'The unit does not fit this reading. Say it in the unit shown.',
  notNow: 'That means nothing at this step. A number needs the name of its reading first.',
  notANumber: 'That is not a number.',
  tooFine: 'At most two decimals can be kept.',
};

/** What was heard and why it was not taken, with what can be done. */
export function unclearText(reason: UnclearReason, text: string): string {
  return text.trim() === '' ? UNCLEAR[reason] : `Heard “${text.trim().slice(0, 80)}”. ${UNCLEAR[reason]}`;
}
