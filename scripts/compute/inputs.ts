/** What a computation takes, described once: checked from it, listed from it. Lengths come in millimetres. */
import * as v from 'valibot';
import { lengthFromMm, type Hundredths } from '../../src/domain/measure/length.ts';
import type { Measured } from '../../src/domain/measure/result.ts';

const WHY_NO_LENGTH = {
  empty: 'is missing',
  notANumber: 'is no number',
  negative: 'is below zero',
  tooFine: 'has more than two decimals',
  tooLarge: 'is 1000 mm or more',
} as const;

/** A length in millimetres, turned into whole hundredths. */
export const length = v.pipe(
  v.number(),
  v.rawTransform(({ dataset, addIssue, NEVER }): Hundredths => {
    const found = lengthFromMm(dataset.value);
    if (found.ok) return found.value;
    addIssue({ message: `${dataset.value} ${WHY_NO_LENGTH[found.reason]}` });
    return NEVER;
  }),
  v.description('mm'),
);

/** A plain number in a named unit. */
export const number = (unit: string) => v.pipe(v.number(), v.description(unit));
export const text = (what: string) => v.pipe(v.string(), v.description(what));
export const yesNo = v.pipe(v.boolean(), v.description('true or false'));
export const oneOf = <const T extends readonly string[]>(...options: T) => v.picklist(options);
export const many = <S extends v.GenericSchema>(item: S) => v.array(item);
export const maybe = <S extends v.GenericSchema>(inner: S) => v.exactOptional(inner);
export const fields = <E extends v.ObjectEntries>(entries: E) => v.strictObject(entries);

/** A point on a tracing plate. */
export const point = fields({ x: number('mm'), y: number('mm') });

export interface Computation {
  readonly name: string;
  readonly about: string;
  /** Unit of the value, or of its parts where their names do not say it. */
  readonly unit: string;
  readonly input: v.GenericSchema;
  readonly run: (input: unknown) => Measured<unknown>;
}

interface Parts<E extends v.ObjectEntries> {
  readonly about: string;
  readonly unit: string;
  readonly takes: E;
  readonly run: (input: v.InferOutput<v.StrictObjectSchema<E, undefined>>) => Measured<unknown>;
}

/** One computation with its inputs. `run` sees only what has passed the check. */
export function computation<const E extends v.ObjectEntries>(name: string, parts: Parts<E>): Computation {
  const input = v.strictObject(parts.takes);
  return { name, about: parts.about, unit: parts.unit, input, run: (given) => parts.run(v.parse(input, given)) };
}

/** A result with its value turned into another, for values that count in hundredths inside. */
export function turned<T, U>(result: Measured<T>, turn: (value: T) => U): Measured<U> {
  return result.ok ? { ...result, value: turn(result.value) } : result;
}

interface Described {
  readonly type: string;
  readonly wrapped?: v.GenericSchema;
  readonly item?: v.GenericSchema;
  readonly options?: readonly string[];
  readonly entries?: Readonly<Record<string, v.GenericSchema>>;
}

/** "mm", "[mm, …]", "A|B", "{ x: mm, y?: mm }". */
export function shapeOf(schema: v.GenericSchema): string {
  const { type, wrapped, item, options, entries } = schema as v.GenericSchema & Described;
  if (wrapped !== undefined) return shapeOf(wrapped);
  if (item !== undefined) return `[${shapeOf(item)}, …]`;
  if (options !== undefined) return options.join('|');
  if (entries !== undefined) return `{ ${inputsOf(entries).join(', ')} }`;
  return v.getDescription(schema) ?? type;
}

function inputsOf(entries: Readonly<Record<string, v.GenericSchema>>): readonly string[] {
  return Object.entries(entries).map(([name, schema]) => {
    const optional = (schema as v.GenericSchema & Described).wrapped !== undefined ? '?' : '';
    return `${name}${optional}: ${shapeOf(schema)}`;
  });
}
