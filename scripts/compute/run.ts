/** From the words on the command line to what is printed and the exit code; prints nothing itself. */
import * as v from 'valibot';
import { sources } from '../../src/domain/measure/sources.ts';
import { computations } from './all.ts';
import { shapeOf, type Computation } from './inputs.ts';

export type Printed =
  | { readonly code: 0; readonly out: string }
  /** Unusable input: one message for a person. */
  | { readonly code: 2; readonly why: string };

const USAGE = 'usage: npm run -s compute -- NAME JSON, or --list';

const refused = (why: string): Printed => ({ code: 2, why });

function listed({ name, about, unit, input }: Computation): string {
  return `${name} → ${unit}\n    ${about}\n    ${shapeOf(input)}`;
}

function parsed(text: string): { readonly json: unknown } | undefined {
  try {
    return { json: JSON.parse(text) as unknown };
  } catch {
    return undefined;
  }
}

/** Twelve figures are more than anything here is known to; what binary fractions leave behind them is not printed. */
const tidy = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(12)) : value;

function answered(one: Computation, given: unknown): Printed {
  const checked = v.safeParse(one.input, given);
  if (!checked.success) {
    const issue = checked.issues[0];
    const path = v.getDotPath(issue);
    return refused(`${one.name}: ${path === null ? '' : `${path}: `}${issue.message}\n  wanted: ${shapeOf(one.input)}`);
  }
  const result = one.run(given);
  if (!result.ok) return refused(`${one.name}: ${result.text} (${result.reason})`);
  const { value, uncertainty, inputs, source } = result;
  const answer = {
    name: one.name,
    value,
    ...(uncertainty === undefined ? {} : { uncertainty }),
    unit: one.unit,
    inputs,
  };
  return { code: 0, out: JSON.stringify({ ...answer, source: { id: source, ...sources[source] } }, tidy, 2) };
}

/** `--list`, or a name and its input as JSON. */
export function runCompute([name, text, ...rest]: readonly string[]): Printed {
  if (name === '--list' && text === undefined) return { code: 0, out: computations.map(listed).join('\n') };
  if (name === undefined || text === undefined || rest.length > 0) return refused(USAGE);
  const found = computations.find((one) => one.name === name);
  if (found === undefined) return refused(`no computation is called “${name}”; --list names them all`);
  const given = parsed(text);
  return given === undefined ? refused(`${name}: not JSON: ${text}`) : answered(found, given.json);
}
