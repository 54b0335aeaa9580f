/** What may be said or pressed now, as plain data for the interpreter and for the strip of words on screen. */
import { liveReadings, type CaseView, type FactOf } from '../domain/case/fold.ts';
import type { Hundredths } from '../domain/measure/length.ts';
import { answerOf, nextStep, stepOf, stepOfReading } from '../domain/protocol/path.ts';
import type { Language, Practice, ReadingDef, Step, VisitProtocol } from '../domain/protocol/types.ts';
import type { CommandId, ExpectedReading, Expectation } from '../interpret/types.ts';
import type { VisitContext } from '../../machines/visit.types.ts';

export interface Surroundings {
  readonly view: CaseView;
  readonly context: VisitContext;
  readonly protocol: VisitProtocol;
  readonly readings: readonly ReadingDef[];
  readonly practice: Practice;
  readonly language: Language;
}

export type Mode = Expectation['mode'] | 'closed' | 'correcting';

/** The screen's mode, from the machine's memory alone, so that a test needs no actor. */
export function modeOf(context: VisitContext): Mode {
  if (context.closed) return 'closed';
  if (context.held) return 'held';
  if (context.candidates !== undefined) return 'choose';
  if (context.pending !== undefined) return 'confirm';
  if (context.asking !== undefined) return 'reason';
  if (context.correcting !== undefined) return 'correcting';
  return stepOf(context.protocol, context.step)?.kind ?? 'none';
}

/** Every reading is asked for at every step, and each looks at the same list. */
const listed = new WeakMap<CaseView, ReadonlyMap<string, readonly FactOf<'reading'>[]>>();

function readingsOf(view: CaseView): ReadonlyMap<string, readonly FactOf<'reading'>[]> {
  const known = listed.get(view);
  if (known !== undefined) return known;
  const found = new Map<string, FactOf<'reading'>[]>();
  for (const fact of liveReadings(view)) {
    const list = found.get(fact.body.reading);
    if (list === undefined) found.set(fact.body.reading, [fact]);
    else list.push(fact);
  }
  listed.set(view, found);
  return found;
}

/** Live readings of one quantity in the current set of marks, oldest first. */
export function previousOf(view: CaseView, def: ReadingDef): readonly Hundredths[] {
  return (readingsOf(view).get(def.id) ?? [])
    .filter((fact) => def.repeat?.withinSet !== true || (view.markSetOf.get(fact.seq) ?? 0) === view.markSets)
    .map((fact) => fact.body.value);
}

export function expectedReading(def: ReadingDef, around: Surroundings): ExpectedReading {
  return {
    id: def.id,
    names: def.names[around.language] ?? [],
    unit: def.unit,
    plausible: def.plausible,
    expected: def.expected,
    previous: previousOf(around.view, def),
  };
}

/** Why "next" would not be taken now, in a sentence; undefined when it would. */
export function nextBlockedBy(context: VisitContext): string | undefined {
  const step = stepOf(context.protocol, context.step);
  const mode = modeOf(context);
  if (mode === 'confirm')
    return context.pending?.certainty === 'sure' ? undefined : 'Say yes to keep this number, or say it again.';
  if (mode === 'choose') return 'Say which of the numbers it was.';
  if (mode === 'reason') return 'Give a reason, or go back.';
  if (mode === 'held') return 'The visit is on hold. Carry on first.';
  if (step === undefined || step.optional === true) return undefined;
  if ((step.kind === 'check' || step.kind === 'decision') && context.answers[step.id] === undefined) {
    return 'Answer first, or skip with a reason.';
  }
  if (step.kind === 'reading' && (context.kept[step.id] ?? 0) === 0)
    return 'No reading is kept here yet. Say the number, or skip with a reason.';
  if (step.kind === 'signoff' && (context.kept[step.id] ?? 0) === 0) return 'Sign first.';
  if (step.kind === 'clock') return clockBlocks(context, step);
  return undefined;
}

function clockBlocks(context: VisitContext, step: Extract<Step, { kind: 'clock' }>): string | undefined {
  const stage = context.clocks[step.clock] ?? 'idle';
  if (stage === 'out') return undefined;
  if (stage === 'idle') return 'The clock has not been started. Start it, or skip with a reason.';
  if (step.flow === 'timed') return undefined;
  return stage === 'mixing'
    ? 'The material is being mixed. Say seated when the tray is in.'
    : 'The material is in the mouth. Say out when it is removed.';
}

const ALWAYS: readonly CommandId[] = ['undo', 'help', 'howLong', 'sayAgain'];

function commandsNow(context: VisitContext, mode: Mode): CommandId[] {
  const step = stepOf(context.protocol, context.step);
  if (mode === 'closed') return [];
  if (mode === 'held') return ['carryOn', 'howLong', 'help'];
  if (mode === 'confirm') return ['yes', 'no', 'next', 'hold', ...ALWAYS];
  if (mode === 'choose') return ['no', 'hold', ...ALWAYS];
  if (mode === 'reason' || mode === 'correcting') return ['no', 'back', 'hold', ...ALWAYS];
  const walking: CommandId[] = ['next', 'back', 'skip', 'hold', ...ALWAYS];
  if (step?.kind === 'signoff') return ['yes', ...walking];
  if (step?.kind !== 'clock') return walking;
  const stage = context.clocks[step.clock] ?? 'idle';
  if (stage === 'idle') return ['start', ...walking];
  if (stage === 'mixing') return step.flow === 'impression' ? ['seated', 'out', ...walking] : ['out', ...walking];
  return stage === 'seated' ? ['out', ...walking] : walking;
}

function answersNow(around: Surroundings, mode: Mode): Expectation['answers'] {
  const { context, practice, language } = around;
  const step = stepOf(context.protocol, context.step);
  if (mode === 'reason') {
    return practice.reasons.map((reason) => ({
      id: reason.id,
      words: [reason.label.toLowerCase(), ...(reason.words[language] ?? [])],
    }));
  }
  if (mode === 'check' || mode === 'decision') {
    const answers = step?.kind === 'check' || step?.kind === 'decision' ? step.answers : [];
    return answers.map((answer) => ({
      id: answer.id,
      words: [answer.label.toLowerCase(), ...(answer.words[language] ?? [])],
    }));
  }
  return [];
}

/** Enter and the second pedal answer an open question with its good answer, if it has one and needs no reason. */
function mainAnswerOf(context: VisitContext, mode: Mode): string | undefined {
  const step = stepOf(context.protocol, context.step);
  if ((mode !== 'check' && mode !== 'decision') || (step?.kind !== 'check' && step?.kind !== 'decision'))
    return undefined;
  if (context.answers[step.id] !== undefined) return undefined;
  return step.answers.find((answer) => answer.tone === 'good' && answer.needsReason !== true)?.id;
}

/** Everything the interpreter needs to judge the next utterance. */
export function expectationOf(around: Surroundings): Expectation {
  const { context, readings } = around;
  const mode = modeOf(context);
  const step = stepOf(context.protocol, context.step);
  const asked =
    mode === 'correcting' ? context.correcting?.reading : (context.candidates?.reading ?? context.pending?.reading);
  const currentId = asked ?? (step?.kind === 'reading' ? step.reading : undefined);
  const current = readings.find((def) => def.id === currentId);
  const mainAnswer = mainAnswerOf(context, mode);
  const callable = readings.filter(
    (def) => def.anytime === true || stepOfReading(context.protocol, def.id) !== undefined,
  );
  return {
    language: around.language,
    step: context.step,
    mode: mode === 'closed' ? 'none' : mode === 'correcting' ? 'reading' : mode,
    ...(current === undefined ? {} : { current: expectedReading(current, around) }),
    readings:
      mode === 'held' || mode === 'closed' || mode === 'reason'
        ? []
        : callable.map((def) => expectedReading(def, around)),
    answers: answersNow(around, mode),
    ...(mainAnswer === undefined ? {} : { mainAnswer }),
    passable: nextBlockedBy(context) === undefined,
    commands: commandsNow(context, mode),
    ...(context.pending === undefined ? {} : { pending: context.pending.value }),
    ...(context.candidates === undefined ? {} : { candidates: context.candidates.values }),
  };
}

/** Title of what comes after this step, for the preview line. */
export function nextTitle(context: VisitContext): string | undefined {
  const answer = answerOf(stepOf(context.protocol, context.step), context.answers[context.step]);
  const branch = answer?.retake === true ? undefined : answer?.goto;
  return (
    branch === undefined ? nextStep(context.protocol, context.step, context.answers) : stepOf(context.protocol, branch)
  )?.title;
}
