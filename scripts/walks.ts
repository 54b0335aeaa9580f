/** `npm run walks`, or `npm run walks -- N [SEED]`: random walks of 60 moves through all visits, 2,000 of them unless told otherwise. */
import { spawnSync } from 'node:child_process';

const [walks = '2000', seed] = process.argv.slice(2);
const env = { ...process.env, WALKS: walks, ...(seed === undefined ? {} : { WALKS_SEED: seed }) };
const { status } = spawnSync('npx', ['vitest', 'run', 'test/promises/walks.test.ts'], { stdio: 'inherit', env });
process.exitCode = status ?? 1;
