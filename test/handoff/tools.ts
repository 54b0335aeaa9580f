/** Programs of other makers that look at our files. A missing one is said by the name of its package, never passed over. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const PACKAGE = {
  pdftotext: 'poppler-utils',
  pdfinfo: 'poppler-utils',
  pdffonts: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  qpdf: 'qpdf',
  zbarimg: 'zbar-tools',
} as const;

/** What the program wrote to its standard output; its exit code must be 0. */
export function run(tool: keyof typeof PACKAGE, args: readonly string[]): string {
  try {
    return execFileSync(tool, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  } catch (error) {
    if ((error as { code?: string }).code !== 'ENOENT') throw error;
    throw new Error(`${tool} is not installed: apt-get install ${PACKAGE[tool]}`, { cause: error });
  }
}

/** A folder that goes away with the tests. */
export function scratch(): { readonly folder: string; put(name: string, bytes: Uint8Array): string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
  return {
    folder,
    put(name, bytes) {
      const file = join(folder, name);
      writeFileSync(file, bytes);
      return file;
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
