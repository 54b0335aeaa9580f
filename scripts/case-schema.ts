/** `npx tsx scripts/case-schema.ts`: writes docs/case-file.schema.json from the check the app itself uses. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';
import { publishedSchema } from './lib/case-schema.ts';

const file = fileURLToPath(new URL('../docs/case-file.schema.json', import.meta.url));
const style = await resolveConfig(file);
writeFileSync(file, await format(JSON.stringify(publishedSchema()), { ...style, filepath: file }));
