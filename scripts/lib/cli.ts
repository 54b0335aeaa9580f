/** What every command of one file in, text out needs: its arguments, a file's text, and a refusal with exit code 2. */
import { readFileSync } from 'node:fs';
import { parseArgs, type ParseArgsConfig } from 'node:util';

export interface Cli {
  readonly usage: string;
  /** Says why on stderr and ends with exit code 2. */
  fail(message: string): never;
  read(file: string): string;
}

export function cli(name: string, usage: string): Cli {
  const fail = (message: string): never => {
    process.stderr.write(`${name}: ${message}\n`);
    process.exit(2);
  };
  const read = (file: string): string => {
    try {
      return readFileSync(file, 'utf8');
    } catch {
      return fail(`cannot read ${file}`);
    }
  };
  return { usage, fail, read };
}

/** Options and files; an option nobody knows is refused with the usage. */
export function argsOf<Options extends NonNullable<ParseArgsConfig['options']>>(command: Cli, options: Options) {
  try {
    return parseArgs({ allowPositionals: true, options });
  } catch (error) {
    return command.fail(`${(error as Error).message}\n${command.usage}`);
  }
}
