/** Reads what a file imports and holds it against a table of who may import whom. */
import { posix } from 'node:path';
import { Visitor } from 'vite';
import { lineAt, parsed, type SourceFile } from './source-tree.ts';

export interface Row {
  /** A folder or a single file; the longest row that covers a file is the one that counts. */
  readonly folder: string;
  /** Folders, files or package names; `type X` allows only `import type`; `*` allows all. A folder may always import itself. */
  readonly mayImport: readonly string[];
  readonly because: string;
}

interface Import {
  /** A path from the project's root, or a package name. */
  readonly target: string;
  readonly typeOnly: boolean;
  readonly line: number;
}

const onlyTypes = (entries: readonly { isType: boolean }[]) => entries.length > 0 && entries.every((e) => e.isType);

/** Static, re-exporting, dynamic and worker imports, and `import('…')` in a type. */
function importsOf(file: SourceFile): Import[] {
  const { module, program } = parsed(file);
  const found: Import[] = [];
  const add = (specifier: string, typeOnly: boolean, at: number) => {
    const target = specifier.startsWith('.') ? posix.join(posix.dirname(file.path), specifier) : specifier;
    found.push({ target, typeOnly, line: lineAt(file, at) });
  };
  for (const i of module.staticImports) add(i.moduleRequest.value, onlyTypes(i.entries), i.start);
  for (const e of module.staticExports) {
    for (const entry of e.entries) if (entry.moduleRequest) add(entry.moduleRequest.value, entry.isType, e.start);
  }
  new Visitor({
    ImportExpression(node) {
      add(node.source.type === 'Literal' ? String(node.source.value) : '(computed)', false, node.start);
    },
    TSImportType(node) {
      add(node.source.value, true, node.start);
    },
    NewExpression(node) {
      const [first] = node.arguments;
      const isUrl = node.callee.type === 'Identifier' && node.callee.name === 'URL';
      if (isUrl && first?.type === 'Literal' && String(first.value).startsWith('.'))
        add(String(first.value), false, node.start);
    },
  }).visit(program);
  return found;
}

const anything = '*';

const covers = (folder: string, path: string) => path === folder || path.startsWith(`${folder}/`);

function rowFor(table: readonly Row[], path: string): Row | undefined {
  return table.filter((row) => covers(row.folder, path)).toSorted((a, b) => b.folder.length - a.folder.length)[0];
}

function allowed(row: Row, { target, typeOnly }: Import): boolean {
  if (covers(row.folder, target) || row.mayImport.includes(anything)) return true;
  return row.mayImport.some((entry) =>
    entry.startsWith('type ') ? typeOnly && covers(entry.slice(5), target) : covers(entry, target),
  );
}

/** Reads a table of `folder | may import | because it`; a line without a folder goes on with the row above. */
export function rowsOf(text: string): Row[] {
  const lines = text.split('\n').filter((line) => line.includes('|') && !line.includes('---'));
  const rows: { folder: string; mayImport: string[]; because: string }[] = [];
  for (const line of lines.slice(1)) {
    const [folder = '', may = '', because = ''] = line.split('|').map((cell) => cell.trim());
    if (folder !== '') rows.push({ folder, mayImport: [], because: '' });
    const row = rows.at(-1);
    row?.mayImport.push(
      ...may
        .split(',')
        .map((name) => name.trim())
        .filter((name) => name !== ''),
    );
    if (row !== undefined && because !== '') row.because = because;
  }
  return rows;
}

/** One sentence for each import that the table does not allow; empty when all is well. */
export function violations(files: readonly SourceFile[], table: readonly Row[]): string[] {
  return files.flatMap((file) => {
    const row = rowFor(table, file.path);
    if (row === undefined) return [`${file.path} belongs to no row of the table`];
    return importsOf(file)
      .filter((found) => !allowed(row, found))
      .map((found) => {
        const what = found.typeOnly ? 'the types of ' : '';
        return `${file.path}:${found.line} imports ${what}${found.target}, but ${row.folder} ${row.because}`;
      });
  });
}

/** Rows that no file belongs to: a table that describes a house that is not there. */
export function deadRows(files: readonly SourceFile[], table: readonly Row[]): string[] {
  const used = new Set(files.map((file) => rowFor(table, file.path)?.folder));
  return table.filter((row) => !used.has(row.folder)).map((row) => row.folder);
}
