/** Files of settings: what they are, which format, and the numbered steps that bring an older one up to date. */
import * as v from 'valibot';
import type { Problem } from '../protocol/validate.ts';
import { MOST_SETTINGS_LETTERS } from './fileSize.ts';
import { readJson } from './plainJson.ts';

export type FileRead<T> =
  | { readonly ok: true; readonly value: T }
  /** `path` names the place in the file, empty for the file as a whole; `text` is one sentence. */
  | { readonly ok: false; readonly path: string; readonly text: string };

/** Format number → what turns a file of that format into one of the next. */
export type Migrations = Readonly<Record<number, (content: unknown) => unknown>>;

export interface FileKind {
  /** "rimwise practice". */
  readonly kind: string;
  /** Format that this build writes. */
  readonly format: number;
  readonly migrations: Migrations;
}

const envelope = v.looseObject({ kind: v.string(), format: v.pipe(v.number(), v.safeInteger()), content: v.unknown() });

const refused = (path: string, text: string) => ({ ok: false, path, text }) as const;

/**
 * The content of a settings file, brought to the current format; not yet checked field by field. Refuses text that is not
 * JSON, files of another kind, of a newer format, or of an older one that nothing leads on from.
 */
export function openFile(text: string, { kind, format, migrations }: FileKind): FileRead<unknown> {
  const raw = readJson(text, MOST_SETTINGS_LETTERS);
  if (!raw.ok) return refused(raw.path, raw.reason === 'notJson' ? 'This file is not JSON.' : raw.text);
  const head = v.safeParse(envelope, raw.value);
  if (!head.success || head.output.kind !== kind) return refused('kind', `This file is not a “${kind}” file.`);
  if (head.output.format > format) return refused('format', 'This file was written by a newer version of the app.');
  let { content } = head.output;
  for (let at = head.output.format; at < format; at += 1) {
    const step = migrations[at];
    if (step === undefined) return refused('format', `Format ${at} of this file is not known.`);
    content = step(content);
  }
  return { ok: true, value: content };
}

/** The text of a settings file. */
export function fileText({ kind, format }: FileKind, content: unknown): string {
  return `${JSON.stringify({ kind, format, content }, null, 2)}\n`;
}

function misfit({ type, message, received, expected }: v.BaseIssue<unknown>): string {
  if (type === 'check') return message;
  if (received === 'undefined') return 'This is missing.';
  if (expected === 'never') return 'This has no place in the file.';
  return `Here stands ${received}.${expected === null ? '' : ` Wanted: ${expected}.`}`;
}

/** The first thing that does not fit the shape: its path and a sentence. */
export function shapeProblem(issue: v.BaseIssue<unknown>): Problem {
  return { path: issue.path?.map((part) => String(part.key)).join('.') ?? '', text: misfit(issue) };
}

/** A problem in one line: "materials.0.workingS: …". */
export function problemText({ path, text }: Problem): string {
  return path === '' ? text : `${path}: ${text}`;
}
