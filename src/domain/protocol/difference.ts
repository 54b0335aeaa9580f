/** Two versions of a visit compared, in lines a person can read. */
import { answersOf } from './validate.ts';
import type { Step, VisitProtocol } from './types.ts';

const quoted = (step: Step) => `“${step.title}”`;

/** Ids of `wanted` that can stay where they are: a longest run that rises in `before`. The others were moved. */
function staying(before: readonly string[], wanted: readonly string[]): ReadonlySet<string> {
  const at = new Map(before.map((id, place) => [id, place]));
  const runs: { id: string; place: number; length: number; from: number }[] = [];
  for (const id of wanted) {
    const place = at.get(id) ?? 0;
    let best = { length: 0, from: -1 };
    runs.forEach((run, index) => {
      if (run.place < place && run.length > best.length) best = { length: run.length, from: index };
    });
    runs.push({ id, place, length: best.length + 1, from: best.from });
  }
  const stay = new Set<string>();
  let last = runs.toSorted((a, b) => b.length - a.length)[0];
  while (last !== undefined) {
    stay.add(last.id);
    last = runs[last.from];
  }
  return stay;
}

function reworded(old: Step, now: Step): readonly string[] {
  const lines: string[] = [];
  if (old.title !== now.title) lines.push(`Reworded: ${quoted(old)} is now ${quoted(now)}.`);
  if (old.lines.join('\n') !== now.lines.join('\n'))
    lines.push(`Lines of ${quoted(now)}: ${now.lines.join(' / ') || 'none'}.`);
  if (old.caution !== now.caution) lines.push(`Caution of ${quoted(now)}: ${now.caution ?? 'none'}.`);
  if (old.chapter !== now.chapter) lines.push(`${quoted(now)} is now in chapter ${now.chapter}.`);
  if ((old.optional ?? false) !== (now.optional ?? false))
    lines.push(
      `${quoted(now)} ${now.optional === true ? 'may be passed by' : 'may no longer be passed by'} without a reason.`,
    );
  const rest = ({ title: _t, lines: _l, caution: _c, chapter: _n, optional: _o, ...left }: Step) =>
    JSON.stringify(left);
  if (rest(old) !== rest(now)) {
    const words = answersOf(now).map((answer) => answer.label);
    lines.push(`${quoted(now)} works otherwise${words.length === 0 ? '' : `; answers: ${words.join(', ')}`}.`);
  }
  return lines;
}

/** What changed from `a` to `b`, one sentence each: dropped, added, moved, reworded; empty when nothing did. */
export function protocolDifference(a: VisitProtocol, b: VisitProtocol): readonly string[] {
  const old = new Map(a.steps.map((step) => [step.id, step]));
  const now = new Map(b.steps.map((step) => [step.id, step]));
  const common = b.steps.filter((step) => old.has(step.id)).map((step) => step.id);
  const stay = staying(
    a.steps.map((step) => step.id),
    common,
  );
  const after = (step: Step) => b.steps[b.steps.indexOf(step) - 1];
  const where = (step: Step) => {
    const before = after(step);
    return before === undefined ? 'at the beginning' : `after ${quoted(before)}`;
  };
  return [
    ...(a.title === b.title ? [] : [`The visit is now called “${b.title}”.`]),
    ...a.steps.filter((step) => !now.has(step.id)).map((step) => `Dropped: ${quoted(step)}.`),
    ...b.steps.flatMap((step) => {
      const before = old.get(step.id);
      if (before === undefined) return [`Added ${where(step)}: ${quoted(step)}.`];
      const moved = stay.has(step.id) ? [] : [`Moved: ${quoted(step)}, now ${where(step)}.`];
      return [...moved, ...reworded(before, step)];
    }),
  ];
}
