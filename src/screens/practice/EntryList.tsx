/** A list of the practice's entries: each may be changed or taken out, and another added. */
import { useState } from 'react';
import { Section } from '../settings/parts.tsx';
import { Trouble } from '../parts/Lines.tsx';
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
  /** Words that mark an entry: still the starting figures, or the practice's own. */
  readonly markOf?: (entry: Entry) => string;
  readonly fieldsOf: (entry: Entry | undefined) => readonly FieldSpec[];
  readonly read: (written: Written, before: Entry | undefined) => Read<Entry>;
  /** Empty when the list was taken, otherwise why not. */
  readonly onChange: (entries: readonly Entry[]) => string;
  /** False: the entries are given, and only what is said of them may be changed. */
  readonly mayAdd?: boolean;
  /** What taking an entry out means here, and of which it may be done. */
  readonly takeOut?: { readonly word: string; readonly of: (entry: Entry) => boolean };
  /** Long lists begin closed. */
  readonly folded?: boolean;
}

/** Beside every entry whose figures are still the starting ones. */
export const GENERIC = 'generic – replace with the leaflet’s figures';

type Editing = number | 'new' | undefined;

interface WordsProps {
  readonly name: string;
  readonly lines: readonly string[];
  readonly mark: string;
}

function Words({ name, lines, mark }: WordsProps) {
  return (
    <div className="entry-words">
      <strong>{name}</strong> {mark === '' ? null : <span className="generic-mark">{mark}</span>}
      {lines.map((line) => (
        <span className="entry-more" key={line}>
          {line}
        </span>
      ))}
    </div>
  );
}

interface EntryProps<Entry> {
  readonly list: EntryListProps<Entry>;
  readonly entry: Entry;
  readonly onEdit: () => void;
  readonly onTakeOut: () => void;
}

function OneEntry<Entry>({ list, entry, onEdit, onTakeOut }: EntryProps<Entry>) {
  const name = list.nameOf(entry);
  const out = list.takeOut ?? { word: 'Take out', of: () => true };
  return (
    <>
      <Words name={name} lines={list.linesOf(entry)} mark={list.markOf?.(entry) ?? ''} />
      <Target name={`Change ${name}`} onPress={onEdit}>
        Change
      </Target>
      {out.of(entry) ? (
        <Target name={`${out.word} ${name}`} onPress={onTakeOut}>
          {out.word}
        </Target>
      ) : null}
    </>
  );
}

/** What was taken out last, at its place, until something else is done to the list. */
interface Gone<Entry> {
  readonly entry: Entry;
  readonly at: number;
}

function useEntries<Entry>({ entries, read, onChange }: EntryListProps<Entry>) {
  const [editing, setEditing] = useState<Editing>(undefined);
  const [gone, setGone] = useState<Gone<Entry> | undefined>(undefined);
  const [trouble, setTrouble] = useState('');
  return {
    editing,
    gone,
    trouble,
    edit: setEditing,
    keep: (written: Written): string => {
      const before = typeof editing === 'number' ? entries[editing] : undefined;
      const entry = read(written, before);
      if (!entry.ok) return entry.why;
      setGone(undefined);
      setTrouble('');
      return onChange(before === undefined ? [...entries, entry.value] : entries.with(editing as number, entry.value));
    },
    takeOut: (entry: Entry, at: number) => {
      const why = onChange(entries.toSpliced(at, 1));
      setTrouble(why);
      setGone(why === '' ? { entry, at } : undefined);
      setEditing(undefined);
    },
    putBack: ({ entry, at }: Gone<Entry>) => {
      setTrouble(onChange(entries.toSpliced(at, 0, entry)));
      setGone(undefined);
    },
  };
}

export function EntryList<Entry>(list: EntryListProps<Entry>) {
  const { id, title, one, entries, nameOf, fieldsOf, mayAdd = true } = list;
  const [open, setOpen] = useState(list.folded !== true);
  const { editing, gone, trouble, edit, keep, takeOut, putBack } = useEntries(list);
  const close = () => edit(undefined);
  const form = (before: Entry | undefined) => {
    const name = `${one}, ${before === undefined ? 'new' : nameOf(before)}`;
    return <Form name={name} fields={fieldsOf(before)} onKeep={keep} onClose={close} />;
  };
  if (!open) {
    return (
      <Section id={id} title={title}>
        <Target size="big" onPress={() => setOpen(true)}>
          Show {title.toLowerCase()} ({entries.length})
        </Target>
      </Section>
    );
  }
  return (
    <Section id={id} title={title}>
      <ul className="entries">
        {entries.map((entry, at) => (
          <li key={nameOf(entry)} className="entry">
            {editing === at ? (
              form(entry)
            ) : (
              <OneEntry list={list} entry={entry} onEdit={() => edit(at)} onTakeOut={() => takeOut(entry, at)} />
            )}
          </li>
        ))}
      </ul>
      {trouble === '' ? null : <Trouble text={trouble} />}
      {gone === undefined || list.takeOut !== undefined ? null : (
        <Target onPress={() => putBack(gone)}>Put back {nameOf(gone.entry)}</Target>
      )}
      {editing === 'new' ? form(undefined) : null}
      {mayAdd && editing === undefined ? <Target onPress={() => edit('new')}>Add a {one}</Target> : null}
    </Section>
  );
}
