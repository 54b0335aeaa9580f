/** Speech: the top transcript may act, the other alternatives may only object. */
import type { Hundredths } from '../domain/measure/length.ts';
import { verdict } from './certainty.ts';
import type { Verdict } from './certainty.ts';
import { commandNow } from './commands.ts';
import { areConfused } from './confusions.ts';
import { lexiconOf } from './languages.ts';
import { TOO_LARGE } from './number.ts';
import { said } from './said.ts';
import type { Said } from './said.ts';
import { fold } from './tokens.ts';
import type { SpokenUnit } from './roles.ts';
import type { Alternative, CommandId, ExpectedReading, Expectation, Interpretation, Utterance } from './types.ts';

const MOST_ALTERNATIVES = 6;
const MOST_CANDIDATES = 3;
/** An alternative with less than this share of the top one's confidence is not believed (our choice). */
const CREDIBLE_SHARE = 0.25;
/** One that gives a number easily taken for the heard one is believed with this much already (our choice). */
const CONFUSED_SHARE = 0.1;
/** A command or answer heard with less than this was more likely not said (our choice). */
const ACT_CONFIDENCE = 0.5;
/** A word that keeps the number shown needs this much (our choice). */
const KEEP_CONFIDENCE = 0.7;
/**
 * Less than this, and a number for a reading that was not asked for, or one that corrects, needs a yes: the name or the "no"
 * may have been a breath (our choice).
 */
const OUT_OF_TURN_CONFIDENCE = 0.85;

interface Heard {
  readonly text: string;
  readonly expectation: Expectation;
  readonly confidence: number | undefined;
  /** What the other credible alternatives say. */
  readonly others: readonly Said[];
  /** What those say that count only for numbers easily taken for the heard one. */
  readonly faint: readonly Said[];
}

function hear({ text, alternatives }: Utterance, expectation: Expectation): Heard {
  const confidence = alternatives.find((a) => a.transcript === text)?.confidence;
  const from = (share: number) => (a: Alternative) => !a.confidence || a.confidence >= (confidence ?? 0) * share;
  const list = alternatives.slice(0, MOST_ALTERNATIVES).filter((a) => a.transcript !== text && from(CONFUSED_SHARE)(a));
  const meanings = (some: readonly Alternative[]) => some.map((a) => said(a.transcript, expectation));
  const credible = from(CREDIBLE_SHARE);
  return {
    text,
    expectation,
    confidence,
    others: meanings(list.filter(credible)),
    faint: meanings(list.filter((a) => !credible(a))),
  };
}

const idsOf = (what: Said): readonly string[] => ('ids' in what && what.ids) || [];
const valuesOf = (what: Said): readonly Hundredths[] =>
  what.kind === 'value' ? [what.value] : what.kind === 'ask' ? what.candidates : [];
const isWord = (what: Said): boolean => what.kind === 'command' || what.kind === 'answer';

/** Which reading a number is for: the one named, else the one asked for now; and whether a name was needed to tell. */
function readingFor(
  what: Said,
  { current, readings, mode }: Expectation,
): { reading?: ExpectedReading; place: { reading?: string } } {
  const ids = idsOf(what);
  if (mode === 'held') return { place: {} };
  if (ids.length === 0 || (current && ids.includes(current.id)))
    return current ? { reading: current, place: {} } : { place: {} };
  const reading = readings.find((r) => r.id === ids[0]);
  return reading ? { reading, place: { reading: reading.id } } : { place: {} };
}

const TO_MM: Partial<Record<SpokenUnit, readonly [number, string]>> = {
  cm: [10, 'said in centimetres'],
  inch: [25.4, 'said in inches'],
};

/** Factor to the reading's own unit, and what to say about it; undefined when the unit does not belong to the reading. */
function conversion(unit: SpokenUnit | undefined, own: string): readonly [number, string?] | undefined {
  if (unit === undefined || unit === own || (unit === '°' && own === '°C')) return [1];
  return own === 'mm' ? TO_MM[unit] : undefined;
}

/** Heard with less than this by a recogniser that gives confidences. */
const isBelow = (least: number, { confidence = 0 }: Heard): boolean => confidence > 0 && confidence < least;

/** "yes, fifty-four" while 54 is shown: a yes, if it was surely said and no credible alternative gives another number. */
function saysYes(value: Hundredths, heard: Heard): boolean {
  const { text, expectation, others } = heard;
  const { mode, pending, commands, language } = expectation;
  if (mode !== 'confirm' || pending !== value || !commands.includes('yes') || isBelow(KEEP_CONFIDENCE, heard))
    return false;
  if (others.flatMap(valuesOf).some((other) => other !== value)) return false;
  return lexiconOf(language).commands.get(/^\p{L}+/u.exec(fold(text.trim()))?.[0] ?? '') === 'yes';
}

type Number = Extract<Said, { kind: 'value' }>;

/** A value in the unit of its reading, and what is to be said about that. */
interface Converted {
  readonly value: Hundredths;
  readonly reading: ExpectedReading;
  readonly converted: string | undefined;
}

/** Reasons for not being sure that lie in the words themselves. */
function doubts(heard: Heard, top: Number, { reading, converted }: Converted): readonly string[] {
  const unasked = isBelow(OUT_OF_TURN_CONFIDENCE, heard);
  const elsewhere = heard.others.some(
    (o) => isWord(o) || (o.kind === 'value' && idsOf(o).join() !== idsOf(top).join()),
  );
  const list = [
    converted,
    top.doubtful && 'not every word understood',
    elsewhere && 'heard in two ways',
    unasked && reading.id !== heard.expectation.current?.id && 'another reading than the one asked for',
    unasked && top.correction && 'a correction heard faintly',
  ];
  return list.filter((why): why is string => typeof why === 'string');
}

/** Judges a value by range, set, alternatives and confidence. One of the numbers asked about is only shown once more. */
function judged(heard: Heard, top: Number, { value, reading, converted }: Converted): Verdict {
  const { mode, candidates, language } = heard.expectation;
  if (mode === 'choose' && candidates?.includes(value)) return { kind: 'check', why: ['chosen by voice'] };
  const { tables } = lexiconOf(language);
  const near = heard.faint.flatMap(valuesOf).filter((v) => areConfused(v, top.value, tables));
  const rivals = [...heard.others.flatMap((o) => (valuesOf(o).includes(top.value) ? [] : valuesOf(o))), ...near];
  return verdict({
    value,
    reading,
    tables,
    rivals,
    doubts: doubts(heard, top, { value, reading, converted }),
    confidence: heard.confidence ?? 0,
  });
}

function number(heard: Heard, top: Number): Interpretation {
  const { text, expectation, confidence } = heard;
  const { reading, place } = readingFor(top, expectation);
  if (idsOf(top).length > 1 && place.reading !== undefined)
    return { kind: 'ask', candidates: [], reason: 'twoNumbers', text };
  if (!reading) return { kind: 'unclear', reason: 'notNow', text };
  const factor = conversion(top.unit, reading.unit);
  if (!factor) return { kind: 'unclear', reason: 'unit', text };
  const value = Math.round(top.value * factor[0]);
  if (value >= TOO_LARGE) return { kind: 'unclear', reason: 'outOfRange', text };
  if (saysYes(value, heard)) return { kind: 'command', command: 'yes', text };
  const result = judged(heard, top, { value, reading, converted: factor[1] });
  if (result.kind === 'ask')
    return { kind: 'ask', candidates: result.candidates, reason: 'twoNumbers', text, ...place };
  const { correction } = top;
  const why = result.kind === 'check' ? result.why : [];
  return {
    kind: 'reading',
    value,
    certainty: result.kind,
    correction,
    text,
    why,
    ...place,
    ...(confidence === undefined ? {} : { confidence }),
  };
}

/** Plausible ones among some numbers, each once. */
function plausible(values: readonly Hundredths[], { plausible: [low, high] }: ExpectedReading): readonly Hundredths[] {
  return [...new Set(values.filter((v) => v >= low && v <= high))].slice(0, MOST_CANDIDATES);
}

/** The numbers asked about, those the alternatives speak for first; without a place for them, nothing. */
function question({ text, expectation, others }: Heard, top: Extract<Said, { kind: 'ask' }>): Interpretation {
  const { reading, place } = readingFor(top, expectation);
  if (!reading) return { kind: 'none', text };
  const candidates = plausible([...others.flatMap(valuesOf), ...top.candidates], reading);
  return { kind: 'ask', candidates, reason: top.reason, text, ...place };
}

const LISTENS: readonly Expectation['mode'][] = ['reading', 'confirm', 'choose'];

/** The top transcript says nothing, but another one is a plausible number: ask, never take. */
function onlyOthers({ text, expectation, others }: Heard, top: Said): Interpretation {
  const { current, mode } = expectation;
  const numbers = others.filter((o) => o.kind === 'value').flatMap(valuesOf);
  const candidates = current && LISTENS.includes(mode) ? plausible(numbers, current) : [];
  if (candidates.length > 0) return { kind: 'ask', candidates, reason: 'noise', text };
  return top.kind === 'unclear' ? { kind: 'unclear', reason: top.reason, text } : { kind: 'none', text };
}

/** Commands that keep the number shown. */
const KEEPING: readonly CommandId[] = ['yes', 'next'];

/**
 * A command or answer acts only when no credible alternative is a number or another word, and it was probably said; one
 * that keeps a number needs more.
 */
function word(heard: Heard, top: Extract<Said, { kind: 'command' | 'answer' }>): Interpretation {
  const { text, expectation, others } = heard;
  const meaning = JSON.stringify(top);
  const keeps = expectation.mode === 'confirm' && top.kind === 'command' && KEEPING.includes(top.command);
  if (isBelow(keeps ? KEEP_CONFIDENCE : ACT_CONFIDENCE, heard)) return { kind: 'unclear', reason: 'noise', text };
  if (others.some((o) => o.kind === 'value' || (isWord(o) && JSON.stringify(o) !== meaning)))
    return { kind: 'unclear', reason: 'noise', text };
  return top.kind === 'answer' ? { ...top, text } : commandNow(top.command, text, expectation);
}

export function interpretVoice(utterance: Utterance, expectation: Expectation): Interpretation {
  const heard = hear(utterance, expectation);
  const top = said(utterance.text, expectation);
  switch (top.kind) {
    case 'value':
      return number(heard, top);
    case 'ask':
      return question(heard, top);
    case 'command':
    case 'answer':
      return word(heard, top);
    case 'note':
      return { ...top, text: utterance.text };
    default:
      return onlyOthers(heard, top);
  }
}
