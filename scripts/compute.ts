/**
 * npm run -s compute -- NAME JSON: any computation of src/domain/measure, printed as JSON with uncertainty and source.
 * npm run -s compute -- --list: all of them with inputs and units. What it cannot use: a sentence and exit code 2.
 */
import { runCompute } from './compute/run.ts';

const printed = runCompute(process.argv.slice(2));
if (printed.code === 0) process.stdout.write(`${printed.out}\n`);
else process.stderr.write(`compute: ${printed.why}\n`);
process.exitCode = printed.code;
