/** Measures functions from their syntax tree: how long, how many parameters, and whether an exported one is explained. */
import { Visitor } from 'vite';
import { lineAt, parsed, type SourceFile } from './source-tree.ts';

export interface Measured {
  /** `path:line name` */
  readonly where: string;
  /** From the first to the last line, comments and blank lines included. */
  readonly lines: number;
  readonly parameters: number;
}

interface FunctionNode {
  readonly start: number;
  readonly end: number;
  readonly params: readonly unknown[];
}

/** Every function with a body: declarations, expressions, arrows, methods, accessors and constructors. */
export function functionsOf(file: SourceFile): Measured[] {
  const found: Measured[] = [];
  const names = new Map<number, string>();
  const name = (key: { readonly start: number; readonly end: number }, value: { readonly start: number } | null) => {
    if (value !== null) names.set(value.start, file.text.slice(key.start, key.end));
  };
  const add = (node: FunctionNode, own?: string) => {
    const line = lineAt(file, node.start);
    const called = own ?? names.get(node.start) ?? 'unnamed';
    found.push({
      where: `${file.path}:${line} ${called}`,
      lines: lineAt(file, node.end) - line + 1,
      parameters: node.params.length,
    });
  };
  new Visitor({
    VariableDeclarator: (node) => name(node.id, node.init),
    MethodDefinition: (node) => name(node.key, node.value),
    PropertyDefinition: (node) => name(node.key, node.value),
    Property: (node) => name(node.key, node.value),
    FunctionDeclaration: (node) => {
      if (node.body !== null) add(node, node.id?.name);
    },
    FunctionExpression: (node) => add(node, node.id?.name),
    ArrowFunctionExpression: (node) => add(node),
  }).visit(parsed(file).program);
  return found;
}

/** Exported functions without a doc comment right above them. */
export function unexplained(file: SourceFile): string[] {
  const { program, comments } = parsed(file);
  const docEnds = comments.filter((c) => c.type === 'Block' && c.value.startsWith('*')).map((c) => c.end);
  const explained = (start: number) => docEnds.some((end) => end <= start && file.text.slice(end, start).trim() === '');
  return program.body.flatMap((node) => {
    if (node.type !== 'ExportNamedDeclaration' || explained(node.start)) return [];
    const { declaration } = node;
    if (declaration?.type === 'FunctionDeclaration') return [`${file.path} ${declaration.id?.name ?? ''}`];
    if (declaration?.type !== 'VariableDeclaration') return [];
    return declaration.declarations
      .filter((d) => d.init?.type === 'ArrowFunctionExpression' || d.init?.type === 'FunctionExpression')
      .map((d) => `${file.path} ${file.text.slice(d.id.start, d.id.end)}`);
  });
}

/** The value that at least the given share of all values does not exceed (nearest rank); 0 of nothing. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0;
}
