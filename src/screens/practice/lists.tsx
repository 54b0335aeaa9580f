/** The practice's trays, disinfectants and people, each as a list that can be changed. */
import type { Disinfectant, Person, Practice, Tray } from '../../domain/protocol/types.ts';
import type { Written } from '../parts/Form.tsx';
import { EntryList, GENERIC } from './EntryList.tsx';
import { freshId, given, readMm, readWhole, readWords, showMm, showNumber, type Read } from './fields.ts';

export interface ListProps {
  readonly practice: Practice;
  /** Empty when the change was taken, otherwise why not. */
  readonly onChange: (change: Partial<Practice>) => string;
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
      markOf={(d) => (d.generic ? GENERIC : '')}
      linesOf={(d) => [`${d.minutes} min`]}
      fieldsOf={(d) => [given('Name', d?.name), given('Minutes', showNumber(d?.minutes))]}
      read={read}
      onChange={(next) => onChange({ disinfectants: next })}
    />
  );
}

const ARCHES = [
  { value: 'upper', label: 'upper' },
  { value: 'lower', label: 'lower' },
] as const;

export function Trays({ practice, onChange }: ListProps) {
  const { trays } = practice;
  const read = (written: Written, before: Tray | undefined): Read<Tray> => {
    const label = readWords(written['Name'] ?? '', 'Name');
    const inner = readMm(written['Inner width, mm'] ?? '', 'Inner width');
    const arch = ARCHES.find((one) => one.value === written['Jaw'])?.value;
    if (!label.ok) return label;
    if (!inner.ok) return inner;
    if (arch === undefined) return { ok: false, why: 'Jaw: upper or lower is wanted.' };
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
        { ...given('Jaw', t?.arch), options: ARCHES },
        given('Inner width, mm', t === undefined ? '' : showMm(t.innerWidth)),
      ]}
      read={read}
      onChange={(next) => onChange({ trays: next })}
    />
  );
}

const ROLES = [
  { value: 'clinician', label: 'clinician' },
  { value: 'assistant', label: 'assistant' },
] as const;

export function People({ practice, onChange }: ListProps) {
  const read = (written: Written): Read<Person> => {
    const initials = readWords(written['Initials'] ?? '', 'Initials');
    const role = ROLES.find((one) => one.value === written['Role'])?.value;
    if (!initials.ok) return initials;
    return role === undefined
      ? { ok: false, why: 'Role: clinician or assistant is wanted.' }
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
      fieldsOf={(p) => [given('Initials', p?.initials), { ...given('Role', p?.role), options: ROLES }]}
      read={read}
      onChange={(people) => onChange({ people })}
    />
  );
}
