/** What a random walk believes of the record, worked out without the fold: acts in order, undone ones left out. */
import type { Fact } from '../../../src/domain/case/facts.ts';

/** Everything that was handed out to be kept, and what of it still counts. */
export class RecordModel {
  readonly facts: Fact[] = [];
  private readonly undone = new Set<number>();

  add(facts: readonly Fact[]): void {
    for (const fact of facts) {
      if (fact.seq !== this.facts.length + 1) throw new Error(`fact ${fact.seq} came after ${this.facts.length}`);
      this.facts.push(fact);
      if (fact.body.kind === 'undone') this.undone.add(fact.body.act);
    }
  }

  /** seq → value of every reading of the current visit that nobody has taken back, corrected or given up. */
  liveReadings(): ReadonlyMap<number, number> {
    const live = new Map<number, { value: number; step: string }>();
    for (const { act, seq, body } of this.facts) {
      if (body.kind === 'visitOpened') live.clear();
      if (this.undone.has(act)) continue;
      if (body.kind === 'reading') {
        if (body.corrects !== undefined) live.delete(body.corrects);
        live.set(seq, { value: body.value, step: body.step });
      }
      if (body.kind === 'attemptStarted') {
        for (const [at, reading] of live) if (body.steps.includes(reading.step)) live.delete(at);
      }
    }
    return new Map([...live].map(([seq, { value }]) => [seq, value]));
  }
}
