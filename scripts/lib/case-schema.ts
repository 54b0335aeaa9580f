/** The published JSON Schema (draft-07) of a case file, made from the valibot schema that reads it. */
import { toJsonSchema } from '@valibot/to-json-schema';
import { caseFileSchema } from '../../src/handoff/case-file-schema.ts';

/** Hash and digest cannot be said in a JSON Schema; docs/handoff.md says how they are made. */
export function publishedSchema(): Record<string, unknown> {
  const schema = toJsonSchema(caseFileSchema, { target: 'draft-07', errorMode: 'ignore' });
  return {
    ...schema,
    title: 'Rimwise case file, version 1',
    description: 'Shape only. Hashes, chains, references and the digest are described in docs/handoff.md.',
  };
}
