/** Tracings, tooth sizes, sore places, scores and review days on the sheet, as text; a part with nothing to say has none. */
import { lookFirst, lookText } from '../domain/protocol/sore-causes.ts';
import type { SoreArea } from '../domain/summary/decided.types.ts';
import { holdWords, reviewWords, soreWords, tracingWords } from '../domain/summary/decided-words.ts';
import type { ComputedRow, Summary } from '../domain/summary/types.ts';
import type { Section } from './sheet-model.types.ts';
import { lines } from './sheet-parts.ts';

function soreLine(area: SoreArea): string {
  const look = area.current && area.what === 'sore' ? lookFirst(area.region) : undefined;
  const todo = look === undefined ? '' : ` ${lookText(look)}.`;
  return `${area.current ? '' : 'Earlier, '}${area.visit}: ${soreWords(area)}${todo}`;
}

const isTooth = ({ id }: ComputedRow): boolean => id.startsWith('teeth-');

/** Computed values that a section of their own tells whole, so that they are not told a second time. */
export const toldApart = (row: ComputedRow): boolean => isTooth(row) || row.id.startsWith('tracing-');

/** Every tooth size with the rules behind it, from the computed values of the summary. */
function toothLines({ computed }: Summary): readonly string[] {
  return computed.filter(isTooth).map(({ label, text, inputs }) => `${label}: ${text}. ${inputs.join('; ')}.`);
}

interface Part {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly string[];
}

function parts(summary: Summary): readonly Part[] {
  const { tracing, sore, hold, reviews } = summary;
  return [
    { id: 'tracings', title: 'Tracings', lines: tracing === undefined ? [] : [tracingWords(tracing)] },
    { id: 'teeth', title: 'Tooth sizes', lines: toothLines(summary) },
    { id: 'sore', title: 'Sore and relieved places', lines: (sore ?? []).map(soreLine) },
    {
      id: 'hold',
      title: 'Retention and stability',
      lines: (hold ?? []).map((row) => `${row.visit}: ${holdWords(row)}`),
    },
    {
      id: 'reviews',
      title: 'Reviews',
      lines:
        reviews === undefined
          ? []
          : [
              `Delivered ${reviews.delivered}. ${reviews.source} (${reviews.sourceStatus})`,
              ...reviews.rows.map(reviewWords),
            ],
    },
  ];
}

/** Sections for what there is to say, in the order of the visits they come from. */
export function decidedSections(summary: Summary): readonly Section[] {
  return parts(summary)
    .filter((part) => part.lines.length > 0)
    .map(({ id, title, lines: words }) => ({ id, title, blocks: [lines(words)] }));
}
