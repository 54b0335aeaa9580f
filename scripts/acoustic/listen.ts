/** Has every scene heard at every level: by two ears side by side, each with the grammar of the moment. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { grammarOf } from '../../src/interpret/grammar.ts';
import { openEar } from './ear.ts';
import type { Ear } from './ear.ts';
import type { Hearing } from './hearing.ts';
import { accepts, choices } from './jsgf.ts';
import { dictionaryWords, grammarWords, pronunciations } from './pronounce.ts';
import type { Scene } from './scenes.ts';
import { LEVELS, openStudio } from './studio.ts';
import type { Level } from './studio.ts';
import type { Tools } from './tools.ts';
import { weigh } from './weigh.ts';
import type { Grammar } from './weigh.ts';

export interface Heard {
  readonly scene: Scene;
  readonly level: Level;
  readonly hearing: Hearing;
}

const EARS = 2;

interface Files {
  readonly folder: string;
  /** Name → path of a grammar in JSGF. */
  readonly grammars: Map<string, string>;
}

function put({ folder, grammars }: Files, name: string, jsgf: string): void {
  const path = join(folder, `${name}.jsgf`);
  writeFileSync(path, jsgf);
  grammars.set(name, path);
}

/** Every different grammar of the scenes, by its text, with the kinds of sentence it gives; written to files. */
function grammarsOf(scenes: readonly Scene[], files: Files): ReadonlyMap<string, Grammar> {
  const grammars = new Map<string, Grammar>();
  for (const { expectation } of scenes) {
    const jsgf = grammarOf(expectation);
    if (grammars.has(jsgf)) continue;
    const name = `g${grammars.size}`;
    put(files, name, jsgf);
    const kinds = choices(jsgf).map((choice, i) => {
      put(files, `${name}-${i}`, choice);
      return { name: `${name}-${i}`, accepts: accepts(choice) };
    });
    grammars.set(jsgf, { name, jsgf, accepts: accepts(jsgf), kinds });
  }
  return grammars;
}

/** How the words of the grammars sound that the dictionary lacks; the path of a file. */
async function moreWordsFor(grammars: readonly string[], { folder, dictionary }: Tools): Promise<string> {
  const known = dictionaryWords(dictionary);
  const unknown = new Set(grammars.flatMap((jsgf) => [...grammarWords(jsgf)].filter((word) => !known.has(word))));
  const path = join(folder, 'more-words.dict');
  writeFileSync(path, await pronunciations([...unknown]));
  return path;
}

/** Everything heard, in the order of the scenes, level by level. */
export async function listen(scenes: readonly Scene[], tools: Tools): Promise<readonly Heard[]> {
  const folder = mkdtempSync(join(tools.folder, 'run-'));
  const files: Files = { folder, grammars: new Map() };
  const grammars = grammarsOf(scenes, files);
  const moreWords = await moreWordsFor([...grammars.keys()], tools);
  const studio = openStudio(tools.folder);
  const jobs = scenes.flatMap((scene) => LEVELS.map((level) => ({ scene, level })));
  const heard: Heard[] = [];
  let at = 0;
  const work = async (ear: Ear): Promise<void> => {
    for (let place = at++; place < jobs.length; place = at++) {
      const { scene, level } = jobs[place] as (typeof jobs)[number];
      const { expectation } = scene;
      const grammar = grammars.get(grammarOf(expectation)) as Grammar;
      const loops = await ear.hear(await studio.heard(scene, level));
      heard[place] = { scene, level, hearing: { ...loops, ...(await weigh(ear, grammar, expectation)) } };
    }
  };
  const ears = Array.from({ length: EARS }, (_, n) =>
    openEar({ ...tools, moreWords, grammars: files.grammars, scores: join(folder, `scores-${n}`) }),
  );
  try {
    await Promise.all(ears.map(work));
  } finally {
    for (const ear of ears) ear.close();
    rmSync(folder, { force: true, recursive: true });
  }
  return heard;
}
