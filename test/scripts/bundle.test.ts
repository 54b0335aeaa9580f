import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { initialScripts, measureBundle, staticImports } from '../../scripts/lib/bundle.mjs';

describe('the JavaScript that must be there before anything shows', () => {
  it('is what the page names and announces', () => {
    const html = `<link rel="icon" href="./icon.svg"><link rel="stylesheet" href="./a.css">
      <script type="module" crossorigin src="./assets/index-1.js"></script>
      <link rel="modulepreload" crossorigin href="/assets/vendor-2.js">`;
    expect(initialScripts(html)).toEqual(['assets/index-1.js', 'assets/vendor-2.js']);
  });

  it('is what those import at once, not what they may ask for later', () => {
    const code =
      'import{a as b}from"./x.js";import"./y.js";export*from"./z.js";const s="import(\'./no.js\')";b(()=>import("./later.js"))';
    expect(staticImports(code)).toEqual(['./x.js', './y.js', './z.js']);
  });

  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'rimwise-bundle-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('is added up as it travels, compressed', () => {
    mkdirSync(join(folder, 'assets'));
    const files = {
      'index.html': '<script type="module" src="./assets/index.js"></script>',
      'assets/index.js': 'import "./shared.js"; import("./later.js");',
      'assets/shared.js': `import "./deep.js"; export const long = ${JSON.stringify('x'.repeat(5000))};`,
      'assets/deep.js': 'import "./index.js";',
      'assets/later.js': 'import "./shared.js"; console.log(1);',
    };
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
    const gz = (name: keyof typeof files) => gzipSync(files[name], { level: 9 }).length;
    expect(measureBundle(folder)).toEqual({
      initial: ['assets/index.js', 'assets/shared.js', 'assets/deep.js'],
      later: ['assets/later.js'],
      initialBytes: gz('assets/index.js') + gz('assets/shared.js') + gz('assets/deep.js'),
      laterBytes: gz('assets/later.js'),
    });
  });
});
