/** Cautions in the practice's own words; the step, its question and its answers stay as they are. */
import { useState } from 'react';
import type { OwnView } from '../../app/own.types.ts';
import type { CautionPlace } from '../../domain/protocol/own.ts';
import type { FieldSpec, Written } from '../parts/Form.tsx';
import { OneOf, Section } from '../settings/parts.tsx';
import { EntryList } from './EntryList.tsx';
import { readWords, type Read } from './fields.ts';
import type { ListProps } from './lists.tsx';

interface Entry {
  readonly place: CautionPlace;
  readonly own?: string;
}

/** Cautions of an answer stay; their first words stand at every step. */
const STAYS = 'its first words, up to a colon, stay on screen for the rest of the case';

/** Stands for cautions whose step is in no visit any more. */
const NOWHERE = 0;

const alsoIn = ({ visits }: CautionPlace, here: number): readonly string[] => {
  const others = visits.filter((visit) => visit !== here);
  return others.length === 0 ? [] : [`the same in visit ${others.join(', ')}`];
};

function fieldsOf(entry: Entry | undefined): readonly FieldSpec[] {
  if (entry === undefined) return [];
  return [
    {
      key: 'caution',
      label: 'Caution',
      hint: entry.place.key.includes(':') ? STAYS : 'stands while the step is shown',
      value: entry.own ?? entry.place.words,
      wide: true,
    },
  ];
}

function readEntry(written: Written, before: Entry | undefined): Read<Entry> {
  const words = readWords((written['caution'] ?? '').replaceAll(/\s+/g, ' '), 'Caution');
  if (!words.ok || before === undefined) return words.ok ? { ok: false, why: '' } : words;
  const { place } = before;
  return { ok: true, value: words.value === place.words ? { place } : { place, own: words.value } };
}

/** All places of one visit, or the own cautions that fit none. */
function entriesAt(visit: number, { cautions }: OwnView, own: Readonly<Record<string, string>>): readonly Entry[] {
  const known = new Set(cautions.map((place) => place.key));
  const lost = Object.keys(own)
    .filter((key) => !known.has(key))
    .map((key): CautionPlace => ({ key, where: key, words: '', visits: [] }));
  const places = visit === NOWHERE ? lost : cautions.filter((place) => place.visits.includes(visit));
  return places.map((place) => {
    const words = own[place.key];
    return words === undefined ? { place } : { place, own: words };
  });
}

export function Cautions({ practice, own, onChange }: ListProps & { readonly own: OwnView }) {
  const [visit, setVisit] = useState<number>();
  const worded = practice.cautions ?? {};
  const lost = entriesAt(NOWHERE, own, worded);
  const options = [
    ...own.visits.map((one) => ({ value: one.visit, label: `Cautions of visit ${one.visit}` })),
    ...(lost.length === 0 ? [] : [{ value: NOWHERE, label: 'Own words that fit no step now' }]),
  ];
  const entries = visit === undefined ? [] : entriesAt(visit, own, worded);
  const keep = (next: readonly Entry[]): string => {
    const here = new Set(entries.map(({ place }) => place.key));
    const others = Object.entries(worded).filter(([key]) => !here.has(key));
    const mine = next.flatMap(({ place, own: words }) => (words === undefined ? [] : [[place.key, words] as const]));
    return onChange({ cautions: Object.fromEntries([...others, ...mine]) });
  };
  return (
    <>
      <Section id="cautions" title="Wording of cautions">
        <OneOf name="Visit" options={options} chosen={visit ?? -1} onChoose={setVisit} />
      </Section>
      {visit === undefined ? null : (
        <EntryList<Entry>
          key={visit}
          id={`cautions-${visit}`}
          title={options.find((one) => one.value === visit)?.label ?? ''}
          one="caution"
          mayAdd={false}
          takeOut={{ word: 'Back to the starting words', of: (entry) => entry.own !== undefined }}
          entries={entries}
          nameOf={({ place }) => place.where}
          markOf={(entry) => (entry.own === undefined ? '' : 'the practice’s own')}
          linesOf={({ place, own: words }) => [words ?? place.words, ...alsoIn(place, visit)]}
          fieldsOf={fieldsOf}
          read={readEntry}
          onChange={keep}
        />
      )}
    </>
  );
}
