/**
 * `npx tsx scripts/fonts.ts REGULAR.ttf BOLD.ttf`: cuts the two fonts of the PDF lab sheet down to the letters it needs
 * and writes them to src/handoff/fonts. Made once from DejaVu Sans 2.37; the result is kept in the tree.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import subsetFont from 'subset-font';
import { GLYPHS } from '../src/handoff/glyphs.ts';

const letters = GLYPHS.flatMap(([from, to]) =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)),
);
const [regular, bold] = process.argv.slice(2);
if (regular === undefined || bold === undefined) {
  console.error('usage: npx tsx scripts/fonts.ts REGULAR.ttf BOLD.ttf');
  process.exit(2);
}
for (const [from, name] of [
  [regular, 'sheet-regular.ttf'],
  [bold, 'sheet-bold.ttf'],
] as const) {
  const subset = await subsetFont(readFileSync(from), letters.join(''), { targetFormat: 'truetype' });
  writeFileSync(new URL(`../src/handoff/fonts/${name}`, import.meta.url), subset);
  console.log(`${name}: ${subset.length} bytes`);
}
