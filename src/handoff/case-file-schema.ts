/** The shape of a case file, checked before anything else looks at it. docs/case-file.schema.json is made from this. */
import * as v from 'valibot';
import { factBody } from '../domain/case/parse.ts';
import { WRITER } from './origin.ts';
import { REF_FIELDS } from './refs.ts';

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const text = v.pipe(v.string(), v.maxLength(4000));
const count = v.pipe(v.number(), v.safeInteger(), v.minValue(1));
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/));
const writer = v.pipe(v.string(), v.regex(WRITER));
const ref = v.strictObject({ writer, n: count });

/** A body with references where a stored fact has numbers. */
type BodySchema = (typeof factBody.options)[number];
function travelling(option: BodySchema) {
  if (!('entries' in option)) return option;
  const entries: Record<string, v.GenericSchema> = { ...option.entries };
  for (const field of REF_FIELDS[option.entries.kind.literal] ?? [])
    entries[field] = entries[field]?.type === 'exact_optional' ? v.exactOptional(ref) : ref;
  return v.strictObject(entries);
}
const bodies = factBody.options.map(travelling);

export const entrySchema = v.strictObject({
  writer,
  n: count,
  at: v.pipe(v.number(), v.minValue(-8.64e15), v.maxValue(8.64e15)),
  fact: v.strictObject({
    v: v.literal(1),
    act: ref,
    protocol: text,
    app: text,
    body: v.variant('kind', bodies as unknown as v.VariantOptions<'kind'>),
  }),
  prev: v.union([v.literal(''), hash]),
  hash,
});

export const caseFileSchema = v.strictObject({
  format: v.literal('rimwise-case'),
  v: v.literal(1),
  caseId: id,
  entries: v.pipe(v.array(entrySchema), v.minLength(1)),
  digest: hash,
});
