/** How long things may be: so that a file can be held in the head and a function seen at once. */
import { describe, expect, it } from 'vitest';
import { functionsOf, quantile, unexplained } from './helpers/functions.ts';
import { sourceTree, type SourceFile } from './helpers/source-tree.ts';

const limits = {
  functionLines: 60,
  /** Nine of ten functions that take more than one line. One-line functions are left out, for they would flatter. */
  mostFunctionLines: 30,
  parameters: 3,
  fileLines: 350,
  medianFileLines: 120,
} as const;

/** Protocol data is a list as long as the visit; type files and tables of words have their limit like any other file. */
const protocolData = /^src\/domain\/protocol\/(visit\d+|readings|common)\.ts$/;

const linesOf = (file: SourceFile) => file.text.trimEnd().split('\n').length;

const tooLongFiles = (files: readonly SourceFile[]) =>
  files
    .filter((file) => !protocolData.test(file.path) && linesOf(file) > limits.fileLines)
    .map((file) => `${file.path}: ${linesOf(file)} lines, at most ${limits.fileLines}`);

const tooLongFunctions = (files: readonly SourceFile[]) =>
  files
    .flatMap(functionsOf)
    .filter((found) => found.lines > limits.functionLines)
    .map((found) => `${found.where}: ${found.lines} lines, at most ${limits.functionLines}`);

const tooManyParameters = (files: readonly SourceFile[]) =>
  files
    .flatMap(functionsOf)
    .filter((found) => found.parameters > limits.parameters)
    .map((found) => `${found.where}: ${found.parameters} parameters, at most ${limits.parameters} or one named object`);

const mostFunctions = (files: readonly SourceFile[]) =>
  quantile(
    files
      .flatMap(functionsOf)
      .map((found) => found.lines)
      .filter((lines) => lines > 1),
    0.9,
  );

const body = (lines: number) => Array.from({ length: lines }, (_, i) => `  call(${i});`).join('\n');
const plant = (text: string): SourceFile[] => [{ path: 'src/domain/planted.ts', text }];

describe('a planted excess is found', () => {
  it.each([
    ['declaration', `function long() {\n${body(59)}\n}`, 'long'],
    ['arrow', `const long = () => {\n${body(59)}\n};`, 'long'],
    ['method', `class A {\n  long() {\n${body(59)}\n  }\n}`, 'long'],
    ['property', `const a = { long: function () {\n${body(59)}\n} };`, 'long'],
    ['callback', `run(() => {\n${body(59)}\n});`, 'unnamed'],
  ])('a function of 61 lines: %s', (_, text, name) => {
    expect(tooLongFunctions(plant(text))).toEqual([
      expect.stringMatching(new RegExp(`^src/domain/planted.ts:\\d ${name}: 61 lines`)),
    ]);
  });

  it('a function of 60 lines is not', () => {
    expect(tooLongFunctions(plant(`function fits() {\n${body(58)}\n}`))).toEqual([]);
  });

  it('four parameters, destructured or not', () => {
    expect(tooManyParameters(plant('const f = (a: A, { b }: B, [c]: C, d = 1) => 0;'))).toEqual([
      'src/domain/planted.ts:1 f: 4 parameters, at most 3 or one named object',
    ]);
    expect(tooManyParameters(plant('const f = (a: A, { b, c, d, e }: B, ...rest: C) => 0;'))).toEqual([]);
  });

  it('a file of 351 lines, unless it is the data of a visit', () => {
    const text = 'a;\n'.repeat(351);
    expect(tooLongFiles(plant(text))).toEqual(['src/domain/planted.ts: 351 lines, at most 350']);
    expect(tooLongFiles([{ path: 'src/domain/protocol/visit2.ts', text }])).toEqual([]);
    expect(tooLongFiles(plant('a;\n'.repeat(350)))).toEqual([]);
  });

  it('long functions that are more than one in ten, however many one-line functions there are', () => {
    const long = `function f() {\n${body(31)}\n}\n`;
    const short = 'function g() {\n  return 1;\n}\n';
    const tiny = 'const h = () => 1;\n'.repeat(100);
    expect(mostFunctions(plant(long.repeat(2) + short.repeat(9) + tiny))).toBe(33);
    expect(mostFunctions(plant(long + short.repeat(9) + tiny))).toBe(3);
  });

  it('an exported function without a doc comment', () => {
    const text =
      '/** Told. */\nexport function told() {}\n\n// aside\nexport function bare() {}\nexport const arrow = () => 1;\n';
    expect(plant(text).flatMap(unexplained)).toEqual(['src/domain/planted.ts bare', 'src/domain/planted.ts arrow']);
  });
});

describe('the project keeps its sizes', () => {
  const code = sourceTree('src', 'machines', 'scripts');

  it('no function is longer than a screen', () => {
    expect(tooLongFunctions(code)).toEqual([]);
  });

  it('nine of ten functions are short', () => {
    expect(mostFunctions(code)).toBeLessThanOrEqual(limits.mostFunctionLines);
  });

  it('no function takes more than three parameters', () => {
    expect(tooManyParameters(code)).toEqual([]);
  });

  it('no file is too long, tests included', () => {
    expect(tooLongFiles([...code, ...sourceTree('test')])).toEqual([]);
  });

  it('the middle file is about a hundred lines', () => {
    expect(quantile(code.map(linesOf), 0.5)).toBeLessThanOrEqual(limits.medianFileLines);
  });

  it('every exported function of the domain is explained', () => {
    expect(sourceTree('src/domain').flatMap(unexplained)).toEqual([]);
  });
});
