/** Reasons on offer when one is asked for, with the words they answer to in each language. */
import type { OwnView } from '../../app/own.types.ts';
import type { Language, Practice } from '../../domain/protocol/types.ts';
import type { FieldSpec, Written } from '../parts/Form.tsx';
import { EntryList } from './EntryList.tsx';
import { freshId, given, readWords, type Read } from './fields.ts';
import type { ListProps } from './lists.tsx';

type Reason = Practice['reasons'][number];

const SPOKEN: readonly (readonly [language: Language, label: string])[] = [
  ['en', 'Spoken, English'],
  ['de', 'Spoken, German'],
  ['es', 'Spoken, Spanish'],
  ['fr', 'Spoken, French'],
];

const refused = (why: string) => ({ ok: false, why }) as const;

const wordsIn = (text: string): readonly string[] =>
  text
    .split(',')
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== '');

function fieldsOf(reason: Reason | undefined): readonly FieldSpec[] {
  return [
    given('Words on the target', reason?.label),
    ...SPOKEN.map(([language, label]) => ({
      ...given(label, reason?.words[language]?.join(', ')),
      hint: 'several with commas between',
    })),
  ];
}

export function Reasons({ practice, own, onChange }: ListProps & { readonly own: OwnView }) {
  const { reasons } = practice;
  const read = (written: Written, before: Reason | undefined): Read<Reason> => {
    const label = readWords(written['Words on the target'] ?? '', 'Words on the target');
    if (!label.ok) return label;
    const spoken = SPOKEN.map(([language, name]) => [language, wordsIn(written[name] ?? ''), name] as const);
    for (const [language, words, name] of spoken) {
      const word = words.find((one) => own.taken[language].includes(one));
      if (word !== undefined) return refused(`${name}: “${word}” moves the visit; choose other words.`);
    }
    const words = Object.fromEntries(
      spoken.filter(([, all]) => all.length > 0).map(([language, all]) => [language, all]),
    );
    const ids = reasons.map((reason) => reason.id);
    return { ok: true, value: { id: before?.id ?? freshId(label.value, ids), label: label.value, words } };
  };
  return (
    <EntryList<Reason>
      id="reasons"
      title="Reasons"
      one="reason"
      folded
      entries={reasons}
      nameOf={(reason) => reason.label}
      linesOf={(reason) => SPOKEN.flatMap(([language]) => reason.words[language]?.join(', ') ?? [])}
      fieldsOf={fieldsOf}
      read={read}
      onChange={(next) => onChange({ reasons: next })}
    />
  );
}
