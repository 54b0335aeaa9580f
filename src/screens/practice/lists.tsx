/** The practice's trays, materials, disinfectants and people, each as a list that can be changed. */
import { lotText } from '../../domain/protocol/lots.ts';
import type { Disinfectant, Material, Person, Practice, Tray } from '../../domain/protocol/types.ts';
import { EntryList } from './EntryList.tsx';
import { firstWhy, readDay, readMm, readWhole, readWords, showMm, type Read } from './fields.ts';
import type { FieldSpec, Written } from '../parts/Form.tsx';

export interface ListProps {
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}

const refused = (why: string) => ({ ok: false, why }) as const;
const given = (label: string, value: string | undefined): FieldSpec => ({ key: label, label, value: value ?? '' });
const number = (value: number | undefined) => (value === undefined ? '' : String(value));

/** An id for a new entry, from its name: small letters, digits and hyphens, and one that is free. */
function freshId(name: string, taken: readonly string[]): string {
  const base =
    name
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-+|-+$/g, '') || 'own';
  for (let more = 1; ; more += 1) {
    const id = more === 1 ? base : `${base}-${more}`;
    if (!taken.includes(id)) return id;
  }
}

const WHOLE: readonly (readonly [
  key: 'mixS' | 'workingS' | 'removeS' | 'pourFromMin' | 'pourWithinMin',
  label: string,
])[] = [
  ['mixS', 'Mixing ends, seconds'],
  ['workingS', 'Working time ends, seconds'],
  ['removeS', 'Remove from the mouth, seconds'],
  ['pourFromMin', 'Pour not before, minutes'],
  ['pourWithinMin', 'Pour within, minutes'],
];

function readMaterial(written: Written, before: Material): Read<Material> {
  const name = readWords(written['Name'] ?? '', 'Name');
  const expires = readDay(written['Last day of use'] ?? '', 'Last day of use');
  const numbers = WHOLE.map(([key, label]) => [key, readWhole(written[label] ?? '', label)] as const);
  const why = firstWhy([name, expires, ...numbers.map(([, one]) => one)]);
  if (why !== undefined || !name.ok || !expires.ok) return refused(why ?? '');
  const { lot: _lot, expires: _expires, ...rest } = before;
  const times = Object.fromEntries(numbers.map(([key, one]) => [key, one.ok ? one.value : before[key]]));
  const timed = WHOLE.some(([key]) => times[key] !== before[key]);
  const lot = (written['Lot'] ?? '').trim();
  return {
    ok: true,
    value: {
      ...rest,
      ...(times as Pick<Material, (typeof WHOLE)[number][0]>),
      name: name.value,
      ...(lot === '' ? {} : { lot }),
      ...(expires.value === '' ? {} : { expires: expires.value }),
      ...(timed ? { generic: false, source: 'The leaflet, as entered by the practice.' } : {}),
    },
  };
}

export function Materials({ practice, onChange }: ListProps) {
  return (
    <EntryList<Material>
      id="materials"
      title="Materials"
      one="material"
      entries={practice.materials}
      mayAdd={false}
      nameOf={(m) => m.name}
      isGeneric={(m) => m.generic}
      linesOf={(m) => [
        `mix ${m.mixS} s, work ${m.workingS} s, out from ${m.removeS} s, pour ${m.pourFromMin} to ${m.pourWithinMin} min`,
        lotText(m) === '' ? 'no lot entered' : lotText(m),
      ]}
      fieldsOf={(m) => [
        given('Name', m?.name),
        ...WHOLE.map(([key, label]) => given(label, number(m?.[key]))),
        given('Lot', m?.lot),
        { ...given('Last day of use', m?.expires), hint: 'as 2027-03-31' },
      ]}
      read={(written, before) => (before === undefined ? refused('') : readMaterial(written, before))}
      onChange={(materials) => onChange({ materials })}
    />
  );
}

export function Disinfectants({ practice, onChange }: ListProps) {
  const { disinfectants } = practice;
  const read = (written: Written, before: Disinfectant | undefined): Read<Disinfectant> => {
    const name = readWords(written['Name'] ?? '', 'Name');
    const minutes = readWhole(written['Minutes'] ?? '', 'Minutes');
    if (!name.ok) return name;
    if (!minutes.ok) return minutes;
    const timed = before?.minutes !== minutes.value;
    const id =
      before?.id ??
      freshId(
        name.value,
        disinfectants.map((d) => d.id),
      );
    const from = { generic: before?.generic ?? false, source: before?.source ?? '' };
    const own = timed ? { generic: false, source: 'The label, as entered by the practice.' } : from;
    return { ok: true, value: { id, name: name.value, minutes: minutes.value, ...own } };
  };
  return (
    <EntryList<Disinfectant>
      id="disinfectants"
      title="Disinfectants"
      one="disinfectant"
      entries={disinfectants}
      nameOf={(d) => d.name}
      isGeneric={(d) => d.generic}
      linesOf={(d) => [`${d.minutes} min`]}
      fieldsOf={(d) => [given('Name', d?.name), given('Minutes', number(d?.minutes))]}
      read={read}
      onChange={(next) => onChange({ disinfectants: next })}
    />
  );
}

const ARCH = { upper: 'upper', lower: 'lower' } as const;

export function Trays({ practice, onChange }: ListProps) {
  const { trays } = practice;
  const read = (written: Written, before: Tray | undefined): Read<Tray> => {
    const label = readWords(written['Name'] ?? '', 'Name');
    const inner = readMm(written['Inner width, mm'] ?? '', 'Inner width');
    const arch = ARCH[(written['Jaw'] ?? '').trim().toLowerCase() as 'upper'];
    if (!label.ok) return label;
    if (!inner.ok) return inner;
    if (arch === undefined) return refused('Jaw: upper or lower is wanted.');
    const id =
      before?.id ??
      freshId(
        label.value,
        trays.map((t) => t.id),
      );
    return { ok: true, value: { id, label: label.value, arch, innerWidth: inner.value } };
  };
  return (
    <EntryList<Tray>
      id="trays"
      title="Stock trays"
      one="tray"
      entries={trays}
      nameOf={(t) => t.label}
      linesOf={(t) => [`${t.arch}, ${showMm(t.innerWidth)} mm inside`]}
      fieldsOf={(t) => [
        given('Name', t?.label),
        { ...given('Jaw', t?.arch), hint: 'upper or lower' },
        given('Inner width, mm', t === undefined ? '' : showMm(t.innerWidth)),
      ]}
      read={read}
      onChange={(next) => onChange({ trays: next })}
    />
  );
}

const ROLE = { clinician: 'clinician', assistant: 'assistant' } as const;

export function People({ practice, onChange }: ListProps) {
  const read = (written: Written): Read<Person> => {
    const initials = readWords(written['Initials'] ?? '', 'Initials');
    const role = ROLE[(written['Role'] ?? '').trim().toLowerCase() as 'clinician'];
    if (!initials.ok) return initials;
    if (initials.value.length > 6) return refused('Initials: six letters at most, never a name.');
    return role === undefined
      ? refused('Role: clinician or assistant is wanted.')
      : { ok: true, value: { initials: initials.value, role } };
  };
  return (
    <EntryList<Person>
      id="people"
      title="People, by initials"
      one="person"
      entries={practice.people ?? []}
      nameOf={(p) => `${p.initials}, ${p.role}`}
      linesOf={() => []}
      fieldsOf={(p) => [given('Initials', p?.initials), { ...given('Role', p?.role), hint: 'clinician or assistant' }]}
      read={read}
      onChange={(people) => onChange({ people })}
    />
  );
}
