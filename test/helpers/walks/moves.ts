/** What a random hand does: mostly what the screen asks for, often what is on offer, and now and then anything at all. */
import fc from 'fast-check';
import { liveOf } from '../../../src/domain/case/fold.ts';
import { formatHundredths } from '../../../src/domain/measure/length.ts';
import { commandWords, speakNumber } from '../../../src/interpret/index.ts';
import type { CommandId } from '../../../src/interpret/types.ts';
import { answersOf } from '../../../src/domain/protocol/validate.ts';
import type { RecordModel } from './model.ts';
import type { Walker } from './walker.ts';

type Act = (walker: Walker, dice: number) => void;

const pick = <T>(from: readonly T[], dice: number): T | undefined => from[dice % Math.max(1, from.length)];

/** A value inside the expected range of what is asked for, now and then outside it. */
function numberFor(walker: Walker, dice: number): number | undefined {
  const { current } = walker.session.expectation();
  if (current === undefined) return undefined;
  const [low, high] = dice % 7 === 0 ? current.plausible : current.expected;
  const fine = low + (Math.floor(dice / 7) % (high - low + 1));
  return dice % 3 === 0 ? fine : Math.min(high, Math.round(fine / 50) * 50);
}

/** What the screen asks for now, done as asked. */
const onward: Act = (walker, dice) => {
  const { mode, answers, commands, candidates } = walker.session.expectation();
  const value = numberFor(walker, dice);
  const answer = pick(answers, dice);
  if (mode === 'held') walker.press('carryOn');
  else if (mode === 'choose') walker.press(`choose:${pick(candidates ?? [], dice) ?? 0}`);
  else if (mode === 'confirm') walker.press('yes');
  else if (mode === 'reason' && answer !== undefined) walker.press(`reason:${answer.id}`);
  else if (
    mode === 'reading' &&
    value !== undefined &&
    walker.session.context().kept[walker.session.context().step] === undefined
  )
    walker.hear('keypad', formatHundredths(value));
  else if (mode === 'clock') clock(walker, commands, dice);
  else if (mode === 'signoff') walker.press('sign:KV');
  else if (answer !== undefined && walker.session.expectation().passable !== true) walker.press(`answer:${answer.id}`);
  else walker.press('next');
};

function clock(walker: Walker, commands: readonly CommandId[], dice: number): void {
  const offer = pick(walker.session.expectation().answers, dice);
  if (commands.includes('start') && offer !== undefined) walker.press(offer.id);
  const stage = (['start', 'seated', 'out', 'next'] as const).find((command) => commands.includes(command));
  walker.press(stage ?? 'next');
}

const COMMANDS: readonly CommandId[] = [
  'next',
  'back',
  'yes',
  'no',
  'undo',
  'hold',
  'carryOn',
  'skip',
  'start',
  'seated',
  'out',
  'howLong',
  'sayAgain',
  'help',
];

/** Any target of any screen, whether it is there now or not. */
const tap: Act = (walker, dice) => {
  const { protocol } = walker;
  const clocks = protocol.steps.flatMap((step) => (step.kind === 'clock' ? [step.clock] : []));
  const which = Math.floor(dice / 8);
  const targets = [
    pick(COMMANDS, which)!,
    `goto:${pick(protocol.steps, which)?.id ?? ''}`,
    `clockDone:${pick(clocks, which) ?? ''}`,
    `taken:${pick(clocks, which) ?? ''}`,
    `answer:${pick(walker.session.expectation().answers, which)?.id ?? 'yes'}`,
    `choose:${pick(walker.session.expectation().candidates ?? [5000], which) ?? 0}`,
    pick(
      [
        'cancel',
        'sign: ',
        'sign:BR',
        'reason:free words',
        'material:nothing',
        'goto:nowhere',
        'note:said aloud',
        'correct:1',
      ],
      which,
    )!,
    `reason:${pick(['not-possible', 'moved', 'voids'], which)!}`,
  ];
  walker.press(pick(targets, dice)!);
};

/** The right word for something that can be said now. */
const word: Act = (walker, dice) => {
  const { answers, commands } = walker.session.expectation();
  const value = numberFor(walker, dice);
  const words = commandWords('en');
  const sayable = [
    ...answers.flatMap((answer) => answer.words),
    ...commands.map((command) => words[command][0] ?? command),
  ];
  const text = value !== undefined && dice % 2 === 0 ? speakNumber(value, 'en') : (pick(sayable, dice) ?? 'next');
  walker.hear('voice', text, [{ transcript: text, confidence: 0.9 }]);
};

/** A number said right and heard with doubt: tens for teens, a point lost, another number beside it. */
const misheard: Act = (walker, dice) => {
  const value = numberFor(walker, dice) ?? 5250;
  const right = speakNumber(value, 'en');
  const wrong = [
    formatHundredths(value * 10),
    speakNumber(1500 + (dice % 5) * 100, 'en'),
    `${right} ${right}`,
    right.replace('point', 'and'),
    'so what are you doing tonight',
    formatHundredths(Math.round(value / 10)),
  ];
  const other = pick(wrong, dice)!;
  const alternatives = [
    { transcript: right, confidence: 0.55 },
    { transcript: other, confidence: 0.5 },
  ];
  const order = dice % 2 === 0 ? alternatives : alternatives.toReversed();
  walker.hear('voice', order[0]!.transcript, order);
};

/** A reading called out of turn by its name. */
const outOfTurn: Act = (walker, dice) => {
  const reading = pick(walker.session.expectation().readings, dice);
  if (reading === undefined) return;
  const [low, high] = reading.expected;
  const text = `${reading.names[0] ?? ''} ${speakNumber(Math.min(high, low + (dice % 9) * 50), 'en')}`;
  walker.hear('voice', text, [{ transcript: text, confidence: 0.9 }]);
};

const TALK = [
  '',
  'mm',
  'open a little wider please',
  'seventy or eighty',
  'no no no',
  'yes no',
  'one hundred million',
  'minus five',
  'note the patient is tired',
  'undo that',
  '66,5',
  'NaN',
  '1e5',
  'seventeen seventy',
];

const nonsense: Act = (walker, dice) => {
  const text = pick(TALK, dice)!;
  walker.hear(dice % 5 === 0 ? 'keypad' : 'voice', text, dice % 3 === 0 ? [] : [{ transcript: text, confidence: 0.4 }]);
};

const KEYS = ['Enter', ' ', 'PageDown', 'PageUp', 'Backspace', 'y', 'n', 'h', 'Escape', 'F5'];
const key: Act = (walker, dice) => walker.hear('key', pick(KEYS, dice)!);
const undo: Act = (walker) => walker.press('undo');
const back: Act = (walker) => walker.press('back');
const hold: Act = (walker, dice) => walker.press(dice % 3 === 0 ? 'carryOn' : 'hold');
const skip: Act = (walker) => walker.press('skip');
const note: Act = (walker) => walker.send({ type: 'NOTE', text: 'a remark', source: 'keypad' });
const paused: Act = (walker) => walker.send({ type: 'PAUSE_OVER' });
const reload: Act = (walker) => walker.reload();
const wait: Act = (walker, dice) => walker.wait((dice % 900) * 1000);

/** Corrects one of the readings of the case, one of an earlier visit or a struck one among them. */
const correct: Act = (walker, dice) => {
  const live = liveOf(walker.view(), 'reading').map((fact) => fact.seq);
  const any = 1 + (dice % walker.record.facts.length);
  walker.press(`correct:${dice % 4 === 0 ? any : (pick(live, dice) ?? any)}`);
};

const flag: Act = (walker, dice) => {
  const id = pick(walker.summary().flags, dice)?.id ?? 'nothing';
  walker.press(dice % 2 === 0 ? `flagKeep:${id}|measured-again` : `flagAgain:${id}`);
};

/** Straight to some step of the visit, as from its list of steps. */
const jump: Act = (walker, dice) => walker.press(`goto:${pick(walker.protocol.steps, dice)!.id}`);

/** A reading gone to, typed and kept. */
const measure: Act = (walker, dice) => {
  const steps = walker.protocol.steps.filter((step) => step.kind === 'reading');
  walker.press(`goto:${pick(steps, dice)?.id ?? ''}`);
  walker.hear('keypad', formatHundredths(numberFor(walker, dice) ?? 0));
  walker.press('yes');
};

/** A question that leads back, gone to and answered so. */
const retake: Act = (walker, dice) => {
  const leadBack = walker.protocol.steps.flatMap((step) =>
    answersOf(step).flatMap((answer) => (answer.retake === true ? [{ step: step.id, answer: answer.id }] : [])),
  );
  const chosen = pick(leadBack, dice);
  if (chosen === undefined) return;
  walker.press(`goto:${chosen.step}`);
  walker.press(`answer:${chosen.answer}`);
  walker.press('reason:voids');
};

/** A finished visit makes room for the next one; an unfinished one is seldom ended. */
const nextVisit: Act = (walker, dice) => {
  if (walker.view().closed === undefined && dice % 4 === 0) walker.close();
  walker.openNext();
};

const ACTS: readonly (readonly [string, number, Act])[] = [
  ['onward', 40, onward],
  ['tap', 9, tap],
  ['word', 10, word],
  ['misheard', 5, misheard],
  ['outOfTurn', 4, outOfTurn],
  ['nonsense', 4, nonsense],
  ['key', 5, key],
  ['undo', 5, undo],
  ['back', 3, back],
  ['hold', 2, hold],
  ['skip', 2, skip],
  ['note', 1, note],
  ['paused', 1, paused],
  ['reload', 4, reload],
  ['wait', 3, wait],
  ['correct', 4, correct],
  ['flag', 3, flag],
  ['jump', 4, jump],
  ['measure', 6, measure],
  ['retake', 2, retake],
  ['nextVisit', 1, nextVisit],
];

/** One move of a walk; after it, everything that is promised of the record is looked at again. */
class Move implements fc.Command<RecordModel, Walker> {
  private readonly name: string;
  private readonly dice: number;
  private readonly act: Act;

  constructor(name: string, dice: number, act: Act) {
    this.name = name;
    this.dice = dice;
    this.act = act;
  }

  check(): boolean {
    return true;
  }

  run(_model: RecordModel, walker: Walker): void {
    walker.seen.moves += 1;
    walker.at += 1000;
    this.act(walker, this.dice);
    walker.check();
  }

  toString(): string {
    return `${this.name}(${this.dice})`;
  }
}

/** Walks of exactly so many moves. */
export function walksOf(moves: number): fc.Arbitrary<fc.Command<RecordModel, Walker>[]> {
  const dice = fc.nat({ max: 99_999 });
  const move = fc.oneof(
    ...ACTS.map(([name, weight, act]) => ({ weight, arbitrary: dice.map((thrown) => new Move(name, thrown, act)) })),
  );
  return fc.array(move, { minLength: moves, maxLength: moves, size: 'max' });
}
