/** Random walks through all visits, run by the test in small and by `npm run walks` in full. */
import fc from 'fast-check';
import { walksOf } from './moves.ts';
import { nothingSeen, Walker, type Seen } from './walker.ts';

export interface Walks {
  readonly walks: number;
  readonly moves: number;
  readonly seed?: number;
  /** A walk's place in the shrinking tree, as printed by a failure. */
  readonly path?: string;
}

/** Throws, with the walk that did it, when a promise is broken; otherwise says what was seen. */
export function runWalks({ walks, moves, seed, path }: Walks): Seen {
  const seen = nothingSeen();
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5 }), walksOf(moves), fc.nat(), (visit, commands, cut) => {
      const walker = new Walker(visit, seen);
      fc.modelRun(() => ({ model: walker.record, real: walker }), commands);
      walker.checkEnd(cut);
    }),
    {
      numRuns: walks,
      ...(seed === undefined ? {} : { seed }),
      ...(path === undefined ? {} : { path }),
    },
  );
  return seen;
}
