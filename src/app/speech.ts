/** Sentences that are read aloud. */
import type { Language } from '../domain/protocol/types.ts';
import type { ClockRow } from '../domain/summary/types.ts';
import { speakNumber } from '../interpret/index.ts';
import type { VisitContext } from '../../machines/visit.types.ts';
import { readingLabel, type Names } from './wording.ts';

/** "4 minutes 30 seconds" */
export function spokenDuration(ms: number): string {
  const seconds = Math.max(0, Math.round(ms / 1000));
  const minutes = Math.floor(seconds / 60);
  const rest = seconds % 60;
  const parts: string[] = [];
  if (minutes > 0) parts.push(`${minutes} minute${minutes === 1 ? '' : 's'}`);
  if (rest > 0 || minutes === 0) parts.push(`${rest} second${rest === 1 ? '' : 's'}`);
  return parts.join(' ');
}

/** What every running clock has left, or by how much it is over. */
export function howLongText(rows: readonly ClockRow[], now: number): string {
  const running = rows.filter((row) => !row.stopped && row.now !== undefined);
  if (running.length === 0) return 'No clock is running.';
  return running
    .map((row) => {
      const phase = row.phases.find((p) => p.id === row.now);
      if (phase === undefined) return row.label;
      const left = phase.dueAt - now;
      return `${row.label}: ${phase.label}, ${spokenDuration(Math.abs(left))} ${left >= 0 ? 'left' : 'over'}`;
    })
    .join('. ');
}

/** The number that waits, read back with its question when it needs an explicit yes. */
export function readBackText(context: VisitContext, names: Names, language: Language): string {
  const { pending, candidates, correcting } = context;
  if (candidates !== undefined) return `${candidates.values.map((v) => speakNumber(v, language)).join(', or ')}?`;
  if (pending !== undefined) {
    const number = speakNumber(pending.value, language);
    return pending.certainty === 'sure' ? number : `${number}. Keep it?`;
  }
  if (correcting !== undefined) return `${readingLabel(names, correcting.reading)}, new value?`;
  return names.protocol.steps.find((step) => step.id === context.step)?.title ?? '';
}
