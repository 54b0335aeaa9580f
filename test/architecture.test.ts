/**
 * Who may import whom. The table below is the rule and its documentation: a folder may import itself and what its row
 * names, nothing else. `type X` means `import type` only, `*` anything. A file belongs to the row with the longest
 * matching path. Nobody imports scripts or test, for no row names them. Globals such as Date are watched by lint and by
 * the tsconfig files of the pure folders, and by test/lint.test.ts.
 */
import { describe, expect, it } from 'vitest';
import { deadRows, rowsOf, violations } from './helpers/imports.ts';
import { sourceTree } from './helpers/source-tree.ts';

const table = rowsOf(`
  folder              | may import                                                       | because it
  ------------------- | ---------------------------------------------------------------- | ------------------------------------------------
  src/domain          | simple-statistics                                                | is meaning alone: no clock, no chance, no page
  src/domain/case     | src/domain, valibot                                              | is meaning, and parses what was stored
  src/interpret       | src/domain                                                       | turns words into meaning and knows no device
  machines            | src/domain, xstate                                               | holds order and permission, nothing else
  src/voice           | type src/domain                                                  | talks to the device's ear and mouth, nothing else
  src/time            | type src/domain                                                  | talks to the device's clock, nothing else
  src/storage         | type src/domain, idb-keyval, hash-wasm                           | talks to the device's disk, nothing else
  src/handoff         | src/domain, pdfkit, lean-qr, canonicalize, hash-wasm, valibot,   |
                      | type @medplum/fhirtypes                                          | draws what leaves the app from the domain alone
  src/stores          | src/domain, zustand/vanilla                                      | holds values: no device, no order, no screen
  src/app             | src/domain, src/interpret, machines, src/voice, src/time,        |
                      | src/storage, src/handoff, src/stores, xstate, zustand/vanilla,   |
                      | valibot                                                          | wires everything and runs without a page
  src/app/hooks.ts    | src/app, type src/domain, react, @xstate/react, zustand          | is the door to React and knows no screen
  src/app/main.tsx    | src/app, src/screens, src/voice, src/time, src/storage, react,   |
                      | react-dom/client                                                 | picks the real devices and shows the first screen
  src/screens         | src/domain, type src/app, src/app/hooks.ts, react                | takes props and gives intentions, nothing else
  src/screens/preview | src/screens, src/domain, type src/app, react, react-dom/client   | shows screens with invented numbers, without the app
  scripts             | *                                                                | is for people who work on the project
  test                | *                                                                | looks at everything
`);

/** Code that breaks one rule each, and the part of the sentence that must name it. */
const planted: readonly (readonly [path: string, code: string, named: string])[] = [
  ['src/domain/measure/bad.ts', "import { map } from 'valibot';", 'src/domain/measure/bad.ts:1 imports valibot'],
  ['src/domain/case/bad.ts', "import { setup } from 'xstate';", 'imports xstate'],
  ['src/domain/bad.ts', "export * from '../interpret/index.ts';", 'imports src/interpret/index.ts'],
  ['src/domain/bad.ts', "\n\nexport { a } from '../app/session.ts';", 'src/domain/bad.ts:3 imports src/app/session.ts'],
  ['src/interpret/en/bad.ts', "import { m } from '../../../machines/visit.ts';", 'imports machines/visit.ts'],
  ['src/interpret/bad.ts', "type V = import('../voice/types.ts').Voice;", 'imports the types of src/voice/types.ts'],
  ['machines/bad.ts', "import { useState } from 'react';", 'imports react'],
  [
    'machines/bad.ts',
    "import { x } from 'xstate/graph'; const s = import('../src/storage/fake.ts');",
    'imports src/storage/fake.ts',
  ],
  ['src/voice/bad.ts', "import { length } from '../domain/measure/length.ts';", 'imports src/domain/measure/length.ts'],
  [
    'src/voice/bad.ts',
    "import type { StorageLog } from '../storage/types.ts';",
    'imports the types of src/storage/types.ts',
  ],
  [
    'src/time/bad.ts',
    "const w = new Worker(new URL('../voice/worker.ts', import.meta.url));",
    'imports src/voice/worker.ts',
  ],
  ['src/storage/bad.ts', "import { create } from 'zustand';", 'imports zustand'],
  ['src/handoff/bad.ts', "import { App } from '../screens/App.tsx';", 'imports src/screens/App.tsx'],
  ['src/stores/bad.ts', "import { create } from 'zustand';", 'imports zustand'],
  ['src/app/bad.ts', "import { useState } from 'react';", 'imports react'],
  ['src/app/bad.ts', "import '../screens/styles/index.css';", 'imports src/screens/styles/index.css'],
  ['src/screens/bad.tsx', "import { type A, b } from '../app/runtime.ts';", 'imports src/app/runtime.ts'],
  ['src/screens/bad.tsx', "const log = import('../storage/' + name);", 'imports (computed)'],
  ['src/app/bad.ts', "import { helper } from '../../test/helpers/facts.ts';", 'imports test/helpers/facts.ts'],
  ['src/newfolder/bad.ts', 'export const a = 1;', 'src/newfolder/bad.ts belongs to no row'],
];

const innocent: readonly (readonly [path: string, code: string])[] = [
  ['src/domain/measure/good.ts', "import { median } from 'simple-statistics'; import { a } from '../case/facts.ts';"],
  ['src/voice/good.ts', "import type { Length } from '../domain/measure/length.ts'; import { b } from './types.ts';"],
  ['src/voice/good.ts', "import { type Length } from '../domain/measure/length.ts';"],
  [
    'src/screens/good.tsx',
    "import type { AppModel } from '../app/model.ts'; import { useAppModel } from '../app/hooks.ts';",
  ],
  ['src/app/main.tsx', "import { App } from '../screens/App.tsx'; import { createRoot } from 'react-dom/client';"],
  ['test/good.test.ts', "import { anything } from 'anything'; import { a } from '../scripts/replay.ts';"],
];

describe('imports point one way', () => {
  it.each(planted)('a planted violation in %s is found: %s', (path, text, named) => {
    const found = violations([{ path, text }], table);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(named);
  });

  it.each(innocent)('what the table allows in %s is left alone: %s', (path, text) => {
    expect(violations([{ path, text }], table)).toEqual([]);
  });

  it('a row that no file belongs to is found', () => {
    expect(deadRows([{ path: 'src/domain/a.ts', text: '' }], table)).toContain('src/voice');
  });

  const files = sourceTree('src', 'machines', 'scripts', 'test');

  it('every import in the project is allowed by the table', () => {
    expect(violations(files, table)).toEqual([]);
  });

  it('every row of the table describes files that exist', () => {
    expect(deadRows(files, table)).toEqual([]);
  });
});
