/** What is held against a long day: memory, what is listened to, and how late alarms rang. */

/** Taken at the list of cases, after the browser was made to throw away what nothing holds. */
export interface Look {
  /** Simulated milliseconds since the day began. */
  readonly at: number;
  readonly visits: number;
  readonly heapBytes: number;
  /** Without what the browser has compiled; told of the first and the last hour. */
  readonly heldBytes?: number;
  readonly nodes: number;
  readonly listeners: number;
  /** Things to touch on the screen: each case in the list is one, and each has one listener. */
  readonly targets: number;
  readonly documents: number;
  /** How often the recogniser was begun so far. */
  readonly ears: number;
}

/** One alarm: how long after it was due its entry was stamped. */
export interface Rung {
  /** Simulated milliseconds since the day began. */
  readonly due: number;
  readonly lateSimulatedMs: number;
  readonly lateRealMs: number;
  /** Time ran at its true speed. */
  readonly trueSpeed: boolean;
}

export interface Day {
  readonly looks: readonly Look[];
  readonly rungs: readonly Rung[];
  /** After the last hour, at true speed: the app's clock against the time that was made for it. */
  readonly clockOffMs: number;
  /** Visits that were closed. */
  readonly visits: number;
  /** Errors of the page. */
  readonly troubles: readonly string[];
}

export interface Wanted {
  readonly hours: number;
  readonly visits: number;
}

export const HOUR_MS = 3_600_000;
const MOST_MEMORY = 1.3;
const MOST_LATE_MS = 100;
/** Real milliseconds: a page that does the work of two minutes in each second may be this busy; later is not busy, it is missed. */
const BUSY_MS = 1000;
/** A recogniser that ends about every minute is begun at least this often an hour while a visit runs. */
const LEAST_EARS_AN_HOUR = 10;

/** So many of ten, say, are not above it. */
const atShare = (numbers: readonly number[], share: number): number =>
  numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length * share)] ?? Number.NaN;

export const middle = (numbers: readonly number[]): number => atShare(numbers, 0.5);

/** True only of a number that is there and within its bound. */
const within = (number: number | undefined, most: number): boolean => number !== undefined && number <= most;

function ofMemory(looks: readonly Look[]): string[] {
  const [first, last] = [looks[0], looks.at(-1)];
  if (first === undefined || last === undefined || first === last) return ['memory was not looked at twice'];
  const grown = last.heapBytes / first.heapBytes;
  const held = (last.heldBytes ?? Number.NaN) / (first.heldBytes ?? Number.NaN);
  const beside = ({ listeners, targets }: Look): number => listeners - targets;
  const after = ` after the first hour, `;
  return [
    ...(within(grown, MOST_MEMORY) ? [] : [`memory: ${grown.toFixed(2)} times that of the first hour`]),
    ...(within(held, MOST_MEMORY) ? [] : [`without compiled code: ${held.toFixed(2)} times that of the first hour`]),
    ...(within(beside(last), beside(first))
      ? []
      : [`listeners beside those of targets: ${beside(first)}${after}${beside(last)} at the end`]),
    ...(within(last.documents, first.documents) ? [] : [`documents: ${first.documents}${after}${last.documents}`]),
  ];
}

const hoursOf = (ms: number): string => `${(ms / HOUR_MS).toFixed(2)} h`;

/** Alarms due between two looks. */
const ofHour = (rungs: readonly Rung[], looks: readonly Look[], hour: number): readonly Rung[] =>
  rungs.filter(({ due }) => due >= (looks[hour - 1]?.at ?? 0) && due < (looks[hour]?.at ?? 0));

/** A single one may be late where the machine was busy; a clock that drifts makes all of them late. */
function driftOf({ looks, rungs }: Day): string[] {
  return looks.flatMap(({ at }, hour) => {
    const own = ofHour(rungs, looks, hour).map(({ lateRealMs }) => lateRealMs);
    if (own.length === 0) return [`no alarm rang in the hour before ${hoursOf(at)}`];
    const late = atShare(own, 0.9);
    return within(late, MOST_LATE_MS) ? [] : [`before ${hoursOf(at)} alarms were ${late.toFixed(0)} ms late`];
  });
}

/** While time runs fast an hour's alarms are judged together; at its true speed each by itself. */
function ofAlarms(day: Day, { hours }: Wanted): string[] {
  const { rungs, clockOffMs } = day;
  const atLast = rungs.filter(({ due, trueSpeed }) => trueSpeed && due >= hours * HOUR_MS);
  const late = rungs.filter(
    ({ due, lateRealMs, trueSpeed }) =>
      !within(lateRealMs, trueSpeed && due >= hours * HOUR_MS ? MOST_LATE_MS : BUSY_MS),
  );
  const early = rungs.filter(({ lateSimulatedMs }) => !(lateSimulatedMs >= 0));
  return [
    ...driftOf(day),
    ...late.map(({ due, lateRealMs }) => `an alarm due after ${hoursOf(due)} was ${lateRealMs.toFixed(0)} ms late`),
    ...early.map(({ due }) => `an alarm due after ${hoursOf(due)} rang before it was due`),
    ...(atLast.length > 0 ? [] : ['no alarm rang at true speed after the last hour']),
    ...(within(Math.abs(clockOffMs), MOST_LATE_MS) ? [] : [`at the end the clock is off by ${clockOffMs} ms`]),
  ];
}

/** One sentence for each thing that is not as it has to be. */
export function broken(day: Day, wanted: Wanted): string[] {
  const { looks, visits, troubles } = day;
  const ears = looks.at(-1)?.ears ?? 0;
  return [
    ...(visits >= wanted.visits ? [] : [`${visits} of ${wanted.visits} visits were closed`]),
    ...(looks.length >= wanted.hours ? [] : [`${looks.length} of ${wanted.hours} hours were looked at`]),
    ...(ears >= wanted.hours * LEAST_EARS_AN_HOUR ? [] : [`the recogniser was begun only ${ears} times`]),
    ...ofMemory(looks),
    ...ofAlarms(day, wanted),
    ...troubles.map((text) => `the page: ${text}`),
  ];
}

const cells = (...all: readonly (string | number)[]): string => all.map((one) => String(one).padStart(11)).join('');

/** One line an hour; what rang in it with the middle and the worst lateness. */
export function table({ looks, rungs }: Day): string {
  const head = cells(
    'hour',
    'visits',
    'heap kB',
    'of first',
    'nodes',
    'listeners',
    'targets',
    'documents',
    'ear begun',
    'rings',
  );
  const late = cells('late, real', 'worst');
  const rows = looks.map((look, hour) => {
    const own = ofHour(rungs, looks, hour).map(({ lateRealMs }) => lateRealMs);
    const [kept, share] = [look.heapBytes / 1000, look.heapBytes / (looks[0]?.heapBytes ?? Number.NaN)];
    const worst = own.length === 0 ? '–' : `${Math.max(...own).toFixed(1)} ms`;
    return (
      cells((look.at / HOUR_MS).toFixed(2), look.visits, kept.toFixed(0), share.toFixed(2), look.nodes) +
      cells(look.listeners, look.targets, look.documents, look.ears, own.length) +
      cells(own.length === 0 ? '–' : `${middle(own).toFixed(1)} ms`, worst)
    );
  });
  return [head + late, ...rows].join('\n');
}

function latenessOf(rungs: readonly Rung[], of: (rung: Rung) => number): string {
  const all = rungs.map(of);
  return `middle ${middle(all).toFixed(1)} ms, worst ${Math.max(...all).toFixed(1)} ms`;
}

/** What is held without the code that the browser compiles the more of the longer it works. */
export function heldLine({ looks }: Day): string {
  const [first, last] = [looks[0]?.heldBytes ?? Number.NaN, looks.at(-1)?.heldBytes ?? Number.NaN];
  const kept = [first, last].map((bytes) => `${(bytes / 1000).toFixed(0)} kB`);
  return `without compiled code: ${kept.join(' after the first hour, ')} at the end, ${(last / first).toFixed(2)} times`;
}

/** Alarms while time ran fast, and at true speed at the end. */
export function alarmLines({ rungs, clockOffMs }: Day): string {
  const lines = [false, true].map((trueSpeed) => {
    const own = rungs.filter((rung) => rung.trueSpeed === trueSpeed);
    const when = trueSpeed ? 'at true speed, after the last hour' : 'while time ran fast';
    if (own.length === 0) return `alarms ${when}: none`;
    const real = latenessOf(own, ({ lateRealMs }) => lateRealMs);
    const simulated = latenessOf(own, ({ lateSimulatedMs }) => lateSimulatedMs);
    return `alarms ${when}: ${own.length}; late by the real clock ${real}; by the app’s ${simulated}`;
  });
  return [...lines, `the app’s clock at the end: ${clockOffMs} ms off`].join('\n');
}
