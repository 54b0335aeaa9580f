/** From what was understood to one event for the visit machine, or a sentence saying why not. */
import { answerOf, stepOf } from '../domain/protocol/path.ts';
import type { CommandId, Expectation, Interpretation, Utterance } from '../interpret/types.ts';
import type { HeardEvent, VisitContext, VisitEvent } from '../../machines/visit.types.ts';
import { nextBlockedBy } from './expectation.ts';
import { unclearText } from './wording.ts';

export type Intent =
  | { readonly kind: 'event'; readonly event: VisitEvent }
  | { readonly kind: 'undo' }
  | { readonly kind: 'howLong' }
  | { readonly kind: 'sayAgain' }
  | { readonly kind: 'help' }
  | { readonly kind: 'start' }
  | { readonly kind: 'material'; readonly id: string }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'refused'; readonly text: string };

const event = (e: VisitEvent): Intent => ({ kind: 'event', event: e });
const refused = (text: string): Intent => ({ kind: 'refused', text });

interface Setting {
  readonly context: VisitContext;
  readonly expectation: Expectation;
  readonly utterance: Utterance;
  /** Who signs when a yes is given at a sign-off step. */
  readonly initials: { readonly clinician: string; readonly assistant: string };
}

function yesOrNo(command: 'yes' | 'no', { context, expectation, utterance, initials }: Setting): Intent {
  if (expectation.mode === 'check' || expectation.mode === 'decision') {
    const step = stepOf(context.protocol, context.step);
    if (answerOf(step, command) !== undefined)
      return event({ type: 'ANSWER', answer: command, source: utterance.source });
    return refused('Choose one of the answers shown.');
  }
  const step = stepOf(context.protocol, context.step);
  if (expectation.mode === 'signoff' && command === 'yes' && step?.kind === 'signoff') {
    return event({ type: 'SIGN', initials: initials[step.role], open: 0 });
  }
  return event({ type: command === 'yes' ? 'YES' : 'NO' });
}

const PLAIN: Partial<Record<CommandId, VisitEvent>> = {
  back: { type: 'BACK' },
  hold: { type: 'HOLD' },
  carryOn: { type: 'CARRY_ON' },
  skip: { type: 'SKIP' },
  seated: { type: 'SEATED' },
  out: { type: 'OUT' },
};

function fromCommand(command: CommandId, setting: Setting): Intent {
  if (command === 'yes' || command === 'no') return yesOrNo(command, setting);
  if (
    command === 'undo' ||
    command === 'howLong' ||
    command === 'sayAgain' ||
    command === 'help' ||
    command === 'start'
  ) {
    return { kind: command };
  }
  if (command === 'next') {
    const why = nextBlockedBy(setting.context);
    return why === undefined ? event({ type: 'NEXT' }) : refused(why);
  }
  const plain = PLAIN[command];
  return plain === undefined ? refused(unclearText('notNow', command)) : event(plain);
}

function fromReading(heard: Extract<Interpretation, { kind: 'reading' }>, { expectation, utterance }: Setting): Intent {
  const id = heard.reading ?? expectation.current?.id;
  const reading =
    expectation.readings.find((r) => r.id === id) ?? (expectation.current?.id === id ? expectation.current : undefined);
  if (reading === undefined) {
    return refused(
      `Heard “${heard.text}”. No number is asked for here. Say the name of the reading before the number.`,
    );
  }
  const proposed: HeardEvent = {
    type: 'HEARD',
    reading: reading.id,
    value: heard.value,
    unit: reading.unit,
    text: heard.text,
    source: utterance.source,
    certainty: heard.certainty,
    why: heard.why,
    correction: heard.correction,
    ...(heard.confidence === undefined ? {} : { confidence: heard.confidence }),
  };
  return event(proposed);
}

function fromAsk(heard: Extract<Interpretation, { kind: 'ask' }>, { expectation }: Setting): Intent {
  const reading = heard.reading ?? expectation.current?.id;
  if (reading === undefined || heard.candidates.length === 0) return refused(unclearText(heard.reason, heard.text));
  return event({ type: 'ASKED', reading, candidates: heard.candidates, text: heard.text });
}

function fromAnswer(answer: string, { expectation, utterance }: Setting): Intent {
  if (answer.startsWith('material:')) return { kind: 'material', id: answer.slice('material:'.length) };
  if (expectation.mode === 'reason') return event({ type: 'REASON', reason: answer });
  return event({ type: 'ANSWER', answer, source: utterance.source });
}

/** One interpretation to one intent. What is not understood becomes a sentence, never silence. */
export function intentOf(heard: Interpretation, setting: Setting): Intent {
  switch (heard.kind) {
    case 'reading':
      return fromReading(heard, setting);
    case 'ask':
      return fromAsk(heard, setting);
    case 'command':
      return fromCommand(heard.command, setting);
    case 'answer':
      return fromAnswer(heard.answer, setting);
    case 'note':
      return setting.expectation.mode === 'reason'
        ? event({ type: 'REASON', reason: heard.note })
        : event({ type: 'NOTE', text: heard.note, source: setting.utterance.source });
    case 'unclear':
      return refused(unclearText(heard.reason, heard.text));
    case 'none':
      return { kind: 'nothing' };
  }
}

/** Touch intents that the interpreter has no word for: "goto:STEP", "clockDone:CLOCK" … */
export function touchIntent(text: string): VisitEvent | undefined {
  const [verb = '', ...rest] = text.split(':');
  const value = rest.join(':');
  switch (verb) {
    case 'goto':
      return { type: 'GOTO', step: value };
    case 'clockDone':
      return { type: 'CLOCK_DONE', clock: value };
    case 'taken':
      return { type: 'TAKEN', clock: value };
    case 'sign':
      return { type: 'SIGN', initials: value, open: 0 };
    case 'reason':
      return { type: 'REASON', reason: value };
    case 'cancel':
      return { type: 'CANCEL' };
    default:
      return undefined;
  }
}
