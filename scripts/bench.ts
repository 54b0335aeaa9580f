/** `npm run bench`, or `npm run bench -- NAME`: runs the measurements in scripts/bench one after the other; each prints its own. */
import { existsSync, readdirSync } from 'node:fs';

const folder = new URL('./bench/', import.meta.url);
const wanted = process.argv.slice(2);
const names = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.ts')) : [];
const chosen = names.toSorted().filter((name) => wanted.length === 0 || wanted.some((part) => name.includes(part)));

if (chosen.length === 0) {
  console.error(
    wanted.length === 0 ? 'There is nothing to measure in scripts/bench.' : `Nothing matches ${wanted.join(', ')}.`,
  );
  process.exitCode = 1;
}
for (const name of chosen) {
  console.log(`\n# ${name.replace(/\.ts$/, '')}`);
  const { default: measure } = (await import(new URL(name, folder).href)) as { default: () => Promise<void> };
  await measure();
}
