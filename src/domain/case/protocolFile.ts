/** A visit's protocol as a file: written, read back, and refused with the place and the reason. */
import * as v from 'valibot';
import { readingDefs } from '../protocol/readings.ts';
import type { Practice, VisitProtocol } from '../protocol/types.ts';
import { protocolProblems } from '../protocol/validate.ts';
import { fileText, openFile, shapeProblem, type FileKind, type FileRead } from './fileFormat.ts';
import { words } from './practiceSchema.ts';

const KIND: FileKind = { kind: 'rimwise protocol', format: 1, migrations: {} };

const text = v.pipe(v.string(), v.maxLength(400));
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(80));
const whole = v.pipe(v.number(), v.safeInteger(), v.minValue(1));
/** No visit has more of anything. Our choice. */
const MOST = 1000;
const condition = v.strictObject({ step: id, answer: id });

const common = {
  id,
  chapter: whole,
  title: text,
  lines: v.pipe(v.array(text), v.maxLength(MOST)),
  caution: v.exactOptional(text),
  drawing: v.exactOptional(
    v.picklist([
      'caliper-upper',
      'caliper-lower',
      'caliper-face',
      'tray-upper',
      'tray-lower',
      'readings-rest',
      'height-stack',
      'hinge',
      'sulcus',
      'tracing',
      'tooth-sizes',
      'sore-map',
      'sore-upper',
      'sore-lower',
    ]),
  ),
  optional: v.exactOptional(v.boolean()),
  onlyIf: v.exactOptional(condition),
  notIf: v.exactOptional(v.pipe(v.array(condition), v.maxLength(MOST))),
};

const answer = v.strictObject({
  id,
  label: text,
  words,
  tone: v.picklist(['good', 'neutral', 'warn']),
  caution: v.exactOptional(text),
  goto: v.exactOptional(id),
  retake: v.exactOptional(v.boolean()),
  needsReason: v.exactOptional(v.boolean()),
});

const step = v.variant('kind', [
  v.strictObject({ kind: v.literal('inform'), ...common }),
  v.strictObject({ kind: v.literal('check'), ...common, answers: v.pipe(v.array(answer), v.maxLength(MOST)) }),
  v.strictObject({ kind: v.literal('decision'), ...common, answers: v.pipe(v.array(answer), v.maxLength(MOST)) }),
  v.strictObject({ kind: v.literal('reading'), ...common, reading: id }),
  v.strictObject({
    kind: v.literal('clock'),
    ...common,
    clock: id,
    clockLabel: v.exactOptional(text),
    flow: v.picklist(['impression', 'timed']),
    materials: v.pipe(v.array(id), v.maxLength(MOST)),
    of: v.exactOptional(id),
    poured: v.exactOptional(v.boolean()),
  }),
  v.strictObject({
    kind: v.literal('signoff'),
    ...common,
    role: v.picklist(['clinician', 'assistant']),
    closesVisit: v.exactOptional(v.boolean()),
  }),
]);

const protocol = v.strictObject({
  id,
  version: whole,
  visit: v.picklist([1, 2, 3, 4, 5]),
  title: text,
  chapters: v.pipe(v.array(v.strictObject({ number: whole, title: text })), v.maxLength(MOST)),
  steps: v.pipe(v.array(step), v.minLength(1), v.maxLength(MOST)),
});

/** A protocol as stored earlier, checked field by field only: it was checked for sense when it was saved. */
export function readProtocolShape(content: unknown): FileRead<VisitProtocol> {
  const parsed = v.safeParse(protocol, content, { abortEarly: true });
  return parsed.success ? { ok: true, value: parsed.output } : { ok: false, ...shapeProblem(parsed.issues[0]) };
}

/** A protocol from anywhere, checked field by field, then for sense with the practice's materials and disinfectants. */
export function readProtocol(content: unknown, practice: Practice): FileRead<VisitProtocol> {
  const read = readProtocolShape(content);
  if (!read.ok) return read;
  const problem = protocolProblems(read.value, readingDefs, practice)[0];
  return problem === undefined ? read : { ok: false, ...problem };
}

/** The text of a protocol file → the protocol, or where and why it cannot be used. */
export function readProtocolFile(file: string, practice: Practice): FileRead<VisitProtocol> {
  const opened = openFile(file, KIND);
  return opened.ok ? readProtocol(opened.value, practice) : opened;
}

/** The text of a protocol file. */
export function protocolFileText(content: VisitProtocol): string {
  return fileText(KIND, content);
}
