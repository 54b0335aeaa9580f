/**
 * npm run -s compute -- NAME JSON: any computation of src/domain/measure, printed as JSON with uncertainty and source.
 * npm run -s compute -- --list: all of them with inputs and units. What it cannot use: a sentence and exit code 2.
 */
import * as v from 'valibot';
import { sources } from '../src/domain/measure/sources.ts';
import { computations } from './compute/all.ts';
import { shapeOf, type Computation } from './compute/inputs.ts';

const USAGE = 'usage: npm run -s compute -- NAME JSON, or --list';

function fail(message: string): never {
  process.stderr.write(`compute: ${message}\n`);
  process.exit(2);
}

function listed({ name, about, unit, input }: Computation): string {
  return `${name} → ${unit}\n    ${about}\n    ${shapeOf(input)}`;
}

function parsed(name: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return fail(`${name}: not JSON: ${text}`);
  }
}

function checked({ name, input }: Computation, given: unknown): unknown {
  const result = v.safeParse(input, given);
  if (result.success) return given;
  const issue = result.issues[0];
  const path = v.getDotPath(issue);
  return fail(`${name}: ${path === null ? '' : `${path}: `}${issue.message}\n  wanted: ${shapeOf(input)}`);
}

function compute(name: string, json: string): string {
  const found = computations.find((one) => one.name === name);
  if (found === undefined) return fail(`no computation is called “${name}”; --list names them all`);
  const result = found.run(checked(found, parsed(name, json)));
  if (!result.ok) return fail(`${name}: ${result.text} (${result.reason})`);
  const { value, uncertainty, inputs, source } = result;
  const answer = { name, value, ...(uncertainty === undefined ? {} : { uncertainty }), unit: found.unit, inputs };
  return JSON.stringify({ ...answer, source: { id: source, ...sources[source] } }, null, 2);
}

const [name, json, ...rest] = process.argv.slice(2);
if (name === '--list' && json === undefined) process.stdout.write(`${computations.map(listed).join('\n')}\n`);
else if (name === undefined || json === undefined || rest.length > 0) fail(USAGE);
else process.stdout.write(`${compute(name, json)}\n`);
