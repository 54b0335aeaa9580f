/** One step as a screen is given it: everything decided, nothing left to work out. */
import type { CaseView } from '../domain/case/fold.ts';
import { formatHundredths, toMm } from '../domain/measure/length.ts';
import { onOffer } from '../domain/protocol/on-offer.ts';
import { isShown, stepOf } from '../domain/protocol/path.ts';
import type { Practice, ReadingDef, Step, VisitProtocol } from '../domain/protocol/types.ts';
import { trayRanking } from '../domain/summary/trays.ts';
import type { ClockRow, Summary } from '../domain/summary/types.ts';
import { commandWords } from '../interpret/index.ts';
import type { Expectation } from '../interpret/types.ts';
import type { VisitContext } from '../../machines/visit.types.ts';
import { modeOf, nextBlockedBy, nextTitle } from './expectation.ts';
import { figuresAt } from './figures.ts';
import type { PendingView, StepView } from './model.ts';
import { readingLabel } from './wording.ts';

export interface StepSetting {
  readonly context: VisitContext;
  readonly view: CaseView;
  readonly protocol: VisitProtocol;
  readonly readings: readonly ReadingDef[];
  readonly practice: Practice;
  readonly expectation: Expectation;
  readonly summary: Summary;
  readonly chosen: string | undefined;
}

function pendingView({ context, view, protocol, readings }: StepSetting): PendingView | undefined {
  const pending = context.pending;
  if (pending === undefined) return undefined;
  const old = pending.corrects === undefined ? undefined : view.log.facts[pending.corrects - 1]?.body;
  return {
    readingLabel: readingLabel({ protocol, readings }, pending.reading),
    unit: pending.unit,
    digits: formatHundredths(pending.value),
    text: pending.text,
    mustSayYes: pending.certainty !== 'sure',
    why: pending.why,
    ...(old?.kind === 'reading' ? { correctsDigits: formatHundredths(old.value) } : {}),
  };
}

function readingView({ summary, expectation, readings }: StepSetting): StepView['reading'] {
  const current = expectation.current;
  const def = readings.find((r) => r.id === current?.id);
  if (current === undefined || def === undefined) return undefined;
  const inStep = summary.readings.filter((row) => row.reading === def.id && row.struck === undefined);
  const newest = inStep.at(-1)?.markSet;
  const suspects = new Set(summary.sets.flatMap((set) => set.suspects.map((s) => s.seq)));
  return {
    id: def.id,
    label: def.label,
    unit: def.unit,
    kept: inStep
      .filter((row) => row.markSet === newest)
      .map((row) => ({ seq: row.seq, digits: formatHundredths(row.value), suspect: suspects.has(row.seq) })),
    least: def.repeat?.least ?? 1,
    plausible: def.plausible,
  };
}

function correctingView({ context, protocol, readings }: StepSetting): StepView['correcting'] {
  const target = context.correcting;
  if (target === undefined) return undefined;
  const label = readingLabel({ protocol, readings }, target.reading);
  return { label, digits: formatHundredths(target.value), unit: target.unit };
}

/** For the steps that choose a tray: the best three for the measured ridge. */
function traysFor(step: Step, { summary, practice }: StepSetting): StepView['trays'] {
  const arch = step.drawing === 'tray-upper' ? 'upper' : step.drawing === 'tray-lower' ? 'lower' : undefined;
  const ranking = arch === undefined ? undefined : trayRanking(summary.readings, practice, arch);
  if (ranking === undefined) return undefined;
  return {
    arch: ranking.arch,
    ridgeMm: toMm(ranking.ridge),
    wantedMm: toMm(practice.trayClearance),
    trays: ranking.ranked
      .slice(0, 3)
      .map(({ tray, leftMm }) => ({ label: tray.label, innerMm: toMm(tray.innerWidth), sideMm: leftMm })),
  };
}

/** The clock on this step's screen: the newest attempt that still counts. */
function clockOf(step: Step, clocks: readonly ClockRow[]): ClockRow | undefined {
  return step.kind === 'clock' ? clocks.findLast((row) => row.clock === step.clock && !row.struck) : undefined;
}

function placeOf(step: Step, protocol: VisitProtocol, context: VisitContext): { place: number; placeCount: number } {
  const shown = protocol.steps.filter((s) => s.chapter === step.chapter && isShown(s, context.answers));
  return { place: shown.findIndex((s) => s.id === step.id) + 1, placeCount: shown.length };
}

function askedFor({ context, protocol, summary }: StepSetting): string | undefined {
  if (context.asking === undefined) return undefined;
  if (context.asking.for === 'skip') return `Why is this step skipped? ${stepOf(protocol, context.step)?.title ?? ''}`;
  if (context.asking.for === 'sign') return `Still open: ${summary.open.length}. Why is it signed all the same?`;
  return 'Give the reason for this answer.';
}

/** Words on the strip: the first word of every command and answer that is legal now. */
function wordsNow(expectation: Expectation): readonly string[] {
  const words = commandWords(expectation.language);
  const commands = expectation.commands.map((command) => words[command][0] ?? command);
  const answers = expectation.answers.map((answer) => answer.words[0] ?? answer.id);
  const number = expectation.current === undefined || expectation.mode === 'choose' ? [] : ['a number'];
  return [...number, ...answers, ...commands];
}

/** The current step, ready to draw; undefined when the protocol has no such step. */
export function stepView(setting: StepSetting): StepView | undefined {
  const { context, protocol, practice, summary, expectation } = setting;
  const step = stepOf(protocol, context.step);
  if (step === undefined) return undefined;
  const mode = modeOf(context);
  const pending = pendingView(setting);
  const reading = readingView(setting);
  const correcting = correctingView(setting);
  const clock = clockOf(step, summary.clocks);
  const blocked = nextBlockedBy(context);
  const next = nextTitle(context);
  const reasonFor = askedFor(setting);
  const trays = traysFor(step, setting);
  const figures = figuresAt(step, { summary, practice, chosen: setting.chosen });
  const materials = step.kind === 'clock' ? onOffer(step, practice) : undefined;
  return {
    step,
    title: step.title,
    lines: step.lines,
    ...(step.caution === undefined ? {} : { caution: step.caution }),
    ...(step.drawing === undefined ? {} : { drawing: step.drawing }),
    chapter: protocol.chapters.find((c) => c.number === step.chapter) ?? { number: step.chapter, title: '' },
    chapterCount: protocol.chapters.length,
    ...placeOf(step, protocol, context),
    mode: mode === 'none' ? 'inform' : mode === 'correcting' ? 'reading' : mode,
    answers: step.kind === 'check' || step.kind === 'decision' ? step.answers : [],
    ...(context.answers[step.id] === undefined ? {} : { answered: context.answers[step.id]! }),
    ...(reading === undefined ? {} : { reading }),
    ...(pending === undefined ? {} : { pending }),
    ...(context.candidates === undefined
      ? {}
      : { candidates: context.candidates.values.map((value) => ({ value, digits: formatHundredths(value) })) }),
    ...(context.asking === undefined ? {} : { reasons: practice.reasons }),
    ...(reasonFor === undefined ? {} : { reasonFor }),
    ...(materials === undefined ? {} : { materials }),
    ...(setting.chosen === undefined ? {} : { chosenMaterial: setting.chosen }),
    ...(clock === undefined ? {} : { clock }),
    ...(correcting === undefined ? {} : { correcting }),
    ...(trays === undefined ? {} : { trays }),
    ...(figures.length === 0 ? {} : { figures }),
    canNext: blocked === undefined,
    ...(blocked === undefined ? {} : { nextBlockedBy: blocked }),
    ...(next === undefined ? {} : { next }),
    words: wordsNow(expectation),
  };
}
