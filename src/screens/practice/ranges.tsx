/** Plausible and expected ranges of readings, as the practice wants them. */
import type { OwnView } from '../../app/own.types.ts';
import { instrumentOf } from '../../domain/protocol/instruments.ts';
import type { Practice, ReadingDef } from '../../domain/protocol/types.ts';
import type { FieldSpec, Written } from '../parts/Form.tsx';
import { EntryList } from './EntryList.tsx';
import { firstWhy, given, readHundredths, showMm, type Read } from './fields.ts';
import type { ListProps } from './lists.tsx';

type Range = NonNullable<Practice['ranges']>[string];

interface Entry {
  readonly def: ReadingDef;
  readonly own?: Range;
}

const ENDS = [
  ['plausible', 0, 'Plausible from'],
  ['plausible', 1, 'Plausible to'],
  ['expected', 0, 'Expected from'],
  ['expected', 1, 'Expected to'],
] as const;

const HINT = { plausible: 'outside: asked again before it is kept', expected: 'outside: kept and flagged' } as const;

const rangeOf = ({ def, own }: Entry): Range => own ?? { plausible: def.plausible, expected: def.expected };
const words = ([low, high]: Range['plausible'], unit: string) => `${showMm(low)} to ${showMm(high)} ${unit}`;
const same = (one: Range, other: Range) => ENDS.every(([kind, end]) => one[kind][end] === other[kind][end]);

function fieldsOf(entry: Entry | undefined): readonly FieldSpec[] {
  if (entry === undefined) return [];
  const range = rangeOf(entry);
  const [low, high] = instrumentOf(entry.def);
  const instrument = `${entry.def.unit}; the instrument reads ${showMm(low)} to ${showMm(high)}`;
  return ENDS.map(([kind, end, label]) => ({
    ...given(label, showMm(range[kind][end])),
    hint: end === 0 ? HINT[kind] : instrument,
  }));
}

function readEntry(written: Written, before: Entry | undefined): Read<Entry> {
  if (before === undefined) return { ok: false, why: '' };
  const reads = ENDS.map(([, , label]) => readHundredths(written[label] ?? '', label));
  const why = firstWhy(reads);
  if (why !== undefined) return { ok: false, why };
  const [from, to, low, high] = reads.map((one) => (one.ok ? one.value : 0)) as [number, number, number, number];
  const own: Range = { plausible: [from, to], expected: [low, high] };
  const { def } = before;
  return { ok: true, value: same(own, def) ? { def } : { def, own } };
}

export function Ranges({ practice, own, onChange }: ListProps & { readonly own: OwnView }) {
  const entries = own.readings.map((def): Entry => {
    const range = practice.ranges?.[def.id];
    return range === undefined ? { def } : { def, own: range };
  });
  const keep = (next: readonly Entry[]): string =>
    onChange({
      ranges: Object.fromEntries(next.flatMap(({ def, own: range }) => (range === undefined ? [] : [[def.id, range]]))),
    });
  return (
    <EntryList<Entry>
      id="ranges"
      title="Ranges of readings"
      one="range"
      folded
      mayAdd={false}
      takeOut={{ word: 'Back to the starting range', of: (entry) => entry.own !== undefined }}
      entries={entries}
      nameOf={({ def }) => def.label}
      markOf={(entry) => (entry.own === undefined ? '' : 'the practice’s own')}
      linesOf={(entry) => [
        `plausible ${words(rangeOf(entry).plausible, entry.def.unit)}, expected ${words(rangeOf(entry).expected, entry.def.unit)}`,
      ]}
      fieldsOf={fieldsOf}
      read={readEntry}
      onChange={keep}
    />
  );
}
