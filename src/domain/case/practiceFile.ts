/** A practice's settings as a file: written, read back, and refused with the place and the reason. */
import * as v from 'valibot';
import { practiceProblems } from '../protocol/practiceProblems.ts';
import type { Practice } from '../protocol/types.ts';
import { fileText, openFile, shapeProblem, type FileKind, type FileRead } from './fileFormat.ts';
import { practice as shape } from './practiceSchema.ts';

export { practiceProblems } from '../protocol/practiceProblems.ts';

const KIND: FileKind = { kind: 'rimwise practice', format: 1, migrations: {} };

/** Settings from anywhere (a file, the device's store), checked field by field and then for sense. */
export function readPractice(content: unknown): FileRead<Practice> {
  const parsed = v.safeParse(shape, content, { abortEarly: true });
  const problem = parsed.success ? practiceProblems(parsed.output)[0] : shapeProblem(parsed.issues[0]);
  if (problem !== undefined || !parsed.success)
    return { ok: false, path: problem?.path ?? '', text: problem?.text ?? '' };
  return { ok: true, value: parsed.output };
}

/** The text of a practice file → its settings, or where and why it cannot be used. */
export function readPracticeFile(text: string): FileRead<Practice> {
  const opened = openFile(text, KIND);
  return opened.ok ? readPractice(opened.value) : opened;
}

/** The text of a practice file. */
export function practiceFileText(practice: Practice): string {
  return fileText(KIND, practice);
}
