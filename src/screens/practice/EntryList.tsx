/** A list of the practice's entries: each may be changed or taken out, and another added. */
import { useState } from 'react';
import { Section } from '../settings/parts.tsx';
import { Target } from '../parts/Target.tsx';
import { Form, type FieldSpec, type Written } from '../parts/Form.tsx';
import type { Read } from './fields.ts';

export interface EntryListProps<Entry> {
  readonly id: string;
  readonly title: string;
  /** "material" */
  readonly one: string;
  readonly entries: readonly Entry[];
  readonly nameOf: (entry: Entry) => string;
  /** What is said of an entry besides its name. */
  readonly linesOf: (entry: Entry) => readonly string[];
  /** Still the starting figures, not the leaflet's. */
  readonly isGeneric?: (entry: Entry) => boolean;
  readonly fieldsOf: (entry: Entry | undefined) => readonly FieldSpec[];
  readonly read: (written: Written, before: Entry | undefined) => Read<Entry>;
  readonly onChange: (entries: readonly Entry[]) => void;
  /** False: entries may be changed, not added (their kinds belong to the visits). */
  readonly mayAdd?: boolean;
}

/** Beside every entry whose figures are still the starting ones. */
const GENERIC = 'generic – replace with the leaflet’s figures';

type Editing = number | 'new' | undefined;

interface WordsProps {
  readonly name: string;
  readonly lines: readonly string[];
  readonly generic: boolean;
}

function Words({ name, lines, generic }: WordsProps) {
  return (
    <div className="entry-words">
      <strong>{name}</strong> {generic ? <span className="generic-mark">{GENERIC}</span> : null}
      {lines.map((line) => (
        <span className="entry-more" key={line}>
          {line}
        </span>
      ))}
    </div>
  );
}

export function EntryList<Entry>(list: EntryListProps<Entry>) {
  const { id, title, one, entries, nameOf, fieldsOf, mayAdd = true } = list;
  const [editing, setEditing] = useState<Editing>(undefined);
  const close = () => setEditing(undefined);
  const keep = (written: Written): string => {
    const before = typeof editing === 'number' ? entries[editing] : undefined;
    const entry = list.read(written, before);
    if (!entry.ok) return entry.why;
    list.onChange(before === undefined ? [...entries, entry.value] : entries.with(editing as number, entry.value));
    return '';
  };
  const form = (before: Entry | undefined) => (
    <Form
      name={`${one}, ${before === undefined ? 'new' : nameOf(before)}`}
      fields={fieldsOf(before)}
      onKeep={keep}
      onClose={close}
    />
  );
  return (
    <Section id={id} title={title}>
      <ul className="entries">
        {entries.map((entry, at) => (
          <li key={nameOf(entry)} className="entry">
            {editing === at ? (
              form(entry)
            ) : (
              <>
                <Words name={nameOf(entry)} lines={list.linesOf(entry)} generic={list.isGeneric?.(entry) === true} />
                <Target name={`Change ${nameOf(entry)}`} onPress={() => setEditing(at)}>
                  Change
                </Target>
                <Target name={`Take out ${nameOf(entry)}`} onPress={() => list.onChange(entries.toSpliced(at, 1))}>
                  Take out
                </Target>
              </>
            )}
          </li>
        ))}
      </ul>
      {editing === 'new' ? form(undefined) : null}
      {mayAdd && editing === undefined ? <Target onPress={() => setEditing('new')}>Add a {one}</Target> : null}
    </Section>
  );
}
