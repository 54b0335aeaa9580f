/** The project's own source text, read once, for the tests that hold the whole tree to a rule. */
import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseSync, type ParseResult } from 'vite';

export interface SourceFile {
  /** From the project's root, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

export const projectRoot = fileURLToPath(new URL('../../', import.meta.url));

const code = /\.(ts|tsx|mjs)$/;

/** Every code file under the given top folders, in a fixed order. */
export function sourceTree(...folders: readonly string[]): SourceFile[] {
  return folders.flatMap((folder) =>
    readdirSync(`${projectRoot}${folder}`, { recursive: true, encoding: 'utf8' })
      .filter((name) => code.test(name))
      .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
      .toSorted()
      .map((path) => ({ path, text: readFileSync(projectRoot + path, 'utf8') })),
  );
}

/** A file that does not parse would pass every check unseen, so it is an error here. */
export function parsed(file: SourceFile): ParseResult {
  const result = parseSync(file.path, file.text);
  const [first] = result.errors;
  if (first !== undefined) throw new Error(`${file.path} does not parse: ${first.message}`);
  return result;
}

export function lineAt(file: SourceFile, offset: number): number {
  return file.text.slice(0, offset).split('\n').length;
}
