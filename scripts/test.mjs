/** `npm test`: installs what is missing, then format, lint, types, unit tests, build, end-to-end tests and size. */
import { requireNode } from './lib/node-version.mjs';

requireNode();
const { test } = await import('./lib/test.mjs');
process.exitCode = await test(process.argv.slice(2));
