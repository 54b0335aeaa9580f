/** `npm start`: installs what is missing, builds what has changed, serves the app on this machine and prints its address. */
import { requireNode } from './lib/node-version.mjs';

requireNode();
const { start } = await import('./lib/start.mjs');
process.exitCode = await start(process.argv.slice(2));
