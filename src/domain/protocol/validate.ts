/** Integrity of a visit's data, checked before a practice's edited protocol may be used and in the tests for our own. */
import { isKind } from './kinds.ts';
import { defaultPractice } from './practice.ts';
import type { Answer, Language, Practice, ReadingDef, Step, VisitProtocol } from './types.ts';

export interface Problem {
  /** Where: "steps.upper-keep.answers.again.goto". */
  readonly path: string;
  /** What is wrong, in a plain sentence. */
  readonly text: string;
}

/** Legible from two metres: characters a title, a line, a label and a caution may have, and lines a step may have. */
export const LIMITS = { title: 42, line: 60, lines: 4, label: 36, caution: 140 } as const;

const LANGUAGES: readonly Language[] = ['en', 'de', 'es', 'fr'];

interface Around {
  readonly protocol: VisitProtocol;
  readonly readings: ReadonlySet<string>;
  readonly practice: Practice;
  /** Step id → position. */
  readonly at: ReadonlyMap<string, number>;
}

/** Answers of a check or decision; none for other kinds of step. */
export function answersOf(step: Step): readonly Answer[] {
  return step.kind === 'check' || step.kind === 'decision' ? step.answers : [];
}

function repeated(values: readonly string[]): readonly string[] {
  return [...new Set(values.filter((value, index) => values.indexOf(value) !== index))];
}

function tooLong(path: string, text: string, limit: number): readonly Problem[] {
  if (text.trim() === '') return [{ path, text: 'This text is empty.' }];
  if (text.length > limit)
    return [{ path, text: `${text.length} characters; at most ${limit} can be read from afar.` }];
  return [];
}

function textProblems(step: Step): readonly Problem[] {
  const path = `steps.${step.id}`;
  const count = step.lines.length;
  const lines =
    count <= LIMITS.lines ? [] : [{ path: `${path}.lines`, text: `${count} lines; at most ${LIMITS.lines}.` }];
  return [
    ...tooLong(`${path}.title`, step.title, LIMITS.title),
    ...step.lines.flatMap((line, index) => tooLong(`${path}.lines.${index}`, line, LIMITS.line)),
    ...(step.caution === undefined ? [] : tooLong(`${path}.caution`, step.caution, LIMITS.caution)),
    ...lines,
    ...answersOf(step).flatMap((answer) => [
      ...tooLong(`${path}.answers.${answer.id}.label`, answer.label, LIMITS.label),
      ...(answer.caution === undefined
        ? []
        : tooLong(`${path}.answers.${answer.id}.caution`, answer.caution, LIMITS.caution)),
    ]),
  ];
}

function wordProblems(step: Step): readonly Problem[] {
  return LANGUAGES.flatMap((language) => {
    const words = answersOf(step).flatMap((answer) => answer.words[language] ?? []);
    const path = `steps.${step.id}.answers`;
    return [
      ...repeated(words).map((word) => ({ path, text: `Two answers listen to "${word}" (${language}).` })),
      ...words
        .filter((word) => word !== word.trim().toLowerCase() || word === '')
        .map((word) => ({ path, text: `"${word}" must be lower case, without blanks at the ends.` })),
    ];
  });
}

function gotoProblems(step: Step, around: Around): readonly Problem[] {
  const here = around.at.get(step.id) ?? 0;
  return answersOf(step).flatMap((answer) => {
    const path = `steps.${step.id}.answers.${answer.id}.goto`;
    if (answer.goto === undefined)
      return answer.retake === true ? [{ path, text: 'A retake needs a step to go to.' }] : [];
    const target = around.at.get(answer.goto);
    if (target === undefined) return [{ path, text: `There is no step "${answer.goto}".` }];
    if (target === here) return [{ path, text: 'An answer cannot lead to its own step.' }];
    if (answer.retake === true && target > here) return [{ path, text: 'A retake must go back, not forward.' }];
    return [];
  });
}

function conditionProblems(step: Step, around: Around): readonly Problem[] {
  const here = around.at.get(step.id) ?? 0;
  const conditions = [
    ...(step.onlyIf === undefined ? [] : [{ key: 'onlyIf', condition: step.onlyIf }]),
    ...(step.notIf ?? []).map((condition) => ({ key: 'notIf', condition })),
  ];
  return conditions.flatMap(({ key, condition }) => {
    const path = `steps.${step.id}.${key}`;
    const asked = around.at.get(condition.step);
    if (asked === undefined || asked >= here) return [{ path, text: `"${condition.step}" is not an earlier step.` }];
    const answers = answersOf(around.protocol.steps[asked]!);
    if (answers.some((answer) => answer.id === condition.answer)) return [];
    return [{ path, text: `"${condition.step}" has no answer "${condition.answer}".` }];
  });
}

function clockProblems(step: Step, around: Around): readonly Problem[] {
  if (step.kind !== 'clock') return [];
  const path = `steps.${step.id}`;
  if (step.flow === 'timed') {
    const known = new Set(around.practice.disinfectants.map((agent) => agent.id));
    const unknown = step.materials.filter((id) => !known.has(id));
    const earlier = around.protocol.steps.some(
      (other) =>
        other.kind === 'clock' &&
        other.clock === step.of &&
        (around.at.get(other.id) ?? 0) < (around.at.get(step.id) ?? 0),
    );
    return [
      ...unknown.map((id) => ({ path: `${path}.materials`, text: `The practice has no disinfectant "${id}".` })),
      ...(step.of === undefined || earlier ? [] : [{ path: `${path}.of`, text: `No earlier clock "${step.of}".` }]),
    ];
  }
  const classes = new Set(around.practice.materials.map((material) => material.class));
  const there = step.materials.some((name) => classes.has(name));
  // A known kind may be missing where another of the step is at hand; a word that is no kind is a slip.
  const unknown = step.materials.filter((name) => !classes.has(name) && !(there && isKind(name)));
  return [
    ...unknown.map((name) => ({ path: `${path}.materials`, text: `The practice has no material of class "${name}".` })),
    ...(step.materials.length > 0 ? [] : [{ path: `${path}.materials`, text: 'No material class is offered.' }]),
  ];
}

function kindProblems(step: Step, around: Around): readonly Problem[] {
  const path = `steps.${step.id}`;
  if (step.kind === 'reading' && !around.readings.has(step.reading)) {
    return [{ path: `${path}.reading`, text: `There is no reading "${step.reading}".` }];
  }
  if (step.kind !== 'check' && step.kind !== 'decision') return [];
  const answers = step.answers;
  const twice = repeated(answers.map((answer) => answer.id));
  return [
    ...(answers.length === 0 ? [{ path: `${path}.answers`, text: 'A question needs at least one answer.' }] : []),
    ...twice.map((id) => ({ path: `${path}.answers.${id}`, text: 'Two answers share this id.' })),
  ];
}

function chapterProblems(protocol: VisitProtocol): readonly Problem[] {
  const numbers = protocol.chapters.map((chapter) => chapter.number);
  const inOrder = numbers.every((number, index) => number === index + 1);
  const used = new Set(protocol.steps.map((step) => step.chapter));
  return [
    ...(inOrder ? [] : [{ path: 'chapters', text: 'Chapters must be numbered 1, 2, 3 … in order.' }]),
    ...protocol.chapters.flatMap((chapter) => tooLong(`chapters.${chapter.number}.title`, chapter.title, LIMITS.title)),
    ...numbers
      .filter((number) => !used.has(number))
      .map((number) => ({ path: `chapters.${number}`, text: 'This chapter has no step.' })),
    ...protocol.steps
      .filter((step) => !numbers.includes(step.chapter))
      .map((step) => ({ path: `steps.${step.id}.chapter`, text: `There is no chapter ${step.chapter}.` })),
    ...protocol.steps
      .filter((step, index) => step.chapter < (protocol.steps[index - 1]?.chapter ?? 0))
      .map((step) => ({ path: `steps.${step.id}.chapter`, text: 'This step stands after a later chapter.' })),
  ];
}

function idProblems(protocol: VisitProtocol): readonly Problem[] {
  const clocks = protocol.steps.flatMap((step) => (step.kind === 'clock' ? [step.clock] : []));
  const readings = protocol.steps.flatMap((step) => (step.kind === 'reading' ? [step.reading] : []));
  const badId = protocol.steps.filter((step) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(step.id));
  return [
    ...repeated(protocol.steps.map((step) => step.id)).map((id) => ({
      path: `steps.${id}`,
      text: 'Two steps share this id.',
    })),
    ...repeated(clocks).map((id) => ({ path: `clocks.${id}`, text: 'Two steps start this clock.' })),
    ...repeated(readings).map((id) => ({ path: `readings.${id}`, text: 'Two steps ask for this reading.' })),
    ...badId.map((step) => ({
      path: `steps.${step.id}`,
      text: 'An id is made of small letters, digits and single hyphens.',
    })),
  ];
}

/** Positions a step can lead to: its answers' branches, and every step down to the first that is always shown. */
function leadsTo(index: number, around: Around): readonly number[] {
  const step = around.protocol.steps[index]!;
  const branches = answersOf(step).flatMap((answer) =>
    answer.goto === undefined ? [] : [around.at.get(answer.goto) ?? -1],
  );
  const answers = answersOf(step);
  if (answers.length > 0 && answers.every((answer) => answer.goto !== undefined && answer.retake !== true))
    return branches;
  const onward: number[] = [];
  for (let next = index + 1; next < around.protocol.steps.length; next += 1) {
    onward.push(next);
    const { onlyIf, notIf } = around.protocol.steps[next]!;
    if (onlyIf === undefined && notIf === undefined) break;
  }
  return [...branches, ...onward];
}

function reached(around: Around): ReadonlySet<number> {
  const seen = new Set<number>([0]);
  const open = [0];
  while (open.length > 0) {
    for (const next of leadsTo(open.pop()!, around)) {
      if (next < 0 || seen.has(next)) continue;
      seen.add(next);
      open.push(next);
    }
  }
  return seen;
}

function walkProblems(around: Around): readonly Problem[] {
  const { steps } = around.protocol;
  if (steps.length === 0) return [{ path: 'steps', text: 'A visit needs at least one step.' }];
  const seen = reached(around);
  const last = steps.at(-1)!;
  return [
    ...steps.flatMap((step, index) =>
      seen.has(index) ? [] : [{ path: `steps.${step.id}`, text: 'No path leads here.' }],
    ),
    ...(last.kind === 'signoff' && last.closesVisit === true
      ? []
      : [{ path: `steps.${last.id}`, text: 'The last step must be the sign-off that closes the visit.' }]),
  ];
}

/**
 * Everything wrong with a visit's data; empty when it may be used. Pure; never throws.
 * Ids, chapters, texts, spoken words, branches, conditions, readings, clocks and reachability are checked.
 */
export function protocolProblems(
  protocol: VisitProtocol,
  readingDefs: readonly ReadingDef[],
  practice: Practice = defaultPractice,
): readonly Problem[] {
  const at = new Map(protocol.steps.map((step, index) => [step.id, index]));
  const around: Around = { protocol, practice, at, readings: new Set(readingDefs.map((def) => def.id)) };
  return [
    ...idProblems(protocol),
    ...chapterProblems(protocol),
    ...protocol.steps.flatMap((step) => [
      ...textProblems(step),
      ...wordProblems(step),
      ...gotoProblems(step, around),
      ...conditionProblems(step, around),
      ...kindProblems(step, around),
      ...clockProblems(step, around),
    ]),
    ...walkProblems(around),
  ];
}
