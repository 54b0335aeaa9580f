/** Drawings of what visits decide are fetched with the first step that is shown; until then the plain way in stands there. */
import { useEffect, useState } from 'react';
import type { Summary } from '../../domain/summary/types.ts';
import type * as decidedParts from './parts.ts';

type Parts = typeof decidedParts;

let fetched: Parts | undefined;

/** Fetches them; at once when they are there. */
export async function fetchDecided(): Promise<Parts> {
  fetched ??= await import('./parts.ts');
  return fetched;
}

/** The parts, or undefined while they are still on their way. */
export function useDecided(): Parts | undefined {
  const [parts, setParts] = useState(fetched);
  useEffect(() => {
    if (parts === undefined) void fetchDecided().then(setParts);
  }, [parts]);
  return parts;
}

interface PartProps {
  readonly summary: Summary;
}

/** Tracings and tooth sizes, before what was measured. */
export function TracingsLater({ summary }: PartProps) {
  const parts = useDecided();
  return parts === undefined ? null : <parts.TracingsAndTeeth summary={summary} />;
}

/** Sore places, scores and review days. */
export function ReviewLater({ summary }: PartProps) {
  const parts = useDecided();
  if (parts === undefined) return null;
  const { Hold, ReviewDays, SoreAreas } = parts;
  return (
    <>
      <SoreAreas summary={summary} />
      <Hold summary={summary} />
      <ReviewDays summary={summary} />
    </>
  );
}
