/** Speech: the top transcript may act, the other alternatives may only object. */
import type { Hundredths } from '../domain/measure/length.ts';
import { TOO_LARGE } from './number.ts';
import { verdict } from './certainty.ts';
import type { Verdict } from './certainty.ts';
import { languagePack } from './languages.ts';
import { wordsOf } from './phrases.ts';
import { said } from './said.ts';
import type { Said } from './said.ts';
import type { SpokenUnit } from './roles.ts';
import type { ExpectedReading, Expectation, Interpretation, Utterance } from './types.ts';

const MOST_ALTERNATIVES = 6;
/** An alternative with less than this share of the top one's confidence is not believed (our choice). */
const CREDIBLE_SHARE = 0.25;

interface Heard {
  readonly text: string;
  readonly top: Said;
  readonly confidence: number | undefined;
  readonly others: readonly Said[];
}

function hear(utterance: Utterance, expectation: Expectation): Heard {
  const { text, alternatives } = utterance;
  const listed = alternatives.find((a) => a.transcript === text);
  const confidence = listed?.confidence;
  const others = alternatives
    .slice(0, MOST_ALTERNATIVES)
    .filter(
      (a) =>
        a.transcript !== text &&
        ((a.confidence ?? 0) === 0 || (a.confidence ?? 0) >= (confidence ?? 0) * CREDIBLE_SHARE),
    )
    .map((a) => said(a.transcript, expectation));
  return { text, top: said(text, expectation), confidence, others };
}

/** Which reading a number is for: the one named, else the one asked for now. */
function readingFor(
  top: Said,
  expectation: Expectation,
): { reading?: ExpectedReading; named: boolean; clash: boolean } {
  const ids = 'ids' in top ? (top.ids ?? []) : [];
  const { current } = expectation;
  if (ids.length === 0)
    return current ? { reading: current, named: false, clash: false } : { named: false, clash: false };
  if (current && ids.includes(current.id)) return { reading: current, named: false, clash: false };
  const reading = expectation.readings.find((r) => r.id === ids[0]);
  return reading ? { reading, named: true, clash: ids.length > 1 } : { named: true, clash: true };
}

const TO_MM: Partial<Record<SpokenUnit, readonly [number, string]>> = {
  cm: [10, 'said in centimetres'],
  inch: [25.4, 'said in inches'],
};

/** The value in the reading's own unit and what to say about it; undefined when the unit does not belong to the reading. */
function inUnit(
  value: Hundredths,
  unit: SpokenUnit | undefined,
  reading: ExpectedReading,
): { value: Hundredths; why: readonly string[] } | undefined {
  if (unit === undefined || unit === reading.unit || (unit === '°' && reading.unit === '°C')) return { value, why: [] };
  const factor = reading.unit === 'mm' ? TO_MM[unit] : undefined;
  return factor ? { value: Math.round(value * factor[0]), why: [factor[1]] } : undefined;
}

const valuesOf = (other: Said): readonly Hundredths[] =>
  other.kind === 'value' ? [other.value] : other.kind === 'ask' ? other.candidates : [];

/** Values other alternatives gave that are not the heard one. */
function rivalsOf(heard: Heard, value: Hundredths): readonly Hundredths[] {
  return heard.others.flatMap((o) => (valuesOf(o).includes(value) ? [] : valuesOf(o)));
}

function value(heard: Heard, top: Extract<Said, { kind: 'value' }>, expectation: Expectation): Interpretation {
  const { text } = heard;
  const { reading, named, clash } = readingFor(top, expectation);
  if (clash) return { kind: 'ask', candidates: [], reason: 'twoNumbers', text };
  if (!reading || expectation.mode === 'held') return { kind: 'unclear', reason: 'notNow', text };
  const converted = inUnit(top.value, top.unit, reading);
  if (!converted) return { kind: 'unclear', reason: 'unit', text };
  if (converted.value >= TOO_LARGE) return { kind: 'unclear', reason: 'outOfRange', text };
  const doubts = [
    ...converted.why,
    ...(top.doubtful ? ['not every word understood'] : []),
    ...(isCommand(heard) ? ['heard in two ways'] : []),
  ];
  const { tables } = languagePack(expectation.language);
  const sure = heard.confidence === undefined ? {} : { confidence: heard.confidence };
  if (saysYesToPending(top, text, expectation)) return { kind: 'command', command: 'yes', text };
  const judged = isCandidate(converted.value, expectation)
    ? CHOSEN
    : verdict({
        value: converted.value,
        reading,
        tables,
        rivals: rivalsOf(heard, top.value),
        doubts,
        ...sure,
      });
  const place = named ? { reading: reading.id } : {};
  if (judged.kind === 'ask')
    return { kind: 'ask', candidates: judged.candidates, reason: 'twoNumbers', text, ...place };
  const why = judged.kind === 'check' ? judged.why : [];
  return {
    kind: 'reading',
    value: converted.value,
    certainty: judged.kind,
    correction: top.correction,
    text,
    why,
    ...place,
    ...sure,
  };
}

/** "yes, fifty-four" while 54 is shown: a yes. */
function saysYesToPending(top: Extract<Said, { kind: 'value' }>, text: string, expectation: Expectation): boolean {
  if (expectation.mode !== 'confirm' || expectation.pending !== top.value || !expectation.commands.includes('yes'))
    return false;
  return languagePack(expectation.language).book.commands.get(wordsOf(text)[0] ?? '') === 'yes';
}

/** One of the numbers asked about was said: shown once more, kept by a yes. */
const isCandidate = (value: Hundredths, expectation: Expectation): boolean =>
  expectation.mode === 'choose' && (expectation.candidates ?? []).includes(value);
const CHOSEN: Verdict = { kind: 'check', why: ['chosen by voice'] };

const isCommand = (heard: Heard): boolean => heard.others.some((o) => o.kind === 'command' || o.kind === 'answer');

/** The numbers asked about, those the alternatives speak for first; without a place for them, nothing. */
function question(heard: Heard, top: Extract<Said, { kind: 'ask' }>, expectation: Expectation): Interpretation {
  const { text } = heard;
  const { reading, named } = readingFor(top, expectation);
  if (!reading || expectation.mode === 'held') return { kind: 'none', text };
  const [low, high] = reading.plausible;
  const plausible = [...heard.others.flatMap(valuesOf), ...top.candidates].filter((v) => v >= low && v <= high);
  const place = named ? { reading: reading.id } : {};
  return { kind: 'ask', candidates: [...new Set(plausible)].slice(0, 3), reason: top.reason, text, ...place };
}

/** The top transcript says nothing, but another one is a plausible number: ask, never take. */
function onlyOthers(heard: Heard, expectation: Expectation): Interpretation {
  const { text, top } = heard;
  const { current } = expectation;
  const asked = expectation.mode === 'reading' || expectation.mode === 'confirm' || expectation.mode === 'choose';
  const numbers = heard.others.filter((o) => o.kind === 'value').flatMap(valuesOf);
  const plausible =
    current && asked ? numbers.filter((v) => v >= current.plausible[0] && v <= current.plausible[1]) : [];
  if (plausible.length > 0)
    return { kind: 'ask', candidates: [...new Set(plausible)].slice(0, 3), reason: 'noise', text };
  return top.kind === 'unclear' ? { kind: 'unclear', reason: top.reason, text } : { kind: 'none', text };
}

/** A command or answer acts only when no credible alternative says something else. */
function word(
  heard: Heard,
  top: Extract<Said, { kind: 'command' | 'answer' }>,
  expectation: Expectation,
): Interpretation {
  const { text } = heard;
  const other = heard.others.some(
    (o) =>
      o.kind === 'value' ||
      (o.kind === 'command' && (top.kind !== 'command' || o.command !== top.command)) ||
      (o.kind === 'answer' && (top.kind !== 'answer' || o.answer !== top.answer)),
  );
  if (other) return { kind: 'unclear', reason: 'noise', text };
  if (top.kind === 'answer') return { kind: 'answer', answer: top.answer, text };
  return expectation.commands.includes(top.command)
    ? { kind: 'command', command: top.command, text }
    : { kind: 'unclear', reason: 'notNow', text };
}

export function interpretVoice(utterance: Utterance, expectation: Expectation): Interpretation {
  const heard = hear(utterance, expectation);
  const { top, text } = heard;
  switch (top.kind) {
    case 'value':
      return value(heard, top, expectation);
    case 'ask':
      return question(heard, top, expectation);
    case 'command':
    case 'answer':
      return word(heard, top, expectation);
    case 'note':
      return { kind: 'note', note: top.note, text };
    default:
      return onlyOthers(heard, expectation);
  }
}
