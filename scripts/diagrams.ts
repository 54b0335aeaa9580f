/** `npm run diagrams`: writes docs/diagrams anew from the machines and the protocols. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { diagrams } from './diagrams/all.ts';

const folder = new URL('../docs/diagrams/', import.meta.url);
mkdirSync(folder, { recursive: true });
const made = diagrams();
for (const name of readdirSync(folder)) if (!made.has(name)) rmSync(new URL(name, folder));
for (const [name, text] of made) writeFileSync(new URL(name, folder), text);
process.stdout.write(`${made.size} diagrams in docs/diagrams\n`);
