/** Entries in order, and those that have no place in that order. */
export interface Merged {
  readonly facts: readonly unknown[];
  readonly apart: readonly unknown[];
}

function seqOf(entry: unknown): number {
  const seq = typeof entry === 'object' && entry !== null ? (entry as { seq?: unknown }).seq : undefined;
  return typeof seq === 'number' ? seq : NaN;
}

/**
 * `more` put behind `filed`, which is numbered 1, 2, 3 …: what is already there is not doubled; what carries a number that
 * another entry has, or a number out of reach, is handed over apart.
 */
export function merge(filed: readonly unknown[], more: readonly unknown[]): Merged {
  const facts = [...filed];
  const apart: unknown[] = [];
  for (const entry of more) {
    const seq = seqOf(entry);
    if (seq === facts.length + 1) facts.push(entry);
    else if (JSON.stringify(facts[seq - 1]) !== JSON.stringify(entry)) apart.push(entry);
  }
  return { facts, apart };
}

/** True when the entries are numbered 1, 2, 3 … without a hole. */
export function isWhole(facts: readonly unknown[]): boolean {
  return facts.length > 0 && facts.every((entry, index) => seqOf(entry) === index + 1);
}
